import { describe, expect, it } from 'vitest';
import {
  backPressureLimit,
  backPressurePattern,
} from '../../../core/engine/mechanical/backPressurePattern.ts';
import {
  compressionPattern,
  puffPattern,
  wetPattern,
} from '../../../core/engine/mechanical/compressionPattern.ts';
import { leakagePattern } from '../../../core/engine/mechanical/leakagePattern.ts';
import { resultOf } from '../../support/study.ts';
import { psi, rpm } from '../answers.ts';

/*
 * Common practice throughout, so no oracle: the trade's own figures must come out as the trade reads them.
 * Running 50 to 75 psi at idle, snap about 80 % of cranking, lowest to highest 75 %, leakage 15 to 20 %, back pressure 1.5 and 3 psi.
 */

const inPsi = (...values: readonly number[]) =>
  values.map((each) => each * psi) as [number, number, number, number];

describe('three compressions of one cylinder', () => {
  it.each([
    ['seals and breathes', [180, 62, 145, 184]],
    ['seals and breathes', [178, 75, 150, 180]],
    ['leaks', [95, 40, 80, 180]],
    ['cannot fill', [178, 44, 92, 182]],
    // Fills at idle, not when the throttle is snapped: a worn intake lobe.
    ['cannot fill', [176, 60, 95, 180]],
    ['cannot empty', [180, 115, 160, 182]],
    ['cannot empty', [180, 70, 210, 182]],
  ] as const)('say "%s" for %j psi', (words, figures) => {
    expect(compressionPattern(...inPsi(...figures))).toBe(words);
  });

  it('are read in a case, where the answer can be expected', () => {
    const result = resultOf(
      `readings: Cylinder 3, and the best\nas: third\nstate: cranking\nvalues:\n  compression: {1: 182 psi, 3: 178 psi}\n---\ncheck: What is it?\nlet:\n  said: compression_pattern(third.compression[3], 60 psi, 92 psi, max(third.compression))\nexpect:\n  - said is "cannot fill"\n`,
    );
    expect(result.values.said).toEqual({ value: 'cannot fill' });
    expect(result.expectations.map(({ verdict }) => verdict)).toEqual(['holds']);
  });
});

describe('the first puff against the fifth', () => {
  it.each([
    ['even from the first', 100, 175],
    ['builds up slowly', 42, 150],
    ['weak and stays weak', 30, 70],
    ['stops early', 90, 105],
  ] as const)('says "%s" for %i and %i of 180 psi', (words, first, fifth) => {
    expect(puffPattern(first * psi, fifth * psi, 180 * psi)).toBe(words);
  });
});

describe('oil in a low cylinder', () => {
  it.each([
    ['not low', 150, 170],
    ['oil seals it', 95, 160],
    ['oil helps in part', 95, 130],
    ['oil does not help', 95, 105],
  ] as const)('says "%s" for %i dry and %i wet of 175 psi', (words, dry, wet) => {
    expect(wetPattern(dry * psi, wet * psi, 175 * psi)).toBe(words);
  });
});

describe('figures that contradict each other', () => {
  it('are told', () => {
    expect(puffPattern(80 * psi, 60 * psi, 180 * psi)).toHaveProperty(
      'noAnswer',
      expect.stringContaining('Check their order'),
    );
    expect(wetPattern(-psi, 10, 20)).toHaveProperty('noAnswer', expect.stringContaining('does not exist'));
    expect(compressionPattern(...inPsi(190, 60, 150, 180))).toHaveProperty(
      'noAnswer',
      expect.stringContaining('above the one'),
    );
  });
});

describe('where the air of a leak-down comes out', () => {
  it.each([
    ['exhaust valve', 'tailpipe'],
    ['intake valve', 'Throttle'],
    ['rings or piston', 'oil filler'],
    ['head gasket or crack', 'radiator'],
    ['gasket between cylinders', 'neighbour'],
  ])('it is the %s', (words, place) => {
    expect(leakagePattern(0.42, place)).toBe(words);
  });

  // Common practice: up to 20 % past rings and valves is usual; bubbles in the coolant never are.
  it.each([
    ['within the usual', 'tailpipe'],
    ['within the usual', 'throttle'],
    ['within the usual', 'dipstick'],
    ['head gasket or crack', 'radiator'],
    ['gasket between cylinders', 'next cylinder'],
    // The words of `leakdown_from`.
    ['head gasket or crack', 'cooling system'],
    ['gasket between cylinders', 'plug hole'],
  ])('little of it is %s at the %s', (words, place) => {
    expect(leakagePattern(0.12, place)).toBe(words);
  });

  it('a place that nobody knows gets the nearest', () => {
    expect(leakagePattern(0.42, 'tailpip')).toHaveProperty(
      'noAnswer',
      expect.stringContaining('Did you mean tailpipe?'),
    );
    expect(leakagePattern(1.4, 'tailpipe')).toHaveProperty('noAnswer', expect.stringContaining('140 %'));
  });
});

describe('back pressure', () => {
  it('has the trade’s limits at idle and at 2500 rpm, straight between', () => {
    expect(backPressureLimit(rpm(750)) / psi).toBeCloseTo(1.5, 12);
    expect(backPressureLimit(rpm(1750)) / psi).toBeCloseTo(2.25, 12);
    expect(backPressureLimit(rpm(3500)) / psi).toBeCloseTo(3, 12);
  });

  it.each([
    ['free', 0.8, 750],
    ['somewhat high', 2.2, 750],
    ['blocked', 8.5, 2500],
  ] as const)('is %s at %f psi and %i rpm', (words, pressure, speed) => {
    expect(backPressurePattern(pressure * psi, rpm(speed))).toBe(words);
  });

  it('needs an engine that turns', () => {
    expect(backPressurePattern(psi, 0)).toHaveProperty('noAnswer', expect.stringContaining('nothing flows'));
    expect(backPressurePattern(-3 * psi, 20)).toHaveProperty(
      'noAnswer',
      expect.stringContaining('does not exist'),
    );
  });
});
