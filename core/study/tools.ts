import type { HeaderCell } from '../casefile/cell.ts';
import type { TextNode } from '../casefile/tree.ts';
import { type Diagnostic, diagnose, type Found } from '../diagnostics/diagnostic.ts';
import { parseQuantity } from '../quantity/parse.ts';
import type { Dimension, Quantity, QuantityType } from '../quantity/types.ts';
import { percentUnit } from '../quantity/unit.ts';
import { nearest } from '../text/nearest.ts';
import { placedIn } from './placed.ts';

/** How far an instrument's readings may be from the truth. */
export interface Accuracy {
  /**
   * The half-width in SI for a reading that shows a number in its unit; 0 where the accuracy is said in another dimension.
   * A share is of the number that the instrument shows: 2 % of 100 °F are 2 °F.
   */
  readonly halfWidth: (shown: number, type: QuantityType) => number;
  /** What it is said in; undefined for a share. */
  readonly dimension: Dimension | undefined;
}

export interface Tools {
  /** The header's tools by name; a tool without a stated accuracy has none. */
  readonly byName: ReadonlyMap<string, Accuracy | undefined>;
  readonly diagnostics: readonly Diagnostic[];
}

/** Without a header that could be read, nobody knows which tools there are. */
export const noTools: Tools = { byName: new Map(), diagnostics: [] };

/** Reads `tools:` of the header: `gauge: {description: vacuum gauge, accuracy: 0.2 inHg}`. */
export function readTools(tools: HeaderCell['tools']): Tools {
  if (tools === undefined) return { byName: new Map(), diagnostics: [] };
  const byName = new Map<string, Accuracy | undefined>();
  const diagnostics: Diagnostic[] = [];
  for (const { key, value } of tools) {
    const written = value.accuracy;
    if (written === undefined) {
      byName.set(key.text, undefined);
      continue;
    }
    const accuracy = readAccuracy(written);
    diagnostics.push(...accuracy.diagnostics);
    byName.set(key.text, accuracy.value);
  }
  return { byName, diagnostics };
}

/** `0.2 inHg`, `± 2 %` */
export function readAccuracy(node: TextNode): Found<Accuracy | undefined> {
  const parsed = parseQuantity(node.text.replace(/^(\s*)(?:±|\+\/-)/, '$1 '));
  const value = parsed.value === undefined ? undefined : accuracyOf(parsed.value);
  return { value, diagnostics: placedIn(node, parsed.diagnostics) };
}

/** A percentage is of the reading, unless the reading is itself in percent: then it is points. */
function accuracyOf(stated: Quantity): Accuracy {
  const width = Math.abs(stated.value * stated.unit.factor);
  const relative = stated.unit === percentUnit;
  return {
    halfWidth: (shown, type) => {
      if (relative && type.unit !== percentUnit) return Math.abs(shown * type.unit.factor) * width;
      return stated.unit.dimension === type.dimension ? width : 0;
    },
    dimension: relative ? undefined : stated.unit.dimension,
  };
}

/** The instrument that a reading names, and what is to be said when the header does not list it. */
export function findTool(
  tools: Tools,
  name: TextNode | undefined,
): { readonly accuracy: Accuracy | undefined; readonly diagnostics: readonly Diagnostic[] } {
  if (name === undefined || tools === noTools) return { accuracy: undefined, diagnostics: [] };
  if (tools.byName.has(name.text)) return { accuracy: tools.byName.get(name.text), diagnostics: [] };
  const has = [...tools.byName.keys()];
  const close = nearest(name.text, has);
  const fixes = close.map((offer) => ({
    title: `Write \`${offer}\``,
    edits: [{ span: name.span, newText: offer }],
  }));
  const facts = { name: name.text, nearest: close, has };
  return { accuracy: undefined, diagnostics: [diagnose('unknown-tool', name.span, facts, fixes)] };
}
