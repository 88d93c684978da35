import type { NoSum } from '../diagnostics/catalogue/quantity.ts';
import { pressure, temperature, turn } from './dimension.ts';
import {
  conversionOffers,
  describe,
  firstUnit,
  isCrankMark,
  isOpen,
  type KindProblem,
  kindOf,
  marksDiffer,
  type Offer,
  type Operand,
  offerTexts,
  type TypeAnswer,
  unitOffers,
  unmarked,
} from './operand.ts';
import type { Kind, QuantityType } from './types.ts';

/** The rules of sums by kind. Quantities of other dimensions have none and simply add. */
export function sumTypes(left: Operand, right: Operand, operator: '+' | '-'): TypeAnswer {
  if (left.dimension !== right.dimension) {
    const verb = operator === '+' ? 'added' : 'subtracted';
    const units = unitOffers(left, right);
    return {
      problem: {
        code: 'dimensions-differ',
        facts: { left: describe(left), right: describe(right), verb, offers: offerTexts(units, left, right) },
        offers: units,
      },
    };
  }
  const { dimension } = left;
  if (dimension !== pressure && dimension !== temperature && dimension !== turn) {
    return { type: { dimension, kind: 'none', unit: firstUnit(left, right) } };
  }
  // To the right of + and - an unqualified literal is a difference.
  const rightAs = isOpen(right) ? ('difference' as const) : undefined;
  const b = rightAs ?? kindOf(right);
  if (left.kind === 'open') return openSum(left, right, b, operator, rightAs);
  const a = kindOf(left);
  const kind = sumKind(a, b, operator);
  if (kind === undefined) return { problem: noSum(left, right, b, operator) };
  const type = typed(left, right, kind);
  const warning = isUnusual(left, a, right, b, operator) ? unusual(left, right, operator) : undefined;
  if (warning === undefined) return rightAs === undefined ? { type } : { type, rightAs };
  return rightAs === undefined ? { type, warning } : { type, rightAs, warning };
}

/** The kind of a sum of two kinds; undefined where it has no meaning. */
function sumKind(a: Kind, b: Kind, operator: '+' | '-'): Kind | undefined {
  if (a === b) return a === 'difference' || operator === '-' ? 'difference' : undefined;
  if (b === 'difference') return a;
  if (operator === '-') return a === 'absolute' && b === 'vacuum' ? 'absolute' : undefined;
  if (a === 'difference') return b;
  if (isFromBarometer(a))
    return b === 'absolute' ? 'absolute' : isFromBarometer(b) ? 'difference' : undefined;
  return a === 'absolute' && isFromBarometer(b) ? 'absolute' : undefined;
}

function isFromBarometer(kind: Kind): boolean {
  return kind === 'gauge' || kind === 'vacuum';
}

/** Barometer + gauge, barometer − vacuum and manifold pressure + vacuum are what the trade does; the rest is warned of. */
function isUnusual(left: Operand, a: Kind, right: Operand, b: Kind, operator: '+' | '-'): boolean {
  const absolute = a === 'absolute' ? left : right;
  const other = a === 'absolute' ? b : a;
  if (a !== 'absolute' && b !== 'absolute') return false;
  if (other === 'gauge') return absolute.isBarometer !== true;
  if (other !== 'vacuum') return false;
  return operator === '+'
    ? absolute.isManifold !== true || absolute.isBarometer === true
    : absolute.isBarometer !== true;
}

/**
 * A pressure that is not said yet, on the left: it takes the only kind that gives the sum a meaning.
 * Beside gauge or vacuum there are two, a barometer among them, so the author must say.
 */
function openSum(
  left: Operand,
  right: Operand,
  b: Kind,
  operator: '+' | '-',
  rightAs: Kind | undefined,
): TypeAnswer {
  if (b === 'difference') {
    const type = typed(left, right, 'open');
    return rightAs === undefined ? { type } : { type, rightAs };
  }
  if (b === 'vacuum' || (b === 'gauge' && operator === '+')) {
    const choices = operator === '+' ? ['absolute', 'difference'] : ['absolute', 'vacuum'];
    const offers =
      left.bare === true
        ? choices.map((word): Offer => ({ side: 'left', before: '', after: ` ${word}` }))
        : [];
    const facts = { text: describe(left), offers: offerTexts(offers, left, right) };
    return { problem: { code: 'kind-undecided', facts, offers } };
  }
  return operator === '+'
    ? { type: typed(left, right, b), leftAs: 'difference' }
    : { type: typed(left, right, 'difference'), leftAs: b };
}

function unusual(left: Operand, right: Operand, operator: '+' | '-'): KindProblem {
  const facts = { left: describe(left), right: describe(right), operator };
  return { code: 'kinds-in-sum-unusual', facts, offers: [] };
}

function typed(left: Operand, right: Operand, kind: Kind): QuantityType {
  const { dimension } = left;
  if (isCrankMark(kind)) return { dimension, kind, unit: left.kind === kind ? left.unit : right.unit };
  return { dimension, kind, unit: unmarked(left.unit) };
}

function noSum(left: Operand, right: Operand, b: Kind, operator: '+' | '-'): KindProblem {
  if (isCrankMark(left.kind) && isCrankMark(b) && left.kind !== b) return marksDiffer(left, right);
  const offers: Offer[] = operator === '-' ? conversionOffers(left, right) : [];
  if (left.bare === true) offers.push({ side: 'left', before: '', after: ' difference' });
  const facts = {
    left: describe(left),
    right: describe(right),
    operator,
    because: noSumBecause(kindOf(left), b, operator),
    offers: offerTexts(offers, left, right),
  };
  return { code: 'kinds-in-sum', facts, offers };
}

function noSumBecause(a: Kind, b: Kind, operator: '+' | '-'): NoSum {
  if (operator === '-' && a === 'difference') return 'from a difference';
  if (a === b) {
    if (a === 'point') return 'two points';
    if (isCrankMark(a)) return 'two positions';
    return a === 'absolute' ? 'two absolute' : 'two from the barometer';
  }
  return isFromBarometer(a) && isFromBarometer(b) ? 'up and down' : 'different zeros';
}
