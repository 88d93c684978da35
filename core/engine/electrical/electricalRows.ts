import type { FunctionRow } from '../../expression/functionRow.ts';
import { noAnswer, ofNumbers } from '../answer.ts';
import { inWords } from '../inWords.ts';
import { cylinders, engineSpeed, quantity, temperaturePoint, text } from '../parameters.ts';
import { chargingRows } from './chargingRows.ts';
import { coilCurrent, coilEnergy, rampInductance, timeToCurrent } from './coilCurrent.ts';
import { dwellAngle, dwellTime } from './dwell.ts';
import { chargeTableWords, floodedSource, glassMatSource, stateOfChargeOf } from './stateOfCharge.ts';
import { ofWire, wireDrop, wireResistance } from './wireDrop.ts';

const size = text('size', 'the wire’s size: "2 AWG", "2/0 AWG", "35 mm2"');
const wireLength = quantity('length', 'm', 'length of the conductor, there and back if both are meant', {
  within: { from: '0 m' },
});
const wireTemperature = temperaturePoint('temperature', 'temperature of the wire', {
  otherwise: '20 °C',
  within: { from: '-60 °C', to: '250 °C' },
});
const wireErrors = [
  'The size is none that is known.',
  'The length is negative.',
  'The temperature is outside -60 .. 250 °C.',
];
const resistance = quantity('resistance', 'Ω', 'resistance of the whole circuit', {
  within: { above: '0 Ω' },
});
const inductance = quantity('inductance', 'mH', 'inductance of the coil', { within: { above: '0 mH' } });
const acrossCoil = quantity('volts', 'V', 'voltage across the coil');
const driving = { ...acrossCoil, within: { above: '0 V' } };
const rlCircuit = 'law of the RL circuit';

export const electricalRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'wire_resistance',
    family: 'electrical',
    summary: 'The resistance of a length of copper wire or cable.',
    parameters: [size, wireLength, wireTemperature],
    result: { kind: 'fixed', unit: 'mΩ' },
    formula:
      'R = ρ · length/A · (1 + 0.00393·(t − 20 °C))\nρ = 1.7241·10⁻⁸ Ω·m\nd = 0.005 inch · 92^((36 − n)/39)',
    where: [
      ['R', 'resistance of the wire', 'mΩ'],
      ['ρ', 'resistivity of annealed copper at 20 °C', 'Ω·m'],
      ['A', 'cross-section; of a gauge π/4·d²', 'mm²'],
      ['t', 'temperature'],
      ['d', 'diameter of a gauge', 'inch'],
      ['n', 'number of the gauge (AWG); 2/0 is −1', ''],
    ],
    range: 'annealed copper',
    errors: wireErrors,
    source: 'ASTM B258 and NBS Handbook 100 (1966)',
    example: { expression: 'wire_resistance("10 AWG", 1000 ft, 50 °C)', result: '1116.6 mΩ' },
    compute: ofWire((of, length = Number.NaN, temperature = Number.NaN) =>
      wireResistance(of, length, temperature),
    ),
  },
  {
    form: 'scalar',
    name: 'wire_drop',
    family: 'electrical',
    summary: 'The voltage that a length of copper wire or cable loses at a current.',
    parameters: [size, wireLength, quantity('current', 'A', 'current'), wireTemperature],
    result: { kind: 'fixed', unit: 'V' },
    formula: 'U = I · R\nR = wire_resistance(…)',
    where: [
      ['U', 'voltage that the wire loses', 'V'],
      ['I', 'current'],
      ['R', 'resistance of the wire', 'mΩ'],
    ],
    range: 'annealed copper; 0.393 % more for each degree above 20 °C',
    errors: wireErrors,
    source: 'ASTM B258 and NBS Handbook 100 (1966)',
    example: { expression: 'wire_drop("18 AWG", 10 ft, 5 A)', result: '0.319 V' },
    compute: ofWire((of, length = Number.NaN, current = Number.NaN, temperature = Number.NaN) =>
      wireDrop(of, length, current, temperature),
    ),
  },
  {
    form: 'scalar',
    name: 'coil_current',
    family: 'electrical',
    summary: 'The current in a coil some time after it was switched on.',
    parameters: [
      acrossCoil,
      resistance,
      inductance,
      quantity('time', 'ms', 'time since it was switched on', { within: { from: '0 ms' } }),
    ],
    result: { kind: 'fixed', unit: 'A' },
    formula: 'i = U/R · (1 − exp(−t·R/L))',
    where: [
      ['i', 'current', 'A'],
      ['U', 'volts'],
      ['R', 'resistance'],
      ['t', 'time'],
      ['L', 'inductance'],
    ],
    range: 'core not saturated',
    errors: ['The resistance or the inductance is not above 0.', 'The time is negative.'],
    source: rlCircuit,
    example: { expression: 'coil_current(12 V, 0.5 Ω, 4 mH, 4 ms)', result: '9.443 A' },
    compute: ofNumbers(coilCurrent),
  },
  {
    form: 'scalar',
    name: 'time_to_current',
    family: 'electrical',
    summary: 'How long a coil or an injector takes to reach a current.',
    parameters: [
      quantity('current', 'A', 'the current to reach', { within: { from: '0 A' } }),
      driving,
      resistance,
      inductance,
    ],
    result: { kind: 'fixed', unit: 'ms' },
    formula: 't = −L/R · ln(1 − i·R/U)',
    where: [
      ['t', 'time to the current', 'ms'],
      ['L', 'inductance'],
      ['R', 'resistance'],
      ['i', 'current'],
      ['U', 'volts'],
    ],
    range: 'core not saturated; a moving needle makes a dip of its own',
    errors: [
      'The current is more than the voltage can drive through the resistance.',
      'The resistance, the inductance or the voltage is not above 0.',
    ],
    source: rlCircuit,
    example: { expression: 'time_to_current(7 A, 14 V, 0.6 Ω, 3.5 mH)', result: '2.0806 ms' },
    compute: ofNumbers(timeToCurrent),
  },
  {
    form: 'scalar',
    name: 'ramp_inductance',
    family: 'electrical',
    summary: 'The inductance of a coil from the start of its current ramp.',
    parameters: [
      driving,
      quantity('current', 'A', 'how far the current has risen', { within: { above: '0 A' } }),
      quantity('time', 'ms', 'in this time', { within: { above: '0 ms' } }),
    ],
    result: { kind: 'fixed', unit: 'mH' },
    formula: 'L = U · t/i',
    where: [
      ['L', 'inductance', 'mH'],
      ['U', 'volts'],
      ['t', 'time'],
      ['i', 'current'],
    ],
    range: 'the first part of the ramp, where it is still straight',
    errors: ['The voltage, the current or the time is not above 0.'],
    source: rlCircuit,
    example: { expression: 'ramp_inductance(12 V, 0.3 A, 0.1 ms)', result: '4 mH' },
    compute: ofNumbers(rampInductance),
  },
  {
    form: 'scalar',
    name: 'coil_energy',
    family: 'electrical',
    summary: 'The energy that a coil holds at a current.',
    parameters: [quantity('current', 'A', 'current'), inductance],
    result: { kind: 'fixed', unit: 'mJ' },
    formula: 'E = L · i²/2',
    where: [
      ['E', 'energy in the coil', 'mJ'],
      ['L', 'inductance'],
      ['i', 'current'],
    ],
    range: 'core not saturated',
    errors: ['The inductance is not above 0.'],
    source: 'energy of an inductor',
    example: { expression: 'coil_energy(7 A, 3.5 mH)', result: '85.75 mJ' },
    compute: ofNumbers(coilEnergy),
  },
  {
    form: 'scalar',
    name: 'dwell_angle',
    family: 'electrical',
    fourStroke: true,
    summary: 'The dwell of a distributor as an angle, from its time.',
    parameters: [
      quantity('dwell', 'ms', 'time that the coil is charged', { within: { from: '0 ms' } }),
      engineSpeed,
      cylinders,
    ],
    result: { kind: 'fixed', unit: '°' },
    formula: 'angle = 360° · dwell · rpm/120',
    where: [['angle', 'dwell in degrees of the distributor', '°']],
    range: 'less than 360°/cylinders',
    errors: ['The engine stands still.', 'The dwell is longer than the time between two firings.'],
    source: 'arithmetic: the distributor turns once in two turns of the crank',
    example: { expression: 'dwell_angle(5 ms, 1800 rpm, 4)', result: '27 °' },
    compute: ofNumbers(dwellAngle),
  },
  {
    form: 'scalar',
    name: 'dwell_time',
    family: 'electrical',
    fourStroke: true,
    summary: 'The time that the coil is charged, from the dwell angle of a distributor.',
    parameters: [
      quantity('angle', '°', 'dwell in degrees of the distributor', { within: { from: '0 °' } }),
      engineSpeed,
      cylinders,
    ],
    result: { kind: 'fixed', unit: 'ms' },
    formula: 'dwell = angle/360°/(rpm/120)',
    where: [['dwell', 'time that the coil is charged', 'ms']],
    range: 'less than 360°/cylinders',
    errors: ['The engine stands still.', 'The angle is larger than a cylinder has.'],
    source: 'arithmetic: the distributor turns once in two turns of the crank',
    example: { expression: 'dwell_time(50 °, 800 rpm, 4)', result: '20.833 ms' },
    compute: ofNumbers(dwellTime),
  },
  {
    form: 'scalar',
    name: 'state_of_charge',
    family: 'electrical',
    summary: 'How full a rested 12 V battery is, from its open-circuit voltage at 25 °C.',
    parameters: [
      quantity('volts', 'V', 'open-circuit voltage after at least three hours of rest, AGM eight', {
        within: { from: '10.5 V', to: '13.2 V' },
      }),
      text('chemistry', 'the battery’s build: "flooded", "EFB" or "AGM"', { otherwise: 'flooded' }),
    ],
    result: { kind: 'fixed', unit: '%' },
    formula:
      'flooded, EFB: 12.65, 12.45, 12.24, 12.06, 11.89 V are 100, 75, 50, 25, 0 %, straight between\nAGM: 12.9 V is 100 %, 11.4 V 0 %, straight between',
    range: '25 °C, rested; published tables differ by 0.05 to 0.1 V, for AGM by up to 15 points',
    errors: ['The battery’s build is none that is known.', 'The voltage is below 10.5 V or above 13.2 V.'],
    source: `${floodedSource}; ${glassMatSource}`,
    example: { expression: 'state_of_charge(12.45 V)', result: '75 %' },
    compute: stateOfChargeOf,
  },
  {
    name: 'charge_table',
    family: 'electrical',
    summary: 'The table that state_of_charge uses for a battery’s build, with its source, in words.',
    parameters: [
      text('chemistry', 'the battery’s build: "flooded", "EFB" or "AGM"', { otherwise: 'flooded' }),
    ],
    formula: 'the table’s source and its points',
    range: '',
    errors: ['The battery’s build is none that is known.'],
    source: floodedSource,
    example: {
      expression: 'charge_table("flooded")',
      result: `${floodedSource}: 12.65 V 100 %, 12.45 V 75 %, 12.24 V 50 %, 12.06 V 25 %, 11.89 V 0 %`,
    },
    ...inWords('charge_table', ([chemistry]) =>
      typeof chemistry === 'string'
        ? chargeTableWords(chemistry)
        : noAnswer('The battery’s build must be a text.'),
    ),
  },
  ...chargingRows,
];
