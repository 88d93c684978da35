import type { SampleRows } from '../../casefile/rows.ts';
import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { fromSi, toSi } from '../../quantity/convert.ts';
import { parseQuantity } from '../../quantity/parse.ts';
import type { Quantity, QuantityType } from '../../quantity/types.ts';
import { plainUnit } from '../../quantity/unit.ts';
import { isMissing } from '../../recording/numbers.ts';
import { placedIn } from '../placed.ts';
import type { Back, Column, SampledColumns, Samples } from './samples.ts';

/** Samples that stand in the case as `rows`. */
export function inlineSamples(rows: SampleRows, whole: TextNode): Samples {
  const texts = (at: number): readonly string[] => rows.rows.map((row) => row[at]?.text ?? '');
  const firstValue = (at: number): Quantity | undefined => {
    const first = rows.rows.find((row) => !isMissing(row[at]?.text ?? ''));
    return parseQuantity(first?.[at]?.text ?? '').value;
  };
  return {
    headings: rows.headings.map((each) => each.text),
    written: rows.headings.map((each) => each.text),
    placeOf: (at) => rows.headings[at] ?? whole,
    unitIn: (at) =>
      oneOf(rows.units?.[at]?.text) ??
      oneOf(/[([]([^)\]]+)[)\]]\s*$/.exec(rows.headings[at]?.text ?? '')?.[1]),
    firstValue,
    firstNumber: () => undefined,
    clock: () => undefined,
    texts,
    holdsNumbers: () => true,
    rises: (at) => {
      const values = texts(at).filter((each) => !isMissing(each));
      const numbers = values.map((each) => parseQuantity(each).value?.value ?? Number.NaN);
      return numbers.length > 1 && numbers.every((each, i) => i === 0 || each > (numbers[i - 1] ?? each));
    },
    read: (groups, found) =>
      groups.map(({ time, channels }): SampledColumns => {
        const moments = numbers(rows, time, found).samples;
        const read = channels.map((column) => numbers(rows, column, found));
        const columns = read.map((each) => each.samples);
        const widths = read.map((each) => each.widths);
        const timed = Array.from(moments.keys()).filter((row) => !Number.isNaN(moments[row]));
        const back = backIn(rows, moments, timed, time.at);
        if (timed.length === moments.length) return { time: moments, columns, widths, back };
        found.push(...withoutTime(rows, time.at, groups.length === 1 ? undefined : channels));
        const kept = (column: Float64Array) => Float64Array.from(timed, (row) => column[row] ?? Number.NaN);
        return {
          time: kept(moments),
          columns: columns.map(kept),
          widths: widths.map((each) => each && kept(each)),
          back,
        };
      }),
  };
}

/** The first row whose time lies before that of the row with a time above it. */
function backIn(
  rows: SampleRows,
  time: Float64Array,
  timed: readonly number[],
  at: number,
): Back | undefined {
  const row = timed.find((each, i) => (time[each] ?? 0) < (time[timed[i - 1] ?? each] ?? 0)) ?? -1;
  const cell = rows.rows[row]?.[at];
  return cell === undefined ? undefined : { time: cell.text, place: `row ${row + 1}`, span: cell.span };
}

/**
 * A row without its time is no sample: it is left out, and told. One whose time cannot be read has been told;
 * one that has nothing for this time's channels is of another time.
 */
function withoutTime(
  rows: SampleRows,
  at: number,
  channels: readonly Column[] | undefined,
): readonly Diagnostic[] {
  return rows.rows.flatMap((row) => {
    const cell = row[at];
    if (cell === undefined || !isMissing(cell.text)) return [];
    if (channels?.every((each) => isMissing(row[each.at]?.text ?? '')) === true) return [];
    const facts = {
      name: rows.headings[at]?.text ?? '',
      got: `\`${cell.text}\``,
      takes: 'the moment at which the row was taken; without it the row is left out',
    };
    return [diagnose('wrong-value-shape', cell.span, facts)];
  });
}

const oneOf = (text: string | undefined): Quantity | undefined =>
  text === undefined || text === '' ? undefined : parseQuantity(`1 ${text}`).value;

/** A column's samples in SI, with the half-widths that they state; a sample that is not there is NaN, one that cannot be read is reported and NaN. */
function numbers(
  rows: SampleRows,
  column: Column,
  found: Diagnostic[],
): { readonly samples: Float64Array; readonly widths: Float64Array | undefined } {
  const { at, raw, factor, offset } = column;
  const samples = new Float64Array(rows.rows.length);
  let widths: Float64Array | undefined;
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
    if (value.plusMinus === 0) return;
    widths ??= new Float64Array(rows.rows.length);
    widths[i] = Math.abs((value.plusMinus * written.factor * factor) / raw.unit.factor);
  });
  return { samples, widths };
}

function otherDimension(cell: TextNode, column: string, type: QuantityType): Diagnostic {
  return diagnose('wrong-value-shape', cell.span, {
    name: column,
    got: `\`${cell.text}\``,
    takes: `a number in ${type.unit.symbol} like the rest of its column`,
  });
}
