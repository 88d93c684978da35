import type { TextNode } from '../casefile/tree.ts';
import type { Found } from '../diagnostics/diagnostic.ts';
import { parseQuantity } from '../quantity/parse.ts';
import type { Quantity } from '../quantity/types.ts';
import { placedIn } from './placed.ts';

/** A unit that stands alone, with its qualifier: `kPa gauge` is read as one of it. Findings are placed at the text. */
export function readUnit(node: TextNode): Found<Quantity | undefined> {
  const before = '1 ';
  const asQuantity: TextNode = {
    ...node,
    text: before + node.text,
    map: node.map.map(([decoded, source]) => [decoded + before.length, source]),
  };
  const { value, diagnostics } = parseQuantity(asQuantity.text);
  return { value, diagnostics: placedIn(asQuantity, diagnostics) };
}
