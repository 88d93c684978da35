import type { QuantityFacts } from '../diagnostics/catalogue/quantity.ts';
import type { Diagnostic, Fix } from '../diagnostics/diagnostic.ts';
import { diagnose } from '../diagnostics/diagnostic.ts';
import { cover, type Span, span } from '../text/span.ts';
import { plain, pressure, temperature, turn } from './dimension.ts';
import type { Dimension, Kind, QuantityType, Unit } from './types.ts';
import { plainUnit, unitOf } from './unit.ts';

/** What stands on one side of an operator. A plain type will do; the rest sharpens the answer. */
export interface Operand extends QuantityType {
  /** A literal without a qualifier: its place decides the kind. */
  readonly bare?: boolean;
  /** The value of a literal, where it is a number without a unit. */
  readonly number?: number;
  /** A barometer, or a manifold pressure with the engine off. */
  readonly isBarometer?: boolean;
  readonly isManifold?: boolean;
  /** As written, for messages and offers. */
  readonly text?: string;
}

/** The codes that rules of kinds report. */
export type KindCode =
  | 'kinds-in-sum'
  | 'kinds-in-sum-unusual'
  | 'kind-undecided'
  | 'kinds-compared'
  | 'kinds-in-quotient'
  | 'kind-unfit'
  | 'temperature-point-product'
  | 'crank-marks-differ'
  | 'percent-beside-number'
  | 'dimensions-differ'
  | 'power-of-unit';

/** Text to put around one operand, so that the rule is met: `absolute(` and `)`; or another in its place. */
export interface Offer {
  readonly side: 'left' | 'right';
  readonly before: string;
  readonly after: string;
  readonly instead?: string;
}

/** A rule that is not met, as facts; `kindDiagnostic` gives it a place. */
export type KindProblem = {
  readonly [C in KindCode]: {
    readonly code: C;
    readonly facts: QuantityFacts[C];
    readonly offers: readonly Offer[];
  };
}[KindCode];

/** The types go together. `leftAs` and `rightAs` say the kind that an operand takes from its place. */
export interface Fits {
  readonly type: QuantityType;
  readonly leftAs?: Kind;
  readonly rightAs?: Kind;
  readonly warning?: KindProblem;
  readonly problem?: never;
}

export interface Misfits {
  readonly problem: KindProblem;
}

export type TypeAnswer = Fits | Misfits;

/** The problem as a diagnostic over both operands, with the offers as fixes. */
export function kindDiagnostic(problem: KindProblem, left: Span, right: Span = left): Diagnostic {
  const fixes: Fix[] = problem.offers.map(({ side, before, after, instead }) => {
    const at = side === 'left' ? left : right;
    if (instead !== undefined) return { title: `Write ${instead}`, edits: [{ span: at, newText: instead }] };
    const edits = [
      { span: span(at.start, at.start), newText: before },
      { span: span(at.end, at.end), newText: after },
    ].filter((edit) => edit.newText !== '');
    const title = before === '' ? `Add${after}` : `Wrap it as ${before}…${after}`;
    return { title, edits };
  });
  return diagnose(problem.code, cover(left, right), problem.facts, fixes);
}

/** Whether the place decides this operand's kind. */
export function isOpen(of: Operand): boolean {
  if (of.kind === 'open') return true;
  if (of.bare !== true) return false;
  return of.dimension === temperature || (of.dimension === turn && of.kind === 'none');
}

/** Its kind; an angle without a mark is a difference of positions. */
export function kindOf(of: QuantityType): Kind {
  return of.dimension === turn && of.kind === 'none' ? 'difference' : of.kind;
}

export function isCrankMark(kind: Kind): boolean {
  return kind === 'btdc' || kind === 'atdc' || kind === 'bbdc' || kind === 'abdc';
}

/** The kind of what was computed from other dimensions: it was dropped on the way. */
export function droppedKind(dimension: Dimension): Kind {
  if (dimension === pressure) return 'open';
  return dimension === temperature ? 'difference' : 'none';
}

/** What lies between two quantities of a type: pressures and temperatures become differences, crank positions angles. */
export function differenceOf({ dimension, kind, unit }: QuantityType): QuantityType {
  return { dimension, kind: kind === 'none' ? 'none' : 'difference', unit: unmarked(unit) };
}

/** The unit of an angle between two crank positions: one that says no mark. */
export function unmarked(unit: Unit): Unit {
  return unit.kind === undefined ? unit : (unitOf('°CA') ?? unit);
}

/** A result's unit: the first operand's that has one. */
export function firstUnit(left: QuantityType, right: QuantityType): Unit {
  return left.unit === plainUnit ? right.unit : left.unit;
}

/** An operand in a sentence: "`map` (absolute pressure)". */
export function describe(of: Operand): string {
  const words = kindWords(of);
  return of.text === undefined ? words : `\`${of.text}\` (${words})`;
}

/** A type in words: "gauge pressure", "temperature difference", "position in °BTDC". */
export function kindWords(of: QuantityType): string {
  const { dimension, kind } = of;
  switch (kind) {
    case 'absolute':
    case 'gauge':
      return `${kind} ${dimension.name}`;
    case 'vacuum':
      return 'vacuum';
    case 'difference':
      return `${dimension.name} difference`;
    case 'btdc':
    case 'atdc':
    case 'bbdc':
    case 'abdc':
      return `crank position in °${kind.toUpperCase()}`;
    case 'point':
    case 'open':
      return dimension.name;
    case 'none':
      return dimension === plain && of.unit !== plainUnit ? `a number in ${of.unit.symbol}` : dimension.name;
  }
}

/** `absolute(x)` and the like: how one operand becomes the other's kind, where a function does it. */
export function conversionOffers(left: Operand, right: Operand): Offer[] {
  if (left.dimension !== pressure) return [];
  const offers: Offer[] = [];
  if (isConvertible(left.kind) && isConvertible(right.kind)) {
    offers.push({ side: 'right', before: `${left.kind}(`, after: ')' });
    offers.push({ side: 'left', before: `${right.kind}(`, after: ')' });
  }
  return offers;
}

function isConvertible(kind: Kind): boolean {
  return kind === 'absolute' || kind === 'gauge' || kind === 'vacuum';
}

/** The offers as text, for the message. */
export function offerTexts(offers: readonly Offer[], left: Operand, right: Operand): string[] {
  return offers.map(
    ({ side, before, after, instead }) =>
      instead ?? `${before}${(side === 'left' ? left : right).text ?? '…'}${after}`,
  );
}

/** What makes a literal measure what the other side measures: its unit, or the degree sign that `F` lacks. */
export function unitOffers(left: Operand, right: Operand): Offer[] {
  return [...unitOffer(left, right, 'left'), ...unitOffer(right, left, 'right')];
}

function unitOffer(literal: Operand, other: Operand, side: Offer['side']): Offer[] {
  if (literal.number !== undefined && literal.unit === plainUnit)
    return isLiteral(literal) || canMultiply(other)
      ? [{ side, before: '', after: unitBehind(literal, other.unit) }]
      : [];
  if (literal.bare === undefined || literal.unit.symbol !== 'F' || other.dimension !== temperature) return [];
  return [{ side, before: '', after: '', instead: (literal.text ?? '… F').replace(/F$/, '°F') }];
}

/** What gives a plain number a unit: the unit behind a literal; a name, which none can follow, is multiplied by one of it. */
export function unitBehind(of: Operand, { symbol }: Unit): string {
  return isLiteral(of) ? ` ${symbol}` : ` * 1 ${symbol}`;
}

const isLiteral = ({ text }: Operand): boolean => text === undefined || /^[-+]?[0-9.]/.test(text);

/** A point on a scale has no multiple: neither a temperature nor a crank position. */
const canMultiply = ({ dimension, unit }: Operand): boolean =>
  dimension !== temperature && unit.kind === undefined;

const opposite: Partial<Record<Kind, Kind>> = { btdc: 'atdc', atdc: 'btdc', bbdc: 'abdc', abdc: 'bbdc' };

/** Crank positions from unlike marks: before one is the negative of after it. */
export function marksDiffer(left: Operand, right: Operand): KindProblem {
  const facts = { left: describe(left), right: describe(right) };
  const mark = left.kind.toUpperCase();
  let offer: string | undefined;
  if (opposite[left.kind] === right.kind) {
    offer = `10 °${right.kind.toUpperCase()} is -10 °${mark}: write the negative in °${mark}.`;
  } else if (isCrankMark(left.kind) !== isCrankMark(right.kind)) {
    offer = `Say the mark: °${isCrankMark(left.kind) ? mark : right.kind.toUpperCase()}.`;
  }
  const offers = [...otherSideOffer(left, right, 'left'), ...otherSideOffer(right, left, 'right')];
  return { code: 'crank-marks-differ', facts: offer === undefined ? facts : { ...facts, offer }, offers };
}

/** A literal angle counted from the other side of the same dead centre: 45 °BTDC are -45 °ATDC. */
function otherSideOffer({ kind, text = '' }: Operand, other: QuantityType, side: Offer['side']): Offer[] {
  if (opposite[kind] !== other.kind) return [];
  const [, sign, digits] = /^([-+]?)([\d.]+) ?°[AB][BT]DC$/.exec(text) ?? [];
  if (digits === undefined) return [];
  const negative = sign === '-' || Number(digits) === 0 ? digits : `-${digits}`;
  return [{ side, before: '', after: '', instead: `${negative} °${other.kind.toUpperCase()}` }];
}
