import type { Format, Layout, Unclear } from './layout.ts';

const delimiterWords = {
  comma: 'commas',
  semicolon: 'semicolons',
  tab: 'tabs',
  space: 'spaces',
  pipe: 'upright strokes',
} as const;

/** How a file is written, in words: "columns parted by semicolons, decimal comma, names and units in two heading rows". */
export function layoutWords(layout: Layout): string {
  const parts = [
    layout.headings.length === 1 ? 'one column' : `columns parted by ${delimiterWords[layout.delimiter]}`,
    `decimal ${layout.decimal}`,
    headingWords(layout),
  ];
  if (layout.skipped > 0) {
    parts.push(`${layout.skipped} ${layout.skipped === 1 ? 'line' : 'lines'} before it passed over`);
  }
  if (layout.encoding !== 'UTF-8') parts.push(`characters in ${layout.encoding}`);
  return parts.join(', ');
}

function headingWords({ headingRows, units }: Layout): string {
  if (headingRows === 0) return 'no heading row';
  if (headingRows === 1) return 'one heading row';
  return units === undefined
    ? `names in ${headingRows} heading rows`
    : `names and units in ${headingRows} heading rows`;
}

/** Whether a file is written as one would write it by default, so that there is nothing to tell. */
export function isUsual({ delimiter, decimal, headingRows, skipped, encoding }: Layout): boolean {
  return (
    delimiter === 'comma' && decimal === 'point' && headingRows === 1 && skipped === 0 && encoding === 'UTF-8'
  );
}

/** Whether the author said everything that would otherwise be recognised. */
export function saysAll(format: Format): boolean {
  return format.delimiter !== undefined && format.decimal !== undefined && format.headingRows !== undefined;
}

/** The `format` that says how a file is written, as it stands in a cell. */
export function formatText({ delimiter, decimal, headingRows, skipped }: Layout): string {
  const skip = skipped > 0 ? `, skip: ${skipped}` : '';
  return `{delimiter: ${delimiter}, decimal: ${decimal}, heading rows: ${headingRows}${skip}}`;
}

/** What a reading makes of a line: "`1` and `5`", or "`1.5`". */
export function readingWords({ delimiter, decimal, sample }: Layout): string {
  const first = sample.find((fields) => fields.some((each) => each.includes(','))) ?? sample[0] ?? [];
  const fields = first
    .slice(0, 4)
    .map((each) => `\`${decimal === 'comma' ? each.replace(',', '.') : each.replaceAll(',', '')}\``);
  const more = first.length > 4 ? ' …' : '';
  const count = first.length === 1 ? 'one column' : `${first.length} columns`;
  const parted = first.length === 1 ? '' : `, parted by ${delimiterWords[delimiter]}`;
  return `${count}${parted}, decimal ${decimal}: ${fields.join(', ')}${more}`;
}

/** Why there are no samples in a file, and what to do about it. */
export function whyNoSamples(
  why: Extract<Unclear, { readonly is: 'empty' | 'binary' | 'no samples' }>,
): string {
  switch (why.is) {
    case 'empty':
      return 'it is empty';
    case 'binary':
      return why.what === undefined
        ? `it is no text (byte ${why.offset + 1}, in line ${why.line}, is none of a text’s). Export it from the tool as delimited text`
        : `it is ${why.what}. ${otherWords[why.what]}`;
    case 'no samples':
      return why.what === undefined
        ? `no line of it holds numbers in columns. It starts with \`${why.first}\``
        : `it is ${why.what}. ${otherWords[why.what]}`;
  }
}

const otherWords = {
  'a workbook or an archive': 'Open it and save the sheet as delimited text (CSV)',
  'a page of HTML or XML': 'Export it from the tool as delimited text (CSV)',
  JSON: 'Export it from the tool as delimited text (CSV)',
  'text in UTF-32': 'Save it as UTF-8',
} as const;
