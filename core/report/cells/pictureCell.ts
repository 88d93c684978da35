import type { PictureCell } from '../../casefile/cell.ts';
import { pictureOf } from '../picture.ts';
import { readingTables } from '../readingTable.ts';
import { type CellContent, type CellContext, said, words } from './cellContext.ts';

/** A picture, what to look at, and what can be read off it. */
export function pictureContent(cell: PictureCell, context: CellContext): CellContent {
  const file = words(cell.file);
  return {
    title: words(cell.title),
    margin: ['Picture'],
    blocks: [
      ...(file === '' ? [] : [pictureOf(file, words(cell.alt), context.pictures)]),
      ...said(cell.shows),
      ...readingTables(context.study, context.readings, []),
    ],
  };
}
