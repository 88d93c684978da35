import { blockMarkup } from '../../core/report/markup/blocks.ts';
import { type Markup, element as markupElement } from '../../core/report/markup/markup.ts';
import type { AskCloser } from './askCloser.ts';
import { makeNode } from './makeNode.ts';
import { reachByKeyboard } from './reachByKeyboard.ts';
import type { ReadResult } from './readResult.ts';
import { showCharts } from './showCharts.ts';
import { style } from './style.ts';

/** A result on the page, until it is disposed of. */
export interface Shown {
  dispose(): void;
}

/**
 * Shows a result in an output's element, in a shadow root of its own: other outputs' styles do not reach in.
 * An element that showed a result before shows the new one instead.
 */
export function showResult(result: ReadResult, host: HTMLElement, ask: AskCloser | undefined): Shown {
  const root = host.shadowRoot ?? host.attachShadow({ mode: 'open' });
  root.adoptedStyleSheets = [sheet()];
  const page = makeNode(pageOf(result));
  root.replaceChildren(page);
  const reach = reachByKeyboard(root);
  const blocks = 'refused' in result ? [] : result.blocks.filter((each) => each.kind === 'chart');
  const charts = showCharts(blocks, root, ask);
  return {
    dispose() {
      charts.dispose();
      reach.dispose();
      page.remove();
    },
  };
}

function pageOf(result: ReadResult): Markup {
  if ('refused' in result) return page('Result', [markupElement('p', {}, result.refused)]);
  const name = result.title === '' ? 'Result' : `Result: ${result.title}`;
  return page(name, result.blocks.flatMap(setBlock));
}

const page = (name: string, children: readonly Markup[]): Markup =>
  markupElement('div', { class: 'page', role: 'group', 'aria-label': name }, ...children);

/** A block that is not of the shape it claims is told, and the others still stand. */
function setBlock(block: Parameters<typeof blockMarkup>[0]): Markup[] {
  try {
    return blockMarkup(block);
  } catch {
    return [markupElement('p', {}, `A part of this result (${block.kind}) cannot be shown.`)];
  }
}

let made: CSSStyleSheet | undefined;

/** One style sheet for all results of a notebook. It is made here and not written into the page: a strict policy allows that. */
function sheet(): CSSStyleSheet {
  if (made === undefined) {
    made = new CSSStyleSheet();
    made.replaceSync(style);
  }
  return made;
}
