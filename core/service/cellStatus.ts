import type { Severity } from '../diagnostics/row.ts';
import { message } from '../diagnostics/words.ts';
import type { Verdict } from '../expression/value.ts';
import { byWeight, countedFindings } from '../report/byWeight.ts';
import { signOf, verdictLine } from '../report/verdictLine.ts';
import type { Expectation, Suspect } from '../study/types.ts';
import type { CellParts } from './cellParts.ts';
import type { CellStatus } from './cellResult.ts';

/** A cell in one line: what is wrong in it, its verdicts or its suspects' standing, and how much is noted. */
export function cellStatus(parts: CellParts): CellStatus | undefined {
  const { suspects, findings } = parts;
  const stated = parts.expectations.filter(({ part }) => part === 'expect' || part === 'verify');
  // What is unusual is drawn and said beside the reading itself.
  const { serious, notes } = byWeight(findings.filter(({ code }) => code !== 'unusual-value'));
  if (stated.length + suspects.length + serious.length + notes.length === 0) return undefined;
  const [worst] = serious;
  const text = [
    ...countedFindings(serious, ['error', 'warning']),
    ...(stated.length === 0 ? [] : [verdictsInShort(stated)]),
    ...(suspects.length === 0 ? [] : [suspectsInShort(suspects)]),
    ...countedFindings(notes, ['info']),
  ].join(', ');
  const told = worst === undefined ? notes : serious.filter((each) => each.severity === worst.severity);
  const says = [
    ...(worst === undefined ? [] : told.map(message)),
    ...stated.map(spoken),
    ...suspects.map(({ name, standing }) => `${name}: ${standing}.`),
    ...(worst === undefined ? told.map(message) : []),
  ].join('\n');
  const failing = firstFailure(stated)?.span;
  // An error may be why something fails.
  const first = worst?.severity === 'error' ? worst.span : (failing ?? worst?.span);
  const severity = worst?.severity;
  return { text, sign: signFor(stated, suspects, severity), says, severity, first };
}

/** From worst to best: what a reader should look at first. */
const order: readonly Verdict[] = ['fails', 'cannot compute', 'not measured', 'too close to call', 'holds'];

function signFor(
  stated: readonly Expectation[],
  suspects: readonly Suspect[],
  wrong: Severity | undefined,
): CellStatus['sign'] {
  const worst = order.find((verdict) => stated.some((each) => each.truth.verdict === verdict));
  if (worst !== undefined) return signOf(worst);
  if (wrong === 'error') return '✗';
  return suspects.some((each) => each.standing === 'still possible') ? '≈' : '–';
}

/** "holds", "all 3 hold", "2 of 3 hold, 1 fails as announced" */
function verdictsInShort(stated: readonly Expectation[]): string {
  const count = (verdict: Verdict): number => stated.filter((each) => each.truth.verdict === verdict).length;
  const announced = stated.every((each) => each.truth.verdict !== 'fails' || each.showsFault);
  const fault = announced && count('fails') > 0 ? ' as announced' : '';
  const [only] = stated;
  if (only !== undefined && stated.length === 1) return `${only.truth.verdict}${fault}`;
  const holds = count('holds');
  if (holds === stated.length) return holds === 2 ? 'both hold' : `all ${holds} hold`;
  const rest = order
    .filter((verdict) => verdict !== 'holds' && count(verdict) > 0)
    .map(
      (verdict) => `${count(verdict)} ${plural(verdict, count(verdict))}${verdict === 'fails' ? fault : ''}`,
    );
  return [`${holds} of ${stated.length} hold`, ...rest].join(', ');
}

function plural(verdict: Verdict, count: number): string {
  return verdict === 'fails' && count > 1 ? 'fail' : verdict;
}

function suspectsInShort(suspects: readonly Suspect[]): string {
  const possible = suspects.filter((each) => each.standing === 'still possible').length;
  const untested = suspects.filter((each) => each.standing === 'not tested').length;
  const all = suspects.length;
  return `${possible} of ${all} still possible${untested === 0 ? '' : `, ${untested} not tested`}`;
}

function spoken(expectation: Expectation): string {
  const { text, measured, word, remark, why } = verdictLine(expectation);
  const value = measured === '' ? '' : `${measured}: `;
  const more = [
    ...(remark === undefined ? [] : [`, ${remark}`]),
    ...(why === undefined || why === '' ? [] : [` (${why})`]),
  ];
  return `${text}: ${value}${word}${more.join('')}.`;
}

/** One that nobody announced comes first. */
function firstFailure(stated: readonly Expectation[]): Expectation | undefined {
  const failing = stated.filter((each) => each.truth.verdict === 'fails');
  return (
    failing.find((each) => !each.showsFault) ??
    failing[0] ??
    stated.find((each) => each.truth.verdict === 'cannot compute')
  );
}
