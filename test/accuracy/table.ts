/**
 * How well a function reads a synthetic signal whose truth is known: one table. Rows are sizes of a fault (or other
 * cases), columns how much the signal is disturbed. Every cell is measured with several seeds.
 */
export interface AccuracyTable {
  /** The function as a case writes it: "relative_compression(current, sync)", and what of it is meant. */
  readonly of: string;
  /** One or more sentences, a line each: what signal, from which equations, at which rate. */
  readonly about: readonly string[];
  /** The unit of the errors: "%", "°CA", "ms". */
  readonly unit: string;
  readonly rowsAre: string;
  readonly rows: readonly string[];
  readonly columnsAre: string;
  readonly columns: readonly string[];
  /** Read minus true, in the table's unit, for one seed; undefined where the function gives no answer. */
  readonly error: (row: number, column: number, seed: number) => number | undefined;
}

/** What a file `test/accuracy/*.accuracy.ts` exports as default. Files with the same page come in the order of their names. */
export interface AccuracySection {
  /** The page beside what it documents, from the repository's root: "core/waveform/ACCURACY.md". */
  readonly page: string;
  readonly title: string;
  readonly tables: readonly AccuracyTable[];
}

/** Seeds a cell is measured with. */
const seeds = [1, 2, 3];

/** "0.12 (0.3)": the root mean square of the errors over the seeds, and the worst; how often there was no answer. */
export function cell({ error }: AccuracyTable, row: number, column: number): string {
  const errors = seeds.map((seed) => error(row, column, seed));
  const found = errors.filter((each) => each !== undefined);
  const lost = errors.length - found.length;
  const missing = lost === 0 ? '' : `no answer ${lost} of ${errors.length}`;
  if (found.length === 0) return missing;
  const square = found.reduce((sum, each) => sum + each * each, 0) / found.length;
  const worst = Math.max(...found.map(Math.abs));
  return `${digits(Math.sqrt(square))} (${digits(worst)})${missing === '' ? '' : `, ${missing}`}`;
}

/** Two figures, and nothing finer than a millionth. */
function digits(value: number): string {
  if (value < 1e-6) return '0';
  return String(Number(value.toPrecision(2)));
}

/** A section of the page; `write` gives the text of a cell. */
export function sectionText(
  { title, tables }: AccuracySection,
  write: (table: AccuracyTable, row: number, column: number) => string = cell,
): string {
  return [`## ${title}`, ...tables.map((table) => tableText(table, write))].join('\n\n');
}

function tableText(
  table: AccuracyTable,
  write: (table: AccuracyTable, row: number, column: number) => string,
): string {
  const { of, about, unit, rowsAre, rows, columnsAre, columns } = table;
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    `### ${of}`,
    `${[...about, `Errors in ${unit}; across: ${columnsAre}.`].join('\n')}`,
    [
      line([rowsAre, ...columns]),
      line(['---', ...columns.map(() => '---:')]),
      ...rows.map((name, row) => line([name, ...columns.map((_, column) => write(table, row, column))])),
    ].join('\n'),
  ].join('\n\n');
}

const head = `# Accuracy

How far the functions' readings are from the truth, measured on synthetic signals whose truth is known.
\`npm run accuracy\` writes this page; nothing here is written by hand.
Each cell is measured with ${seeds.length} seeds: the root mean square of the errors, and in brackets the worst.
The signals come from the published equations in \`test/support/signal\` and are no recordings.
`;

export function pageText(sections: readonly string[]): string {
  return `${[head.trimEnd(), ...sections].join('\n\n')}\n`;
}
