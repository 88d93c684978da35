import { formatRange } from '../quantity/format.ts';
import type { Amount, QuantityType } from '../quantity/types.ts';
import { decimalsWritten } from '../report/figure.ts';
import { codeSpan, escapeMarkdown } from '../report/markdown/escape.ts';
import { type Interval, rangesOf } from '../signals/ranges.ts';
import type { Reading } from '../study/types.ts';
import { paragraphs } from './pageMarkdown.ts';
import type { UnitPreference } from './types.ts';
import { amountWords, isAbsent, valueWords } from './valueWords.ts';

/**
 * A reading for a hover: what it is, its value in both units, what is usual in its state, what is possible.
 * `text` is its cell's own; `member` picks one of a map's.
 */
export function readingPage(reading: Reading, text: string, units: UnitPreference, member?: string): string {
  const { signal, fullName, value, bytes } = reading;
  const name = member === undefined ? fullName : `${fullName}[${member}]`;
  const written = text.slice(reading.valueSpan.start, reading.valueSpan.end);
  const decimals = bytes === undefined ? decimalsWritten(written) : undefined;
  const one = value.kind === 'members' && member !== undefined ? value.members.get(member) : undefined;
  const words =
    value.kind === 'members' && one !== undefined && !isAbsent(one)
      ? amountWords(one, value.type, units)
      : valueWords(value, units, decimals);
  const state = reading.state === undefined ? '' : ` at ${escapeMarkdown(reading.state.name)}`;
  return paragraphs([
    `**${codeSpan(name)}**${signal === undefined ? '' : ` ${escapeMarkdown(signal.meaning)}`}`,
    `${escapeMarkdown(words)}${state}${circumstances(reading)}`,
    bytes === undefined ? '' : `*Decoded from* ${codeSpan(bytes)}`,
    rangeLines(reading),
  ]);
}

function circumstances({ at, saw, tool, when }: Reading): string {
  const parts = [
    ...(when === 'before' ? [] : [when]),
    ...(at === undefined ? [] : [at]),
    ...(saw === undefined ? [] : [saw]),
    ...(tool === undefined ? [] : [`with ${tool}`]),
  ];
  return parts.map((each) => `, ${escapeMarkdown(each)}`).join('');
}

/** What is usual in its state, possible at all, and carried by the data, in the reading's own unit. */
function rangeLines({ form, value, state }: Reading): string {
  if (form === undefined || (value.kind !== 'one' && value.kind !== 'members')) return '';
  const { type } = value;
  const { usual, physical, encoding } = rangesOf(form);
  const here = usual.find((each) => each.state === state?.known?.name);
  const lines = [
    ...(here === undefined
      ? []
      : [`*Usual at ${here.state}:* ${rangeWords(here.range, type)} (${escapeMarkdown(here.source)})`]),
    ...(physical === undefined ? [] : [`*Possible:* ${rangeWords(physical, type)}`]),
    ...(encoding === undefined
      ? []
      : [`*Data carry:* ${rangeWords(encoding, type)} (${escapeMarkdown(encoding.source)})`]),
  ];
  return lines.join('  \n');
}

function rangeWords({ low, high }: Interval, type: QuantityType): string {
  const end = (si: number): Amount['si'] | undefined => (Number.isFinite(si) ? si : undefined);
  return escapeMarkdown(formatRange(end(low), end(high), type));
}
