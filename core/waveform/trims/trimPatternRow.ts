import { absentOf, cannotCompute } from '../../expression/absent.ts';
import type { FunctionRow, ResultField, Saying } from '../../expression/functionRow.ts';
import type { Absent, Fields, Members, Value } from '../../expression/value.ts';
import { halfWidth, measured } from '../../quantity/amount.ts';
import { typeIn } from '../arguments.ts';
import { type BankWord, compareBanks } from './banks.ts';
import { type Metering, patternMeaning } from './patternMeaning.ts';
import { type Interval, type TrimPattern, type TrimPoint, trimPattern } from './trimPattern.ts';

const fields: readonly ResultField[] = [
  {
    name: 'pattern',
    meaning: '“same grams”, “same percent”, “rises with load”, “near zero” or “no clear pattern”',
    unit: 'text',
  },
  { name: 'mixture', meaning: 'lean (fuel is added) or rich (fuel is taken away)', unit: 'text' },
  { name: 'bank', meaning: '“both”, “bank 1”, “bank 2” or “each its own”', unit: 'text' },
  { name: 'grams', meaning: 'the air past the count that fits every load', unit: 'g/s', like: 'air' },
  { name: 'percent', meaning: 'the trim that fits every load', unit: '%' },
  { name: 'because', meaning: 'the trims that it rests on', unit: 'text' },
  { name: 'meaning', meaning: 'where to look, by what the engine measures its air with', unit: 'text' },
  { name: 'next', meaning: 'the reading that would settle it', unit: 'text' },
];

const says: readonly Saying[] = [
  { words: 'same grams', meaning: 'one amount of air or fuel that is not counted, at every load' },
  { words: 'same percent', meaning: 'everything is off by one share: a meter, a pressure, a sensor' },
  { words: 'rises with load', meaning: 'something runs out, or reads wrong at high flow' },
  { words: 'near zero', meaning: 'no trim is further from zero than it may wander' },
  {
    words: 'no clear pattern',
    meaning:
      'the readings fit none of them; of more than one that fit it stays open which, and `next` says what would separate',
  },
];

export const trimPatternRow: FunctionRow = {
  form: 'whole',
  name: 'trim_pattern',
  family: 'fuel',
  summary: 'How the total trim goes with the load, in words, and what that means on this engine.',
  parameters: [
    {
      name: 'trim',
      takes: { what: 'quantity', unit: '%' },
      meaning: 'total trim at several loads: by state from a table, or by operating cell from a log',
    },
    {
      name: 'air',
      takes: { what: 'quantity', unit: 'g/s' },
      meaning: 'air flow at the same loads',
    },
    {
      name: 'trim_b2',
      takes: { what: 'quantity', unit: '%' },
      meaning: 'the other bank’s total trim',
      optional: true,
    },
    {
      name: 'metering',
      takes: { what: 'text' },
      meaning: 'what the engine measures its air with: "air flow", "manifold pressure" or "both"',
      header: 'engine.metering',
      otherwise: 'both',
    },
    {
      name: 'wander',
      takes: { what: 'quantity', unit: '%' },
      meaning: 'by how much a steady trim wanders, added to what the readings say themselves',
      otherwise: '2 %',
    },
  ],
  result: { kind: 'fields', fields },
  formula:
    'same grams: trim · air is one number within every ±; same percent: trim is; rises: further from 0 with more air, nowhere clearly nearer; named when exactly one fits',
  range: 'two loads or more, closed loop, at steady speed; leave out full throttle and fuel cut',
  errors: [
    'The trims and the air flows are not given load by load.',
    'Fewer than two loads have both.',
    'An air flow is not above 0.',
  ],
  source: 'common practice: a hole passes about the same air at every load, a meter is wrong by a share',
  example: { expression: 'trim_pattern(table.trim, table.maf).grams', result: '1.100 ± 0.088 g/s' },
  says,
  evaluate: ([trim, air, trimB2, metering, wander]) => {
    const absent = absentOf([trim, air, trimB2]);
    if (absent !== undefined) return absent;
    if (trim?.kind !== 'members' || air?.kind !== 'members') return byLoad;
    if (trimB2 !== undefined && trimB2.kind !== 'members') return byLoad;
    const wanders = wander?.kind === 'one' ? wander.amount.si : 0;
    const first = pointsOf(trim, air, wanders);
    const second = trimB2 === undefined ? undefined : pointsOf(trimB2, air, wanders);
    if ('kind' in first) return first;
    if (second !== undefined && 'kind' in second) return second;
    const banks = second === undefined ? undefined : compareBanks(...sameLoads(first, second));
    const points = banks?.points ?? first;
    if (points.length < 2)
      return cannotCompute('a pattern needs the trim and the air flow at two loads or more');
    return fieldsOf(trimPattern(points), banks?.word, meteringOf(metering));
  },
};

const byLoad = cannotCompute(
  'it needs the trim and the air flow load by load: readings with `states`, or `by_operating_cell` of a log',
);

function pointsOf(trim: Members, air: Members, wander: number): readonly TrimPoint[] | Absent {
  const points: TrimPoint[] = [];
  for (const [name, at] of trim.members) {
    const flow = air.members.get(name);
    if (!('si' in at) || flow === undefined || !('si' in flow)) continue;
    if (!(flow.si > 0)) return cannotCompute(`the air flow at ${name} is not above 0`);
    points.push({
      name,
      air: flow.si,
      trim: at.si,
      halfWidth: Math.hypot(halfWidth(at), wander),
      airHalfWidth: halfWidth(flow),
    });
  }
  return points;
}

/** The loads that both banks have, in one order. */
function sameLoads(
  first: readonly TrimPoint[],
  second: readonly TrimPoint[],
): readonly [readonly TrimPoint[], readonly TrimPoint[]] {
  const has = (points: readonly TrimPoint[], name: string): boolean =>
    points.some((each) => each.name === name);
  return [first.filter(({ name }) => has(second, name)), second.filter(({ name }) => has(first, name))];
}

function meteringOf(of: Value | undefined): Metering | undefined {
  const text = of?.kind === 'words' ? of.text : '';
  return text === 'air flow' || text === 'manifold pressure' || text === 'both' ? text : undefined;
}

function fieldsOf(pattern: TrimPattern, bank: BankWord | undefined, metering: Metering | undefined): Fields {
  const { word, fitting, leans, grams, share, because, next } = pattern;
  const meaning = patternMeaning(pattern, bank ?? 'both', metering);
  const values = new Map<string, Exclude<Value, Fields>>([
    ['pattern', fitting.length > 1 ? oneOf(fitting) : words(word)],
    [
      'mixture',
      leans === undefined
        ? cannotCompute('the trims are on neither side of zero at every load')
        : words(leans),
    ],
    ['bank', bank === undefined ? cannotCompute('only one bank is given') : words(bank)],
    ['grams', middleOf(grams, 'g/s', 'no one amount of air fits every load, or not that alone')],
    ['percent', middleOf(share, '%', 'no one trim fits every load, or not that alone')],
    ['because', words(because)],
    ['meaning', meaning === undefined ? cannotCompute(`it is ${word}`) : words(meaning)],
    ['next', next === undefined ? cannotCompute('nothing more is needed to name it') : words(next)],
  ]);
  return { kind: 'fields', fields: values };
}

const words = (text: string): Value & { readonly kind: 'words' } => ({ kind: 'words', text });

/** Which of them it is stays open, so that none is ruled out by it. */
function oneOf(fitting: readonly string[]): Absent {
  const said = fitting.map((each) => `“${each}”`).join(' or ');
  return { ...cannotCompute(`no clear pattern: it may be ${said}`), mayBe: fitting };
}

/** The middle of what fits, ± the half of its width. */
function middleOf(of: Interval | undefined, unit: string, why: string): Exclude<Value, Fields> {
  if (of === undefined) return cannotCompute(why);
  const middle = (of.low + of.high) / 2;
  const amount = measured(middle, `what fits of ${unit}, ${of.low} to ${of.high}`, (of.high - of.low) / 2);
  return { kind: 'one', type: typeIn(unit), amount };
}
