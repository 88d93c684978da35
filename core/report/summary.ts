import type { Verdict } from '../expression/value.ts';
import type { Study } from '../study/types.ts';
import { countedFindings } from './byWeight.ts';
import { words } from './cells/cellContext.ts';
import { isTeaching } from './cells/headerCell.ts';

/** Two lines for the contents: which vehicle and how far the case is; how its checks came out. */
export function summaryOf(study: Study): string[] {
  const first = study.file.cells.find((each) => each.cell?.kind === 'diag')?.cell;
  const header = first?.kind === 'diag' ? first : undefined;
  const vehicle = words(header?.vehicle?.description);
  const outcome = words(header?.outcome);
  // A case that is worked through does not begin with its answer.
  const cause = header === undefined || isTeaching(header) ? '' : words(header.cause);
  const state = outcome === '' ? '' : cause === '' ? `${outcome}.` : `${outcome}: ${cause}`;
  const about = [vehicle === '' ? '' : sentence(vehicle), sentence(state)]
    .filter((each) => each !== '')
    .join(' ');
  return [about, verdictCount(study)].filter((each) => each !== '');
}

const sentence = (text: string): string => {
  const start = text.charAt(0).toUpperCase() + text.slice(1);
  return start === '' || /[.!?]$/.test(start) ? start : `${start}.`;
};

const order: readonly (readonly [Verdict, string, string])[] = [
  ['holds', 'holds', 'hold'],
  ['fails', 'fails', 'fail'],
  ['too close to call', 'is too close to call', 'are too close to call'],
  ['not measured', 'is not measured', 'are not measured'],
  ['cannot compute', 'cannot be computed', 'cannot be computed'],
];

/** "Of 7 expectations 5 hold, 2 fail (2 show the fault)." and the errors and warnings, if there are any. */
export function verdictCount(study: Study): string {
  const own = study.expectations.filter((each) => each.part === 'expect' || each.part === 'verify');
  const parts = order.flatMap(([verdict, one, many]) => {
    const found = own.filter((each) => each.truth.verdict === verdict);
    if (found.length === 0) return [];
    const meant = verdict === 'fails' ? found.filter((each) => each.showsFault).length : 0;
    return [
      `${found.length} ${found.length === 1 ? one : many}${meant > 0 ? ` (${meant} to show the fault)` : ''}`,
    ];
  });
  const total = `${own.length} ${own.length === 1 ? 'expectation' : 'expectations'}`;
  const checks = own.length === 0 ? '' : `Of ${total} ${parts.join(', ')}.`;
  const counted = countedFindings(
    study.findings.map((each) => each.diagnostic),
    ['error', 'warning'],
  );
  const trouble = counted.length === 0 ? '' : `${counted.join(' and ')} in the file.`;
  return [checks, trouble].filter((each) => each !== '').join(' ');
}
