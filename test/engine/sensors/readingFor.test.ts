import { describe, expect, it } from 'vitest';
import { engineFunctions } from '../../../core/engine/engineFunctions.ts';
import { printed, result } from '../../support/expressionResult.ts';
import { curve, reading } from '../../support/expressionScope.ts';

const names = {
  'spec.volts': curve([
    ['0.4 V', '2 g/s'],
    ['1.1 V', '9 g/s'],
    ['2.6 V', '55 g/s'],
  ]),
  // A meter in hertz, synthetic: the faster, the more air.
  'spec.hertz': curve([
    ['1500 Hz', '2 g/s'],
    ['2600 Hz', '9 g/s'],
    ['6000 Hz', '55 g/s'],
  ]),
  'spec.ntc': curve([
    ['0 °C', '32.64 kΩ'],
    ['40 °C', '5.325 kΩ'],
    ['100 °C', '678.1 Ω'],
  ]),
  'spec.bent': curve([
    ['0.4 V', '2 g/s'],
    ['1.1 V', '9 g/s'],
    ['2.6 V', '5 g/s'],
  ]),
  flow: reading('32 ± 1 g/s'),
};
const said = (text: string) => printed(result(text, { names, functions: engineFunctions() }).value);

describe('the reading that a flow should show', () => {
  it('is read backwards along the curve, in volts and in hertz (straight line by hand)', () => {
    expect(said('reading_for(spec.volts, 32 g/s)')).toBe('1.85 V');
    expect(said('reading_for(spec.hertz, 32 g/s)')).toBe('4300 Hz');
    expect(said('reading_for(spec.ntc, 5.325 kΩ)')).toBe('40 °C');
  });

  it('carries the uncertainty by the slope: 1 g/s of 46 g/s over 1.5 V', () => {
    expect(said('reading_for(spec.volts, flow)')).toBe('1.850 ± 0.033 V');
  });

  it('there and back is the flow again', () => {
    expect(said('interpolate(spec.hertz, reading_for(spec.hertz, 32 g/s))')).toBe('32 g/s');
  });

  it('says why not', () => {
    expect(said('reading_for(spec.volts, 60 g/s)')).toContain(
      'outside the curve, which runs from 2 g/s to 55 g/s',
    );
    expect(said('reading_for(spec.bent, 5 g/s)')).toContain('turns back');
    const wrong = result('reading_for(spec.volts, 1.2 V)', { names, functions: engineFunctions() });
    expect(wrong.diagnostics.map(({ code }) => code)).toEqual(['wrong-argument']);
  });
});
