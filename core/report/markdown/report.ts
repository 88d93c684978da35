import type { Section } from '../blocks.ts';
import { casePage, type ReportCase } from '../casePage.ts';
import { blockAsMarkdown } from './blocks.ts';
import { codeSpan, escapeMarkdown } from './escape.ts';

/** A case as Markdown: what the HTML report says, for an editor or a page that is made from Markdown. */
export function writeMarkdown(shown: ReportCase): string {
  const page = casePage(shown);
  const parts = [`# ${escapeMarkdown(page.title)}`, ...page.summary.map(escapeMarkdown)];
  for (const section of page.sections) parts.push(...sectionParts(section, 2));
  if (page.answers.length + page.after.length > 0) parts.push('## Answers');
  for (const answer of page.answers) {
    parts.push(
      `### ${escapeMarkdown(answer.title)}`,
      ...answer.blocks.map((block) => blockAsMarkdown(block, 3)),
    );
  }
  for (const section of page.after) parts.push(...sectionParts(section, 3));
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

/** A cell under a heading of `level`; one that is kept back is a line that points to the end. */
function sectionParts(section: Section, level: number): string[] {
  const margin = [...section.margin, ...(section.audience === undefined ? [] : [section.audience])].map(
    escapeMarkdown,
  );
  if (section.as !== undefined) margin.push(codeSpan(section.as));
  return [
    ...(section.title === '' ? [] : [`${'#'.repeat(level)} ${escapeMarkdown(section.title)}`]),
    ...(margin.length === 0 ? [] : [`*${margin.join(' · ')}*`]),
    ...(section.keptBack ? ['After the answers, at the end.'] : []),
    ...section.blocks.map((block) => blockAsMarkdown(block, section.title === '' ? level - 1 : level)),
  ];
}
