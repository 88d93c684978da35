import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dividerResistance, dividerVolts } from '../../../core/engine/sensors/dividerResistance.ts';
import { nernstOxygen, nernstVolts } from '../../../core/engine/sensors/nernstVolts.ts';
import { ratiometricPressure, ratiometricVolts } from '../../../core/engine/sensors/ratiometric.ts';
import { sensorCircuit, titaniaMixture } from '../../../core/engine/sensors/sensorCircuit.ts';
import { numberOf, sentenceOf } from '../answers.ts';

describe('a sensor behind a pull-up', () => {
  // Arithmetic: 5 V over 2.2 kΩ.
  it.each([
    [32640, 4.6843],
    [10000, 4.0984],
    [2487, 2.6531],
    [678.1, 1.178],
    [0, 0],
  ])('of %f Ω shows %f V', (ohm, volts) => {
    expect(numberOf(dividerVolts(ohm, 5, 2200))).toBeCloseTo(volts, 4);
  });

  it('there and back is the resistance again', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e6, noNaN: true }), (ohm) => {
        expect(numberOf(dividerResistance(numberOf(dividerVolts(ohm, 5, 2200)), 5, 2200)) / ohm).toBeCloseTo(
          1,
          9,
        );
      }),
    );
  });

  // Common practice: an open circuit stands at the supply, a short at ground.
  it('has two ends, and what lies between is a reading', () => {
    expect(sensorCircuit(4.98, 5, 0.02)).toBe('open circuit');
    expect(sensorCircuit(0.02, 5, 0.02)).toBe('short to ground');
    expect(sensorCircuit(12.4, 5, 0.02)).toBe('above the supply');
    expect(sensorCircuit(4.68, 5, 0.02)).toBe('between the ends');
    expect(sensorCircuit(-0.01, 5, 0.02)).toBe('short to ground');
    expect(sensorCircuit(-3, 5, 0.02)).toHaveProperty('noAnswer', expect.stringContaining('below ground'));
    expect(sensorCircuit(4.98, 0, 0.02)).toHaveProperty('noAnswer');
    expect(sensorCircuit(4.98, 5, 0.7)).toHaveProperty('noAnswer');
  });

  it('names what is wrong', () => {
    expect(sentenceOf(dividerVolts(-1, 5, 2200))).toContain('-1 Ω');
    expect(sentenceOf(dividerVolts(1, 0, 2200))).toContain('hang on a voltage');
    expect(sentenceOf(dividerVolts(1, 5, 0))).toContain('pull-up');
  });
});

describe('zirconia read backwards', () => {
  // Arithmetic with the constants of CODATA 2018; industrial probe pages print p = 0.209·exp(−46.421·E/T), E in mV.
  it('of 450 mV at 900 K is 1.7402e-11', () => {
    expect(numberOf(nernstOxygen(0.45, 900)) / 1.7402e-11).toBeCloseTo(1, 4);
    expect(numberOf(nernstOxygen(0.45, 900)) / (0.209 * Math.exp((-46.421 * 450) / 900))).toBeCloseTo(1, 2);
  });

  it('there and back is the oxygen again', () => {
    for (const oxygen of [1e-20, 1e-10, 1e-3, 0.209, 0.9])
      expect(numberOf(nernstOxygen(numberOf(nernstVolts(900, oxygen)), 900)) / oxygen).toBeCloseTo(1, 9);
  });

  it('refuses a voltage that would need more than an atmosphere of oxygen', () => {
    expect(sentenceOf(nernstOxygen(-0.2, 900))).toContain('-0.2 V');
    expect(sentenceOf(nernstOxygen(0.2, 0))).toContain('absolute zero');
  });
});

describe('titania', () => {
  // Common practice: on a 5 V supply near 5 V is lean and near 0 V rich, the reverse of zirconia; the circuit decides.
  it('takes the polarity from the circuit', () => {
    expect(titaniaMixture(4.6, 5, 'high')).toBe('lean');
    expect(titaniaMixture(0.3, 5, 'high')).toBe('rich');
    expect(titaniaMixture(0.9, 1, 'low')).toBe('rich');
    expect(titaniaMixture(0.1, 1, ' Low ')).toBe('lean');
    expect(titaniaMixture(2.5, 5, 'high')).toBe('between');
    expect(titaniaMixture(2.5, 5, 'up')).toHaveProperty(
      'noAnswer',
      expect.stringContaining('"high" or "low"'),
    );
    expect(titaniaMixture(7, 5, 'high')).toHaveProperty(
      'noAnswer',
      expect.stringContaining('cannot give 7 V'),
    );
  });
});

describe('a ratiometric pressure sensor', () => {
  it('follows its supply: 2.5 V of 5 V and 2.4 V of 4.8 V are one pressure (arithmetic)', () => {
    expect(numberOf(ratiometricPressure(2.5, 5, 20e3, 120e3, 0.1, 0.9))).toBeCloseTo(70e3, 6);
    expect(numberOf(ratiometricPressure(2.4, 4.8, 20e3, 120e3, 0.1, 0.9))).toBeCloseTo(70e3, 6);
  });

  it('there and back is the pressure again', () => {
    fc.assert(
      fc.property(fc.double({ min: 20e3, max: 120e3, noNaN: true }), (pressure) => {
        const volts = numberOf(ratiometricVolts(pressure, 5, 20e3, 120e3, 0.1, 0.9));
        expect(numberOf(ratiometricPressure(volts, 5, 20e3, 120e3, 0.1, 0.9))).toBeCloseTo(pressure, 6);
      }),
    );
  });

  it('a voltage at either end is no pressure', () => {
    expect(sentenceOf(ratiometricPressure(0.05, 5, 20e3, 120e3, 0.1, 0.9))).toContain(
      'outside the sensor’s range of 0.5 to 4.5 V',
    );
    expect(sentenceOf(ratiometricPressure(4.95, 5, 20e3, 120e3, 0.1, 0.9))).toContain('failed circuit');
    expect(sentenceOf(ratiometricVolts(140e3, 5, 20e3, 120e3, 0.1, 0.9))).toContain(
      'outside what this sensor measures',
    );
    expect(sentenceOf(ratiometricPressure(2.5, 0, 20e3, 120e3, 0.1, 0.9))).toContain('supply');
    expect(sentenceOf(ratiometricPressure(2.5, 5, 120e3, 20e3, 0.1, 0.9))).toContain('above the lowest');
    expect(sentenceOf(ratiometricPressure(2.5, 5, 20e3, 120e3, 0.9, 0.1))).toContain('shares');
  });
});
