import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Circle, membersFrom, orderByNeed } from '../../core/study/graph/order.ts';

const graph = (text: string): Map<string, string[]> =>
  new Map(
    text
      .split(';')
      .map((line) => line.trim().split('>'))
      .map(([id = '', needs = '']) => [
        id.trim(),
        needs
          .split(',')
          .map((each) => each.trim())
          .filter(Boolean),
      ]),
  );

const named = (circle: Circle | undefined): readonly string[] =>
  circle === undefined ? [] : membersFrom(circle, 8);

describe('the order of names', () => {
  it('puts what is needed first', () => {
    expect(orderByNeed(graph('trim > stft, ltft; stft >; ltft >')).order).toEqual(['stft', 'ltft', 'trim']);
  });

  it('names every member of a circle, each from its own place', () => {
    const { circles } = orderByNeed(graph('a > b; b > c; c > a; d > a'));
    expect(named(circles.get('a'))).toEqual(['a', 'b', 'c']);
    expect(named(circles.get('b'))).toEqual(['b', 'c', 'a']);
    expect(circles.has('d')).toBe(false);
  });

  it('knows a name that needs itself', () => {
    expect(named(orderByNeed(graph('a > a')).circles.get('a'))).toEqual(['a']);
  });

  it('lets the members of a circle share it, and tells each where it stands', () => {
    const ring = new Map<string, string[]>();
    for (let i = 0; i < 20_000; i++) ring.set(`n${i}`, [`n${(i + 1) % 20_000}`]);
    const { circles } = orderByNeed(ring);
    const [first, last] = [circles.get('n0'), circles.get('n19999')];
    expect(circles.size).toBe(20_000);
    expect(first?.members).toBe(last?.members);
    expect(last === undefined ? [] : membersFrom(last, 3)).toEqual(['n19999', 'n0', 'n1']);
  });

  it('ends early where thousands of circles share a long way', () => {
    const needs = new Map<string, string[]>();
    for (let i = 0; i < 3000; i++) needs.set(`way${i}`, [`way${i + 1}`]);
    needs.set(
      'way3000',
      Array.from({ length: 3000 }, (_, i) => `side${i}`),
    );
    for (let i = 0; i < 3000; i++) needs.set(`side${i}`, ['way0']);
    const { circles } = orderByNeed(needs);
    expect(circles.size).toBe(6001);
    expect(new Set([...circles.values()].map((each) => each.members)).size).toBeLessThan(100);
  });

  it('orders a chain of 100,000 names', () => {
    const chain = new Map<string, string[]>();
    for (let i = 0; i < 100_000; i++) chain.set(`n${i}`, [`n${i + 1}`]);
    chain.set('n100000', []);
    const { order, circles } = orderByNeed(chain);
    expect(order[0]).toBe('n100000');
    expect(order.length).toBe(100_001);
    expect(circles.size).toBe(0);
  });

  it('holds for random graphs: outside circles, every need comes before', () => {
    const edges = fc.array(fc.tuple(fc.nat(12), fc.nat(12)), { maxLength: 40 });
    fc.assert(
      fc.property(edges, (pairs) => {
        const needs = new Map<string, string[]>();
        for (let i = 0; i <= 12; i++) needs.set(String(i), []);
        for (const [from, to] of pairs) needs.get(String(from))?.push(String(to));
        const { order, circles } = orderByNeed(needs);
        expect([...order].sort()).toEqual([...needs.keys()].sort());
        const reaches = (from: string, to: string): boolean => {
          const seen = new Set<string>();
          const waiting = [...(needs.get(from) ?? [])];
          for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
            if (at === to) return true;
            if (seen.has(at)) continue;
            seen.add(at);
            waiting.push(...(needs.get(at) ?? []));
          }
          return false;
        };
        for (const id of needs.keys()) {
          expect(circles.has(id)).toBe(reaches(id, id));
          const { members, at } = circles.get(id) ?? { members: [id], at: 0 };
          expect(members[at]).toBe(id);
          if (circles.has(id))
            for (const [i, member] of members.entries())
              expect(needs.get(member)).toContain(members[(i + 1) % members.length]);
          for (const need of needs.get(id) ?? []) {
            if (circles.has(id)) continue;
            expect(order.indexOf(need)).toBeLessThan(order.indexOf(id));
          }
        }
      }),
    );
  });
});
