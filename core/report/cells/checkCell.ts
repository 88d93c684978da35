import type { CheckCell } from '../../casefile/cell.ts';
import type { Value } from '../../expression/value.ts';
import { otherUnit } from '../../quantity/format.ts';
import type { Computed } from '../../study/types.ts';
import type { Block, Runs, TableRow } from '../blocks.ts';
import { figureIn, wordsFigure } from '../figure.ts';
import { typeOf, unitWords, valueFigure } from '../readingTable.ts';
import { usualMeaning } from '../usualMeaning.ts';
import { verdictLine } from '../verdictLine.ts';
import { type CellContent, type CellContext, said, words } from './cellContext.ts';

/** Computed names in a table, then what was expected of them as sentences, then the reasons. */
export function checkContent(cell: CheckCell, context: CellContext): CellContent {
  const own = (cell.expect ?? []).map((each) => [...said(each.because, 'Because'), ...cited(each.cite)]);
  return {
    title: words(cell.title),
    margin: ['Check', ...(cell.shows === undefined ? [] : ['shows the fault'])],
    blocks: [
      ...computedTable(context.computed),
      ...context.expectations.flatMap((each, at) => [verdictLine(each), ...(own[at] ?? [])]),
      ...said(cell.because, 'Because'),
      ...cited(cell.cite),
    ],
  };
}

function cited(cite: CheckCell['cite']): Block[] {
  const sources = (cite ?? []).map(words);
  return sources.length === 0 ? [] : [{ kind: 'paragraph', lead: 'Source', runs: [sources.join('; ')] }];
}

function computedTable(computed: readonly Computed[]): Block[] {
  if (computed.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: '',
      rowsAre: 'computed',
      remarksAre: 'from',
      columns: [],
      rows: computed.flatMap(computedRows),
    },
  ];
}

/** A computed name has a row; one that holds several values has one more for each of them. */
function computedRows({ name, text, value, typed }: Computed): TableRow[] {
  if (value.kind !== 'fields') {
    const meaning = usualMeaning({ typed, value });
    const remarks: Runs[] = [[{ code: text }], ...(meaning === undefined ? [] : [[meaning]])];
    return [computedRow(name, value, remarks)];
  }
  const fields = typed?.type.kind === 'fields' ? typed.type.fields : [];
  const rows = [...value.fields].map(([field, each]) => {
    const meaning = fields.find((declared) => declared.name === field)?.meaning ?? '';
    return computedRow(`${name}.${field}`, each, [[meaning]]);
  });
  const [first, ...rest] = rows;
  return first === undefined
    ? []
    : [{ ...first, remarks: [[{ code: `${text}` }, ':'], ...first.remarks] }, ...rest];
}

function computedRow(name: string, value: Value, remarks: readonly Runs[]): TableRow {
  const figure = valueFigure(value);
  const type = typeOf(value);
  const beside = type === undefined || value.kind !== 'one' ? undefined : otherUnit(type.unit, type.kind);
  return {
    name,
    key: undefined,
    figures: [figure],
    unit: type === undefined ? '' : unitWords(type),
    other:
      beside === undefined || type === undefined || value.kind !== 'one'
        ? undefined
        : { unit: beside.symbol, figures: [figureIn(beside, value.amount, type, figure ?? wordsFigure(''))] },
    remarks,
    strips: [],
  };
}
