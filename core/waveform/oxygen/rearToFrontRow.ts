import { cannotCompute } from '../../expression/absent.ts';
import type { FunctionRow } from '../../expression/functionRow.ts';
import type { Absent, Series, Value } from '../../expression/value.ts';
import { pairOf, volts } from '../arguments.ts';
import { swingOf } from '../recorded.ts';
import { sensorKind, switchingKind } from './sensorParameter.ts';

/** Why a catalyst is not judged in volts behind a wide-range sensor. */
export const notInVolts =
  'The catalyst cannot be judged in volts here: use the maker’s own test, or put a switching sensor before the catalyst and write `sensor = "zirconia"`';

export const rearToFrontRow: FunctionRow = {
  form: 'whole',
  name: 'rear_to_front',
  family: 'oxygen',
  summary:
    'How much of the front oxygen sensor’s swing the rear one shows: near 0 the catalyst stores oxygen, near 1 it does not.',
  parameters: [
    volts('front', 'voltage before the catalyst'),
    volts('rear', 'voltage behind the catalyst'),
    sensorKind,
  ],
  result: { kind: 'fixed', unit: '1' },
  formula: 'ratio = (max − min of rear)/(max − min of front)',
  where: [['ratio', 'rear against front, peak to peak', '']],
  range: 'closed loop, steady speed, warm catalyst; sensors that switch in volts',
  errors: [
    'The front sensor does not move.',
    'A series has fewer than two samples.',
    'The front sensor is a wide-range one.',
  ],
  source:
    'two-sensor method: Clemmens, Sabourin and Rao, SAE 900062; Koupal, Sabourin and Clemmens, SAE 910561. Limits are the maker’s',
  example: { expression: 'rear_to_front(o2.front, o2.rear)', result: '0.1' },
  evaluate: ([front, rear, sensor]: readonly (Value | undefined)[]): Value => {
    const kind = sensor?.kind === 'words' ? switchingKind(sensor.text, notInVolts) : 'zirconia';
    return typeof kind === 'object' ? kind : ratio([front, rear]);
  },
};

const ratio = pairOf('1', rearToFront);

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
