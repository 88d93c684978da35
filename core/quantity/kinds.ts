import { over, plain, power, root, temperature, times, turn } from './dimension.ts';
import {
  conversionOffers,
  describe,
  droppedKind,
  firstUnit,
  isCrankMark,
  isOpen,
  type KindProblem,
  kindOf,
  kindWords,
  type Misfits,
  marksDiffer,
  type Offer,
  type Operand,
  offerTexts,
  type TypeAnswer,
  unitBehind,
  unitOffers,
} from './operand.ts';
import { sumTypes } from './sumTypes.ts';
import type { Kind, QuantityType } from './types.ts';
import { percentUnit, plainUnit, powerUnit, productUnit, quotientUnit, rootUnit } from './unit.ts';

export { differenceOf, type KindProblem, kindDiagnostic, type Operand, type TypeAnswer } from './operand.ts';

/** The type of a sum: absolute + difference is absolute, barometer + gauge is absolute, gauge + gauge is nothing. */
export function addTypes(left: Operand, right: Operand): TypeAnswer {
  return percentBesideNumber(left, right) ?? sumTypes(left, right, '+');
}

/** The type of a difference: absolute − absolute is a difference, a temperature − a difference a temperature. */
export function subtractTypes(left: Operand, right: Operand): TypeAnswer {
  return percentBesideNumber(left, right) ?? sumTypes(left, right, '-');
}

/**
 * The common type of a comparison, of `between`, `min`, `max`, `mean`: one dimension and one kind.
 * A literal without a qualifier takes the other side's.
 */
export function compareTypes(left: Operand, right: Operand): TypeAnswer {
  if (left.dimension !== right.dimension) return dimensionsDiffer(left, right, 'compared');
  const percent = percentBesideNumber(left, right);
  if (percent !== undefined) return percent;
  const { dimension } = left;
  const unit = firstUnit(left, right);
  if (isOpen(left) && !isOpen(right)) {
    const kind = kindOf(right);
    return { type: { dimension, kind, unit: isCrankMark(kind) ? right.unit : unit }, leftAs: kind };
  }
  if (isOpen(right)) {
    const kind = kindOf(left);
    const type = { dimension, kind, unit };
    return isOpen(left) ? { type } : { type, rightAs: kind };
  }
  const kind = kindOf(left);
  if (kind === kindOf(right)) return { type: { dimension, kind, unit } };
  if (dimension === turn) return { problem: marksDiffer(left, right) };
  const offers = conversionOffers(left, right);
  const facts = { left: describe(left), right: describe(right), offers: offerTexts(offers, left, right) };
  return { problem: { code: 'kinds-compared', facts, offers } };
}

/** What `left within tolerance of right` compares. */
export type WithinAnswer =
  | {
      readonly type: QuantityType;
      readonly leftAs?: Kind;
      readonly rightAs?: Kind;
      readonly relative: boolean;
      readonly problem?: never;
    }
  | Misfits;

/**
 * Left and right need one kind; the tolerance is a difference of theirs, or a percentage:
 * points when right is in percent, otherwise relative to right.
 */
export function withinTypes(left: Operand, tolerance: Operand, right: Operand): WithinAnswer {
  const both = compareTypes(left, right);
  if (both.problem !== undefined) return both;
  if (tolerance.unit === percentUnit && right.unit !== percentUnit) {
    if (both.type.kind === 'point') return pointInProduct(right);
    return { ...both, relative: true };
  }
  if (tolerance.dimension !== both.type.dimension) return dimensionsDiffer(tolerance, right, 'compared');
  const percent = percentBesideNumber(tolerance, right);
  if (percent !== undefined) return percent;
  if (!isOpen(tolerance) && kindOf(tolerance) !== 'difference' && tolerance.kind !== 'none') {
    return unfit(tolerance, { ...both.type, kind: 'difference' });
  }
  return { ...both, relative: false };
}

/** The type of a product: a plain number keeps the other's kind, other dimensions drop it. */
export function multiplyTypes(left: Operand, right: Operand): TypeAnswer {
  if (isPoint(left)) return pointInProduct(left, 'left');
  if (isPoint(right)) return pointInProduct(right, 'right');
  const unit = productUnit(left.unit, right.unit);
  const dimension = times(left.dimension, right.dimension);
  if (right.dimension === plain) return { type: { dimension, kind: left.kind, unit } };
  if (left.dimension === plain) return { type: { dimension, kind: right.kind, unit } };
  return { type: { dimension, kind: droppedKind(dimension), unit } };
}

/** The type of a quotient: of one kind a plain number, of unlike kinds nothing. */
export function divideTypes(left: Operand, right: Operand): TypeAnswer {
  if (isPoint(left)) return pointInProduct(left, 'left');
  if (isPoint(right)) return pointInProduct(right, 'right');
  const unit = quotientUnit(left.unit, right.unit);
  const dimension = over(left.dimension, right.dimension);
  if (right.dimension === plain) return { type: { dimension, kind: left.kind, unit } };
  if (dimension !== plain) return { type: { dimension, kind: droppedKind(dimension), unit } };
  const type = { dimension, kind: 'none' as const, unit };
  if (isOpen(left)) return isOpen(right) ? { type } : { type, leftAs: kindOf(right) };
  if (isOpen(right)) return { type, rightAs: kindOf(left) };
  if (kindOf(left) === kindOf(right)) return { type };
  if (left.dimension === turn) return { problem: marksDiffer(left, right) };
  const offers = conversionOffers(left, right);
  const facts = { left: describe(left), right: describe(right), offers: offerTexts(offers, left, right) };
  return { problem: { code: 'kinds-in-quotient', facts, offers } };
}

/** Powers of units beyond these measure nothing in the trade. */
const highestPower = 9;

/** The type of a power. With a unit the exponent is a whole number from −9 to 9; a plain number takes any. */
export function powerType(of: Operand, exponent: number): TypeAnswer {
  if (isPoint(of)) return pointInProduct(of, 'left');
  if (of.dimension === plain)
    return { type: { dimension: plain, kind: 'none', unit: powerUnit(of.unit, 1) } };
  if (exponent === 1) return { type: { dimension: of.dimension, kind: of.kind, unit: of.unit } };
  const whole = Number.isInteger(exponent) && Math.abs(exponent) <= highestPower;
  const largest = Math.max(...of.dimension.exponents.map(Math.abs)) * Math.abs(exponent);
  if (!whole || largest > 99) {
    const facts = { text: describe(of), exponent: String(exponent) };
    return { problem: { code: 'power-of-unit', facts, offers: [] } };
  }
  const dimension = power(of.dimension, exponent);
  return { type: { dimension, kind: droppedKind(dimension), unit: powerUnit(of.unit, exponent) } };
}

/** The type of an n-th root: every exponent of the unit must divide. */
export function rootType(of: Operand, degree: number): TypeAnswer {
  if (isPoint(of)) return pointInProduct(of, 'left');
  const dimension = root(of.dimension, degree);
  const unit = rootUnit(of.unit, degree);
  if (dimension === undefined || unit === undefined) {
    const facts = { text: describe(of), exponent: `1/${degree}` };
    return { problem: { code: 'power-of-unit', facts, offers: [] } };
  }
  return { type: { dimension, kind: droppedKind(dimension), unit } };
}

/**
 * Whether an argument, a reading or a limit fits the place that wants `wanted`:
 * a literal without a qualifier takes its kind, any other must have it. `leftAs` is the kind to take it as;
 * the type keeps the operand's own unit.
 */
export function fitType(operand: Operand, wanted: QuantityType): TypeAnswer {
  if (operand.dimension !== wanted.dimension)
    return dimensionsDiffer(operand, wanted, 'taken for each other');
  const percent = percentBesideNumber(operand, wanted);
  if (percent !== undefined) return percent;
  const kind = kindOf(wanted);
  const type = { dimension: operand.dimension, kind, unit: operand.unit };
  if (isOpen(operand))
    return { type: isCrankMark(kind) ? { ...type, unit: wanted.unit } : type, leftAs: kind };
  if (kindOf(operand) === kind || isOpen(wanted)) return { type: { ...type, kind: kindOf(operand) } };
  return operand.dimension === turn ? { problem: marksDiffer(operand, wanted) } : unfit(operand, wanted);
}

function isPoint(of: QuantityType): boolean {
  return of.dimension === temperature && of.kind === 'point';
}

function pointInProduct(of: Operand, side: Offer['side'] = 'right'): Misfits {
  const offers: Offer[] = [{ side, before: 'kelvin(', after: ')' }];
  if (of.bare === true) offers.push({ side, before: '', after: ' difference' });
  return { problem: { code: 'temperature-point-product', facts: { text: describe(of) }, offers } };
}

function unfit(got: Operand, wanted: QuantityType): Misfits {
  const offers = conversionOffers(got, wanted).filter((offer) => offer.side === 'left');
  const facts = { got: describe(got), wanted: kindWords(wanted), offers: offerTexts(offers, got, wanted) };
  return { problem: { code: 'kind-unfit', facts, offers } };
}

function dimensionsDiffer(left: Operand, right: Operand, verb: string): Misfits {
  const offers = unitOffers(left, right);
  const facts = {
    left: describe(left),
    right: describe(right),
    verb,
    offers: offerTexts(offers, left, right),
  };
  return { problem: { code: 'dimensions-differ', facts, offers } };
}

/** A number such as 10 beside a percentage: ten is a thousand percent, and hardly meant. */
function percentBesideNumber(left: Operand, right: Operand): Misfits | undefined {
  if (left.dimension !== plain || right.dimension !== plain) return undefined;
  const problem = numberBeside(left, right, 'left') ?? numberBeside(right, left, 'right');
  return problem === undefined ? undefined : { problem };
}

function numberBeside(number: Operand, other: Operand, side: Offer['side']): KindProblem | undefined {
  if (number.number === undefined || number.unit !== plainUnit) return undefined;
  if (other.unit.factor === 1 || number.number === 0 || number.number === 1) return undefined;
  const text = number.text ?? String(number.number);
  const after = unitBehind({ ...number, text }, other.unit);
  return {
    code: 'percent-beside-number',
    facts: { number: text, offer: text + after },
    offers: [{ side, before: '', after }],
  };
}
