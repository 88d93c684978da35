import { describe, expect, it } from 'vitest';
import { engineFunctions } from '../../../core/engine/engineFunctions.ts';
import { camShift, openFor, teethOff, valveOverlap } from '../../../core/engine/mechanical/valveTiming.ts';
import { printed, result } from '../../support/expressionResult.ts';
import { reading } from '../../support/expressionScope.ts';
import { numberOf, sentenceOf } from '../answers.ts';

const turns = (degrees: number) => degrees / 360;
const degrees = (of: ReturnType<typeof openFor>) => numberOf(of) * 360;

describe('valve events', () => {
  // Published: 20/60/60/20 stay open 20 + 60 + 180 = 260 degrees each; advanced by 5 they are 25-55 and 65-15.
  it('of 20-60, 60-20 are open 260 degrees each with 40 together', () => {
    expect(degrees(openFor(turns(20), turns(60)))).toBeCloseTo(260, 10);
    expect(degrees(openFor(turns(60), turns(20)))).toBeCloseTo(260, 10);
    expect(degrees(valveOverlap(turns(20), turns(20)))).toBeCloseTo(40, 10);
  });

  it('of 25-55, 65-15 are the same cam five degrees early', () => {
    expect(degrees(openFor(turns(25), turns(55)))).toBeCloseTo(260, 10);
    expect(degrees(openFor(turns(65), turns(15)))).toBeCloseTo(260, 10);
    expect(degrees(valveOverlap(turns(25), turns(15)))).toBeCloseTo(40, 10);
  });

  // The convention: 0 where the cylinder fires, 0 to 720. EVO 120, EVC 380, IVO 340, IVC 600.
  it.each([
    ['60 °BBDC', '120 °CA'],
    ['20 °ATDC', '380 °CA'],
    ['20 °BTDC', '340 °CA'],
    ['60 °ABDC', '600 °CA'],
  ])('%s stand in the cycle at %s', (event, place) => {
    const { value, diagnostics } = result(`cycle_angle(${event})`, { functions: engineFunctions() });
    expect(diagnostics).toEqual([]);
    expect(printed(value)).toBe(place);
  });

  it('carry their uncertainty, and say what they are counted from', () => {
    const names = { ivc: reading('58 ± 3 °ABDC'), span: reading('30 °CA') };
    const setting = { names, functions: engineFunctions() };
    expect(printed(result('cycle_angle(ivc)', setting).value)).toBe('598 ± 3 °CA');
    expect(result('cycle_angle(span)', setting).diagnostics.map(({ code }) => code)).toEqual([
      'wrong-argument',
    ]);
  });

  it('a valve that closes before it opens is told', () => {
    expect(sentenceOf(openFor(turns(-120), turns(-80)))).toContain('not open at all');
  });
});

describe('teeth of the cam drive', () => {
  it('one of 40 is 18 degrees of the crank, two of 42 are 34.3 (arithmetic)', () => {
    expect(degrees(camShift(1, 40))).toBeCloseTo(18, 10);
    expect(degrees(camShift(2, 42))).toBeCloseTo(34.2857, 4);
    expect(numberOf(teethOff(turns(34), 42))).toBeCloseTo(1.983, 3);
  });

  it('a wheel that does not exist is told', () => {
    expect(sentenceOf(camShift(1, 0))).toContain('`engine: cam drive teeth`');
    expect(sentenceOf(teethOff(0.1, 40.5))).toContain('40.5 teeth');
  });
});
