import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { formatQuantity } from '../../quantity/format.ts';
import type { Reading } from '../../study/types.ts';
import type { CellRule } from '../rule.ts';

/** Lamp, codes, monitors and distances of one controller that contradict each other. */
export const countersContradict: CellRule = {
  code: 'counters-contradict',
  of: [
    'dtc_count',
    'monitors_left',
    'distance_with_mil',
    'distance_since_clear',
    'time_with_mil',
    'warm_ups_since_clear',
    'misfires_total',
  ],
  in: ['readings'],
  checkCell: ({ readings, moments, header }) => {
    const odometer = header.values.get('vehicle.odometer');
    const found: Diagnostic[] = [];
    for (const { column } of moments) {
      const here = readings.filter((each) => each.column === column);
      if (odometer !== undefined) here.push(odometer);
      for (const row of rows) {
        const one = row(here);
        if (one !== undefined) found.push(one);
      }
    }
    return found;
  },
};

type Compares = (here: readonly Reading[]) => Diagnostic | undefined;

const rows: readonly Compares[] = [
  (here) => {
    const mil = read(here, 'mil');
    // With the key on every lamp lights for a moment, to be seen.
    if (wordOf(mil) !== 'on' || mil?.state?.known?.name === 'key on engine off') return undefined;
    if (numberOf(read(here, 'dtc_count')) !== 0) return undefined;
    return told(read(here, 'dtc_count'), mil, 'the lamp is on for a code that is stored.');
  },
  (here) => {
    if (numberOf(read(here, 'monitors_left')) !== 0) return undefined;
    const open = here.find(
      (each) => each.value.kind === 'words' && each.key.endsWith('_monitor') && wordOf(each) === 'incomplete',
    );
    return told(
      read(here, 'monitors_left'),
      open,
      'a monitor that has not run to the end is one that is left.',
    );
  },
  (here) => longer(here, 'distance_with_mil', 'distance_since_clear', 1000 + step, sinceClear),
  (here) => longer(here, 'time_with_mil', 'time_since_clear', 60 + step, sinceClear),
  (here) =>
    longer(
      here,
      'distance_since_clear',
      'vehicle.odometer',
      miles,
      'no car was driven further than its odometer says.',
    ),
  (here) => {
    const [total, each] = [numberOf(read(here, 'misfires_total')), mostOf(read(here, 'misfires'))];
    if (total === undefined || each === undefined || total + counting >= each) return undefined;
    return told(
      read(here, 'misfires_total'),
      read(here, 'misfires'),
      'all together are no fewer than those of one.',
    );
  },
  (here) => {
    const driven = numberOf(read(here, 'distance_since_clear'));
    if (numberOf(read(here, 'warm_ups_since_clear')) !== 0 || driven === undefined || driven < far)
      return undefined;
    const because = 'nobody drives so far without one start from cold.';
    return told(read(here, 'warm_ups_since_clear'), read(here, 'distance_since_clear'), because);
  },
];

/** The last reading of a key counts, as everywhere. */
const read = (here: readonly Reading[], key: string): Reading | undefined =>
  here.findLast((each) => each.key === key);

const sinceClear = 'the lamp cannot have been on for longer than since the codes were cleared.';

/** m: an odometer that was written down in whole thousands, some weeks ago. */
const miles = 5_000_000;
/** Misfires that a dead cylinder adds between two lines of a list, one in two turns: one second at 3000 rpm, four at idle. */
const counting = 25;
/** SI: what rounding to a kilometre or a minute leaves. */
const step = 1e-6;
/** m: two tanks of fuel in one drive. */
const far = 1_500_000;

function longer(
  here: readonly Reading[],
  part: string,
  whole: string,
  slack: number,
  because: string,
): Diagnostic | undefined {
  const [one, other] = [numberOf(read(here, part)), numberOf(read(here, whole))];
  if (one === undefined || other === undefined || one <= other + slack) return undefined;
  return told(read(here, part), read(here, whole), because);
}

function told(one: Reading | undefined, other: Reading | undefined, because: string): Diagnostic | undefined {
  if (one === undefined || other === undefined) return undefined;
  return diagnose('counters-contradict', one.valueSpan, {
    name: one.fullName,
    written: writtenOf(one),
    other: other.fullName,
    otherWritten: writtenOf(other),
    because,
  });
}

const numberOf = (reading: Reading | undefined): number | undefined =>
  reading?.value.kind === 'one' ? reading.value.amount.si : undefined;

/** The greatest of a set. */
function mostOf(reading: Reading | undefined): number | undefined {
  if (reading?.value.kind !== 'members') return undefined;
  const counts = [...reading.value.members.values()].flatMap((each) => ('si' in each ? [each.si] : []));
  return counts.length === 0 ? undefined : Math.max(...counts);
}

const wordOf = (reading: Reading | undefined): string | undefined =>
  reading?.value.kind === 'words' ? reading.value.text : undefined;

function writtenOf(reading: Reading): string {
  const { value } = reading;
  if (value.kind === 'words') return value.text;
  if (value.kind === 'members') return `${mostOf(reading)} in one cylinder`;
  return value.kind === 'one' ? formatQuantity(value.amount.si, value.type) : '';
}
