import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { samples } from '../support/samples.ts';
import { filling } from './secondRoute.ts';

const studied = checkCase(samples.get('plenum-leak.diag') ?? '');

/** Invented readings of one engine have to fit one engine: all the air that comes in, counted or not. */
describe('the engine with the leaking plenum', () => {
  /** In SI units, as it was read. */
  const read = (name: string): number => {
    const value = studied.readings.find((each) => each.fullName === name)?.value;
    if (value?.kind !== 'one') throw new Error(`There is no single ${name}.`);
    return value.amount.si;
  };

  /** What fills the cylinders: the metered air, and by the trims the air past the meter. */
  const filled = (at: string): number =>
    filling({
      maf: read(`${at}.maf`) * 1000 * (1 + read(`${at}.stft_b1`) + read(`${at}.ltft_b1`)),
      rpm: read(`${at}.rpm`) * 60,
      litres: 2.4,
      pascal: read(`${at}.map`),
      kelvin: read(`${at}.iat`),
    });

  it('fills more of its displacement the higher the manifold pressure, at about one speed', () => {
    for (const speed of ['idle', 'fast', 'drive']) {
      expect(read(`before.${speed}.map`)).toBeGreaterThan(read(`after.${speed}.map`));
      expect(filled(`before.${speed}`), speed).toBeGreaterThan(filled(`after.${speed}`));
    }
  });

  // Residual gas takes the more room the lower the manifold pressure (Heywood, chapter 6); the limits are common practice.
  it('fills as a sound engine of its kind does', () => {
    for (const at of ['before.idle', 'before.fast', 'after.idle', 'after.fast']) {
      expect(filled(at), at).toBeGreaterThan(0.6);
      expect(filled(at), at).toBeLessThan(0.75);
    }
    for (const at of ['before.drive', 'after.drive']) {
      expect(filled(at), at).toBeGreaterThan(0.75);
      expect(filled(at), at).toBeLessThan(0.85);
    }
  });
});
