import { diagnose } from '../../diagnostics/diagnostic.ts';
import { cylindersInOrder, mostCylinders as most } from '../../engine/mechanical/firingOrder.ts';
import type { CellRule } from '../rule.ts';

/** A firing order in which a cylinder is missing, twice, or not of this engine. */
export const firingOrderUnfit: CellRule = {
  code: 'firing-order-unfit',
  in: ['diag'],
  checkCell: ({ read: { cell } }) => {
    const engine = cell?.kind === 'diag' ? cell.engine : undefined;
    const node = engine?.firingOrder;
    if (node === undefined) return [];
    const order = cylindersInOrder(node.text);
    // One in another form, such as one that names banks, is not judged.
    if ('noAnswer' in order || order.length < 2) return [];
    const count = Number(engine?.cylinders?.text ?? Number.NaN);
    const cylinders = Number.isInteger(count) && count > 0 && count <= most ? count : Math.max(...order);
    if (isEachOnce(order, cylinders)) return [];
    const missing: number[] = [];
    for (let each = 1; each <= cylinders && each <= most; each++)
      if (!order.includes(each)) missing.push(each);
    const twice = [...new Set(order.filter((each, at) => order.indexOf(each) < at))];
    const beyond = order.filter((each) => each > cylinders);
    if (missing.length + twice.length + beyond.length === 0) return [];
    return [
      diagnose('firing-order-unfit', node.span, {
        order: node.text.trim(),
        cylinders,
        missing,
        twice,
        beyond,
      }),
    ];
  },
};

/** As many as there are cylinders, each a cylinder and none twice. */
function isEachOnce(order: readonly number[], cylinders: number): boolean {
  if (order.length !== cylinders) return false;
  let seen = 0;
  for (const each of order) {
    const bit = 1 << each;
    if (each > cylinders || (seen & bit) !== 0) return false;
    seen |= bit;
  }
  return true;
}
