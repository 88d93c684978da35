import type { FunctionRow, Parameter } from '../../../expression/functionRow.ts';
import { sayLimits } from '../../../expression/sayLimits.ts';
import { formulaLines } from '../../formulaLines.ts';
import { parameterName, resultWords } from '../../pages.ts';
import { rangeWords, substitutesFor } from '../../parameterWords.ts';
import { codeSpan, sentenceAsMarkdown, sentencesAsMarkdown } from '../escape.ts';
import { byFamily } from './families.ts';

/** Functions on one page of Markdown, family by family, from their rows. */
export function functionsReference(title: string, about: string, rows: readonly FunctionRow[]): string {
  return `# ${title}\n\n${about}\nEvery example is computed anew by a test.\n\n${byFamily(rows, functionPart)}\n`;
}

function functionPart(row: FunctionRow): string {
  const { example, says } = row;
  const given = example.given === undefined ? '' : `, with ${codeSpan(`spec.${example.given}`)}`;
  const lines = [
    ...givesLines(row),
    ...(rangeWords(row) === '' ? [] : [`Range: ${sentence(rangeWords(row))}`]),
    `Example: ${codeSpan(example.expression)} is ${codeSpan(example.result)}${given}.`,
    `Source: ${sentence(row.source)}`,
  ];
  return [
    `### ${codeSpan(`${row.name}(${row.parameters.map(parameterName).join(', ')})`)}`,
    sentencesAsMarkdown(row.summary),
    `\`\`\`\n${formulaLines(row).join('\n')}\n\`\`\``,
    parameterTable(row.parameters),
    lines.join('\n'),
    ...(says === undefined ? [] : [sayingTable(says)]),
    row.errors.length === 0
      ? ''
      : `No answer:\n\n${row.errors.map((each) => `- ${sentenceAsMarkdown(each)}`).join('\n')}`,
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** One value in a sentence, several as a list. */
function givesLines(row: FunctionRow): string[] {
  const lines = resultWords(row).split('\n');
  if (lines.length === 1) return [`Gives ${sentence(lines[0] ?? '')}`];
  return ['Gives, each read by its name:', '', ...lines.map((line) => `- ${sentenceAsMarkdown(line)}`), ''];
}

function parameterTable(parameters: readonly Parameter[]): string {
  if (parameters.length === 0) return '';
  const rows = parameters.map((parameter) => {
    const { name, meaning, takes, within } = parameter;
    const limits = within === undefined ? '' : sentenceAsMarkdown(sayLimits(within));
    return `| ${codeSpan(name)} | ${sentenceAsMarkdown(meaning)} | ${takesWords(takes)} | ${limits} | ${leftOut(parameter)} |`;
  });
  return `| takes | what | unit | within | left out |\n| --- | --- | --- | --- | --- |\n${rows.join('\n')}`;
}

function takesWords({ what, unit, kind }: Parameter['takes']): string {
  const words = unit === undefined ? what : unit === '1' ? 'plain number' : unit;
  return sentenceAsMarkdown(kind === undefined || kind === 'none' ? words : `${words} ${kind}`);
}

function leftOut(parameter: Parameter): string {
  const from = substitutesFor(parameter).map(({ words, is }) => (is === 'words' ? words : codeSpan(words)));
  return [...from, ...(parameter.optional === true ? ['nothing'] : [])].join(', otherwise ');
}

function sayingTable(says: NonNullable<FunctionRow['says']>): string {
  const rows = says.map(
    ({ words, meaning }) => `| ${sentenceAsMarkdown(words)} | ${sentenceAsMarkdown(meaning)} |`,
  );
  return `| says | what it usually means |\n| --- | --- |\n${rows.join('\n')}`;
}

function sentence(text: string): string {
  return `${sentenceAsMarkdown(text)}${text.endsWith('.') ? '' : '.'}`;
}
