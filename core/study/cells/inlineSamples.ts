import type { SampleRows } from '../../casefile/rows.ts';
import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { fromSi, toSi } from '../../quantity/convert.ts';
import { parseQuantity } from '../../quantity/parse.ts';
import type { Quantity, QuantityType } from '../../quantity/types.ts';
import { plainUnit } from '../../quantity/unit.ts';
import { isMissing } from '../../recording/numbers.ts';
import { placedIn } from '../placed.ts';
import type { Back, Column, Samples } from './samples.ts';

/** Samples that stand in the case as `rows`. */
export function inlineSamples(rows: SampleRows, whole: TextNode): Samples {
  const firstValue = (at: number): Quantity | undefined => {
    const first = rows.rows.find((row) => !isMissing(row[at]?.text ?? ''));
    return parseQuantity(first?.[at]?.text ?? '').value;
  };
  return {
    headings: rows.headings.map((each) => each.text),
    placeOf: (at) => rows.headings[at] ?? whole,
    unitIn: (at) =>
      oneOf(rows.units?.[at]?.text) ??
      oneOf(/[([]([^)\]]+)[)\]]\s*$/.exec(rows.headings[at]?.text ?? '')?.[1]),
    firstValue,
    isClock: () => false,
    holdsNumbers: () => true,
    rises: () => false,
    read: (wanted, found) => {
      const columns = wanted.map((column) => numbers(rows, column, found));
      const [time] = columns;
      return { columns, back: time === undefined ? undefined : backIn(rows, time, wanted[0]?.at ?? 0) };
    },
  };
}

function backIn(rows: SampleRows, time: Float64Array, at: number): Back | undefined {
  const row = time.findIndex((each, i) => each < (time[i - 1] ?? each));
  const cell = rows.rows[row]?.[at];
  return cell === undefined ? undefined : { time: cell.text, place: `row ${row + 1}`, span: cell.span };
}

const oneOf = (text: string | undefined): Quantity | undefined =>
  text === undefined || text === '' ? undefined : parseQuantity(`1 ${text}`).value;

/** A column's samples in SI; a sample that is not there is NaN, one that cannot be read is reported and NaN. */
function numbers(rows: SampleRows, column: Column, found: Diagnostic[]): Float64Array {
  const { at, raw, factor, offset } = column;
  const samples = new Float64Array(rows.rows.length);
  rows.rows.forEach((row, i) => {
    const cell = row[at];
    samples[i] = Number.NaN;
    if (cell === undefined || isMissing(cell.text)) return;
    const { value, diagnostics } = parseQuantity(cell.text);
    found.push(...placedIn(cell, diagnostics));
    if (value === undefined) return;
    const written = value.unit === plainUnit ? raw.unit : value.unit;
    if (written.dimension !== raw.dimension) {
      found.push(otherDimension(cell, rows.headings[at]?.text ?? '', raw));
      return;
    }
    const number =
      written === raw.unit ? value.value : fromSi(toSi(value.value, written, raw.kind), raw.unit, raw.kind);
    samples[i] = offset === 0 ? number * factor : number * factor + offset;
  });
  return samples;
}

function otherDimension(cell: TextNode, column: string, type: QuantityType): Diagnostic {
  return diagnose('wrong-value-shape', cell.span, {
    name: column,
    got: `\`${cell.text}\``,
    takes: `a number in ${type.unit.symbol} like the rest of its column`,
  });
}
