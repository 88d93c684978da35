import type { Answer } from '../engine/obd/answer.ts';
import type { Decoded } from '../engine/obd/decodeObd.ts';
import { spanOnTape } from '../engine/obd/tape.ts';
import { type LineIndex, lineIndex, positionAt } from '../text/lines.ts';
import { itemWords } from './answerTable.ts';

/**
 * A recording as cells of readings to paste into a case: its lines that hold answers, as they were, each with what it
 * says as a remark. Each freeze frame gets a cell of its own. Nothing where nothing was answered.
 */
export function answerCells(text: string, decoded: Decoded): string {
  const frozen = decoded.answers.filter((each) => each.service === 2);
  const frames = [...new Set(frozen.map(({ frame = 0 }) => frame))].sort((a, b) => a - b);
  const current = decoded.answers.filter((each) => each.service !== 2);
  return [
    cellOf('readings: Read over the diagnostic link\n', text, decoded, current),
    ...frames.map((frame) =>
      cellOf(
        `readings: When the code was stored${frame === 0 ? '' : `, frame ${frame}`}\nwhen: freeze frame\n`,
        text,
        decoded,
        frozen.filter((each) => (each.frame ?? 0) === frame),
      ),
    ),
  ]
    .map((cell) => (cell === '' ? '' : `---\n${cell}`))
    .join('');
}

function cellOf(head: string, text: string, decoded: Decoded, answers: readonly Answer[]): string {
  const lines = linesOf(text, decoded, answers);
  if (lines.size === 0) return '';
  const rows = [...lines]
    .sort(([a], [b]) => a - b)
    .map(([start, says]) => {
      const line = lineAt(text, start);
      return says.length === 0 || / #/.test(line) ? `  ${line}\n` : `  ${line}   # ${fewOf(says)}\n`;
    });
  return `${head}obd: |\n${rows.join('')}`;
}

/** Where the lines start that hold bytes of the answers, with what begins on each. */
function linesOf(
  text: string,
  { tape, codes }: Decoded,
  answers: readonly Answer[],
): ReadonlyMap<number, string[]> {
  const lines = new Map<number, string[]>();
  const index = lineIndex(text);
  const at = (place: number): string[] => {
    const start = index.starts[positionAt(index, place).line - 1] ?? 0;
    const says = lines.get(start) ?? [];
    lines.set(start, says);
    return says;
  };
  for (const answer of answers) {
    for (let byte = answer.from; byte < answer.to; byte++) at(tape.places[byte] ?? 0);
    for (const start of lengthsAbove(text, index, tape.places[answer.from] ?? 0)) at(start);
    for (const item of answer.items) {
      const { value, unit } = itemWords(item);
      const words = `${item.signal ?? item.meaning} ${value}${unit === '' ? '' : ` ${unit}`}`;
      at(spanOnTape(tape, item.from, item.to).start).push(words);
    }
    for (const { code, status, from } of codes)
      if (from >= answer.from && from < answer.to) at(tape.places[from] ?? 0).push(`${code} ${status}`);
  }
  return lines;
}

/** Where the lines start that stand above `0: 49 02 …` and say how long its message is, such as `014`: it cannot be read without. */
function lengthsAbove(text: string, index: LineIndex, place: number): readonly number[] {
  const { starts } = index;
  let line = positionAt(index, place).line - 1;
  if (!/^0:/.test(lineAt(text, starts[line] ?? 0))) return [];
  const found: number[] = [];
  for (line--; line >= 0; line--) {
    const above = lineAt(text, starts[line] ?? 0);
    if (/^[0-9a-f]{3}$/i.test(above)) found.push(starts[line] ?? 0);
    else if (above !== '') break;
  }
  return found;
}

const fewOf = (says: readonly string[]): string =>
  says.length > 5 ? `${says.slice(0, 4).join(', ')} and ${says.length - 4} more` : says.join(', ');

/** A line without prompts and without what would end a block of YAML early. */
function lineAt(text: string, start: number): string {
  const length = text.slice(start).search(/[\r\n]/);
  const line = length < 0 ? text.slice(start) : text.slice(start, start + length);
  return line
    .replace(/^[>\s]+/, '')
    .replace(/\t/g, ' ')
    .trimEnd();
}
