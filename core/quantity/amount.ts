import type { Amount, SourceId, Spread } from './types.ts';

/**
 * Numbers with the sources of their uncertainty, carried to first order (JCGM 100:2008, 5.1 and 5.2).
 * Every source keeps its signed contribution, so a reading that enters twice is counted as one: x − x is 0 ± 0.
 */

const none: Spread = [];

/** A number without uncertainty. */
export function exact(si: number): Amount {
  return { si, spread: none };
}

/** A number from one source with a half-width in SI units; a half-width of 0 makes it exact. */
export function measured(si: number, source: SourceId, halfWidth: number): Amount {
  return { si, spread: halfWidth === 0 ? none : [{ source, by: Math.abs(halfWidth) }] };
}

export function add(a: Amount, b: Amount): Amount {
  return { si: a.si + b.si, spread: weigh(a.spread, 1, b.spread, 1) };
}

export function subtract(a: Amount, b: Amount): Amount {
  return { si: a.si - b.si, spread: weigh(a.spread, 1, b.spread, -1) };
}

export function multiply(a: Amount, b: Amount): Amount {
  return { si: a.si * b.si, spread: weigh(a.spread, b.si, b.spread, a.si) };
}

/** Division by 0 gives what IEEE 754 gives; the caller says why there is no answer. */
export function divide(a: Amount, b: Amount): Amount {
  const si = a.si / b.si;
  return { si, spread: weigh(a.spread, 1 / b.si, b.spread, -si / b.si) };
}

/** A power with a fixed exponent. */
export function power(a: Amount, exponent: number): Amount {
  const si = a.si ** exponent;
  if (a.spread.length === 0) return { si, spread: none };
  return { si, spread: weigh(a.spread, slopeOfPower(a.si, exponent), none, 0) };
}

/** ∂(si ^ exponent)/∂si: 0 for the exponent 0 everywhere, as x⁰ is 1. */
export const slopeOfPower = (si: number, exponent: number): number =>
  exponent === 0 ? 0 : exponent * si ** (exponent - 1);

/** Multiplied by an exact number. */
export function scale(a: Amount, by: number): Amount {
  return { si: a.si * by, spread: weigh(a.spread, by, none, 0) };
}

/** A result that a formula computed, with its sensitivity to each of its inputs (∂result/∂input). */
export function linear(si: number, terms: readonly (readonly [number, Amount])[]): Amount {
  let spread = none;
  let merged: Map<SourceId, number> | undefined;
  for (const [coefficient, amount] of terms) {
    if (amount.spread.length === 0) continue;
    if (merged === undefined && spread.length === 0) {
      spread = weigh(amount.spread, coefficient, none, 0);
      continue;
    }
    merged ??= new Map(spread.map((each) => [each.source, each.by]));
    for (const { source, by } of amount.spread) {
      merged.set(source, (merged.get(source) ?? 0) + coefficient * by);
    }
  }
  return { si, spread: merged === undefined ? spread : sorted(merged) };
}

/** How two sources move together: −1 to 1, 0 when they are independent. */
export type Correlation = (a: SourceId, b: SourceId) => number;

/**
 * The half-width, at the coverage that the sources were stated at: contributions in quadrature,
 * with the covariance of sources that move together (JCGM 100:2008, equation 16).
 */
export function halfWidth(amount: Amount, correlation?: Correlation): number {
  const { spread } = amount;
  const first = spread[0];
  if (first === undefined) return 0;
  if (spread.length === 1) return Math.abs(first.by);
  let variance = 0;
  if (correlation === undefined) {
    for (const { by } of spread) variance += by * by;
    return Math.sqrt(variance);
  }
  for (const [at, { source, by }] of spread.entries()) {
    variance += by * by;
    for (const other of spread.slice(at + 1)) {
      variance += 2 * correlation(source, other.source) * by * other.by;
    }
  }
  return Math.sqrt(Math.max(0, variance));
}

/** a × by + b × by of two sorted spreads; contributions that cancel are dropped. */
function weigh(a: Spread, aBy: number, b: Spread, bBy: number): Spread {
  if (a.length === 0 && b.length === 0) return none;
  const out: { source: SourceId; by: number }[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    const left = a[i];
    const right = b[j];
    let by: number;
    let source: SourceId;
    if (right === undefined || (left !== undefined && left.source < right.source)) {
      if (left === undefined) break;
      source = left.source;
      by = left.by * aBy;
      i++;
    } else if (left === undefined || right.source < left.source) {
      source = right.source;
      by = right.by * bBy;
      j++;
    } else {
      source = left.source;
      by = left.by * aBy + right.by * bBy;
      i++;
      j++;
    }
    if (by !== 0) out.push({ source, by });
  }
  return out.length === 0 ? none : out;
}

function sorted(merged: ReadonlyMap<SourceId, number>): Spread {
  const out = [...merged].filter(([, by]) => by !== 0).map(([source, by]) => ({ source, by }));
  if (out.length === 0) return none;
  return out.sort((a, b) => (a.source < b.source ? -1 : a.source > b.source ? 1 : 0));
}
