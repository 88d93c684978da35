import { codeSpan, escapeMarkdown } from '../report/markdown/escape.ts';
import type { Page } from '../report/pages.ts';

/** A page as Markdown for a hover: its title strong, then its rows. */
export function pageMarkdown({ title, rows }: Page): string {
  const [name = '', ...rest] = title.split(': ');
  const head =
    rest.length === 0
      ? `**${escapeMarkdown(title)}**`
      : `**${codeSpan(name)}** ${escapeMarkdown(rest.join(': '))}`;
  const body = rows.map(({ name: label, lines, verbatim }) => {
    const words = `*${escapeMarkdown(label)}:*`;
    if (verbatim === true) return `${words}\n\`\`\`text\n${lines.join('\n')}\n\`\`\``;
    if (lines.length === 1) return `${words} ${escapeMarkdown(lines[0] ?? '')}`;
    return `${words}\n${lines.map((line) => `- ${escapeMarkdown(line)}`).join('\n')}`;
  });
  return paragraphs([head, ...body]);
}

/** Parts of a hover, those that say nothing left out. */
export function paragraphs(parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part !== undefined && part !== '').join('\n\n');
}
