import { describe, expect, it } from 'vitest';
import { checkCase } from '../../core/rules/checkCase.ts';
import { samples } from '../support/samples.ts';
import { airToFuel, filling } from './secondRoute.ts';

const studied = checkCase(samples.get('purge-that-never-shuts.diag') ?? '');

/** Invented answers of one engine have to fit one engine. */
describe('the engine whose purge valve never shuts', () => {
  /** In SI units, as decoded. */
  const read = (name: string): number => {
    const value = studied.readings.find((each) => each.fullName === name)?.value;
    if (value?.kind !== 'one') throw new Error(`There is no single ${name}.`);
    return value.amount.si;
  };

  const metered = (at: string): number =>
    filling({
      maf: read(`${at}.maf`) * 1000,
      rpm: read(`${at}.rpm`) * 60,
      litres: 2,
      pascal: read(`${at}.map`),
      kelvin: read(`${at}.iat`),
    });

  // Residual gas takes the more room the lower the manifold pressure (Heywood, chapter 6); the limits are common practice.
  it('fills as a sound engine of its kind does', () => {
    for (const at of ['idle', 'fast', 'clamped']) {
      expect(metered(at), at).toBeGreaterThan(0.6);
      expect(metered(at), at).toBeLessThan(0.72);
    }
    expect(metered('drive')).toBeGreaterThan(0.75);
    expect(metered('drive')).toBeLessThan(0.85);
  });

  it('counts through its meter what no longer comes through the hose: air and vapour, at one speed and pressure', () => {
    const before = read('idle.maf');
    const throughHose = read('clamped.maf') - before;
    const vapour =
      (before * (1 - (1 + read('idle.stft_b1')) * (1 + read('idle.ltft_b1')))) / airToFuel(1.93, 0.033);
    // What came through the hose was more than the vapour alone, and mostly air: vapour above charcoal is a quarter of it or so.
    expect(vapour).toBeLessThan(throughHose);
    expect(vapour / throughHose).toBeGreaterThan(0.15);
    expect(vapour / throughHose).toBeLessThan(0.5);
  });

  // The share of a hole that chokes below about 0.53 of the outer pressure (isentropic flow of air) stays the same.
  it('gets the same through the hose while the manifold is below half of the barometer, and hardly less on the road', () => {
    const barometer = read('idle.baro');
    for (const at of ['idle', 'fast']) expect(read(`${at}.map`) / barometer, at).toBeLessThan(0.528);
    expect(read('drive.map') / barometer).toBeLessThan(0.65);
  });

  it('shows a load that is the share of a full breath at sea level', () => {
    // SAE J1979: of the flow at full throttle, which is taken as 0.85 to 0.95 of the displacement at 1.184 g/L.
    const full = (at: string): number => 1.184 * 2 * (read(`${at}.rpm`) / 2);
    const share = read('idle.load');
    const flow = (read('idle.maf') * 1000) / full('idle');
    expect(flow / share).toBeGreaterThan(0.85);
    expect(flow / share).toBeLessThan(0.95);
  });
});
