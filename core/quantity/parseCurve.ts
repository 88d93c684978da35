import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { span } from '../text/span.ts';
import { toSi } from './convert.ts';
import { parseQuantity } from './parse.ts';
import type { Quantity, QuantityType } from './types.ts';

/** One point as written: the two texts of a pair. */
export interface CurvePointText {
  readonly x: string;
  readonly y: string;
}

/** A transfer curve in SI units, x ascending and without a repetition. Types are those of the first point. */
export interface ParsedCurve {
  readonly xType: QuantityType;
  readonly yType: QuantityType;
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** A finding in one text of a curve; its span counts in that text. */
export interface CurveProblem {
  readonly point: number;
  readonly side: 'x' | 'y';
  readonly diagnostic: Diagnostic;
}

/**
 * Reads a curve's pairs, whatever their order. Undefined when a text cannot be read, a point measures something else,
 * two points share an x, or there are fewer than two. A point's ± is not used, which is told.
 */
export function parseCurve(points: readonly CurvePointText[]): {
  readonly value: ParsedCurve | undefined;
  readonly problems: readonly CurveProblem[];
} {
  const problems: CurveProblem[] = [];
  const x = readSide(points, 'x', problems);
  const y = readSide(points, 'y', problems);
  if (problems.length > 0) return { value: undefined, problems };
  const firstX = x[0];
  const firstY = y[0];
  if (firstX === undefined || firstY === undefined || points.length < 2) {
    const place = span(0, points[0]?.x.length ?? 0);
    const diagnostic = diagnose('curve-too-short', place, { points: points.length });
    return { value: undefined, problems: [{ point: 0, side: 'x', diagnostic }] };
  }
  const pairs = points.map((_, at) => ({ at, x: inSi(x[at]), y: inSi(y[at]) }));
  pairs.sort((a, b) => a.x - b.x);
  for (const [at, pair] of pairs.entries()) {
    if (at === 0 || pair.x !== pairs[at - 1]?.x) continue;
    const text = points[pair.at]?.x ?? '';
    const diagnostic = diagnose('curve-point-twice', span(0, text.length), { x: text.trim() });
    problems.push({ point: pair.at, side: 'x', diagnostic });
  }
  if (problems.length > 0) return { value: undefined, problems };
  return {
    value: {
      xType: typeOf(firstX),
      yType: typeOf(firstY),
      x: pairs.map((pair) => pair.x),
      y: pairs.map((pair) => pair.y),
    },
    problems: [...uncertain(points, 'x', x), ...uncertain(points, 'y', y)],
  };
}

/** Each ± that is not used. */
function uncertain(
  points: readonly CurvePointText[],
  side: 'x' | 'y',
  quantities: readonly (Quantity | undefined)[],
): readonly CurveProblem[] {
  return quantities.flatMap((quantity, point) => {
    if (quantity === undefined || quantity.plusMinus === 0) return [];
    const written = points[point]?.[side] ?? '';
    const text = written.trim();
    const offer = withoutWidth(text);
    const place = span(written.indexOf(text), written.indexOf(text) + text.length);
    const fix = { title: `Write \`${offer}\``, edits: [{ span: place, newText: offer }] };
    return [{ point, side, diagnostic: diagnose('curve-point-uncertain', place, { text, offer }, [fix]) }];
  });
}

/** `2 ± 0.1 g/s`, `2 g/s ± 5 %` and `2 g/s ± 0.1 g/s` without their ±. */
function withoutWidth(text: string): string {
  const [, number = text, behind = ''] = /^(.*?)\s*(?:±|\+\/-)\s*[\d.]+(.*)$/.exec(text) ?? [];
  return /[\p{L}°%]/u.test(number) ? number : number + behind;
}

function readSide(
  points: readonly CurvePointText[],
  side: 'x' | 'y',
  problems: CurveProblem[],
): (Quantity | undefined)[] {
  let first: Quantity | undefined;
  return points.map((point, at) => {
    const text = point[side];
    const found = parseQuantity(text);
    for (const diagnostic of found.diagnostics) problems.push({ point: at, side, diagnostic });
    const quantity = found.value;
    first ??= quantity;
    if (quantity !== undefined && first !== undefined && !sameQuantity(first, quantity)) {
      const facts = { first: first.unit.symbol, other: text.trim() };
      problems.push({
        point: at,
        side,
        diagnostic: diagnose('curve-units-differ', span(0, text.length), facts),
      });
    }
    return quantity;
  });
}

/** Points may be in kPa and in psi, not in kPa and in volts, nor absolute and gauge, nor with a percent beside none. */
function sameQuantity(a: Quantity, b: Quantity): boolean {
  return (
    a.unit.dimension === b.unit.dimension &&
    a.kind === b.kind &&
    (a.unit.symbol === '1') === (b.unit.symbol === '1')
  );
}

function inSi(quantity: Quantity | undefined): number {
  return quantity === undefined ? Number.NaN : toSi(quantity.value, quantity.unit, quantity.kind);
}

function typeOf(quantity: Quantity): QuantityType {
  return { dimension: quantity.unit.dimension, kind: quantity.kind, unit: quantity.unit };
}
