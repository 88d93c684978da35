import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coilCurrent,
  coilEnergy,
  rampInductance,
  timeToCurrent,
} from '../../../core/engine/electrical/coilCurrent.ts';
import { dwellAngle, dwellTime } from '../../../core/engine/electrical/dwell.ts';
import { wireDrop, wireResistance } from '../../../core/engine/electrical/wireDrop.ts';
import { kelvin, numberOf, rpm, sentenceOf } from '../answers.ts';

describe('a coil’s ramp', () => {
  it('reaches 7 A of 14 V, 0.6 Ω, 3.5 mH in 2.0806 ms (arithmetic from the RL circuit)', () => {
    expect(numberOf(timeToCurrent(7, 14, 0.6, 0.0035)) * 1000).toBeCloseTo(2.0806, 5);
  });

  it('there and back is the current again', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 23, noNaN: true }), (current) => {
        const time = numberOf(timeToCurrent(current, 14, 0.6, 0.0035));
        expect(numberOf(coilCurrent(14, 0.6, 0.0035, time))).toBeCloseTo(current, 9);
      }),
    );
  });

  // 99.9 % at 6.91 time constants: a physics course's solution of the RL circuit.
  it('stands at 99.9 % after 6.91 time constants (published)', () => {
    expect(numberOf(timeToCurrent(0.999 * 14, 14, 1, 0.002)) / 0.002).toBeCloseTo(6.91, 2);
  });

  it('starts at 3 A/ms with 12 V on 4 mH (arithmetic), where its inductance is read', () => {
    const early = numberOf(coilCurrent(12, 0.5, 0.004, 1e-5));
    expect(early / 1e-5 / 1000).toBeCloseTo(3, 2);
    expect(numberOf(rampInductance(12, early, 1e-5)) * 1000).toBeCloseTo(4, 2);
  });

  it('holds 85.75 mJ at 7 A and 3.5 mH (arithmetic)', () => {
    expect(numberOf(coilEnergy(7, 0.0035)) * 1000).toBeCloseTo(85.75, 10);
  });

  it('names what is wrong', () => {
    expect(sentenceOf(timeToCurrent(30, 14, 0.6, 0.0035))).toContain('at most 23.333 A');
    expect(sentenceOf(timeToCurrent(1, 14, 0, 0.0035))).toContain('resistance');
    expect(sentenceOf(timeToCurrent(1, 14, 1, 0))).toContain('inductance');
    expect(sentenceOf(timeToCurrent(-1, 14, 1, 1))).toContain('voltage');
    expect(sentenceOf(rampInductance(12, 0, 1))).toContain('must rise');
    expect(sentenceOf(coilEnergy(1, 0))).toContain('inductance');
  });
});

describe('dwell', () => {
  // A distributor turns at half speed: at 1800 rpm 5.4 degrees a millisecond.
  it('of 5 ms at 1800 rpm is 27 degrees (arithmetic), and back', () => {
    expect(numberOf(dwellAngle(0.005, rpm(1800), 4)) * 360).toBeCloseTo(27, 10);
    expect(numberOf(dwellTime(27 / 360, rpm(1800), 4)) * 1000).toBeCloseTo(5, 10);
  });

  it('does not fit between two firings when it is too long', () => {
    expect(sentenceOf(dwellAngle(0.02, rpm(6000), 8))).toContain('the next cylinder fires after 2.5 ms');
    expect(sentenceOf(dwellTime(95 / 360, rpm(800), 4))).toContain('90° of the distributor');
    expect(sentenceOf(dwellAngle(0.005, 0, 4))).toContain('stands still');
  });
});

describe('copper in the warm', () => {
  // 10 AWG: 0.9989 Ω in 1000 ft at 20 °C (published), 1.1166 Ω at 50 °C (× 1.1179, arithmetic).
  it('of 10 AWG, 1000 ft, has 0.9989 Ω at 20 °C and 1.1166 Ω at 50 °C', () => {
    expect(Math.abs(numberOf(wireResistance('10 AWG', 304.8, kelvin(20))) / 0.9989 - 1)).toBeLessThan(5e-4);
    expect(numberOf(wireResistance('10 AWG', 304.8, kelvin(50)))).toBeCloseTo(1.1166, 4);
    const [cold, warm] = [20, 50].map((at) => numberOf(wireDrop('10 AWG', 304.8, 10, kelvin(at))));
    expect((warm ?? 0) / (cold ?? 1)).toBeCloseTo(1.1179, 6);
  });

  it('beyond what a wire stands is told', () => {
    expect(sentenceOf(wireResistance('10 AWG', 1, kelvin(400)))).toContain('400 °C');
  });
});
