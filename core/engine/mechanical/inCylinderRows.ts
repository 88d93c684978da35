import type { FunctionRow } from '../../expression/functionRow.ts';
import { typeIn } from '../../waveform/arguments.ts';
import { caseBarometer, quantity, series } from '../parameters.ts';
import { crankAngle, valveEvents } from './inCylinder.ts';

const inCylinder = series(
  'pressure',
  'kPa',
  'pressure in a cylinder that does not fire, its plug removed, over time',
  'gauge',
);
const noTowers = 'Fewer than two compression towers are found, or they do not follow each other evenly.';
const notCylinder = 'The peaks are as broad as the valleys: it is not the pressure in one cylinder.';

/** What the pressure in a cylinder tells, the engine running on the others or cranked. */
export const inCylinderRows: readonly FunctionRow[] = [
  {
    form: 'whole',
    name: 'crank_angle',
    family: 'mechanical',
    fourStroke: true,
    summary:
      'The crank angle at each sample of an in-cylinder capture, from one compression to the next, so that other channels can be read against it.',
    parameters: [inCylinder],
    result: {
      kind: 'computed',
      says: 'samples of crank angle, 0 to 720 after the compression’s top dead centre',
      typeOf: ([pressure]) =>
        pressure?.kind === 'series'
          ? { type: { ...pressure, quantity: { ...typeIn('°ATDC'), kind: 'atdc' } } }
          : { wrong: 0, takes: 'samples of pressure' },
    },
    formula:
      '720° from tower to tower, the speed changing steadily between (cubic)\nthe tops by a parabola through the crown',
    range:
      'the top of the pressure stands for top dead centre, which it precedes by some tenths of a degree (loss angle); within a turn the crank runs unevenly, most when cranking',
    errors: [noTowers, notCylinder],
    source: 'common practice; definition of the four-stroke cycle',
    example: { expression: 'at(crank_angle(snap.pressure), 1 s)', result: '230.34 °ATDC' },
    evaluate: crankAngle,
  },
  {
    form: 'whole',
    name: 'valve_events',
    family: 'mechanical',
    fourStroke: true,
    summary:
      'When the valves open and close, and the plateaus between, read from a capture of cylinder pressure.',
    parameters: [
      inCylinder,
      quantity('ratio', '1', 'compression ratio', {
        within: { above: '1' },
        header: 'engine.compression_ratio',
        otherwise: '10',
      }),
      caseBarometer('barometer', 'the barometer of the day'),
    ],
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
          meaning: 'the expansion after top dead centre against the compression before it, 1 without loss',
          unit: '1',
        },
        {
          name: 'peak',
          meaning: 'height of the towers',
          unit: 'kPa',
          quantityKind: 'gauge',
          like: 'pressure',
        },
        { name: 'rpm', meaning: 'speed by the towers', unit: 'rpm' },
      ],
    },
    formula:
      'exhaust opens, intake is closed: corners of p·V^1.3\nintake opens, exhaust is closed: corners of the fall from plateau to plateau',
    where: [
      ['p', 'pressure in the cylinder, absolute', 'kPa'],
      ['V', 'volume above the piston', 'cc'],
    ],
    range:
      'corners by least squares, ± from cycle to cycle (95 %) and between corner and seat; idle or cranking, where the valves let the pressure follow; a corner lies up to 10°, of the exhaust’s opening up to 14°, from the valve’s seat, the same in another capture of the engine: compare with a known-good one',
    errors: [
      noTowers,
      notCylinder,
      'There is less than a sample every 4° of the crank.',
      'A corner cannot be told from noise.',
    ],
    source:
      'common practice; event conventions and polytropic law after Heywood, Internal Combustion Engine Fundamentals, chapters 6 and 9; JCGM 100:2008, 4.2',
    example: { expression: 'valve_events(snap.pressure).evo', result: '38 ± 13 °BBDC' },
    evaluate: valveEvents,
  },
];
