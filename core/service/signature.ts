import type { FunctionRow, Parameter } from '../expression/functionRow.ts';
import { sayLimits } from '../expression/sayLimits.ts';
import { sayTakes } from '../expression/sayType.ts';
import { codeSpan, escapeMarkdown } from '../report/markdown/escape.ts';
import { parameterName, resultWords } from '../report/pages.ts';
import { substitutesFor } from '../report/parameterWords.ts';
import { functionRow } from '../study/functions.ts';
import type { Study } from '../study/types.ts';
import type { Span } from '../text/span.ts';
import { expectedAt } from './expected.ts';
import { paragraphs } from './pageMarkdown.ts';
import { standingOf } from './standing.ts';
import type { Signature } from './types.ts';
import { typingAt } from './typing.ts';

/** A call that has been opened before an offset. */
export interface OpenCall {
  readonly row: FunctionRow;
  /** Which argument the offset stands in, from 0. */
  readonly argument: number;
  /** The name that this argument is given by, and those of the arguments before it. */
  readonly name: string | undefined;
  readonly named: readonly string[];
}

/** The function whose arguments are being written at an offset, and the parameter that is due. */
export function signature(study: Study, cell: number, offset: number): Signature | undefined {
  const standing = standingOf(study, cell);
  if (standing === undefined) return undefined;
  const typing = typingAt(standing.typed, offset);
  const expected = expectedAt(typing.path);
  const holds =
    expected?.what === 'text'
      ? expected.holds
      : expected?.what === 'keys'
        ? expected.short?.holds
        : undefined;
  if (holds !== 'expression' || typing.where === 'key') return undefined;
  const before = [...(typing.block ?? []).map(({ text }) => text), typing.before].join('\n');
  const call = callAround(before, before.length);
  return call === undefined ? undefined : signatureOf(call);
}

function signatureOf({ row, argument, name }: OpenCall): Signature {
  let label = `${row.name}(`;
  const spans = row.parameters.map((parameter, at): Span => {
    if (at > 0) label += ', ';
    const start = label.length;
    label += parameterName(parameter);
    return { start, end: label.length };
  });
  label += ')';
  return {
    label,
    markdown: paragraphs([escapeMarkdown(row.summary), `*Gives* ${escapeMarkdown(resultWords(row))}`]),
    parameters: row.parameters.map((parameter, at) => ({
      span: spans[at] ?? { start: 0, end: 0 },
      markdown: parameterWords(parameter),
    })),
    active: activeOf(row, argument, name),
  };
}

function activeOf(row: FunctionRow, argument: number, name: string | undefined): number | undefined {
  const named = name === undefined ? -1 : row.parameters.findIndex((each) => each.name === name);
  if (named >= 0) return named;
  if (argument < row.parameters.length) return argument;
  const last = row.parameters.length - 1;
  return row.parameters[last]?.repeats === true ? last : undefined;
}

function parameterWords(parameter: Parameter): string {
  const { name, meaning, takes, within } = parameter;
  const left = substitutesFor(parameter)
    .map(({ words, is }) => (is === 'name' ? codeSpan(words) : escapeMarkdown(words)))
    .join(', otherwise ');
  const limits = within === undefined ? '' : `, ${escapeMarkdown(sayLimits(within))}`;
  return paragraphs([
    `**${escapeMarkdown(name)}** ${escapeMarkdown(meaning)}; takes ${sayTakes(takes)}${limits}`,
    left === '' ? '' : `*Left out:* ${left}`,
  ]);
}

/** The innermost call that stands open at an offset of an expression's text; brackets in quotes do not count. */
export function callAround(text: string, offset: number): OpenCall | undefined {
  const open: { name: string; argument: number; start: number; named: string[] }[] = [];
  for (let at = 0; at < offset; at++) {
    const mark = text[at];
    const top = open[open.length - 1];
    if (mark === '"') {
      const end = text.indexOf('"', at + 1);
      at = end < 0 || end >= offset ? offset : end;
    } else if (mark === '(' || mark === '[') {
      const name = mark === '(' ? (/[\p{L}_][\p{L}\p{M}\p{N}_]*$/u.exec(text.slice(0, at))?.[0] ?? '') : '';
      open.push({ name, argument: 0, start: at + 1, named: [] });
    } else if (mark === ')' || mark === ']') open.pop();
    else if (mark === ',' && top !== undefined) {
      const name = nameOf(text.slice(top.start, at));
      if (name !== undefined) top.named.push(name);
      top.argument++;
      top.start = at + 1;
    }
  }
  for (let at = open.length - 1; at >= 0; at--) {
    const { name, argument, start, named } = open[at] ?? { name: '', argument: 0, start: 0, named: [] };
    const row = functionRow(name);
    if (row !== undefined) return { row, argument, name: nameOf(text.slice(start, offset)), named };
    if (name !== '') return undefined;
  }
  return undefined;
}

/** `pressure = …` */
function nameOf(argument: string): string | undefined {
  return /^\s*([\p{L}_][\p{L}\p{M}\p{N}_]*)\s*=(?!=)/u.exec(argument)?.[1];
}
