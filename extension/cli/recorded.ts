import type { CaseResult } from '../../core/study/results.ts';

/** What each case is known to give, a line each, by file: `cell 8, expect "idle < 10 %": fails`. */
export type CaseRecord = { readonly [file: string]: readonly string[] };

export function recordOf(cases: readonly CaseResult[]): CaseRecord {
  return Object.fromEntries(cases.map((each) => [each.file, linesOf(each)]));
}

/** How `found` differs from what was recorded, as sentences; none when every case gives exactly its record. */
export function differences(recorded: CaseRecord, found: CaseRecord): string[] {
  const files = [...new Set([...Object.keys(recorded), ...Object.keys(found)])].sort();
  return files.flatMap((file) => {
    const before = Object.hasOwn(recorded, file) ? recorded[file] : undefined;
    const after = Object.hasOwn(found, file) ? found[file] : undefined;
    if (before === undefined) return [`${file} has no record.`];
    if (after === undefined) return [`${file} is recorded and was not checked.`];
    return [
      ...without(before, after).map((line) => `${file} no longer gives: ${line}`),
      ...without(after, before).map((line) => `${file} now gives: ${line}`),
    ];
  });
}

/** Reads a record; undefined when the text is none. */
export function parseRecord(text: string): CaseRecord | undefined {
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (typeof read !== 'object' || read === null || Array.isArray(read)) return undefined;
  const isLines = (value: unknown): boolean =>
    Array.isArray(value) && value.every((line) => typeof line === 'string');
  return Object.values(read).every(isLines) ? (read as CaseRecord) : undefined;
}

function linesOf({ expectations, suspects, diagnostics }: CaseResult): string[] {
  return [
    ...expectations.map(({ cell, part, text, verdict }) => `cell ${cell}, ${part} "${text}": ${verdict}`),
    ...suspects.map(({ name, standing }) => `suspect "${name}": ${standing}`),
    ...diagnostics.map(({ code, severity, line, column }) => `${line}:${column} ${severity} ${code}`),
  ];
}

/** The lines of `all` that are not in `others`, counting repeated ones. */
function without(all: readonly string[], others: readonly string[]): string[] {
  const left = [...others];
  return all.filter((line) => {
    const at = left.indexOf(line);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}
