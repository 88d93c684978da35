import { cannotCompute } from '../../expression/absent.ts';
import type { FunctionRow, ResultField, Saying } from '../../expression/functionRow.ts';
import type { Absent } from '../../expression/value.ts';
import { volts } from '../arguments.ts';
import { isRecorded } from '../recorded.ts';
import { type Given, isAbsent, numberOr, type Readings, recordIn, severalOf } from '../several.ts';
import { oxygenSensor } from './oxygenSensor.ts';
import { type SensorBuild, titania, zirconia } from './sensorBuild.ts';
import { sensorKind, switchingKind } from './sensorParameter.ts';

const fields: readonly ResultField[] = [
  { name: 'verdict', meaning: 'what it does, in a word or two', unit: 'text' },
  { name: 'because', meaning: 'the numbers that the verdict rests on', unit: 'text' },
  { name: 'switches', meaning: 'how often it passed both levels', unit: '1' },
  { name: 'rate', meaning: 'switches per second: two make one cycle', unit: 'Hz' },
  { name: 'time_rich', meaning: 'share of the time on the rich side of the level', unit: '%' },
  { name: 'lean_to_rich', meaning: 'median time between the levels on the way to rich', unit: 'ms' },
  { name: 'rich_to_lean', meaning: 'median time between the levels on the way to lean', unit: 'ms' },
  { name: 'minimum', meaning: 'least sample', unit: 'V', like: 'x' },
  { name: 'maximum', meaning: 'greatest sample', unit: 'V', like: 'x' },
  {
    name: 'bias',
    meaning: 'by how much the middle of its swing lies on the rich side of the level',
    unit: 'V',
    like: 'x',
  },
];

const says: readonly Saying[] = [
  { words: 'switching', meaning: 'the sensor usually is in order' },
  { words: 'lazy', meaning: 'it follows too slowly: age, deposits, or a cold sensor' },
  {
    words: 'weak',
    meaning: 'it moves and does not reach both levels: age, a cold sensor, or a mixture that hardly changes',
  },
  {
    words: 'biased rich',
    meaning:
      'its whole swing lies too high: a lifted ground, or voltage that leaks into the signal. While it still passes the level the mixture moves little',
  },
  {
    words: 'biased lean',
    meaning:
      'its whole swing lies too low: a fouled reference, or a signal pulled down. While it still passes the level the mixture moves little',
  },
  { words: 'stuck rich', meaning: 'a rich engine or a sensor that does not let go: add air and see' },
  { words: 'stuck lean', meaning: 'a lean engine, an exhaust leak, or a dead sensor: add fuel and see' },
  { words: 'stuck midway', meaning: 'often the module’s own voltage on an open circuit, or a cold sensor' },
];

/** Volts of bias for a swing of about 1 V; of titania the same share of its supply. */
const usualBias = 0.15;

export const oxygenSensorRow: FunctionRow = {
  form: 'whole',
  name: 'oxygen_sensor',
  family: 'oxygen',
  summary: 'Reads an oxygen sensor that switches: how often, how fast, how far, and what that makes it.',
  parameters: [
    volts('x', 'voltage of the sensor'),
    sensorKind,
    optionalVolts('level', 'switching level; 0.45 V for zirconia, half the supply for titania'),
    optionalVolts('low', 'lower level for the times; 0.3 V, or a third of the supply'),
    optionalVolts('high', 'upper level for the times; 0.6 V, or two thirds of the supply'),
    optionalVolts('supply', 'supply of a titania sensor’s circuit'),
    {
      name: 'rich',
      takes: { what: 'text' },
      meaning: 'the voltage that stands for rich: "high" (zirconia) or "low" (titania, mostly)',
      optional: true,
    },
    {
      name: 'least_rate',
      takes: { what: 'quantity', unit: 'Hz' },
      meaning: 'switches per second below which it is lazy',
      otherwise: '0.8 Hz',
    },
    {
      name: 'most_time',
      takes: { what: 'quantity', unit: 'ms' },
      meaning: 'time between the levels above which it is lazy',
      otherwise: '100 ms',
    },
    optionalVolts('most_bias', 'bias above which it is biased; 0.15 V, or 15 % of the supply'),
  ],
  result: { kind: 'fields', fields },
  formula:
    'switches pass low and high; times are medians from level to level\nbias = (usual top + usual bottom)/2 − level, rich side positive',
  where: [['bias', 'how far the middle of the swing lies off', 'V']],
  range:
    'closed loop, 2500 rpm, warm; 5 s or more. A swing that is shifted past one of the levels is counted and timed about its own middle. Words: switching, lazy, weak, biased rich, biased lean, stuck rich, stuck lean, stuck midway',
  errors: [
    'There are no samples.',
    'The sensor is a wide-range one, whose volts do not switch.',
    'It is titania and its supply is not given.',
    'The levels do not ascend.',
  ],
  source:
    'levels as in the oxygen sensor tests of SAE J1979 (values from memory); limits of the verdict are common practice, the maker’s come first',
  example: { expression: 'oxygen_sensor(o2.front).lean_to_rich', result: '140.98 ms' },
  says,
  evaluate: severalOf(fields, read),
};

function optionalVolts(name: string, meaning: string) {
  return { name, takes: { what: 'quantity', unit: 'V' }, meaning, optional: true } as const;
}

function read([x, kind, level, low, high, supply, rich, leastRate, mostTime, mostBias]: readonly Given[]):
  | Readings
  | Absent {
  const record = recordIn(x);
  if (!isRecorded(record)) return record;
  const usual = buildOf(kind, supply, rich);
  if (isAbsent(usual)) return usual;
  const build: SensorBuild = {
    ...usual,
    level: numberOr(level, usual.level),
    low: numberOr(low, usual.low),
    high: numberOr(high, usual.high),
  };
  const found = oxygenSensor(record, build, {
    leastRate: numberOr(leastRate, Number.NaN),
    mostTime: numberOr(mostTime, Number.NaN),
    mostBias: numberOr(mostBias, usualBias * usual.supply),
  });
  if (isAbsent(found)) return found;
  const { verdict } = found;
  return {
    verdict: isAbsent(verdict) ? verdict : verdict.word,
    because: isAbsent(verdict) ? verdict : verdict.because,
    switches: found.switches,
    rate: found.rate,
    time_rich: found.timeRich,
    lean_to_rich: found.leanToRich,
    rich_to_lean: found.richToLean,
    minimum: found.minimum,
    maximum: found.maximum,
    bias: found.bias,
  };
}

function buildOf(kind: Given, supply: Given, rich: Given): SensorBuild | Absent {
  if (rich !== undefined && rich !== 'high' && rich !== 'low')
    return cannotCompute('`rich` is "high" or "low"');
  const known = switchingKind(
    kind,
    'Give its lambda to `lambda_sensor`; for a zirconia sensor beside it write `sensor = "zirconia"`',
  );
  if (typeof known === 'object') return known;
  if (known === 'zirconia') return { ...zirconia, rich: rich ?? 'high', supply: numberOr(supply, 1) };
  if (typeof supply !== 'number' || !(supply > 0))
    return cannotCompute('a titania sensor divides its supply: give `supply` (1 V or 5 V, by the circuit)');
  return titania(supply, rich ?? 'low');
}
