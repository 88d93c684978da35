/** An order in which everything comes after what it needs, and the circles that have no such order. */
export interface Order {
  readonly order: readonly string[];
  readonly circles: ReadonlyMap<string, Circle>;
}

/** Names that need each other, in the direction "needs", and where among them a member stands. */
export interface Circle {
  /** Shared by all members of one circle. */
  readonly members: readonly string[];
  readonly at: number;
}

/** The first names of a circle from a member's place on, at most `most` of them. */
export function membersFrom({ members, at }: Circle, most: number): string[] {
  const count = Math.min(most, members.length);
  return Array.from({ length: count }, (_, i) => members[(at + i) % members.length] ?? '');
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
  const circles = new Map<string, Circle>();

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
        closeCircles(component, needs, circles);
      }
    }
  }
  return { order, circles };
}

function lower(low: Map<string, number>, id: string, to: number): void {
  if (to < (low.get(id) ?? 0)) low.set(id, to);
}

/**
 * Gives every member of a component its circle. One that stands on an earlier member's circle shares it. Beyond
 * `mostSteps` the members left over are told the last circle found: they need it, and it needs them.
 */
function closeCircles(
  component: readonly string[],
  needs: ReadonlyMap<string, readonly string[]>,
  circles: Map<string, Circle>,
): void {
  const inside = new Set(component);
  const patience = { steps: mostSteps };
  let last: Circle | undefined;
  for (const id of component) {
    if (circles.has(id)) continue;
    if (last !== undefined && patience.steps <= 0) {
      circles.set(id, last);
      continue;
    }
    const members = circleFrom(id, inside, needs, patience);
    last = { members, at: 0 };
    for (const [at, member] of members.entries()) {
      if (!circles.has(member)) circles.set(member, { members, at });
    }
  }
}

const mostSteps = 200_000;

/** The shortest way from a member back to itself, without leaving its component. */
function circleFrom(
  start: string,
  component: ReadonlySet<string>,
  needs: ReadonlyMap<string, readonly string[]>,
  patience: { steps: number },
): readonly string[] {
  const cameFrom = new Map<string, string>();
  const queue = [start];
  for (const at of queue) {
    for (const next of needs.get(at) ?? []) {
      patience.steps--;
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
