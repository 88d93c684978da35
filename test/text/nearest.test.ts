import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alikeIn, byLength, nearest, nearestAmong, sortedWords } from '../../core/text/nearest.ts';

/** Optimal string alignment with its whole table (G. Navarro, ACM Computing Surveys 33 (2001) 31, section 2.2). */
function distance(a: string, b: string): number {
  const table = Array.from({ length: a.length + 1 }, (_, i) => [i, ...new Array<number>(b.length).fill(0)]);
  const at = (i: number, j: number): number => table[i]?.[j] ?? Number.POSITIVE_INFINITY;
  for (let j = 0; j <= b.length; j++) (table[0] ?? [])[j] = j;
  for (let i = 1; i <= a.length; i++) {
    for (let j = 1; j <= b.length; j++) {
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      (table[i] ?? [])[j] = Math.min(
        at(i - 1, j) + 1,
        at(i, j - 1) + 1,
        at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1),
        swapped ? at(i - 2, j - 2) + 1 : Number.POSITIVE_INFINITY,
      );
    }
  }
  return at(a.length, b.length);
}

describe('the nearest words', () => {
  const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c', 'm', 'p'), maxLength: 14 });

  it('are those within a third of the word’s length by the whole table of distances', () => {
    fc.assert(
      fc.property(word, fc.uniqueArray(word, { maxLength: 20 }), (asked, candidates) => {
        const limit = Math.max(1, Math.min(3, Math.floor(asked.length / 3)));
        const expected = candidates.filter((each) => distance(asked, each) <= limit).sort();
        expect(nearest(asked, candidates, 20).sort()).toEqual(expected);
      }),
      { numRuns: 2000 },
    );
  });

  it('are the same where the candidates were laid out by their lengths', () => {
    fc.assert(
      fc.property(word, fc.uniqueArray(word, { maxLength: 20 }), (asked, candidates) => {
        expect(nearestAmong(asked, byLength(candidates))).toEqual(nearest(asked, candidates));
      }),
    );
  });

  it('are found for words of one letter changed, swapped, left out or put in anywhere', () => {
    const long = fc.string({ unit: fc.constantFrom('a', 'b', 'c', 'd'), minLength: 3, maxLength: 60 });
    fc.assert(
      fc.property(long, fc.nat(59), fc.constantFrom('x', '', 'swap', 'add'), (asked, where, what) => {
        const at = where % (asked.length - 1);
        const [before, after] = [asked.slice(0, at), asked.slice(at)];
        const slip =
          what === 'swap'
            ? `${before}${after[1] ?? ''}${after[0] ?? ''}${after.slice(2)}`
            : what === 'add'
              ? `${before}x${after}`
              : `${before}${what}${after.slice(1)}`;
        expect(nearest(slip.length < 3 ? asked : slip, [asked])).toEqual([asked]);
      }),
    );
  });
});

describe('words that begin or end alike', () => {
  const words = (count: number): string[] =>
    Array.from({ length: count }, (_, i) => `${(i * 7919) % count}w${i}`);

  it('are all of a few', () => {
    expect(alikeIn(sortedWords(['b', 'a', 'b', 'c']), 'z')).toEqual(['b', 'a', 'c']);
  });

  it('are as many of a hundred thousand as of a thousand, the one that was meant among them', () => {
    for (const count of [1000, 100_000]) {
      const sorted = sortedWords(words(count));
      const meant = `${(777 * 7919) % count}w777`;
      for (const slip of [`x${meant}`, meant.slice(1), meant.slice(0, -1), meant.replace('w', 'v')]) {
        const alike = alikeIn(sorted, slip);
        expect(alike.length).toBeLessThanOrEqual(200);
        expect(alike).toContain(meant);
        expect(nearest(slip, new Set(alike))).toContain(meant);
      }
    }
  });
});
