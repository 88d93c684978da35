import { allSignals } from '../signals/lookup.ts';
import { functionNames, functionRow } from '../study/functions.ts';

/** A function or a signal that speaks of something, with what it is in a sentence or a clause. */
export interface Mention {
  readonly name: string;
  readonly about: string;
}

/** So many fit on a screen. */
const most = 8;

/** The functions, then the signals, in whose names, words or parameters all of these words begin a word: "pull-up" is in `sensor_circuit`. Those that have them side by side come first. */
export function mentions(text: string): readonly Mention[] {
  const asked = plainly(text).split(' ').filter(Boolean);
  if (asked.length === 0) return [];
  const phrase = ` ${asked.join(' ')}`;
  const found = [...functions(), ...signals()].filter(({ words }) =>
    asked.every((each) => words.includes(` ${each}`)),
  );
  const together = found.filter(({ words }) => words.includes(phrase));
  return [...together, ...found.filter((each) => !together.includes(each))]
    .slice(0, most)
    .map(({ name, about }) => ({ name, about }));
}

interface Spoken extends Mention {
  readonly words: string;
}

function functions(): readonly Spoken[] {
  return functionNames().flatMap((name) => {
    const row = functionRow(name);
    if (row === undefined) return [];
    const { summary, parameters, says = [] } = row;
    const said = [
      ...parameters.map((each) => `${each.name} ${each.meaning}`),
      ...says.map((each) => `${each.words} ${each.meaning}`),
    ];
    return [{ name, about: summary, words: ` ${plainly([name, summary, ...said].join(' '))}` }];
  });
}

function signals(): readonly Spoken[] {
  return allSignals().map(({ name, meaning, alsoCalled = [], note = '' }) => ({
    name,
    about: meaning,
    words: ` ${plainly([name, meaning, ...alsoCalled, note].join(' '))}`,
  }));
}

/** Capitals, hyphens, low lines and marks do not count. */
function plainly(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
