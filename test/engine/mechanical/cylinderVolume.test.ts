import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cylinderVolume } from '../../../core/engine/mechanical/cylinderVolume.ts';
import { numberOf, sentenceOf } from '../answers.ts';

/** The volume over the clearance volume at a crank angle in degrees. */
function overClearance(degrees: number, ratio: number, rod: number): number {
  const clearance = 0.0005 / (ratio - 1);
  return numberOf(cylinderVolume(degrees / 360, 0.002, 4, ratio, rod)) / clearance;
}

describe('the volume above a piston', () => {
  // Arithmetic from Heywood, Internal Combustion Engine Fundamentals, chapter 2 (slider-crank).
  const rows: readonly (readonly [ratio: number, rod: number, string])[] = [
    [
      10,
      3.5,
      '0:1 10:1.0878 20:1.3468 30:1.7644 45:2.6428 60:3.7398 90:6.1565 120:8.2398 150:9.5587 180:10 270:6.1565',
    ],
    [9.5, 3.86, '20:1.3208 60:3.5432 90:5.8101 120:7.7932 180:9.5'],
    [10.5, 3.3333, '20:1.3700 90:6.4793 120:8.6687 180:10.5'],
  ];
  it.each(rows)('of ratio %f and rod %f at each angle', (ratio, rod, text) => {
    for (const pair of text.split(' ')) {
      const [degrees = Number.NaN, expected = Number.NaN] = pair.split(':').map(Number);
      expect(overClearance(degrees, ratio, rod)).toBeCloseTo(expected, 4);
    }
  });

  // Pulkrabek, Engineering Fundamentals of the Internal Combustion Engine, examples 2-1 and 2-2 (values from memory):
  // 3.0 L, six cylinders, 9.5 to 1, square at 8.6 cm, rod 16.6 cm.
  it('of the textbook’s V6 is 59 cm³ at top dead centre and 1.32 times that 20° later', () => {
    const clearance = numberOf(cylinderVolume(0, 0.003, 6, 9.5, 16.6 / 4.3));
    expect(clearance * 1e6).toBeCloseTo(58.82, 2);
    expect(numberOf(cylinderVolume(20 / 360, 0.003, 6, 9.5, 16.6 / 4.3)) / clearance).toBeCloseTo(1.32, 2);
  });

  it('where the intake closes 40, 50, 60° after bottom leaves 9.2151, 8.7744, 8.2398 of 10 (arithmetic)', () => {
    expect(overClearance(220, 10, 3.5)).toBeCloseTo(9.2151, 4);
    expect(overClearance(230, 10, 3.5)).toBeCloseTo(8.7744, 4);
    expect(overClearance(240, 10, 3.5)).toBeCloseTo(8.2398, 4);
  });

  // Arithmetic: 90 mm of stroke and a rod of 150 mm; 86 and 143 mm. Millimetres below top dead centre.
  it.each([
    [90, 150, '30:7.726 60:27.651 90:51.909 120:72.651 150:85.668 180:90'],
    [86, 143, '30:7.386 60:26.434 90:49.618 120:69.434'],
  ])('of %i mm stroke and %i mm rod is the piston’s way', (stroke, rod, text) => {
    for (const pair of text.split(' ')) {
      const [degrees = Number.NaN, expected = Number.NaN] = pair.split(':').map(Number);
      const share = (overClearance(degrees, 10, rod / (stroke / 2)) - 1) / 9;
      expect(share * stroke).toBeCloseTo(expected, 3);
    }
  });

  it('is the same a whole number of turns on, and on both sides of a dead centre', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.integer({ min: -3, max: 3 }),
        (turn, more) => {
          const here = numberOf(cylinderVolume(turn, 0.002, 4, 10, 3.5));
          expect(numberOf(cylinderVolume(turn + more, 0.002, 4, 10, 3.5)) / here).toBeCloseTo(1, 9);
          expect(numberOf(cylinderVolume(-turn, 0.002, 4, 10, 3.5)) / here).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('names what is wrong', () => {
    expect(sentenceOf(cylinderVolume(0, 0, 4, 10, 3.5))).toContain('`engine: displacement`');
    expect(sentenceOf(cylinderVolume(0, 0.002, 3.5, 10, 3.5))).toContain('whole number');
    expect(sentenceOf(cylinderVolume(0, 0.002, 4, 1, 3.5))).toContain('compresses nothing');
    expect(sentenceOf(cylinderVolume(0, 0.002, 4, 10, 1))).toContain('longer than the crank radius');
  });
});
