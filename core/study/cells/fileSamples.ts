import type { CaptureCell, ReferenceCell } from '../../casefile/cell.ts';
import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose, type Fix } from '../../diagnostics/diagnostic.ts';
import {
  formatText,
  isUsual,
  layoutWords,
  readingWords,
  saysAll,
  whyNoSamples,
} from '../../recording/describe.ts';
import type { FileContent, WhyNoFile } from '../../recording/files.ts';
import { type Format, type Layout, noFormat, type Unclear } from '../../recording/layout.ts';
import { longFormOf } from '../../recording/longForm.ts';
import { layoutOf } from '../../recording/recording.ts';
import { noFile } from './noFile.ts';
import type { Samples } from './samples.ts';
import { samplesOf } from './samplesOfFile.ts';

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
  const long = longFormOf(layout);
  if (long !== undefined) told.push(diagnose('capture-channels-in-rows', file.span, { file: name, ...long }));
  return { samples: samplesOf(content, layout, name, file), words, diagnostics: [...diagnostics, ...told] };
}

const nothing = (why: string, ...diagnostics: readonly (Diagnostic | undefined)[]): FromFile => ({
  samples: undefined,
  why,
  diagnostics: diagnostics.filter((each) => each !== undefined),
});

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

function unclear(why: Unclear, name: string, file: TextNode, cell: FileCell): Diagnostic | undefined {
  const { span } = file;
  switch (why.is) {
    case 'lost':
      return noFile(why.why, name, file);
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
    default:
      return diagnose('capture-no-samples', span, { file: name, why: whyNoSamples(why) });
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
