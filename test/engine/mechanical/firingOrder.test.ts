import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  companionOf,
  engineOrder,
  firesAfter,
  firingFrequency,
  firingInterval,
  orderFits,
  orderFrequency,
  toothSpeed,
} from '../../../core/engine/mechanical/firingOrder.ts';
import { checkCase } from '../../../core/rules/checkCase.ts';
import { numberOf, rpm, sentenceOf } from '../answers.ts';

describe('a firing order', () => {
  it('names every cylinder once, or is told why not', () => {
    expect(orderFits('1-3-4-2', 4)).toBe('fits');
    expect(orderFits('1, 5, 3, 6, 2, 4', 6)).toBe('fits');
    expect(orderFits('1-3-4-3', 4)).toBe('a cylinder stands twice');
    expect(orderFits('1-3-4', 4)).toBe('a cylinder is missing');
    expect(orderFits('1-3-5-2', 4)).toBe('a cylinder too many');
    expect(orderFits('1-x', 4)).toHaveProperty('noAnswer', expect.stringContaining('cannot be read'));
    expect(orderFits('1-3-4-2', 3.5)).toHaveProperty('noAnswer', expect.stringContaining('whole number'));
  });

  it('may be written in one, and numbers are written as people write them', () => {
    expect(orderFits('1342', 4)).toBe('fits');
    expect(orderFits('1; 3; 4; 2', 4)).toBe('fits');
    expect(companionOf(1, '1342')).toBe(4);
    for (const order of ['1e0-2-3-4', '0x1-2-3-4', '1.0-2-3-4', '']) {
      expect(orderFits(order, 4)).toHaveProperty('noAnswer', expect.stringContaining('cannot be read'));
    }
  });

  it('of any length is read or refused at once, and is not said back whole', () => {
    const long = `${'1-'.repeat(130_000)}1`;
    expect(sentenceOf(companionOf(1, long)).length).toBeLessThan(200);
    expect(() => checkCase(`diag: 1\ncase: A case\nengine:\n  firing order: ${long}\n`)).not.toThrow();
  });

  // The pairs of waste-spark coils: 1-4 and 2-3 of 1-3-4-2; 1-6, 5-2, 3-4 of 1-5-3-6-2-4 (common practice).
  it('pairs the cylinders that stand at top dead centre together', () => {
    expect(companionOf(1, '1-3-4-2')).toBe(4);
    expect(companionOf(3, '1-3-4-2')).toBe(2);
    expect([1, 5, 3].map((each) => companionOf(each, '1-5-3-6-2-4'))).toEqual([6, 2, 4]);
    expect(sentenceOf(companionOf(1, '1-2-4-5-3'))).toContain('With 5 cylinders none');
    expect(sentenceOf(companionOf(7, '1-3-4-2'))).toContain('no cylinder 7');
  });

  it('is its companion’s companion, and a round of nexts comes home', () => {
    const even = fc.constantFrom(2, 4, 6, 8, 12).chain((count) =>
      fc.shuffledSubarray(
        [...Array(count).keys()].map((at) => at + 1),
        { minLength: count },
      ),
    );
    fc.assert(
      fc.property(even, (order) => {
        const written = order.join('-');
        for (const cylinder of order) {
          expect(companionOf(numberOf(companionOf(cylinder, written)), written)).toBe(cylinder);
          let at = cylinder;
          for (const _ of order) at = numberOf(firesAfter(at, written));
          expect(at).toBe(cylinder);
        }
      }),
    );
  });
});

describe('how often it fires', () => {
  // 720/n degrees and order n/2; a journal's engine-orders entry: order 2 of four, 3 of six, 4 of eight cylinders.
  it.each([
    [3, 240, 20, 5],
    [4, 180, 26.667, 6.667],
    [5, 144, 33.333, 8.333],
    [6, 120, 40, 10],
    [8, 90, 53.333, 13.333],
  ])(
    'of %i cylinders: every %i degrees, %f Hz at 800 rpm, %f Hz at 200 rpm',
    (count, interval, idle, crank) => {
      expect(numberOf(firingInterval(count)) * 360).toBeCloseTo(interval, 10);
      expect(numberOf(firingFrequency(rpm(800), count))).toBeCloseTo(idle, 3);
      expect(numberOf(firingFrequency(rpm(200), count))).toBeCloseTo(crank, 3);
      expect(numberOf(engineOrder(numberOf(firingFrequency(rpm(800), count)), rpm(800)))).toBeCloseTo(
        count / 2,
        10,
      );
    },
  );

  it('order 0.5 at 1500 rpm is 12.5 Hz, order 2 at 800 rpm 26.667 Hz (arithmetic)', () => {
    expect(numberOf(orderFrequency(0.5, rpm(1500)))).toBeCloseTo(12.5, 10);
    expect(numberOf(orderFrequency(2, rpm(800)))).toBeCloseTo(26.667, 3);
    expect(sentenceOf(orderFrequency(0, 10))).toContain('order of 0');
    expect(sentenceOf(engineOrder(10, 0))).toContain('stands still');
  });

  it('60 pitches: 1250 µs are 800 rpm, 333.333 µs 3000 rpm, 250 µs 4000 rpm (arithmetic)', () => {
    expect(numberOf(toothSpeed(1250e-6, 60)) * 60).toBeCloseTo(800, 8);
    expect(numberOf(toothSpeed(1e-3 / 3, 60)) * 60).toBeCloseTo(3000, 8);
    expect(numberOf(toothSpeed(250e-6, 60)) * 60).toBeCloseTo(4000, 8);
    expect(sentenceOf(toothSpeed(0, 60))).toContain('tooth to tooth');
    expect(sentenceOf(toothSpeed(0.001, 1.5))).toContain('whole number');
  });
});
