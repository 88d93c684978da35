import { fromSi, toSi } from '../../quantity/convert.ts';
import { plain, temperature } from '../../quantity/dimension.ts';
import { rootType } from '../../quantity/kinds.ts';
import type { Amount } from '../../quantity/types.ts';
import { percentUnit } from '../../quantity/unit.ts';
import { cannotCompute } from '../absent.ts';
import { mapAmounts } from '../combine.ts';
import type { ComputedType, FunctionRow, Parameter } from '../functionRow.ts';
import type { Type } from '../type.ts';
import type { Value } from '../value.ts';
import { oneMap, quantityIn } from './numbers.ts';
import { statisticRows } from './statisticRows.ts';
import { extreme, lowestToHighest } from './statistics.ts';

const anyValue: Parameter = { name: 'x', takes: { what: 'any' }, meaning: 'a quantity of any sort' };

const mapOnly = 'one value by cylinder, label or state';

/** The shape and quantity of the first argument, but for a temperature on a scale. */
function likeFirst(what: string): (types: readonly (Type | undefined)[]) => ComputedType {
  return ([type]) => {
    const quantity = quantityIn(type);
    if (type === undefined || quantity === undefined) return { wrong: 0, takes: 'numbers' };
    if (quantity.dimension === temperature && quantity.kind === 'point') {
      return {
        wrong: 0,
        takes: `a quantity whose zero means nothing there: not a temperature on a scale, whose ${what} depends on it`,
      };
    }
    return { type };
  };
}

const singles: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'abs',
    family: 'values',
    summary: 'The size of a value without its sign.',
    parameters: [anyValue],
    result: { kind: 'computed', says: 'the same sort, unit and shape', typeOf: likeFirst('sign') },
    formula: '|x|',
    range: '',
    errors: [],
    source: 'definition',
    example: { expression: 'abs(-8 %)', result: '8 %' },
    compute: ([x]) => (typeof x === 'number' ? Math.abs(x) : { noAnswer: 'It is no number.' }),
  },
  {
    form: 'whole',
    name: 'round',
    family: 'values',
    summary: 'A value rounded in its own unit, halves away from 0.',
    parameters: [
      anyValue,
      {
        name: 'decimals',
        takes: { what: 'quantity', unit: '1' },
        meaning: 'how many decimals stay',
        otherwise: '0',
        within: { from: '0', to: '9' },
      },
    ],
    result: {
      kind: 'computed',
      says: 'the same sort, unit and shape; its uncertainty is that of x',
      typeOf: ([type]) =>
        type === undefined || quantityIn(type) === undefined ? { wrong: 0, takes: 'numbers' } : { type },
    },
    formula: 'the nearest multiple of 10^−decimals in the unit of x',
    range: '',
    errors: ['The number of decimals is not a whole number from 0 to 9.'],
    source: 'definition; ISO 80000-1:2009, B.3 rule B (the greater multiple in size)',
    example: { expression: 'round(13.17 inHg, 1)', result: '13.2 inHg' },
    evaluate: ([x, decimals]) => rounded(x, decimals),
  },
  {
    form: 'scalar',
    name: 'sqrt',
    family: 'values',
    summary: 'The square root.',
    parameters: [anyValue],
    result: { kind: 'computed', says: 'the root of the unit', typeOf: rootOf },
    formula: '√x',
    range: 'values of 0 and above',
    errors: ['The value is below 0.', 'The unit has no root.'],
    source: 'definition',
    example: { expression: 'sqrt(9 m^2)', result: '3 m' },
    compute: ([x]) => {
      if (typeof x !== 'number') return { noAnswer: 'It is no number.' };
      return x < 0 ? { noAnswer: 'A value below 0 has no square root.' } : Math.sqrt(x);
    },
  },
  {
    form: 'scalar',
    name: 'kelvin',
    family: 'values',
    summary: 'A temperature counted from absolute zero, as a number of kelvin that may be multiplied.',
    parameters: [
      {
        name: 't',
        takes: { what: 'quantity', unit: '°C', kind: 'point' },
        meaning: 'a temperature on a scale',
        within: { from: '-273.15 °C' },
      },
    ],
    result: { kind: 'fixed', unit: 'K', quantityKind: 'difference' },
    formula: 'T = t/°C + 273.15',
    where: [['T', 'temperature, counted from absolute zero', 'K']],
    range: '',
    errors: ['The temperature is below absolute zero.'],
    source: 'SI Brochure, 9th edition, 2.3.1 (kelvin and degree Celsius)',
    example: { expression: 'kelvin(20 °C)', result: '293.15 K' },
    compute: ([t]) => {
      if (typeof t !== 'number') return { noAnswer: 'It is no number.' };
      return t < 0
        ? { noAnswer: 'The temperature is below absolute zero. Check the value and its unit.' }
        : t;
    },
  },
];

function rootOf([type]: readonly (Type | undefined)[]): ComputedType {
  const quantity = quantityIn(type);
  if (type === undefined || quantity === undefined || !('quantity' in type))
    return { wrong: 0, takes: 'numbers' };
  const answer = rootType(quantity, 2);
  if (answer.problem !== undefined)
    return { wrong: 0, takes: 'a quantity whose unit has a root, such as `m²`' };
  return { type: { ...type, quantity: answer.type } };
}

function rounded(x: Value | undefined, decimals: Value | undefined): Value {
  if (x === undefined || decimals?.kind !== 'one' || !('type' in x) || x.kind === 'range') {
    return cannotCompute('it is no number');
  }
  const places = decimals.amount.si;
  if (!Number.isInteger(places) || places < 0 || places > 9) {
    return cannotCompute('the decimals must be a whole number from 0 to 9');
  }
  const { unit, kind } = x.type;
  const round = (of: Amount): Amount => {
    const value = fromSi(of.si, unit, kind);
    // Decimal digits, not binary ones: 2.675 is meant to be a half, though the double lies below it.
    const whole = Math.round(timesTen(Math.abs(value).toPrecision(15), places));
    const size = timesTen(String(whole), -places);
    return { si: toSi(value < 0 ? -size : size, unit, kind), spread: of.spread };
  };
  return mapAmounts(x, x.type, round, () => 1);
}

/** A written number, with a power of ten or without, times 10^by. */
function timesTen(written: string, by: number): number {
  const [digits = '', exponent = '0'] = written.split('e');
  return Number(`${digits}e${Number(exponent) + by}`);
}

const extremes: readonly FunctionRow[] = [
  {
    form: 'whole',
    name: 'lowest',
    family: 'values',
    summary: 'The cylinder, label or state that has the lowest value.',
    parameters: [oneMap],
    result: { kind: 'computed', says: 'its name, as a word', typeOf: nameOfMember },
    formula: 'the name of the least x',
    range: '',
    errors: ['A value was not taken.'],
    source: 'definition',
    example: { expression: 'lowest(cranked.compression)', result: '2' },
    evaluate: extreme(-1),
  },
  {
    form: 'whole',
    name: 'highest',
    family: 'values',
    summary: 'The cylinder, label or state that has the highest value.',
    parameters: [oneMap],
    result: { kind: 'computed', says: 'its name, as a word', typeOf: nameOfMember },
    formula: 'the name of the greatest x',
    range: '',
    errors: ['A value was not taken.'],
    source: 'definition',
    example: { expression: 'highest(cranked.compression)', result: '1' },
    evaluate: extreme(1),
  },
  {
    form: 'whole',
    name: 'lowest_to_highest',
    family: 'values',
    summary: 'The lowest as a percentage of the highest: how even the cylinders are.',
    parameters: [oneMap],
    result: { kind: 'computed', says: 'a percentage', typeOf: shareOfHighest },
    formula: 'min(x)/max(x)',
    range: 'values above 0',
    errors: ['A value was not taken.', 'The highest is not above 0.'],
    source: 'common practice: many makers ask for at least 75 % in compression, others limit the difference',
    example: { expression: 'lowest_to_highest(cranked.compression)', result: '98.343 %' },
    evaluate: lowestToHighest,
  },
];

function nameOfMember([type]: readonly (Type | undefined)[]): ComputedType {
  return type?.kind === 'members' ? { type: { kind: 'words' } } : { wrong: 0, takes: mapOnly };
}

function shareOfHighest([type]: readonly (Type | undefined)[]): ComputedType {
  if (type?.kind !== 'members' || type.quantity.kind === 'point') {
    return { wrong: 0, takes: `${mapOnly}, no temperature on a scale` };
  }
  return { type: { kind: 'one', quantity: { dimension: plain, kind: 'none', unit: percentUnit } } };
}

const pressure: Parameter = {
  name: 'x',
  takes: { what: 'quantity', unit: 'kPa' },
  meaning: 'a pressure, gauge, vacuum or absolute',
};
const zeros = ['The case has no certain barometer.', 'It would be less than no pressure at all.'];
const zeroSource = 'ISO 80000-4:2019, 4-14 and 4-15 (gauge pressure is the excess over the ambient pressure)';

const conversions: readonly FunctionRow[] = [
  {
    form: 'conversion',
    to: 'absolute',
    name: 'absolute',
    family: 'values',
    summary: 'A pressure counted from nothing, by the case’s barometer.',
    parameters: [pressure],
    result: { kind: 'like', parameter: 'x', quantityKind: 'absolute' },
    formula: 'absolute = barometer + gauge\nabsolute = barometer − vacuum',
    answers: { from: '0 kPa' },
    range: '',
    errors: zeros,
    source: zeroSource,
    example: { expression: 'absolute(20 inHg vacuum)', result: '9.92 inHg' },
  },
  {
    form: 'conversion',
    to: 'gauge',
    name: 'gauge',
    family: 'values',
    summary: 'A pressure counted from the barometer upwards.',
    parameters: [pressure],
    result: { kind: 'like', parameter: 'x', quantityKind: 'gauge' },
    formula: 'absolute − barometer',
    range: '',
    errors: zeros,
    source: zeroSource,
    example: { expression: 'gauge(20 inHg vacuum)', result: '-20 inHg' },
  },
  {
    form: 'conversion',
    to: 'vacuum',
    name: 'vacuum',
    family: 'values',
    summary: 'A pressure counted from the barometer downwards, positive below it.',
    parameters: [pressure],
    result: { kind: 'like', parameter: 'x', quantityKind: 'vacuum' },
    formula: 'barometer − absolute',
    range: '',
    errors: zeros,
    source: zeroSource,
    example: { expression: 'vacuum(9.92 inHg absolute)', result: '20 inHg' },
  },
];

/** Functions of plain values and of pressures and temperatures as such. */
export const valueFunctions: readonly FunctionRow[] = [
  ...statisticRows,
  ...singles,
  ...extremes,
  ...conversions,
];
