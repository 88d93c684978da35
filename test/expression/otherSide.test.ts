import { describe, expect, it } from 'vitest';
import { allFunctions } from '../../core/study/functions.ts';
import { applyEdits } from '../../core/text/edits.ts';
import { frames, result } from '../support/expressionResult.ts';
import { reading } from '../support/expressionScope.ts';

const setting = { names: { spark: reading('10 °BTDC') }, functions: allFunctions() };
const found = (text: string) => result(text, setting).diagnostics;

/** One slip is told once, at its place, and the only offer puts it right. */
const told = (text: string, frame: string, right: string): void => {
  const [first, ...more] = found(text);
  expect(frames(text, found(text))).toEqual([`${text}\n${frame}`]);
  expect(more).toEqual([]);
  expect(first?.fixes.map(({ edits }) => applyEdits(text, edits))).toEqual([right]);
  expect(frames(right, found(right))).toEqual([]);
};

describe('an angle from the other side of the dead centre', () => {
  it.each([
    [
      'cylinder_volume(45 °BTDC, 500 cc, 10, 2) > 1 cc',
      '                ^^^^^^^^ wrong-argument: `cylinder_volume` takes crank position in °ATDC (such as `°CA`) as `angle` (crank angle after top dead centre), and got `45 °BTDC` (crank position in °BTDC). Write `-45 °ATDC`.',
      'cylinder_volume(-45 °ATDC, 500 cc, 10, 2) > 1 cc',
    ],
    [
      'valve_overlap(-8 °ATDC, 12 °ATDC) > 1 °',
      '              ^^^^^^^^ wrong-argument: `valve_overlap` takes crank position in °BTDC (such as `°CA`) as `ivo` (where the intake valve opens), and got `-8 °ATDC` (crank position in °ATDC). Write `8 °BTDC`.',
      'valve_overlap(8 °BTDC, 12 °ATDC) > 1 °',
    ],
    [
      'effective_ratio(130.5 °BBDC, 10) > 1',
      '                ^^^^^^^^^^^ wrong-argument: `effective_ratio` takes crank position in °ABDC (such as `°CA`) as `ivc` (where the intake valve closes), and got `130.5 °BBDC` (crank position in °BBDC). Write `-130.5 °ABDC`.',
      'effective_ratio(-130.5 °ABDC, 10) > 1',
    ],
    [
      'spark > 5 °ATDC',
      '^^^^^^^^^^^^^^^ crank-marks-differ: `spark` (crank position in °BTDC) and `5 °ATDC` (crank position in °ATDC) count from different marks or in different directions. 10 °ATDC is -10 °BTDC: write the negative in °BTDC.',
      'spark > -5 °BTDC',
    ],
    [
      '0 °ATDC < spark',
      '^^^^^^^^^^^^^^^ crank-marks-differ: `0 °ATDC` (crank position in °ATDC) and `spark` (crank position in °BTDC) count from different marks or in different directions. 10 °BTDC is -10 °ATDC: write the negative in °ATDC.',
      '0 °BTDC < spark',
    ],
  ])('%s', told);

  it('is not offered for another dead centre', () => {
    const [diagnostic] = found('cylinder_volume(45 °BBDC, 500 cc, 10, 2) > 1 cc');
    expect([diagnostic?.code, diagnostic?.fixes]).toEqual(['wrong-argument', []]);
  });
});
