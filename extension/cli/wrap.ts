import { displayWidth } from './displayWidth.ts';

/**
 * A paragraph for the terminal, `first` set before its first line and as many blanks as `hang` before the others.
 * Lines end at blanks, and none between a number and its unit; a word that is longer than a line stands as it is.
 * What paints takes no room.
 */
export function wrap(text: string, width: number, first: string, hang: number): string {
  if (width === Number.POSITIVE_INFINITY) return `${first}${text}\n`;
  const lines: string[] = [];
  let line = first;
  let room = width - seen(first);
  let isFresh = true;
  for (const word of together(text).split(' ')) {
    const takes = seen(word);
    if (!isFresh && takes + 1 > room) {
      lines.push(line);
      line = ' '.repeat(hang);
      room = width - hang;
      isFresh = true;
    }
    line += isFresh ? word : ` ${word}`;
    room -= takes + (isFresh ? 0 : 1);
    isFresh = false;
  }
  return `${[...lines, line].join('\n').replaceAll(blank, ' ')}\n`;
}

/** Stands for a blank at which no line ends; texts of a case have none (`harmless`). */
const blank = '\u0000';

function together(text: string): string {
  return text
    .replace(/(\d|±) (?=[%°a-zA-ZµΩ\d±])/g, `$1${blank}`)
    .replace(/(\S) (?=± )/g, `$1${blank}`)
    .replaceAll(' .. ', `${blank}..${blank}`);
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: it is what paints
const seen = (text: string): number => displayWidth(text.replace(/\u001b\[[\d;]*m/g, ''));
