import type { CaptureCell } from '../../casefile/cell.ts';
import { readingTables } from '../readingTable.ts';
import { type CellContent, type CellContext, sentence, words } from './cellContext.ts';
import { stateWords } from './readingsCell.ts';

/** Sampled channels, each in one line. */
export function captureContent(cell: CaptureCell, context: CellContext): CellContent {
  const named = (cell.channels ?? []).map((each) => `${each.key.text} (${words(each.value.column)})`);
  const readAs = context.study.memo.names.cells[context.index]?.readAs ?? [];
  return {
    title: words(cell.title),
    margin: [
      'Capture',
      ...(cell.when === undefined ? [] : [words(cell.when)]),
      ...stateWords(cell.state),
      ...(cell.tool === undefined ? [] : [`with ${words(cell.tool)}`]),
    ],
    blocks: [
      ...(cell.file === undefined
        ? []
        : [{ kind: 'paragraph' as const, lead: 'From', runs: [{ code: words(cell.file) }] }]),
      ...(readAs.length === 0
        ? []
        : [{ kind: 'paragraph' as const, lead: 'Read as', runs: sentence(`${readAs.join('; ')}.`) }]),
      ...(context.readings.length > 0
        ? readingTables(context.study, context.readings, [])
        : named.length === 0
          ? []
          : [{ kind: 'paragraph' as const, lead: 'Channels', runs: [named.join('; ')] }]),
    ],
  };
}
