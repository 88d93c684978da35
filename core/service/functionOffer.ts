import type { FunctionRow } from '../expression/functionRow.ts';
import { functionPage, parameterName } from '../report/pages.ts';
import { canBeLeftOut } from '../report/parameterWords.ts';
import type { Span } from '../text/span.ts';
import { blank } from './offer.ts';
import { pageMarkdown } from './pageMarkdown.ts';
import type { Completion } from './types.ts';

type Made = Omit<Completion, 'span'>;

const made = new WeakMap<FunctionRow, Made>();

/** A function with its signature; the parameters that must be given are places to fill in. */
export function functionOffer(row: FunctionRow, span: Span): Completion {
  let of = made.get(row);
  if (of === undefined) {
    of = make(row);
    made.set(row, of);
  }
  return { ...of, span };
}

function make(row: FunctionRow): Made {
  const due = row.parameters.filter((each) => !canBeLeftOut(each));
  const places = due.map(({ name }, at) => blank(at + 1, name));
  return {
    label: row.name,
    kind: 'function',
    detail: `(${row.parameters.map(parameterName).join(', ')}) ${row.summary}`,
    markdown: pageMarkdown(functionPage(row)),
    newText: `${row.name}(${places.join(', ')})`,
    snippet: true,
    rank: 50,
    filter: `${row.name} ${row.summary}`,
  };
}
