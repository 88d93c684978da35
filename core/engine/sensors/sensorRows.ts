import type { ComputedType, FunctionRow, Parameter, Plain } from '../../expression/functionRow.ts';
import type { Type } from '../../expression/type.ts';
import { noAnswer, ofNumbers } from '../answer.ts';
import { inWords, numbersInWords, type Wording } from '../inWords.ts';
import { curve, quantity, temperaturePoint, text } from '../parameters.ts';
import { dividerResistance, dividerVolts } from './dividerResistance.ts';
import { interpolate } from './interpolate.ts';
import { nernstOxygen, nernstVolts } from './nernstVolts.ts';
import { ratiometricPressure, ratiometricVolts } from './ratiometric.ts';
import { readingFor } from './readingFor.ts';
import { circuitSayings, sensorCircuit, titaniaMixture, titaniaSayings } from './sensorCircuit.ts';
import { thermistorRows } from './thermistorRows.ts';

const meterCurve = 'maf_curve: [[0.4 V, 2 g/s], [1.1 V, 9 g/s], [2.6 V, 55 g/s]]';
const supply = quantity('supply', 'V', 'voltage that the pull-up hangs on', { within: { above: '0 V' } });
const pullup = quantity('pullup', 'kΩ', 'resistance of the pull-up', { within: { above: '0 kΩ' } });
const sensorSupply = quantity('supply', 'V', 'the sensor’s supply', { within: { above: '0 V' } });
const shares = [
  quantity('low_share', '%', 'share of the supply at the lowest pressure', {
    otherwise: '10 %',
    within: { from: '0 %' },
  }),
  quantity('high_share', '%', 'share of the supply at the highest pressure', {
    otherwise: '90 %',
    within: { to: '100 %' },
  }),
];

/** Pressures of one sensor, which must be counted from one zero. */
function sensorPressure(name: string, meaning: string): Parameter {
  return { name, takes: { what: 'many', unit: 'kPa' }, meaning };
}

export const sensorRows: readonly FunctionRow[] = [
  {
    form: 'whole',
    name: 'interpolate',
    family: 'sensors',
    summary: 'A reading turned into another quantity by a transfer curve, straight between its points.',
    parameters: [
      curve('curve', 'transfer curve of a reference'),
      { name: 'x', takes: { what: 'any' }, meaning: 'the reading that the curve is entered with' },
    ],
    result: { kind: 'computed', says: 'the second quantity of the curve', typeOf: alongCurve },
    formula: 'y = y₁ + (x − x₁)·(y₂ − y₁)/(x₂ − x₁)',
    where: [
      ['y', 'the curve’s value', ''],
      ['x₁', 'reading of the point before it', ''],
      ['y₁', 'value of the point before it', ''],
      ['x₂', 'reading of the point behind it', ''],
      ['y₂', 'value of the point behind it', ''],
    ],
    range: 'between the curve’s first and last point; nothing is computed beyond them',
    errors: [
      'The reading lies outside the curve.',
      'The reading is not the quantity that the curve is entered with.',
    ],
    source: 'linear interpolation; the curve’s own source is its reference’s',
    example: {
      expression: 'interpolate(spec.maf_curve, 1.85 V)',
      result: '32 g/s',
      given: meterCurve,
    },
    evaluate: ([along, x]) => interpolate(along, x),
  },
  {
    form: 'whole',
    name: 'reading_for',
    family: 'sensors',
    summary: 'A transfer curve read backwards: the volts or hertz that a meter should show for a flow.',
    parameters: [
      curve('curve', 'transfer curve of a reference'),
      { name: 'value', takes: { what: 'any' }, meaning: 'the curve’s second quantity, such as a flow' },
    ],
    result: { kind: 'computed', says: 'the first quantity of the curve', typeOf: againstCurve },
    formula: 'x = x₁ + (y − y₁)·(x₂ − x₁)/(y₂ − y₁)',
    where: [
      ['x', 'the reading', ''],
      ['x₁', 'reading of the point before it', ''],
      ['y₁', 'value of the point before it', ''],
      ['x₂', 'reading of the point behind it', ''],
      ['y₂', 'value of the point behind it', ''],
      ['y', 'value'],
    ],
    range: 'between the curve’s lowest and highest value; the curve must go one way',
    errors: [
      'The value lies outside the curve.',
      'The value is not the quantity that the curve gives.',
      'The curve turns back.',
    ],
    source: 'linear interpolation; the curve’s own source is its reference’s',
    example: { expression: 'reading_for(spec.maf_curve, 32 g/s)', result: '1.85 V', given: meterCurve },
    evaluate: ([along, value]) => readingFor(along, value),
  },
  ...thermistorRows,
  {
    form: 'scalar',
    name: 'divider_resistance',
    family: 'sensors',
    summary: 'A sensor’s resistance from the voltage at its pull-up resistor.',
    parameters: [
      quantity('volts', 'V', 'voltage at the sensor', { within: { from: '0 V' } }),
      supply,
      pullup,
    ],
    result: { kind: 'fixed', unit: 'Ω' },
    formula: 'R = R₀ · U/(U₀ − U)',
    where: [
      ['R', 'resistance of the sensor', 'Ω'],
      ['R₀', 'pullup'],
      ['U', 'volts'],
      ['U₀', 'supply'],
    ],
    range: 'voltage below the supply',
    errors: [
      'The voltage is negative, or not below the supply: the circuit is open.',
      'The supply or the pull-up is not above 0.',
    ],
    source: 'Ohm’s law',
    example: { expression: 'divider_resistance(4.6 V, 5 V, 2.2 kΩ)', result: '25300 Ω' },
    compute: ofNumbers(dividerResistance),
  },
  {
    form: 'scalar',
    name: 'divider_volts',
    family: 'sensors',
    summary: 'The voltage that a good circuit shows at a sensor of this resistance behind its pull-up.',
    parameters: [
      quantity('resistance', 'kΩ', 'resistance of the sensor', { within: { from: '0 kΩ' } }),
      supply,
      pullup,
    ],
    result: { kind: 'fixed', unit: 'V' },
    formula: 'U = U₀ · R/(R + R₀)',
    where: [
      ['U', 'voltage at the sensor', 'V'],
      ['U₀', 'supply'],
      ['R', 'resistance'],
      ['R₀', 'pullup'],
    ],
    range: 'a short gives 0 V; an open circuit gives the supply and has no resistance',
    errors: ['The resistance is negative.', 'The supply or the pull-up is not above 0.'],
    source: 'Ohm’s law',
    example: { expression: 'divider_volts(10 kΩ, 5 V, 2.2 kΩ)', result: '4.0984 V' },
    compute: ofNumbers(dividerVolts),
  },
  {
    name: 'sensor_circuit',
    family: 'sensors',
    summary: 'Which end the circuit of a pulled-up sensor has failed to, if any, in words.',
    parameters: [
      quantity('volts', 'V', 'voltage at the signal pin'),
      supply,
      quantity('margin', '%', 'share of the supply that still counts as its end', {
        within: { above: '0 %', below: '50 %' },
        otherwise: '2 %',
      }),
    ],
    formula: 'open circuit from supply·(1 − margin) on, short up to supply·margin',
    range: 'a sensor between the signal pin and ground, with a pull-up in the computer',
    errors: [
      'The supply is not above 0.',
      'The voltage lies below ground.',
      'The margin is not between 0 and 50 %.',
      'A reading is too close to a limit for its uncertainty.',
    ],
    source: 'common practice; Ohm’s law',
    says: circuitSayings,
    example: { expression: 'sensor_circuit(4.99 V, 5 V)', result: 'open circuit' },
    ...numbersInWords('sensor_circuit', sensorCircuit),
  },
  {
    form: 'scalar',
    name: 'ratiometric_pressure',
    family: 'sensors',
    summary:
      'The pressure that the voltage of a ratiometric sensor stands for, whatever its supply is today.',
    parameters: [
      quantity('volts', 'V', 'voltage of the signal'),
      sensorSupply,
      sensorPressure('low', 'the lowest pressure that it measures'),
      sensorPressure('high', 'the highest pressure that it measures'),
      ...shares,
    ],
    result: { kind: 'like', parameter: 'low' },
    formula: 'p = low + (U/U₀ − low_share)/(high_share − low_share)·(high − low)',
    where: [
      ['p', 'the pressure', 'as low'],
      ['U', 'volts'],
      ['U₀', 'supply'],
    ],
    range: 'from low to high, and 2 % of the supply beyond',
    errors: [
      'The voltage is outside the sensor’s range.',
      'The supply is not above 0, or the ends are turned round.',
    ],
    source: 'definition; the ends are the maker’s, 10 and 90 % common practice',
    example: {
      expression: 'ratiometric_pressure(2.5 V, 5 V, 20 kPa absolute, 120 kPa absolute)',
      result: '70 kPa',
    },
    compute: ofNumbers(ratiometricPressure),
  },
  {
    form: 'scalar',
    name: 'ratiometric_volts',
    family: 'sensors',
    summary: 'The voltage that a ratiometric sensor should give at a pressure.',
    parameters: [
      sensorPressure('pressure', 'the pressure at the sensor'),
      sensorSupply,
      sensorPressure('low', 'the lowest pressure that it measures'),
      sensorPressure('high', 'the highest pressure that it measures'),
      ...shares,
    ],
    result: { kind: 'fixed', unit: 'V' },
    formula: 'U = U₀·(low_share + (pressure − low)/(high − low)·(high_share − low_share))',
    where: [
      ['U', 'voltage of the signal', 'V'],
      ['U₀', 'supply'],
    ],
    range: 'from low to high',
    errors: [
      'The pressure is outside what the sensor measures.',
      'The supply is not above 0, or the ends are turned round.',
    ],
    source: 'definition; the ends are the maker’s, 10 and 90 % common practice',
    example: {
      expression: 'ratiometric_volts(101 kPa absolute, 5 V, 20 kPa absolute, 120 kPa absolute)',
      result: '3.74 V',
    },
    compute: ofNumbers(ratiometricVolts),
  },
  {
    form: 'scalar',
    name: 'nernst_volts',
    family: 'sensors',
    summary: 'The voltage of a zirconia sensor from its temperature and the oxygen in the exhaust.',
    parameters: [
      temperaturePoint('temperature', 'temperature of the zirconia', {
        within: { from: '350 °C', to: '900 °C' },
      }),
      quantity('oxygen', '1', 'oxygen as a fraction of one atmosphere: 0.01, or 10 ^ -18 of rich exhaust', {
        within: { above: '0', to: '1' },
      }),
    ],
    result: { kind: 'fixed', unit: 'V' },
    formula: 'E = R·T/(4·F) · ln(0.209/p)',
    where: [
      ['E', 'voltage of the sensor', 'V'],
      ['R', 'gas constant, 8.314', 'J/(mol·K)'],
      ['T', 'temperature, counted from absolute zero', 'K'],
      ['F', 'Faraday constant, 96485', 'C/mol'],
      ['p', 'oxygen'],
    ],
    range: '',
    errors: ['The oxygen is not above 0, or above one atmosphere.'],
    source: 'Nernst’s equation with the constants of CODATA 2018',
    example: { expression: 'nernst_volts(626.85 °C, 0.01)', result: '0.05894 V' },
    compute: ofNumbers(nernstVolts),
  },
  {
    form: 'scalar',
    name: 'nernst_oxygen',
    family: 'sensors',
    summary: 'The oxygen in the exhaust at which a hot zirconia sensor gives this voltage.',
    parameters: [
      quantity('volts', 'V', 'the sensor’s voltage'),
      temperaturePoint('temperature', 'temperature of the zirconia', {
        within: { from: '350 °C', to: '900 °C' },
      }),
    ],
    result: { kind: 'fixed', unit: '1' },
    formula: 'p = 0.209 · exp(−4·F·E/(R·T))',
    where: [
      ['p', 'oxygen as a fraction of one atmosphere', ''],
      ['E', 'volts'],
      ['R', 'gas constant, 8.314', 'J/(mol·K)'],
      ['T', 'temperature, counted from absolute zero', 'K'],
      ['F', 'Faraday constant, 96485', 'C/mol'],
    ],
    answers: { to: '1' },
    range: '',
    errors: [
      'The temperature is below absolute zero.',
      'The voltage is so far below 0 that there would be more than one atmosphere.',
    ],
    source: 'Nernst’s equation with the constants of CODATA 2018',
    example: { expression: 'nernst_oxygen(0.05 V, 626.85 °C)', result: '0.01586' },
    compute: ofNumbers(nernstOxygen),
  },
  {
    name: 'titania_mixture',
    family: 'sensors',
    summary: 'What a titania sensor says of the mixture, in words; which end is lean depends on its circuit.',
    parameters: [
      quantity('volts', 'V', 'the sensor’s voltage', { within: { from: '0 V' } }),
      sensorSupply,
      text('lean_end', '"high" or "low": the end of the supply that means lean'),
    ],
    formula: 'the outer quarters of the supply are the ends',
    range: 'a hot sensor',
    errors: [
      'The lean end is neither "high" nor "low".',
      'The voltage is outside the supply.',
      'A reading is too close to a limit for its uncertainty.',
    ],
    source: 'R. Moos and others, Sensors 11 (2011) 3439–3465; the quarters are common practice',
    says: titaniaSayings,
    example: { expression: 'titania_mixture(4.6 V, 5 V, "high")', result: 'lean' },
    ...inWords('titania_mixture', titaniaOf),
  },
];

function titaniaOf([volts, of, leanEnd]: readonly Plain[]): Wording {
  if (typeof leanEnd !== 'string') return noAnswer('The lean end must be a text: "high" or "low".');
  if (typeof volts !== 'number' || typeof of !== 'number') return noAnswer('One of the values is no number.');
  return titaniaMixture(volts, of, leanEnd);
}

/** The curve's first quantity, in the shape of the value that it is read backwards with. */
function againstCurve([along, value]: readonly (Type | undefined)[]): ComputedType {
  if (along?.kind !== 'curve') return { wrong: 0, takes: 'a curve from a `reference`' };
  if (value?.kind !== 'one' && value?.kind !== 'members' && value?.kind !== 'series')
    return { wrong: 1, takes: 'a quantity' };
  if (value.quantity.dimension !== along.y.dimension) {
    return { wrong: 1, takes: `what the curve gives (such as \`${along.y.unit.symbol}\`)` };
  }
  return { type: { ...value, quantity: along.x } };
}

/** The curve's second quantity, in the shape of the reading that it is entered with. */
function alongCurve([along, x]: readonly (Type | undefined)[]): ComputedType {
  if (along?.kind !== 'curve') return { wrong: 0, takes: 'a curve from a `reference`' };
  if (x?.kind !== 'one' && x?.kind !== 'members' && x?.kind !== 'series')
    return { wrong: 1, takes: 'a quantity' };
  if (x.quantity.dimension !== along.x.dimension) {
    return { wrong: 1, takes: `what the curve is entered with (such as \`${along.x.unit.symbol}\`)` };
  }
  return { type: { ...x, quantity: along.y } };
}
