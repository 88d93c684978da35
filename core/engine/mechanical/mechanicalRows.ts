import type { FunctionRow } from '../../expression/functionRow.ts';
import { ofNumbers } from '../answer.ts';
import { absolutePressure, cylinders, displacement, quantity, series } from '../parameters.ts';
import { compressionPressure } from './compressionPressure.ts';
import { crankingRows } from './crankingRows.ts';
import { cylinderVolume } from './cylinderVolume.ts';

const compressionRatio = { header: 'engine.compression_ratio' };
const inCylinder = series('pressure', 'kPa', 'pressure in the cylinder over time', 'gauge');

export const mechanicalRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'compression_pressure',
    family: 'mechanical',
    summary:
      'The absolute pressure that a cylinder can reach from this pressure at the start of compression.',
    parameters: [
      quantity('ratio', '1', 'compression ratio', compressionRatio),
      absolutePressure('pressure', 'pressure when compression starts, about the barometer'),
      quantity('exponent', '1', 'polytropic exponent: about 1.3, less from leakage and heat when cranking'),
    ],
    result: { kind: 'fixed', unit: 'kPa', quantityKind: 'absolute' },
    formula: 'p2 = pressure · ratio^exponent',
    range: 'exponent 1 .. 1.4',
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
      quantity('rod', '1', 'connecting rod over crank radius, usually 3 to 4', { otherwise: '3.5' }),
    ],
    result: { kind: 'fixed', unit: 'cc' },
    formula:
      'V = Vc·(1 + (r − 1)/2·(R + 1 − cos θ − √(R² − sin² θ))), Vc = displacement/cylinders/(r − 1), R = rod',
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
  {
    form: 'later',
    name: 'crank_angle',
    family: 'mechanical',
    summary: 'The crank angle of each sample of an in-cylinder capture, from top dead centre to the next.',
    parameters: [inCylinder],
    result: { kind: 'computed', says: 'a series of crank angles, 0 at top dead centre' },
    formula: 'straight in time between the compression peaks, two turns apart',
    range: 'steady speed, spark plug removed from that cylinder',
    errors: ['Fewer than two compression peaks are found.'],
    source: 'common practice',
    example: { expression: 'max(crank_angle(snap.pressure))', result: '720 °CA' },
  },
  {
    form: 'later',
    name: 'valve_events',
    family: 'mechanical',
    summary:
      'When the valves open and close, and the plateaus between, read from a capture of cylinder pressure.',
    parameters: [inCylinder],
    result: {
      kind: 'fields',
      fields: [
        { name: 'evo', meaning: 'the exhaust valve opens', unit: '°BBDC' },
        { name: 'evc', meaning: 'the exhaust valve closes', unit: '°ATDC' },
        { name: 'ivo', meaning: 'the intake valve opens', unit: '°BTDC' },
        { name: 'ivc', meaning: 'the intake valve closes', unit: '°ABDC' },
        { name: 'overlap', meaning: 'crank angle with both valves open', unit: '°CA' },
        {
          name: 'exhaust_plateau',
          meaning: 'pressure while the exhaust valve is open: the back pressure',
          unit: 'kPa',
          quantityKind: 'gauge',
          like: 'pressure',
        },
        {
          name: 'intake_plateau',
          meaning: 'vacuum while the intake valve is open',
          unit: 'kPa',
          quantityKind: 'vacuum',
          like: 'pressure',
        },
        {
          name: 'tower_ratio',
          meaning: 'the expansion after top dead centre against the compression before it',
          unit: '1',
        },
      ],
    },
    formula: 'corners of the pressure over crank angle',
    range: 'steady speed, spark plug removed from that cylinder',
    errors: ['Fewer than two compression peaks are found.', 'A corner cannot be told from noise.'],
    source:
      'common practice; event conventions after Heywood, Internal Combustion Engine Fundamentals, chapter 6',
    example: { expression: 'valve_events(snap.pressure).evo', result: '60 °BBDC' },
  },
];
