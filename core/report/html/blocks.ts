import type { Block } from '../blocks.ts';
import { blockMarkup } from '../markup/blocks.ts';
import { element } from '../markup/markup.ts';
import { leadMarkup } from '../markup/runs.ts';
import { writeMarkup } from './markup.ts';
import { writeNote } from './note.ts';

/** Blocks as HTML. `level` is that of the heading they stand under. */
export function writeBlocks(blocks: readonly Block[], level: number): string {
  return blocks.map((block) => writeBlock(block, level)).join('\n');
}

function writeBlock(block: Block, level: number): string {
  if (block.kind !== 'prose') return blockMarkup(block).map(writeMarkup).join('');
  const lead = block.lead === undefined ? '' : writeMarkup(element('p', {}, ...leadMarkup(block.lead)));
  return `${lead}${writeNote(block.markdown, level)}`;
}
