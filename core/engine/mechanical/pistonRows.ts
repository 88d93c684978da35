import type { FunctionRow } from '../../expression/functionRow.ts';
import { ofNumbers } from '../answer.ts';
import { anySpeed, quantity } from '../parameters.ts';
import { effectiveRatio } from './effectiveRatio.ts';
import { pistonPosition, pistonSpeed } from './pistonPosition.ts';

const stroke = quantity('stroke', 'mm', 'piston travel', {
  header: 'engine.stroke',
  within: { above: '0 mm' },
});
const heywood = 'Heywood, Internal Combustion Engine Fundamentals, chapter 2';

export const pistonRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'piston_position',
    family: 'mechanical',
    summary: 'How far the piston stands below top dead centre at a crank angle.',
    parameters: [
      quantity('angle', '°CA', 'crank angle after top dead centre', { kind: 'atdc' }),
      stroke,
      quantity('rod_length', 'mm', 'connecting rod, eye to eye', { header: 'engine.rod_length' }),
    ],
    result: { kind: 'fixed', unit: 'mm' },
    formula: 'x = a·(1 − cos θ) + l − √(l² − a²·sin² θ)\na = stroke/2',
    where: [
      ['x', 'way from top dead centre', 'mm'],
      ['a', 'crank radius', 'mm'],
      ['θ', 'angle'],
      ['l', 'rod_length'],
    ],
    range: 'pin in the middle of the cylinder',
    errors: ['The stroke is not above 0.', 'The rod is not longer than half the stroke.'],
    source: heywood,
    example: { expression: 'piston_position(60 °ATDC, 90 mm, 150 mm)', result: '27.651 mm' },
    compute: ofNumbers(pistonPosition),
  },
  {
    form: 'scalar',
    name: 'piston_speed',
    family: 'mechanical',
    summary: 'The mean speed of the pistons.',
    parameters: [anySpeed, stroke],
    result: { kind: 'fixed', unit: 'm/s' },
    formula: 'v = 2 · stroke · rpm/60',
    where: [['v', 'mean speed of the piston', 'm/s']],
    range: '',
    errors: ['The speed is negative.', 'The stroke is not above 0.'],
    source: heywood,
    example: { expression: 'piston_speed(6500 rpm, 90 mm)', result: '19.5 m/s' },
    compute: ofNumbers(pistonSpeed),
  },
  {
    form: 'scalar',
    name: 'effective_ratio',
    family: 'mechanical',
    summary: 'The compression ratio from where the intake valve closes: what cranking really compresses.',
    parameters: [
      quantity('ivc', '°CA', 'where the intake valve closes', {
        within: { above: '-180 °CA', below: '180 °CA' },
        kind: 'abdc',
      }),
      quantity('ratio', '1', 'compression ratio', {
        within: { above: '1' },
        header: 'engine.compression_ratio',
      }),
      quantity('rod', '1', 'connecting rod over crank radius, usually 3 to 4', {
        within: { above: '1' },
        otherwise: '3.5',
      }),
    ],
    result: { kind: 'fixed', unit: '1' },
    formula: 'r = V(ivc)/V(top dead centre)',
    where: [
      ['r', 'effective ratio', ''],
      ['V', 'volume above the piston, as cylinder_volume', 'cc'],
    ],
    range: '',
    errors: [
      'The valve closes outside the compression stroke.',
      'The ratio is not above 1.',
      'The rod is not longer than the crank radius.',
    ],
    source: heywood,
    example: { expression: 'effective_ratio(50 °ABDC, 10)', result: '8.7744' },
    compute: ofNumbers(effectiveRatio),
  },
];
