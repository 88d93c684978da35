import { cannotCompute } from '../../expression/absent.ts';
import type { FunctionRow, Parameter, ResultField, Saying } from '../../expression/functionRow.ts';
import type { Absent } from '../../expression/value.ts';
import { isRecorded } from '../recorded.ts';
import { type Given, isAbsent, numberOr, type Readings, recordIn, severalOf } from '../several.ts';
import { type WarmUpReading, warmUp } from './warmUp.ts';

const fields: readonly ResultField[] = [
  { name: 'verdict', meaning: 'how it compares with the thermostat’s rating', unit: 'text' },
  { name: 'start', meaning: 'temperature at the start', unit: '°C', quantityKind: 'point', like: 'x' },
  {
    name: 'opening',
    meaning: 'where the climb breaks off: the thermostat opens',
    unit: '°C',
    quantityKind: 'point',
    like: 'x',
  },
  { name: 'opening_time', meaning: 'time from the start of the record until then', unit: 'min' },
  { name: 'regulating', meaning: 'what it is held at', unit: '°C', quantityKind: 'point', like: 'x' },
  { name: 'regulating_time', meaning: 'time until it is first within 2 °C of that', unit: 'min' },
  {
    name: 'from_rating',
    meaning: 'regulating minus rating',
    unit: '°C',
    quantityKind: 'difference',
    like: 'x',
  },
];

const says: readonly Saying[] = [
  { words: 'holds its rating', meaning: 'the thermostat usually is in order' },
  { words: 'opens early', meaning: 'the thermostat usually is weak, or one of another rating' },
  { words: 'stays cold', meaning: 'the thermostat usually stands open, or it was a short, cold drive' },
  { words: 'runs hot', meaning: 'look at level, fan, radiator and pump before the thermostat' },
];

const difference = (name: string, meaning: string, otherwise: string): Parameter => ({
  name,
  takes: { what: 'quantity', unit: '°C', kind: 'difference' },
  meaning,
  otherwise,
});

export const warmUpRow: FunctionRow = {
  form: 'whole',
  name: 'warm_up',
  family: 'sensors',
  summary: 'Reads a coolant curve from a cold start: where the thermostat opens, and what it holds.',
  parameters: [
    { name: 'x', takes: { what: 'series', unit: '°C', kind: 'point' }, meaning: 'coolant temperature' },
    {
      name: 'rating',
      takes: { what: 'quantity', unit: '°C', kind: 'point' },
      meaning: 'where the thermostat begins to open',
      header: 'engine.thermostat',
      optional: true,
    },
    difference('early', 'how far below the rating it may open', '4 °C'),
    difference('cold', 'how far below the rating it may be held', '11 °C'),
    difference('hot', 'how far above the rating it may be held', '10 °C'),
  ],
  result: { kind: 'fields', fields },
  formula:
    'the break is where two parabolas, one before and one after it, fit best and the slope drops to 45 % or less; regulating is the median of the last quarter after it',
  range:
    'a cold start and ten minutes or more, at a steady load if possible; a wide opening range puts the break a kelvin or two late',
  errors: [
    'There are no samples, or fewer than a minute of them.',
    'The coolant hardly gets warmer.',
    'For the verdict: the rating is not known.',
  ],
  source: 'segmented regression; limits: common practice, the maker’s come first',
  example: { expression: 'warm_up(cold.ect, 82 °C).verdict', result: 'holds its rating' },
  says,
  evaluate: severalOf(fields, read),
};

function read([x, rating, early, cold, hot]: readonly Given[]): Readings | Absent {
  const record = recordIn(x);
  if (!isRecorded(record)) return record;
  const found = warmUp(record);
  if (isAbsent(found)) return found;
  const rated = typeof rating === 'number' ? rating : undefined;
  return {
    verdict:
      rated === undefined
        ? noRating
        : verdictOf(found, rated, numberOr(early, 0), numberOr(cold, 0), numberOr(hot, 0), record.duration),
    start: found.start,
    opening: found.opening,
    opening_time: found.openingTime,
    regulating: found.regulating,
    regulating_time: found.regulatingTime,
    from_rating: rated === undefined ? noRating : found.regulating - rated,
  };
}

const noRating = cannotCompute('the thermostat’s rating is not known: give it in the header as `thermostat`');
/** A record shorter than this does not say that it stays cold, s. */
const longEnough = 600;

function verdictOf(
  { opening, regulating }: WarmUpReading,
  rating: number,
  early: number,
  cold: number,
  hot: number,
  duration: number,
): string | Absent {
  if (regulating > rating + hot) return 'runs hot';
  if (regulating < rating - cold)
    return duration >= longEnough ? 'stays cold' : cannotCompute('it was recorded for less than ten minutes');
  if (typeof opening !== 'number') return opening;
  return opening < rating - early ? 'opens early' : 'holds its rating';
}
