import { type Diagnostic, diagnose, type Found } from '../diagnostics/diagnostic.ts';
import { checkSizes } from './checkSizes.ts';
import { limits } from './limits.ts';
import { mergeMarkers } from './mergeMarkers.ts';
import { readSimple } from './readSimple.ts';
import { readYaml, type YamlReading } from './readYaml.ts';
import { shortened } from './shortened.ts';
import { strayCharacters } from './strayCharacters.ts';
import { markDiagnostics } from './traps/marks.ts';
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
 * Brackets or marks one after the other in a long cell. Reading them token by token would only take long to find the
 * same; in a short cell it does not, and there the tokens tell exactly.
 */
function surelyTooDeep(text: string): YamlReading | undefined {
  if (text.length < 16 * 1024) return undefined;
  const run = deepRun.exec(text);
  if (run === null) return undefined;
  const tooDeep = { start: run.index, end: run.index + 1 };
  return { tree: undefined, errors: [], marks: [], tooDeep };
}

const deepRun = new RegExp(`(?:[[{][ \\t]*){${4 * limits.depth}}|(?:[-?:][ \\t]+){${4 * limits.depth}}`);

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
