import type { TestCell } from '../../casefile/cell.ts';
import type { Block } from '../blocks.ts';
import { pictureOf } from '../picture.ts';
import { type CellContent, type CellContext, words } from './cellContext.ts';

/** Something done by hand: what was done, where, and what came of it. */
export function testContent(cell: TestCell, context: CellContext): CellContent {
  const rows = [
    ...row('Did', words(cell.did)),
    ...row('At', words(cell.at)),
    ...row('Found', words(cell.found)),
    ...row('Result', words(cell.result)),
    ...row('With', words(cell.tool)),
  ];
  const blocks: Block[] = rows.length === 0 ? [] : [{ kind: 'facts', rows }];
  const file = words(cell.picture);
  if (file !== '') blocks.push(pictureOf(file, words(cell.found), context.pictures));
  return { title: words(cell.title), margin: ['Test'], blocks };
}

const row = (name: string, text: string): { name: string; runs: string[] }[] =>
  text === '' ? [] : [{ name, runs: [text] }];
