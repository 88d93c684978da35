import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { formatQuantity } from '../../quantity/format.ts';
import type { Reading } from '../../study/types.ts';
import type { Measured } from '../measured.ts';
import type { CellRule } from '../rule.ts';
import type { RuledSignal, Values } from '../values.ts';

/** One moment of a cell: its numbers, and its readings in words and by cylinder. */
interface Here {
  readonly values: Values;
  readonly reading: (key: string) => Reading | undefined;
  readonly openMonitor: () => Reading | undefined;
  /** The header's, or else the one read beside. */
  readonly odometer: () => Reading | undefined;
}

/** What is compared where a number was read. */
interface Row {
  readonly of: RuledSignal;
  readonly compare: (one: Measured, here: Here) => Diagnostic | undefined;
}

const rows: readonly Row[] = [
  {
    of: 'dtc_count',
    compare: (one, { reading }) => {
      const mil = one.si === 0 ? reading('mil') : undefined;
      // With the key on every lamp lights for a moment, to be seen.
      if (wordOf(mil) !== 'on' || mil?.state?.known?.name === 'key on engine off') return undefined;
      return told(one, mil, 'the lamp is on for a code that is stored.');
    },
  },
  {
    of: 'monitors_left',
    compare: (one, { openMonitor }) =>
      told(
        one,
        one.si === 0 ? openMonitor() : undefined,
        'a monitor that has not run to the end is one that is left.',
      ),
  },
  {
    of: 'distance_with_mil',
    compare: (one, { values }) => longer(one, values.distance_since_clear, 1000 + step),
  },
  {
    of: 'time_with_mil',
    compare: (one, { values }) => longer(one, values.time_since_clear, 60 + step),
  },
  {
    of: 'distance_since_clear',
    compare: (one, here) => {
      const odometer = here.odometer();
      const driven = numberOf(odometer);
      if (driven === undefined || one.si <= driven + miles) return undefined;
      return told(one, odometer, 'no car was driven further than its odometer says.');
    },
  },
  {
    of: 'misfires_total',
    compare: (one, { reading }) => {
      const each = mostOf(reading('misfires'));
      if (each === undefined || one.si + counting >= each) return undefined;
      return told(one, reading('misfires'), 'all together are no fewer than those of one.');
    },
  },
  {
    of: 'warm_ups_since_clear',
    compare: (one, { values: { distance_since_clear: driven } }) => {
      if (one.si !== 0 || driven === undefined || driven.si < far) return undefined;
      return told(one, driven.reading, 'nobody drives so far without one start from cold.');
    },
  },
];

/** Lamp, codes, monitors and distances of one controller that contradict each other. */
export const countersContradict: CellRule = {
  code: 'counters-contradict',
  of: rows.map(({ of }) => of),
  in: ['readings'],
  checkCell: ({ readings, moments, header }) => {
    const found: Diagnostic[] = [];
    for (const { column, values } of moments) {
      const isHere = (each: Reading): boolean => each.column === column;
      const here: Here = {
        values,
        reading: (name) => readings.findLast((each) => isHere(each) && each.key === name),
        openMonitor: () => readings.find((each) => isHere(each) && isOpen(each)),
        odometer: () => header.values.get('vehicle.odometer') ?? here.reading('odometer'),
      };
      for (const { of, compare } of rows) {
        const one = values[of];
        const contradicted = one === undefined ? undefined : compare(one, here);
        if (contradicted !== undefined) found.push(contradicted);
      }
    }
    return found;
  },
};

const isOpen = (reading: Reading): boolean =>
  reading.key.endsWith('_monitor') && wordOf(reading) === 'incomplete';

const sinceClear = 'the lamp cannot have been on for longer than since the codes were cleared.';

/** m: an odometer that was written down in whole thousands, some weeks ago. */
const miles = 5_000_000;
/** Misfires that a dead cylinder adds between two lines of a list, one in two turns: one second at 3000 rpm, four at idle. */
const counting = 25;
/** SI: what rounding to a kilometre or a minute leaves. */
const step = 1e-6;
/** m: two tanks of fuel in one drive. */
const far = 1_500_000;

function longer(one: Measured, other: Measured | undefined, slack: number): Diagnostic | undefined {
  return other === undefined || one.si <= other.si + slack ? undefined : told(one, other.reading, sinceClear);
}

function told({ reading: one }: Measured, other: Reading | undefined, because: string) {
  if (other === undefined) return undefined;
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
  let most: number | undefined;
  for (const count of reading.value.members.values()) {
    if ('si' in count && (most === undefined || count.si > most)) most = count.si;
  }
  return most;
}

const wordOf = (reading: Reading | undefined): string | undefined =>
  reading?.value.kind === 'words' ? reading.value.text : undefined;

function writtenOf(reading: Reading): string {
  const { value } = reading;
  if (value.kind === 'words') return value.text;
  if (value.kind === 'members') return `${mostOf(reading)} in one cylinder`;
  return value.kind === 'one' ? formatQuantity(value.amount.si, value.type) : '';
}
