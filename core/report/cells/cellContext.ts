import type { TextNode } from '../../casefile/tree.ts';
import type { Computed, Expectation, Reading, Study, Suspect } from '../../study/types.ts';
import type { Block, Runs } from '../blocks.ts';
import type { DrawChart } from '../chartBlock.ts';
import type { Pictures } from '../picture.ts';

/** What a cell's page is made from: the study, and what of it belongs to the cell. */
export interface CellContext {
  readonly study: Study;
  readonly index: number;
  readonly readings: readonly Reading[];
  readonly computed: readonly Computed[];
  readonly expectations: readonly Expectation[];
  readonly suspects: readonly Suspect[];
  readonly pictures: Pictures;
  /** Draws charts; without it they are told in words and figures. */
  readonly drawChart: DrawChart | undefined;
}

/** What the kinds differ in; the number, the audience and the findings are the same for all. */
export interface CellContent {
  readonly title: string;
  readonly margin: readonly string[];
  readonly blocks: readonly Block[];
}

/** A text of the case on one line, or '' where it is missing. */
export function words(node: TextNode | undefined): string {
  return node === undefined ? '' : node.text.replace(/\s+/g, ' ').trim();
}

/** A paragraph of the case's words, if there are any. */
export function said(node: TextNode | undefined, lead?: string): Block[] {
  const text = words(node);
  if (text === '') return [];
  return [{ kind: 'paragraph', ...(lead === undefined ? {} : { lead }), runs: sentence(text) }];
}

/** Authors set names between backquotes, as in a note. */
export function sentence(text: string): Runs {
  return text
    .split(/(`[^`]+`)/)
    .filter((part) => part !== '')
    .map((part) => (/^`.+`$/.test(part) ? { code: part.slice(1, -1) } : part));
}
