import type { Block } from '../../core/report/blocks.ts';
import { casePage } from '../../core/report/casePage.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import type { CellResult, ResultBlock } from '../../core/service/cellResult.ts';

const shown = new Set<Block['kind']>(['caution', 'table', 'verdict', 'suspect', 'paragraph', 'finding']);
const isShown = (block: Block): block is ResultBlock => shown.has(block.kind);

/** The results of a case's cells, as they arrive: as JSON. */
export function resultsOf(text: string, file = 'case.diag'): CellResult[] {
  const study = checkCase(text);
  const page = casePage({ study, file, pictures: () => undefined });
  return page.sections.map(
    (section): CellResult => ({
      version: 1,
      kind: study.file.cells[section.number - 1]?.cell?.kind ?? 'unread',
      title: section.title,
      blocks: section.blocks.filter(isShown),
      markdown: '',
      status: undefined,
    }),
  );
}
