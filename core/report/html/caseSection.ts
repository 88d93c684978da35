import type { CasePage, Section } from '../blocks.ts';
import { writeBlocks } from './blocks.ts';
import { escapeHtml } from './escape.ts';

/** A case as an article; its heading is of `level`, its cells' one deeper. */
export function writeCase(page: CasePage, id: string, level: number): string {
  const sections = page.sections.map((section) =>
    section.keptBack ? writePointer(section, id) : writeSection(section, `${id}-cell`, level + 1),
  );
  return `<article class="case" id="${id}" aria-labelledby="${id}-title">
<h${level} id="${id}-title">${escapeHtml(page.title)}</h${level}>
${page.summary.map((line) => `<p class="summary">${escapeHtml(line)}</p>`).join('\n')}
${sections.join('\n')}
${writeEnd(page, id, level + 1)}</article>`;
}

/** Where the author kept a cell back: a way to the end, which gives nothing away. */
function writePointer({ number, margin }: Section, id: string): string {
  return `<section class="cell no-heading" id="${id}-cell-${number}">
<div class="margin"><p class="what">${escapeHtml(margin[0] ?? '')}</p></div>
<div class="body">
<p class="soft"><a href="#${id}-after-${number}">After the answers, at the end.</a></p>
</div>
</section>`;
}

/** `back` leads from the end of the page to the cell's own place. */
function writeSection(section: Section, ids: string, level: number, back?: string): string {
  const own = `${ids}-${section.number}`;
  const margin = [
    ...section.margin.map((words, i) => `<p${i === 0 ? ' class="what"' : ''}>${escapeHtml(words)}</p>`),
    ...(section.as === undefined ? [] : [`<p><code>${escapeHtml(section.as)}</code></p>`]),
    ...(section.audience === undefined ? [] : [`<p class="audience">${escapeHtml(section.audience)}</p>`]),
    ...(back === undefined ? [] : [`<p><a href="#${back}">to its place</a></p>`]),
  ].join('');
  const heading = section.title === '' ? '' : `<h${level}>${escapeHtml(section.title)}</h${level}>\n`;
  return `<section class="cell${heading === '' ? ' no-heading' : ''}" id="${own}">
${heading}<div class="margin">${margin}</div>
<div class="body">
${writeBlocks(section.blocks, heading === '' ? level - 1 : level)}
</div>
</section>`;
}

/** The answers, and behind them what was kept back. */
function writeEnd(page: CasePage, id: string, level: number): string {
  if (page.answers.length + page.after.length === 0) return '';
  const after = page.after.map((section) =>
    writeSection(section, `${id}-after`, level + 1, `${id}-cell-${section.number}`),
  );
  const answers = page.answers.map(
    (answer) => `<section class="cell" id="${id}-answer-${answer.number}">
<h${level + 1}>${escapeHtml(answer.title)}</h${level + 1}>
<div class="margin"><p class="what">Answer</p><p><a href="#${id}-cell-${answer.number}">to the question</a></p></div>
<div class="body">
${writeBlocks(answer.blocks, level + 1)}
</div>
</section>`,
  );
  return `<section class="answers" aria-labelledby="${id}-answers">
<h${level} id="${id}-answers">Answers</h${level}>
${[...answers, ...after].join('\n')}
</section>
`;
}
