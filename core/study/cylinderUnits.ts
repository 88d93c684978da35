import type { Node } from '../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { fromSi, toSi } from '../quantity/convert.ts';
import { formatNumber, formatQuantity } from '../quantity/format.ts';
import type { QuantityType } from '../quantity/types.ts';

/** One cylinder's number as it was written. */
export interface WrittenMember {
  readonly cylinder: string;
  readonly node: Node;
  readonly type: QuantityType;
  /** SI units. */
  readonly si: number;
}

/**
 * A cylinder whose number would stand nearer to the others in their unit than in its own: one gauge read them all, and a unit slipped.
 * Three at least must be in one unit; what stands apart in either is a fault, and is left to the checks.
 */
export function cylinderUnits(name: string, written: readonly WrittenMember[]): readonly Diagnostic[] {
  const common = commonest(written);
  if (common === undefined) return [];
  const others = written.filter(({ type }) => type.unit === common.unit);
  const middle = others.map(({ si }) => si).sort((a, b) => a - b)[Math.floor(others.length / 2)] ?? 0;
  return written.flatMap(({ cylinder, node, type, si }) => {
    if (type.unit === common.unit || node.kind !== 'text') return [];
    const number = fromSi(si, type.unit, type.kind);
    const meant = toSi(number, common.unit, common.kind);
    if (!(away(meant, middle) < away(si, middle))) return [];
    const offer = `${formatNumber(number)} ${common.unit.symbol}`;
    const facts = {
      name: `${name}[${cylinder}]`,
      written: node.text.trim(),
      inTheirs: formatQuantity(si, common),
      unit: common.unit.symbol,
      offer,
    };
    const place = node.span;
    return [
      diagnose('cylinder-in-another-unit', place, facts, [
        { title: `Write ${offer}`, edits: [{ span: place, newText: offer }] },
      ]),
    ];
  });
}

/** By how many times one number is the other. */
const away = (a: number, b: number): number => Math.abs(Math.log(a / b));

/** The type that most of them have, three at least. */
function commonest(written: readonly WrittenMember[]): QuantityType | undefined {
  if (written.every(({ type }) => type.unit === written[0]?.type.unit)) return undefined;
  const count = (of: QuantityType): number => written.filter(({ type }) => type.unit === of.unit).length;
  const most = written.map(({ type }) => type).sort((a, b) => count(b) - count(a))[0];
  return most === undefined || count(most) < 3 ? undefined : most;
}
