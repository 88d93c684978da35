import type { Reading } from '../study/types.ts';
import type { Span } from '../text/span.ts';
import type { Standing } from './standing.ts';
import type { InlayHint } from './types.ts';
import { ownWords } from './valueWords.ts';

/** Behind each line of recorded answers what it says: `rpm 750.00 ± 0.13 rpm`. Of many values the first are named. */
export function answerHints({ facts, text }: Standing, answers: Span): readonly InlayHint[] {
  const byLine = new Map<number, Reading[]>();
  for (const reading of facts?.readings ?? []) {
    const { bytes, valueSpan } = reading;
    if (bytes === undefined || valueSpan.start < answers.start || valueSpan.start >= answers.end) continue;
    const line = endOfLine(text, valueSpan.start);
    const there = byLine.get(line);
    if (there === undefined) byLine.set(line, [reading]);
    else there.push(reading);
  }
  return [...byLine].map(([offset, readings]) => {
    const says = readings.map(
      ({ key, value }) => `${key} ${value.kind === 'absent' ? value.why : ownWords(value)}`,
    );
    const text = says.length > most ? `${says.slice(0, most).join(', ')} …` : says.join(', ');
    return { offset, text, kind: 'value', tooltip: says.join('\n') };
  });
}

const most = 3;

function endOfLine(text: string, from: number): number {
  const found = /[\r\n]/.exec(text.slice(from));
  return found === null ? text.length : from + found.index;
}
