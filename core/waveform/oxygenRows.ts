import { cannotCompute } from '../expression/absent.ts';
import type { FunctionRow } from '../expression/functionRow.ts';
import type { Absent, Series } from '../expression/value.ts';
import { pairOf, readingOf, voltage, volts } from './arguments.ts';
import { shareAbove } from './cycles.ts';
import { swingOf } from './recorded.ts';

/** What oxygen sensors say over time. */
export const oxygenRows: readonly FunctionRow[] = [
  {
    form: 'whole',
    name: 'time_rich',
    family: 'oxygen',
    summary: 'The share of the time that an oxygen sensor is above its switching level.',
    parameters: [volts('x', 'voltage of the sensor'), voltage('level', 'switching level', '0.45 V')],
    result: { kind: 'fixed', unit: '%' },
    formula: 'time above the level / recorded time, crossings interpolated',
    range: 'zirconia; a titania sensor may be the other way round',
    errors: ['The series has no samples at two moments.'],
    source: 'common practice; 0.45 V as in the oxygen sensor tests of SAE J1979 (value from memory)',
    example: { expression: 'time_rich(o2.front)', result: '50 %' },
    evaluate: readingOf('%', (record, level = 0) => shareAbove(record, level)),
  },
  {
    form: 'whole',
    name: 'rear_to_front',
    family: 'oxygen',
    summary:
      'How much of the front oxygen sensor’s swing the rear one shows: near 0 the catalyst stores oxygen, near 1 it does not.',
    parameters: [volts('front', 'voltage before the catalyst'), volts('rear', 'voltage behind the catalyst')],
    result: { kind: 'fixed', unit: '1' },
    formula: 'ratio = (max − min of rear) / (max − min of front)',
    range: 'closed loop, steady speed, warm catalyst; sensors that switch in volts',
    errors: ['The front sensor does not move.', 'A series has fewer than two samples.'],
    source:
      'two-sensor method: Clemmens, Sabourin and Rao, SAE 900062; Koupal, Sabourin and Clemmens, SAE 910561. Limits are the maker’s',
    example: { expression: 'rear_to_front(o2.front, o2.rear)', result: '0.1' },
    evaluate: pairOf('1', rearToFront),
  },
];

/** The rear sensor's peak-to-peak amplitude over the front's. */
function rearToFront(front: Series, rear: Series): number | Absent {
  const before = amplitudeOf(front);
  const behind = amplitudeOf(rear);
  if (before === undefined || behind === undefined)
    return cannotCompute('an amplitude needs at least two samples of both sensors');
  return before > 0 ? behind / before : cannotCompute('the front sensor does not move');
}

function amplitudeOf({ samples }: Series): number | undefined {
  let count = 0;
  for (let i = 0; i < samples.length && count < 2; i++) if (!Number.isNaN(samples[i])) count++;
  if (count < 2) return undefined;
  const { low, high } = swingOf(samples);
  return high - low;
}
