import type { FunctionRow } from '../../expression/functionRow.ts';
import { ofNumbers } from '../answer.ts';
import { absolutePressure, cylinders, displacement, quantity } from '../parameters.ts';
import { compressionPressure } from './compressionPressure.ts';
import { crankingRows } from './crankingRows.ts';
import { cylinderVolume } from './cylinderVolume.ts';
import { inCylinderRows } from './inCylinderRows.ts';
import { intakeRows } from './intakeRows.ts';

const compressionRatio = { header: 'engine.compression_ratio', within: { above: '1' } };

export const mechanicalRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'compression_pressure',
    family: 'mechanical',
    summary:
      'The absolute pressure that a cylinder can reach from this pressure at the start of compression.',
    parameters: [
      quantity('ratio', '1', 'compression ratio', compressionRatio),
      absolutePressure('pressure', 'pressure when compression starts, about the barometer', {
        within: { above: '0 kPa' },
      }),
      quantity('exponent', '1', 'polytropic exponent: about 1.3, less from leakage and heat when cranking', {
        within: { from: '1', to: '1.4' },
      }),
    ],
    result: { kind: 'fixed', unit: 'kPa', quantityKind: 'absolute' },
    formula: 'p₂ = p₁ · r^n',
    where: [
      ['p₂', 'pressure at the end of compression, absolute', 'kPa'],
      ['p₁', 'pressure'],
      ['r', 'ratio'],
      ['n', 'exponent'],
    ],
    range: '',
    errors: [
      'The ratio is not above 1.',
      'The pressure is not above absolute zero.',
      'The exponent is outside 1 .. 1.4.',
    ],
    source:
      'polytropic law; exponents after Heywood, Internal Combustion Engine Fundamentals, chapter 9 (values from memory)',
    example: { expression: 'compression_pressure(10, 101.325 kPa, 1.3)', result: '2021.7 kPa' },
    compute: ofNumbers(compressionPressure),
  },
  {
    form: 'scalar',
    name: 'cylinder_volume',
    family: 'mechanical',
    summary: 'The volume above one piston at a crank angle.',
    parameters: [
      quantity('angle', '°CA', 'crank angle after top dead centre', { kind: 'atdc' }),
      displacement,
      cylinders,
      quantity('ratio', '1', 'compression ratio', compressionRatio),
      quantity('rod', '1', 'connecting rod over crank radius, usually 3 to 4', {
        within: { above: '1' },
        otherwise: '3.5',
      }),
    ],
    result: { kind: 'fixed', unit: 'cc' },
    formula: 'V = V₀·(1 + (r − 1)/2·(R + 1 − cos θ − √(R² − sin² θ)))\nV₀ = displacement/cylinders/(r − 1)',
    where: [
      ['V', 'volume above the piston', 'cc'],
      ['V₀', 'the same at top dead centre', 'cc'],
      ['r', 'ratio'],
      ['R', 'rod'],
      ['θ', 'angle'],
    ],
    range: 'pin in the middle of the cylinder',
    errors: [
      'The ratio is not above 1.',
      'The rod is not longer than the crank radius.',
      'The displacement is not above 0.',
      'The number of cylinders is not a whole number.',
    ],
    source: 'Heywood, Internal Combustion Engine Fundamentals, chapter 2',
    example: { expression: 'cylinder_volume(90 °ATDC, 2.0 L, 4, 10, 3.5)', result: '342.0 cc' },
    compute: ofNumbers(cylinderVolume),
  },
  ...crankingRows,
  ...inCylinderRows,
  ...intakeRows,
];
