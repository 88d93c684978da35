import markdownIt, { type MarkdownIt } from 'markdown-it';
import { harmless } from '../harmless.ts';
import { outlineDepths } from '../outline.ts';
import { escapeHtml } from './escape.ts';

/**
 * An author's Markdown as HTML. Raw HTML stays text, links go to the web, to mail or within the page,
 * and pictures are named but not fetched: a report asks nothing of the net.
 * Headings start below `level` and skip none, so that the page's outline stays whole.
 */
export function writeNote(markdown: string, level: number): string {
  made ??= makeRenderer();
  const env = {};
  const tokens = made.parse(harmless(markdown), env);
  const openings = tokens.filter((token) => token.type === 'heading_open');
  const depths = outlineDepths(openings.map((token) => Number(token.tag.slice(1))));
  const tags = depths.map((depth) => `h${Math.min(6, level + depth)}`);
  let at = 0;
  for (const token of tokens) {
    if (token.type === 'heading_open') token.tag = tags[at] ?? token.tag;
    if (token.type === 'heading_close') token.tag = tags[at++] ?? token.tag;
  }
  return made.renderer.render(tokens, made.options, env);
}

let made: MarkdownIt | undefined;

function makeRenderer(): MarkdownIt {
  const md = markdownIt('default', { html: false, linkify: false, typographer: false });
  md.validateLink = (url) => /^(?:https?:\/\/|mailto:|#)/i.test(url.trim());
  const { rules } = md.renderer;
  rules.image = (tokens, index) => {
    const words = tokens[index]?.content ?? '';
    return `<span class="soft">[picture${words === '' ? '' : `: ${escapeHtml(words)}`}]</span>`;
  };
  rules.table_open = () => '<div class="wide"><table>\n';
  rules.table_close = () => '</table></div>\n';
  return md;
}
