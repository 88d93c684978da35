import { type Diagnostic, diagnose, type Found } from '../diagnostics/diagnostic.ts';
import { checkSizes } from './checkSizes.ts';
import { limits } from './limits.ts';
import { mergeMarkers } from './mergeMarkers.ts';
import { readSimple } from './readSimple.ts';
import { readYaml, type YamlReading } from './readYaml.ts';
import { shortened } from './shortened.ts';
import { strayCharacters } from './strayCharacters.ts';
import { markDiagnostics } from './traps/marks.ts';
import { separatorSlipInText } from './traps/separatorSlip.ts';
import { type Patience, trapsInText } from './traps/trapsInText.ts';
import type { Node } from './tree.ts';

/**
 * A cell's text as a tree of texts, lists and maps. The tree is there only when the text could be read whole.
 * Bounded: `limits.cellLength`, `limits.depth`, and `patience` for explaining errors.
 */
export function readCell(
  text: string,
  patience: Patience = { left: limits.patience },
): Found<Node | undefined> {
  if (text.length > limits.cellLength) {
    const facts = { length: `${text.length}`, most: `${limits.cellLength}` };
    return none([diagnose('cell-too-long', { start: 0, end: 0 }, facts)]);
  }
  const conflict = mergeMarkers(text);
  if (conflict.length > 0) return none(conflict);
  const stray = strayCharacters(text);
  const { body, after } = cutAtEnd(text);
  const simple = readSimple(body);
  if (simple !== undefined) return sized(simple, body, [...stray, ...after]);
  const { tree, errors, marks, tooDeep } = surelyTooDeep(body) ?? readYaml(body, limits.depth);
  if (tooDeep !== undefined) {
    return none([...stray, diagnose('nested-too-deep', tooDeep, { most: limits.depth })]);
  }
  // What follows a line between two cells is another cell: all that is wrong comes from there.
  const slip = errors.length > 0 ? separatorSlipInText(body) : undefined;
  if (slip !== undefined) return none([...stray, slip]);
  const traps = errors.length > 0 ? trapsInText(body, errors, patience) : [];
  const found = [...stray, ...after, ...traps, ...markDiagnostics(body, marks, traps)];
  if (errors.length > 0) return none(found);
  return tree === undefined ? none(found) : sized(tree, body, found);
}

/** What is far too long is not looked at any further. */
function sized(tree: Node, text: string, before: readonly Diagnostic[]): Found<Node | undefined> {
  const sizes = checkSizes(tree, text);
  return { value: sizes.length > 0 ? undefined : tree, diagnostics: [...before, ...sizes] };
}

/**
 * Brackets inside each other, or marks one after the other, in a long cell. Reading them token by token would only take
 * long to find the same; in a short cell it does not, and there the tokens tell exactly.
 */
function surelyTooDeep(text: string): YamlReading | undefined {
  if (text.length < longCell) return undefined;
  const start = unclosedBeyond(text, surely) ?? marksInLine.exec(text)?.index;
  if (start === undefined) return undefined;
  return { tree: undefined, errors: [], marks: [], tooDeep: { start, end: start + 1 } };
}

const longCell = 16 * 1024;
const surely = 4 * limits.depth;
const marksInLine = new RegExp(`(?:[-?:][ \\t]+){${surely}}`);

/** Where more brackets stand open than `most`, wherever they stand. */
function unclosedBeyond(text: string, most: number): number | undefined {
  let open = 0;
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    if (unit === 0x5b || unit === 0x7b) open++;
    else if ((unit === 0x5d || unit === 0x7d) && open > 0) open--;
    if (open > most) return at;
  }
  return undefined;
}

const none = (diagnostics: readonly Diagnostic[]): Found<undefined> => ({ value: undefined, diagnostics });

/** A line `...` ends a document; what stands after it is not read. */
function cutAtEnd(text: string): { readonly body: string; readonly after: readonly Diagnostic[] } {
  const mark = text.includes('...') ? /(?<=^|[\r\n])\.\.\.(?=[ \t\r\n]|$)/.exec(text) : null;
  if (mark === null) return { body: text, after: [] };
  const body = text.slice(0, mark.index);
  const content = /(?<=^|[\r\n])[ \t]*(?!#)[^ \t\r\n][^\r\n]*/.exec(text.slice(mark.index + 3));
  if (content === null) return { body, after: [] };
  const start = mark.index + 3 + content.index;
  const span = { start, end: start + content[0].length };
  return { body, after: [diagnose('content-after-end', span, { text: shortened(content[0].trim()) })] };
}
