import type { CellResult, ResultBlock } from '../../core/service/cellResult.ts';

/** What of a result can be shown, or a sentence that says why it cannot. */
export type ReadResult =
  | { readonly title: string; readonly blocks: readonly ResultBlock[] }
  | { readonly refused: string };

/**
 * An output's content. It may come from a newer extension, or from a file that was made by hand:
 * blocks of a kind that is not known here are left out.
 */
export function readResult(item: { json(): unknown }): ReadResult {
  let data: unknown;
  try {
    data = item.json();
  } catch {
    return { refused: 'This result cannot be read. Run the cell to compute it again.' };
  }
  if (!isResult(data)) {
    return { refused: 'This result was made by another version. Run the cell to compute it again.' };
  }
  return { title: data.title, blocks: data.blocks.filter(isKnown) };
}

function isResult(data: unknown): data is Pick<CellResult, 'title' | 'blocks'> {
  if (typeof data !== 'object' || data === null) return false;
  const { version, title, blocks } = data as Partial<Record<keyof CellResult, unknown>>;
  return version === 1 && typeof title === 'string' && Array.isArray(blocks);
}

/** Every kind of block that a result holds; the type makes sure that none is missing. */
const known: Readonly<Record<ResultBlock['kind'], true>> = {
  caution: true,
  table: true,
  verdict: true,
  suspect: true,
  paragraph: true,
  finding: true,
  chart: true,
};

function isKnown(block: unknown): block is ResultBlock {
  if (typeof block !== 'object' || block === null || !('kind' in block)) return false;
  return typeof block.kind === 'string' && Object.hasOwn(known, block.kind);
}
