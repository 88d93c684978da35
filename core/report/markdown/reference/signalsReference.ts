import { allSignals } from '../../../signals/lookup.ts';
import { engineStates } from '../../../signals/states.ts';
import type { Form, Signal } from '../../../signals/types.ts';
import { signalExample } from '../../signalExample.ts';
import { codeSpan, sentenceAsMarkdown, sentencesAsMarkdown } from '../escape.ts';
import { byFamily } from './families.ts';

/** The vocabulary on one page of Markdown: signals by family, then the engine states. */
export function signalsReference(): string {
  return `# Signals and engine states

Names follow SAE J1930 in lower case where it has one.
A unit tells which form of a signal is meant: air flow at the meter is a mass flow, a voltage or a frequency.
Usual ranges are common practice unless another source is named; the maker’s figures come first.

${byFamily(allSignals(), signalPart)}

## Engine states

| state | what it is | engine | ignition | also called |
| --- | --- | --- | --- | --- |
${engineStates
  .map(
    ({ name, meaning, engine, ignition, alsoCalled = [] }) =>
      `| ${codeSpan(name)} | ${sentenceAsMarkdown(meaning)} | ${engine} | ${ignition} | ${sentenceAsMarkdown(alsoCalled.join(', '))} |`,
  )
  .join('\n')}
`;
}

function signalPart(signal: Signal): string {
  const example = signalExample(signal);
  const lines = [
    ...(signal.holds === 'word' ? [`Holds one of ${(signal.words ?? []).map(codeSpan).join(', ')}.`] : []),
    ...(signal.holds === 'text' ? ['Holds a text.'] : []),
    ...(signal.by === undefined ? [] : [`May be given by ${signal.by}.`]),
    ...(signal.alsoCalled === undefined
      ? []
      : [`Also called ${sentenceAsMarkdown(signal.alsoCalled.join(', '))}.`]),
    ...(signal.note === undefined ? [] : [sentencesAsMarkdown(signal.note)]),
    ...(example === undefined
      ? []
      : [`Example: ${codeSpan(example.line)}${example.state === undefined ? '' : ` at ${example.state}`}.`]),
  ];
  return [
    `### ${codeSpan(signal.name)}`,
    `${sentenceAsMarkdown(signal.meaning)}.`,
    ...(signal.holds === 'quantity' ? [formTable(signal.forms)] : []),
    lines.join('\n'),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

function formTable(forms: readonly Form[]): string {
  const rows = forms.flatMap(({ unit, kind, encoding, physical, usual = [], failed = [] }) => {
    const named = `${unit === '1' ? 'none' : unit}${kind === undefined ? '' : ` ${kind}`}`;
    return [
      [named, 'possible', physical, ''],
      ...(encoding === undefined
        ? []
        : [[named, 'data carry', `${encoding.range} in steps of ${encoding.step}`, encoding.source]]),
      ...usual.map(({ state, range, source }) => [named, `usual at ${state}`, range, source]),
      ...failed.map(({ value, means }) => [named, 'failed', value, means.replace(/,$/, '')]),
    ];
  });
  const lines = rows.map((cells) => `| ${cells.map((cell) => sentenceAsMarkdown(cell)).join(' | ')} |`);
  return `| unit | what | range | source or meaning |\n| --- | --- | --- | --- |\n${lines.join('\n')}`;
}
