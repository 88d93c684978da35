import type { CaptureCell, ReferenceCell } from '../../casefile/cell.ts';
import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose, type Fix } from '../../diagnostics/diagnostic.ts';
import { parseQuantity } from '../../quantity/parse.ts';
import type { Quantity } from '../../quantity/types.ts';
import { clockSeconds } from '../../recording/clock.ts';
import { formatText, isUsual, layoutWords, readingWords, saysAll } from '../../recording/describe.ts';
import { type FileBytes, type FileContent, largestFile, type WhyNoFile } from '../../recording/files.ts';
import { type Format, type Layout, noFormat, type Unclear } from '../../recording/layout.ts';
import { isMissing, numberIn } from '../../recording/numbers.ts';
import { isNumber } from '../../recording/recognise.ts';
import { layoutOf, type Recording, recordingOf } from '../../recording/recording.ts';
import type { Refusal } from '../../recording/rows.ts';
import { unitIn, unitOfHeading } from '../../recording/unitWords.ts';
import type { Samples } from './samples.ts';

type FileCell = Pick<CaptureCell | ReferenceCell, 'file' | 'format'> & { readonly node: CaptureCell['node'] };

/** The samples of a file beside the case, or why there are none; `words` says how the file was read. */
export type FromFile =
  | { readonly samples: Samples; readonly words: string; readonly diagnostics: readonly Diagnostic[] }
  | { readonly samples: undefined; readonly why: string; readonly diagnostics: readonly Diagnostic[] };

export function fileSamples(cell: FileCell, file: TextNode, content: FileContent): FromFile {
  const name = file.text.trim();
  if (content.kind === 'none') return nothing(whyNot(content.why), noFile(content.why, name, file));
  const { format, diagnostics } = readFormat(cell.format);
  const layout = layoutOf(content, format);
  if ('is' in layout)
    return nothing('its capture could not be read', ...diagnostics, unclear(layout, name, file, cell));
  const words = layoutWords(layout);
  const told = isUsual(layout) || saysAll(format) ? [] : [recognised(name, words, layout, file, cell)];
  return { samples: samplesOf(content, layout, name, file), words, diagnostics: [...diagnostics, ...told] };
}

const nothing = (why: string, ...diagnostics: readonly (Diagnostic | undefined)[]): FromFile => ({
  samples: undefined,
  why,
  diagnostics: diagnostics.filter((each) => each !== undefined),
});

/** The samples of a file whose layout is known. `file` is where findings are shown. */
export function samplesOf(content: FileBytes, layout: Layout, name: string, file: TextNode): Samples {
  const { headings, sample, units, decimal } = layout;
  const column = (at: number): readonly string[] =>
    sample.map((row) => row[at] ?? '').filter((each) => !isMissing(each));
  return {
    headings,
    placeOf: () => file,
    unitIn: (at) => quantityOf(unitIn(units?.[at] ?? '')) ?? quantityOf(unitOfHeading(headings[at] ?? '')),
    firstValue: (at) => {
      const first = column(at)[0] ?? '';
      return numberIn(first, decimal) === undefined ? parseQuantity(first).value : undefined;
    },
    isClock: (at) => {
      const [first = ''] = column(at);
      return numberIn(first, decimal) === undefined && clockSeconds(first) !== undefined;
    },
    holdsNumbers: (at) => {
      const written = column(at);
      return written.length === 0 || written.some((each) => isNumber(each, decimal));
    },
    rises: (at) => {
      const numbers = column(at).map((each) => numberIn(each, decimal) ?? clockSeconds(each) ?? Number.NaN);
      return (
        numbers.length > 1 && numbers.every((each, i) => i === 0 || each > (numbers[i - 1] ?? Number.NaN))
      );
    },
    read: (columns, found) => {
      const recording = recordingOf(
        content,
        layout,
        columns.map(({ at, raw, factor, offset, isClock }) => ({
          column: at,
          unit: raw.unit,
          factor,
          offset,
          isClock,
        })),
      );
      const lost = recording.lost && noFile(recording.lost, name, file);
      if (lost !== undefined) found.push(lost);
      found.push(...refused(recording, name, headings, file));
      if (recording.rows === 0 && recording.lost === undefined)
        found.push(
          diagnose('capture-no-samples', file.span, { file: name, why: 'no row of it could be read' }),
        );
      const { columns: read, back } = recording;
      return {
        columns: read,
        widths: [],
        back:
          back === undefined
            ? undefined
            : { time: back.text, place: `line ${back.line} of \`${name}\``, span: file.span },
      };
    },
  };
}

const quantityOf = (unit: string | undefined): Quantity | undefined =>
  unit === undefined ? undefined : parseQuantity(`1 ${unit}`).value;

function readFormat(node: FileCell['format']): {
  readonly format: Format;
  readonly diagnostics: Diagnostic[];
} {
  const diagnostics: Diagnostic[] = [];
  const count = (text: TextNode | undefined, name: string): number | undefined => {
    if (text === undefined) return undefined;
    if (/^\d{1,6}$/.test(text.text.trim())) return Number(text.text);
    const facts = { name, got: `\`${text.text}\``, takes: 'a whole number of lines' };
    diagnostics.push(diagnose('wrong-value-shape', text.span, facts));
    return undefined;
  };
  if (node === undefined) return { format: noFormat, diagnostics };
  const format: Format = {
    delimiter: node.delimiter?.text as Format['delimiter'],
    decimal: node.decimal?.text as Format['decimal'],
    headingRows: count(node.headingRows, 'heading rows'),
    skip: count(node.skip, 'skip'),
  };
  return { format, diagnostics };
}

/** Why what is computed from the capture cannot be computed. */
function whyNot(why: WhyNoFile): string {
  return why.is === 'on its way' ? 'its capture is still being fetched' : 'its capture could not be read';
}

function noFile(why: WhyNoFile, name: string, { span }: TextNode): Diagnostic | undefined {
  const unreadable = (reason: string): Diagnostic =>
    diagnose('capture-file-unreadable', span, { file: name, why: reason });
  switch (why.is) {
    case 'on its way':
      return undefined;
    case 'not there':
      return diagnose('capture-file-missing', span, { file: name });
    case 'outside':
      return diagnose('capture-file-outside', span, { file: name, how: why.how });
    case 'too large':
    case 'too large inside':
      return diagnose('capture-file-too-large', span, {
        file: name,
        size: mebibytes(why.size),
        most: mebibytes(largestFile),
        packed: why.is === 'too large inside',
      });
    case 'a folder':
      return unreadable('it is a folder');
    case 'not saved':
      return unreadable('the case is not saved yet, and files are looked for beside it. Save the case first');
    case 'packing damaged':
      return unreadable(
        'it is packed, and its packing is damaged or ends too early. Copy it again, or unpack it and name the unpacked file',
      );
    case 'not readable':
      return unreadable(why.reason);
  }
}

const mebibytes = (bytes: number): string => `${Math.round(bytes / 1024 / 1024)} MiB`;

function unclear(why: Unclear, name: string, file: TextNode, cell: FileCell): Diagnostic | undefined {
  const { span } = file;
  const none = (reason: string): Diagnostic =>
    diagnose('capture-no-samples', span, { file: name, why: reason });
  switch (why.is) {
    case 'lost':
      return noFile(why.why, name, file);
    case 'empty':
      return none('it is empty');
    case 'binary':
      return none(
        `it is no text (byte ${why.offset + 1} is none of a text’s). Export it from the tool as delimited text`,
      );
    case 'no samples':
      return none(`no line of it holds numbers in columns. It starts with \`${why.first}\``);
    case 'two readings': {
      const fixes = why.readings.map((layout) => writesFormat(layout, span, cell));
      return diagnose(
        'capture-two-readings',
        span,
        { file: name, line: why.line.slice(0, 80), readings: why.readings.map(readingWords) },
        fixes.filter((each) => each !== undefined),
      );
    }
    case 'more columns than names': {
      const fix = writesFormat(why.reading, span, cell);
      const columns = why.reading.headings.length;
      const facts = { file: name, line: why.line.slice(0, 80), columns, names: why.names };
      return diagnose('capture-names-run-out', span, facts, fix === undefined ? [] : [fix]);
    }
  }
}

function recognised(name: string, how: string, layout: Layout, file: TextNode, cell: FileCell): Diagnostic {
  const fix = writesFormat(layout, file.span, cell);
  return diagnose('capture-recognised', file.span, { file: name, how }, fix === undefined ? [] : [fix]);
}

/** Writes `format` on a line of its own below the file's, or in the place of the one that is there. */
function writesFormat(layout: Layout, below: TextNode['span'], cell: FileCell): Fix | undefined {
  const text = formatText(layout);
  const title = `Write \`format: ${text}\``;
  const there = cell.format?.node;
  if (there !== undefined) {
    // A block that spans lines is the author's own layout.
    return there.kind === 'map' && !there.flow
      ? undefined
      : { title, edits: [{ span: there.span, newText: text }] };
  }
  if (cell.node.flow) return undefined;
  return { title, edits: [{ span: { start: below.end, end: below.end }, newText: `\nformat: ${text}` }] };
}

function refused(
  recording: Recording,
  name: string,
  headings: readonly string[],
  file: TextNode,
): Diagnostic[] {
  const { refusedLines: lines, refusedFields: fields, refusals, rows, isCut } = recording;
  const found: Diagnostic[] = [];
  if (isCut) found.push(diagnose('capture-too-long', file.span, { file: name, rows }));
  if (lines + fields > 0) {
    const first = refusals.map((each) => refusalWords(each, headings));
    found.push(diagnose('capture-lines-refused', file.span, { file: name, lines, fields, rows, first }));
  }
  return found;
}

function refusalWords({ line, column, text, why, width }: Refusal, headings: readonly string[]): string {
  switch (why) {
    case 'no number':
      return `Line ${line}: \`${text}\` under \`${headings[column ?? 0] ?? ''}\` is no number.`;
    case 'no time':
      return `Line ${line} has no time: \`${text}\`.`;
    case 'width':
      return `Line ${line} has ${width} ${width === 1 ? 'column' : 'columns'} and the heading ${headings.length}: \`${text}\`.`;
  }
}
