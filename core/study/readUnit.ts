import type { TextNode } from '../casefile/tree.ts';
import { type Diagnostic, diagnose, type Found } from '../diagnostics/diagnostic.ts';
import { parseQuantity } from '../quantity/parse.ts';
import type { Quantity } from '../quantity/types.ts';
import { unitOf } from '../quantity/unit.ts';
import { placedIn } from './placed.ts';

/**
 * A unit that stands alone, with its qualifier: `kPa gauge` is read as one of it; `1` is the unit of plain numbers.
 * Findings are placed at the text.
 */
export function readUnit(node: TextNode): Found<Quantity | undefined> {
  if (node.text.trim() === '1') return parseQuantity('1');
  const before = '1 ';
  const asQuantity: TextNode = {
    ...node,
    text: before + node.text,
    map: node.map.map(([decoded, source]) => [decoded + before.length, source]),
  };
  const { value, diagnostics } = parseQuantity(asQuantity.text);
  if (diagnostics.some(isAboutTheOne)) return { value: undefined, diagnostics: [noUnit(node)] };
  return { value, diagnostics: placedIn(asQuantity, diagnostics) };
}

/** What is said of the number that was put before it would puzzle a reader, who wrote none. */
function isAboutTheOne({ code }: Diagnostic): boolean {
  return code === 'quantity-trailing' || code === 'digit-groups';
}

/** `5`, `5 V`, `V 5`: the one unit in it is offered. */
function noUnit(node: TextNode): Diagnostic {
  const word = node.text.trim();
  const units = word.split(/\s+/).filter((each) => each !== '1' && unitOf(each) !== undefined);
  const nearest = units.length === 1 ? units : [];
  const fixes = nearest
    .filter((each) => /^[\p{L}°]/u.test(each))
    .map((each) => ({ title: `Write ${each}`, edits: [{ span: node.span, newText: each }] }));
  return diagnose('unknown-unit', node.span, { word, nearest }, fixes);
}
