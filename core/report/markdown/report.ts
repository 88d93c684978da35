import { casePage, type ReportCase } from '../casePage.ts';
import { blockAsMarkdown } from './blocks.ts';
import { codeSpan, escapeMarkdown } from './escape.ts';

/** A case as Markdown: what the HTML report says, for an editor or a page that is made from Markdown. */
export function writeMarkdown(shown: ReportCase): string {
  const page = casePage(shown);
  const parts = [`# ${escapeMarkdown(page.title)}`, ...page.summary.map(escapeMarkdown)];
  for (const section of page.sections) {
    const margin = [...section.margin, ...(section.audience === undefined ? [] : [section.audience])].map(
      escapeMarkdown,
    );
    if (section.as !== undefined) margin.push(codeSpan(section.as));
    if (section.title !== '') parts.push(`## ${escapeMarkdown(section.title)}`);
    if (margin.length > 0) parts.push(`*${margin.join(' · ')}*`);
    parts.push(...section.blocks.map((block) => blockAsMarkdown(block, section.title === '' ? 1 : 2)));
  }
  if (page.answers.length > 0) parts.push('## Answers');
  for (const answer of page.answers) {
    parts.push(
      `### ${escapeMarkdown(answer.title)}`,
      ...answer.blocks.map((block) => blockAsMarkdown(block, 3)),
    );
  }
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}
