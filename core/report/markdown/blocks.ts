import type { Block, ChartBlock, FindingLine, Runs, SuspectLine, VerdictLine } from '../blocks.ts';
import { severityWord } from '../severityWord.ts';
import { codeSpan, escapeMarkdown, runsAsMarkdown } from './escape.ts';
import { proseAsMarkdown } from './prose.ts';
import { tableAsMarkdown } from './table.ts';

/** A block as Markdown; `level` is that of the heading it stands under. */
export function blockAsMarkdown(block: Block, level: number): string {
  switch (block.kind) {
    case 'paragraph':
      return `${lead(block.lead)}${runsAsMarkdown(block.runs)}`.trimEnd();
    case 'prose':
      return `${block.lead === undefined ? '' : `${lead(block.lead)}\n\n`}${proseAsMarkdown(block.markdown, level)}`;
    case 'facts':
      return block.rows
        .map(
          ({ name, runs }) => `${name === '' ? '' : `**${escapeMarkdown(name)}:** `}${runsAsMarkdown(runs)}`,
        )
        .join('  \n');
    case 'bullets':
      return `${block.lead === undefined ? '' : `${lead(block.lead)}\n\n`}${block.items
        .map((runs, at) => `- ${block.style === 'letter' ? `${letter(at)}) ` : ''}${runsAsMarkdown(runs)}`)
        .join('\n')}`;
    case 'table':
      return tableAsMarkdown(block);
    case 'verdict':
      return verdict(block);
    case 'picture':
      return block.dataUri === undefined
        ? `Picture ${codeSpan(block.file)}. ${escapeMarkdown(block.missing ?? '')}\n\n*${escapeMarkdown(block.alt)}*`
        : `![${escapeMarkdown(block.alt)}](${block.dataUri})`;
    case 'caution':
      return `> **Caution: ${escapeMarkdown(block.title)}.** ${escapeMarkdown(block.text)}`;
    case 'suspect':
      return suspect(block);
    case 'finding':
      return finding(block);
    case 'chart':
      return chart(block);
    case 'source':
      return fenced(block.text);
  }
}

const lead = (words: string | undefined): string =>
  words === undefined ? '' : `*${escapeMarkdown(words)}:* `;

const letter = (at: number): string => String.fromCharCode(97 + (at % 26));

/** A chart in words and figures. */
function chart({ title, summary, table }: ChartBlock): string {
  return [`**${escapeMarkdown(title)}**`, ...summary.map(escapeMarkdown), tableAsMarkdown(table)].join(
    '\n\n',
  );
}

function verdict(line: VerdictLine): string {
  const measured = line.measured === '' ? '' : `${escapeMarkdown(line.measured)}: `;
  const remark = line.remark === undefined ? '' : `, ${escapeMarkdown(line.remark)}`;
  const why = line.why === undefined || line.why === '' ? '' : ` (${escapeMarkdown(line.why)})`;
  return [
    `${line.sign} ${codeSpan(line.text)}`,
    `${measured}**${line.word}**${remark}${why}.`,
    ...(line.ifFails === undefined ? [] : [`${lead('If it fails')}${escapeMarkdown(line.ifFails)}`]),
    ...(line.from.length === 0 ? [] : [`from ${line.from.map(codeSpan).join(', ')}`]),
  ].join('  \n');
}

function suspect(line: SuspectLine): string {
  const reasons = (words: string, items: readonly Runs[]): string[] =>
    items.length === 0 ? [] : [`${lead(words)}${items.map(runsAsMarkdown).join('; ')}.`];
  return [
    `${line.sign} **${escapeMarkdown(line.name)}**: ${line.standing}.`,
    ...reasons('For it', line.for),
    ...reasons('Against it', line.against),
    ...reasons('Missing', line.missing),
  ].join('  \n');
}

function finding(line: FindingLine): string {
  const where = `line ${line.line}, column ${line.column}, ${codeSpan(line.code)}`;
  const { before, marked, after } = line.frame;
  const text = before + marked + after;
  const frame = text === '' || line.severity === 'info' ? '' : `\n\n${fenced(text)}`;
  const offers =
    line.offers.length === 0 ? '' : `\n\nOffered: ${line.offers.map(escapeMarkdown).join('; ')}.`;
  return `**${severityWord(line.severity)}** ${escapeMarkdown(line.message)} (${where})${frame}${offers}`;
}

function fenced(text: string): string {
  const longest = Math.max(2, ...(text.match(/`+/g) ?? []).map((run) => run.length));
  const fence = '`'.repeat(longest + 1);
  return `${fence}text\n${text}\n${fence}`;
}
