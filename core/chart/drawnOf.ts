import type { Cell } from '../casefile/cell.ts';
import { chartKindNames } from '../casefile/kinds/chartKinds.ts';
import { diagnose } from '../diagnostics/diagnostic.ts';
import { inError } from '../study/evaluateSource.ts';
import type { Study } from '../study/types.ts';
import type { Drawn } from './chart.ts';
import { type Asked, chartOf, type Unclear } from './chartOf.ts';
import { draw, wholeExtent } from './draw.ts';

/**
 * The chart of a cell, whole; undefined for a cell without one. As long as the cell and what it draws stay the same,
 * so does the answer: a chart is not drawn anew for each letter that is typed elsewhere.
 */
export function drawnOf(study: Study, index: number): Drawn | undefined {
  const cell = study.file.cells[index]?.cell;
  const asked = chartOf(study, index);
  if (cell === undefined || asked === undefined) return undefined;
  const madeOf = partsOf(asked);
  const before = known.get(cell);
  if (before !== undefined && sameParts(before.madeOf, madeOf)) return before.drawn;
  const drawn = explained(drawAsked(asked), asked, (study.memo.outcomes[index]?.plotted.length ?? 0) > 0);
  known.set(cell, { madeOf, drawn });
  return drawn;
}

const known = new WeakMap<Cell, { readonly madeOf: readonly unknown[]; readonly drawn: Drawn }>();

function drawAsked(asked: Asked | Unclear): Drawn {
  if ('unclear' in asked) {
    const missing = diagnose('chart-kind-missing', asked.unclear, { kinds: chartKindNames });
    return { drawing: undefined, diagnostics: [missing] };
  }
  return draw(asked.chart, asked.data, wholeExtent);
}

/** Where there is no chart and nothing else says why, what could not be computed does. */
function explained(drawn: Drawn, asked: Asked | Unclear, isListed: boolean): Drawn {
  if (drawn.drawing !== undefined || drawn.diagnostics.length > 0 || 'unclear' in asked || !isListed)
    return drawn;
  for (const { name, value, against } of asked.data.items) {
    const sources = [
      { what: name, value },
      ...(against === undefined ? [] : [{ what: against.name, value: against.value }]),
    ];
    for (const { what, value: of } of sources) {
      if (of.kind !== 'absent' || of.status !== 'cannot compute' || of.why === inError.why) continue;
      const why = /[.!?]$/.test(of.why) ? of.why : `${of.why}.`;
      return { ...drawn, diagnostics: [diagnose('chart-not-computed', asked.chart.span, { what, why })] };
    }
  }
  return drawn;
}

/** What a chart is made from beside the cell itself. */
function partsOf(asked: Asked | Unclear): readonly unknown[] {
  if ('unclear' in asked) return [];
  const { items, marks, engine } = asked.data;
  return [
    engine.firingOrder?.join(' '),
    items.length,
    ...items.flatMap(({ value, against, label, state, when, from }) => [
      value,
      against?.value,
      label,
      against?.label,
      state,
      when,
      from.join(' '),
    ]),
    ...marks.flatMap(({ value, from }) => [value, from.join(' ')]),
  ];
}

function sameParts(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((each, at) => each === b[at]);
}
