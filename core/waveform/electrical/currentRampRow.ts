import { cannotCompute } from '../../expression/absent.ts';
import type { FunctionRow, ResultField, Saying } from '../../expression/functionRow.ts';
import type { Absent } from '../../expression/value.ts';
import { isRecorded } from '../recorded.ts';
import { type Given, isAbsent, type Readings, recordIn, severalOf } from '../several.ts';
import { currentRamp } from './currentRamp.ts';

const fields: readonly ResultField[] = [
  { name: 'pulses', meaning: 'whole pulses in the record', unit: '1' },
  {
    name: 'on_time',
    meaning: 'from switching on until the current is cut: dwell, or injection time',
    unit: 'ms',
  },
  { name: 'peak', meaning: 'highest current', unit: 'A', like: 'x' },
  { name: 'slope', meaning: 'how fast it climbs at first', unit: 'A/ms' },
  { name: 'time_constant', meaning: 'inductance over resistance', unit: 'ms' },
  { name: 'final', meaning: 'what it climbs towards', unit: 'A', like: 'x' },
  { name: 'resistance', meaning: 'of the whole circuit, from the supply', unit: 'Ω' },
  { name: 'inductance', meaning: 'of the coil, from the supply', unit: 'mH' },
  { name: 'held', meaning: 'how long it stands at its peak', unit: 'ms' },
  { name: 'end', meaning: 'how it ends: rising, saturated or limited', unit: 'text' },
  { name: 'pintle', meaning: 'from switching on until the armature stops: the notch', unit: 'ms' },
  { name: 'pintle_current', meaning: 'the current at the notch', unit: 'A', like: 'x' },
];

const says: readonly Saying[] = [
  { words: 'rising', meaning: 'it is cut while it still climbs' },
  { words: 'saturated', meaning: 'it stands at what the circuit’s resistance allows' },
  { words: 'limited', meaning: 'the driver holds it below what the resistance would allow' },
];

export const currentRampRow: FunctionRow = {
  form: 'whole',
  name: 'current_ramp',
  family: 'electrical',
  summary:
    'Reads the current of an injector or a coil: on-time, ramp, resistance and inductance, and where the armature moves.',
  parameters: [
    { name: 'x', takes: { what: 'series', unit: 'A' }, meaning: 'current, off and on again' },
    {
      name: 'supply',
      takes: { what: 'quantity', unit: 'V' },
      meaning: 'voltage across the circuit while it is on',
      optional: true,
    },
  ],
  result: { kind: 'fields', fields },
  formula:
    'y = y₀ + (final/τ)·t − (1/τ)·∫y dt, fitted to each ramp\nnotch where the slope, having dropped, is half back\nmedians of all pulses',
  where: [
    ['y', 'current', 'A'],
    ['y₀', 'the same at the start of the ramp', 'A'],
    ['final', 'current that the ramp heads for', 'A'],
    ['τ', 'time constant, inductance over resistance', 's'],
    ['t', 'time since it was switched on', 's'],
  ],
  range:
    'fifty samples a pulse or more; held counts within 3 % of the peak for a seventh of the pulse or more',
  errors: [
    'No whole pulse is in the record.',
    'The ramp is too straight for a time constant.',
    'No notch stands out.',
    'For resistance and inductance: the supply is not given.',
  ],
  source: 'law of the RL circuit; a moving armature raises the inductance (Faraday); words: common practice',
  example: { expression: 'current_ramp(coil.primary, 14 V).inductance', result: '3.5 mH' },
  says,
  evaluate: severalOf(fields, read),
};

const noSupply = cannotCompute('it needs the voltage across the circuit: give `supply`');

function read([x, supply]: readonly Given[]): Readings | Absent {
  const record = recordIn(x);
  if (!isRecorded(record)) return record;
  const found = currentRamp(record);
  if (isAbsent(found)) return found;
  const { final, constant } = found;
  const resistance =
    typeof final !== 'number' ? final : typeof supply === 'number' ? supply / final : noSupply;
  return {
    pulses: found.pulses,
    on_time: found.onTime,
    peak: found.peak,
    slope: found.slope,
    time_constant: constant,
    final,
    resistance,
    inductance:
      typeof resistance === 'number' && typeof constant === 'number' ? resistance * constant : resistance,
    held: found.held,
    end: found.end,
    pintle: found.pintle,
    pintle_current: found.pintleCurrent,
  };
}
