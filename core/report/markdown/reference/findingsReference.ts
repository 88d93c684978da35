import { rulesRows } from '../../../diagnostics/catalogue/rules.ts';
import type { Code } from '../../../diagnostics/diagnostic.ts';
import { allCodes, rowOf } from '../../../diagnostics/pages.ts';
import { allRules } from '../../../rules/allRules.ts';
import { codeSpan, sentenceAsMarkdown, sentencesAsMarkdown } from '../escape.ts';

/** The checks that always run, on one page of Markdown. */
export function rulesReference(): string {
  return `# Checks that always run

Nobody has to write these; each looks at every case.
A setting of the editor changes the severity of each, or turns it off.

${ruleCodes().map(findingPart).join('\n\n')}
`;
}

/** Everything else that can be found in a file, on one page of Markdown. */
export function findingsReference(): string {
  const rules = new Set<string>(ruleCodes());
  return `# Findings

What is found while a case is read: its file, its quantities, its expressions, its names.
The checks that always run have [a page of their own](../rules/RULES.md).

${allCodes()
  .filter((code) => !rules.has(code))
  .map(findingPart)
  .join('\n\n')}
`;
}

/** The codes of the rules, with what else stands in their part of the catalogue. */
function ruleCodes(): Code[] {
  return [...new Set([...allRules.map(({ code }) => code), ...(Object.keys(rulesRows) as Code[])])];
}

function findingPart(code: Code): string {
  const { title, severity, why, wrong, right } = rowOf(code);
  const sort = severity === 'info' ? 'A note' : severity === 'error' ? 'An error' : 'A warning';
  return [
    `### ${codeSpan(code)}`,
    `${sort}: ${sentenceAsMarkdown(title)}.`,
    sentencesAsMarkdown(why),
    ...example('Wrong', wrong),
    ...example('Right', right),
  ].join('\n\n');
}

function example(heading: string, text: string): string[] {
  return text === '' ? [] : [`${heading}:`, `\`\`\`yaml\n${text.trimEnd()}\n\`\`\``];
}
