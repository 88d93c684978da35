import { describe, expect, it } from 'vitest';
import { unitOf } from '../../core/quantity/unit.ts';
import { allSignals, formFor, nearestSignals, signalOf } from '../../core/signals/lookup.ts';

describe('a signal by its name', () => {
  it('is found by exactly that name', () => {
    expect(signalOf('map')?.meaning).toBe('Intake manifold pressure');
    expect(signalOf('MAP')).toBeUndefined();
    expect(signalOf('')).toBeUndefined();
  });

  it('is not found among what every object has', () => {
    for (const name of ['__proto__', 'constructor', 'toString', 'hasOwnProperty']) {
      expect(signalOf(name)).toBeUndefined();
      expect(nearestSignals(name).every((each) => signalOf(each) !== undefined)).toBe(true);
    }
  });

  it('finds every signal of the list', () => {
    expect(allSignals().filter((signal) => signalOf(signal.name) !== signal)).toEqual([]);
  });
});

describe('what a name may have meant', () => {
  const rows: readonly (readonly [string, string])[] = [
    ['engine speed', 'rpm'],
    ['Engine_Speed', 'rpm'],
    ['RPM', 'rpm'],
    ['coolant temperature', 'ect'],
    ['coolant temprature', 'ect'],
    ['manifold pressure', 'map'],
    ['ltft_bank1', 'ltft_b1'],
    ['LTFT', 'ltft_b1'],
    ['short term fuel trim bank 2', 'stft_b2'],
    ['spark advance', 'spark'],
    ['o2_b1s', 'o2_b1s1'],
    ['barometer', 'baro'],
    ['vaccum', 'vacuum'],
    ['oil temp', 'eot'],
    ['TPS', 'tp'],
    ['mass air flow', 'maf'],
    ['lambda', 'lambda_b1'],
    ['injector pulse width', 'pulse_width'],
    ['compresion', 'compression'],
    ['outside temperature', 'ambient'],
  ];
  it.each(rows)('%s: first of all %s', (written, meant) => {
    expect(nearestSignals(written)[0]).toBe(meant);
  });

  it('offers only names that exist, at most three, and never the name itself', () => {
    for (const { name, alsoCalled = [] } of allSignals()) {
      for (const written of [name, ...alsoCalled, `${name}x`]) {
        const offers = nearestSignals(written);
        expect(offers.length).toBeLessThanOrEqual(3);
        expect(offers).not.toContain(written);
        expect(offers.filter((each) => signalOf(each) === undefined)).toEqual([]);
      }
    }
  });

  it('leads from every other word to the signal that has it', () => {
    const lost = allSignals().flatMap(({ name, alsoCalled = [] }) =>
      alsoCalled.filter((word) => !nearestSignals(word).includes(name)).map((word) => `${word}: ${name}`),
    );
    expect(lost).toEqual([]);
  });

  it('offers nothing where nothing is near', () => {
    expect(nearestSignals('quantum flux of the left door')).toEqual([]);
    expect(nearestSignals('')).toEqual([]);
  });
});

describe('the form that a unit asks for', () => {
  const form = (name: string, unit: string) => {
    const signal = signalOf(name);
    const asked = unitOf(unit);
    return signal === undefined || asked === undefined ? undefined : formFor(signal, asked.dimension);
  };

  it('keeps air flow as mass, volts and frequency apart', () => {
    expect(form('maf', 'lb/min')?.unit).toBe('g/s');
    expect(form('maf', 'mV')?.unit).toBe('V');
    expect(form('maf', 'kHz')?.unit).toBe('Hz');
    expect(form('maf', 'kPa')).toBeUndefined();
  });

  it('keeps a wide-range sensor as lambda, current and volts apart', () => {
    expect(form('lambda_b1', '1')?.unit).toBe('1');
    expect(form('lambda_b1', 'µA')?.unit).toBe('mA');
    expect(form('lambda_b1', 'mV')?.unit).toBe('V');
  });

  it('does not take engine speed for a frequency', () => {
    expect(form('rpm', 'Hz')).toBeUndefined();
  });
});
