import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { shortened } from '../shortened.ts';
import type { MapNode, Node } from '../tree.ts';

/** Dashes alone on a line, but not three of them at its start: too many, set in, or made into one by a word processor. */
const slips = /^[ \t]*(?:-{3,}|[—–―][—–―-]*)[ \t]*$/gm;

/**
 * A line that was meant to stand between two cells, in a text that could not be read.
 * A line that is set in may belong to a text of several lines there.
 */
export function separatorSlipInText(text: string): Diagnostic | undefined {
  if (!mayHold(text)) return undefined;
  for (const { 0: line, index } of text.matchAll(slips)) {
    if (/^\S/.test(line)) return slipAt(index, line);
  }
  return undefined;
}

/** The same where YAML took it for a part of the text above. */
export function separatorSlipInTree(text: string, tree: MapNode): Diagnostic | undefined {
  if (!mayHold(text)) return undefined;
  for (const { 0: line, index } of text.matchAll(slips)) {
    if (isJoined(tree, index + line.search(/\S/))) return slipAt(index, line);
  }
  return undefined;
}

const mayHold = (text: string): boolean => text.includes('---') || /[—–―]/.test(text);

function slipAt(start: number, line: string): Diagnostic {
  const span = { start, end: start + line.length };
  return diagnose('separator-slip', span, { text: shortened(line.trim()), isSetIn: /^\s/.test(line) }, [
    { title: 'Write `---`', edits: [{ span, newText: '---' }] },
  ]);
}

/** Whether a place belongs to a text that is written without a mark for its lines: a block keeps them as they are. */
function isJoined(node: Node, at: number): boolean {
  if (at < node.span.start || at >= node.span.end) return false;
  switch (node.kind) {
    case 'text':
      return node.style === 'plain';
    case 'list':
      return node.items.some((each) => isJoined(each, at));
    case 'map':
      return node.entries.some(({ value }) => isJoined(value, at));
  }
}
