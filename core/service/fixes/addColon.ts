import { allSignals } from '../../signals/lookup.ts';
import type { Span } from '../../text/span.ts';
import { partsOf } from '../cellParts.ts';
import { expectedAt } from '../expected.ts';
import type { Standing } from '../standing.ts';
import type { CodeFix } from '../types.ts';
import { typingAt } from '../typing.ts';
import { lineEndAt } from './rewrite.ts';

/** `map 13 inHg`: a known name that starts a line and lacks its colon. */
export function addColon(standing: Standing, span: Span): readonly CodeFix[] {
  const { text, typed, index, study } = standing;
  const diagnostics = partsOf(study, index).findings.filter(
    ({ code, span: at }) => forgotten.has(code) && at.start <= span.end && span.start <= at.end,
  );
  const [first] = diagnostics;
  if (first === undefined) return [];
  const end = lineEndAt(text, first.span.start);
  const { where, path, before, start } = typingAt(typed, end);
  const name = where === 'either' ? /^([\p{L}\p{N}_]+) +\S/u.exec(before)?.[1] : undefined;
  if (name === undefined || !isKnown(standing, path, name)) return [];
  const at = start + name.length;
  return [
    {
      title: `Write \`${name}:\` with a colon`,
      kind: 'fix',
      edits: [{ cell: index, edits: [{ span: { start: at, end: at }, newText: ':' }] }],
      diagnostics,
      preferred: true,
    },
  ];
}

/** What is reported where a colon was forgotten. */
const forgotten: ReadonlySet<string> = new Set(['not-an-entry', 'wrong-shape']);

function isKnown({ names }: Standing, path: readonly string[], name: string): boolean {
  const expected = expectedAt(path);
  switch (expected?.what) {
    case 'signals':
      return names.ownSignals.has(name) || allSignals().some((each) => each.name === name);
    case 'keys':
      return Object.hasOwn(expected.keys, name);
    default:
      return false;
  }
}
