import { unitOf } from '../../../quantity/unit.ts';
import { type UnitRow, unitRows } from '../../../quantity/unitTable.ts';
import { unitExample } from '../../unitExample.ts';
import { codeSpan, sentenceAsMarkdown } from '../escape.ts';

/** The units on one page of Markdown, by what they measure. */
export function unitsReference(): string {
  const dimensions = [...new Set(unitRows.map(({ dimension }) => dimension))];
  const parts = dimensions.map((dimension) => {
    const rows = unitRows.filter((row) => row.dimension === dimension).map(unitLine);
    const name = dimension.name;
    return `## ${name.charAt(0).toUpperCase()}${name.slice(1)}\n\n| unit | also written | name | in SI units | example | source |\n| --- | --- | --- | --- | --- | --- |\n${rows.join('\n')}`;
  });
  return `# Units

A unit is one of these symbols, or several joined by \`/\` or \`·\`, each with a whole exponent: \`g/s\`, \`kgf/cm²\`.
Factors are exact by definition, or the exact quotient rounded once; tests compare them with the definitions and with independent libraries.
An inch of mercury is the conventional column at 0 °C, not the one at 60 °F, which is 0.28 % less.

${parts.join('\n\n')}
`;
}

function unitLine({ symbol, also, name, factor, ratio, offset = 0, source }: UnitRow): string {
  const unit = unitOf(symbol);
  const exact = ratio === undefined ? String(factor) : `${ratio[0]}/${ratio[1]}`;
  const si = `× ${exact}${offset === 0 ? '' : `, then + ${offset}`}`;
  const example = unit === undefined ? undefined : unitExample(unit);
  const cells = [
    codeSpan(symbol),
    also.map(codeSpan).join(' '),
    sentenceAsMarkdown(name),
    sentenceAsMarkdown(si),
    example === undefined ? '' : sentenceAsMarkdown(example),
    sentenceAsMarkdown(source),
  ];
  return `| ${cells.join(' | ')} |`;
}
