/** An order in which everything comes after what it needs, and the circles that have no such order. */
export interface Order {
  readonly order: readonly string[];
  /** The circle that a member belongs to, starting with that member, in the direction "needs". */
  readonly circles: ReadonlyMap<string, readonly string[]>;
}

/**
 * Orders ids by what they need: Tarjan's strongly connected components (R. Tarjan, SIAM J. Comput. 1 (1972) 146),
 * written with its own stack, so that a long chain cannot exhaust the call stack.
 * Needs that are no ids are ignored.
 */
export function orderByNeed(needs: ReadonlyMap<string, readonly string[]>): Order {
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const onStack = new Set<string>();
  const stack: string[] = [];
  const order: string[] = [];
  const circles = new Map<string, readonly string[]>();

  for (const root of needs.keys()) {
    if (index.has(root)) continue;
    const work: { id: string; next: number }[] = [];
    const enter = (id: string): void => {
      index.set(id, index.size);
      low.set(id, index.get(id) ?? 0);
      stack.push(id);
      onStack.add(id);
      work.push({ id, next: 0 });
    };
    enter(root);
    for (let frame = work[work.length - 1]; frame !== undefined; frame = work[work.length - 1]) {
      const wanted = needs.get(frame.id) ?? [];
      const need = wanted[frame.next++];
      if (need !== undefined) {
        if (!needs.has(need)) continue;
        if (!index.has(need)) enter(need);
        else if (onStack.has(need)) lower(low, frame.id, index.get(need) ?? 0);
        continue;
      }
      work.pop();
      const above = work[work.length - 1];
      if (above !== undefined) lower(low, above.id, low.get(frame.id) ?? 0);
      if (low.get(frame.id) !== index.get(frame.id)) continue;
      const component = stack.splice(stack.lastIndexOf(frame.id));
      for (const id of component) onStack.delete(id);
      order.push(...component.reverse());
      if (component.length > 1 || wanted.includes(frame.id)) {
        for (const id of component) circles.set(id, circleFrom(id, new Set(component), needs));
      }
    }
  }
  return { order, circles };
}

function lower(low: Map<string, number>, id: string, to: number): void {
  if (to < (low.get(id) ?? 0)) low.set(id, to);
}

/** The shortest way from a member back to itself, without leaving its component. */
function circleFrom(
  start: string,
  component: ReadonlySet<string>,
  needs: ReadonlyMap<string, readonly string[]>,
): readonly string[] {
  const cameFrom = new Map<string, string>();
  const queue = [start];
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    for (const next of needs.get(at) ?? []) {
      if (next === start) {
        const way = [at];
        for (let back = at; back !== start; ) {
          back = cameFrom.get(back) ?? start;
          way.push(back);
        }
        return way.reverse();
      }
      if (!component.has(next) || cameFrom.has(next)) continue;
      cameFrom.set(next, at);
      queue.push(next);
    }
  }
  return [start];
}
