import type { Fix } from '../../diagnostics/diagnostic.ts';
import type { WrittenEntry } from './writtenEntry.ts';

/**
 * Offers to write a value of several lines as a block, where no character means anything but itself:
 * `|` keeps the lines (a note's Markdown), `>-` joins them as they were meant.
 */
export function blockFormFix(text: string, entry: WrittenEntry, mark: '|' | '>-'): Fix | undefined {
  if (entry.below.length === 0) return undefined;
  const indent = Math.min(...entry.below.map((line) => line.column));
  const lineBreak = text.includes('\r\n') ? '\r\n' : text.includes('\n') ? '\n' : '\r';
  const at = entry.value.start;
  const newText = `${mark}${lineBreak}${' '.repeat(indent)}`;
  return {
    title: `Write the text as a block after \`${mark}\``,
    edits: [{ span: { start: at, end: at }, newText }],
  };
}
