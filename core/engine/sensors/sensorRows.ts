import type { ComputedType, FunctionRow, Plain } from '../../expression/functionRow.ts';
import type { Type } from '../../expression/type.ts';
import { unitOf } from '../../quantity/unit.ts';
import { type Answer, noAnswer, ofNumbers } from '../answer.ts';
import { curve, quantity, temperaturePoint } from '../parameters.ts';
import { dividerResistance } from './dividerResistance.ts';
import { interpolate } from './interpolate.ts';
import { nernstVolts } from './nernstVolts.ts';
import { thermistorTemperature } from './thermistorTemperature.ts';

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
    formula: 'y = y1 + (x − x1)·(y2 − y1)/(x2 − x1) between the neighbouring points',
    range: 'between the curve’s first and last point; nothing is computed beyond them',
    errors: [
      'The reading lies outside the curve.',
      'The reading is not the quantity that the curve is entered with.',
    ],
    source: 'linear interpolation; the curve’s own source is its reference’s',
    example: { expression: 'interpolate(spec.maf_curve, 1.85 V)', result: '32 g/s' },
    evaluate: ([along, x]) => interpolate(along, x),
  },
  {
    form: 'scalar',
    name: 'thermistor_temperature',
    family: 'sensors',
    summary: 'The temperature of a thermistor from its resistance and its table.',
    parameters: [
      quantity('resistance', 'kΩ', 'resistance of the sensor alone'),
      curve('curve', 'the sensor’s table: pairs of temperature and resistance'),
    ],
    result: { kind: 'computed', says: 'a temperature in °C', typeOf: thermistorType },
    formula: '1/T over ln R: a monotone cubic through the table’s points, T in K',
    range: 'between the table’s first and last point',
    errors: [
      'The resistance is not above 0, or outside the table.',
      'The table has fewer than two points, or turns back.',
    ],
    source:
      'coordinates of Steinhart and Hart, Deep-Sea Research 15 (1968) 497 (value from memory); curve after Fritsch and Carlson, SIAM Journal on Numerical Analysis 17 (1980) 238–246',
    example: {
      expression: 'thermistor_temperature(12.49 kΩ, spec.ect_curve)',
      result: '20.0 °C',
    },
    compute: thermistorOf,
  },
  {
    form: 'scalar',
    name: 'divider_resistance',
    family: 'sensors',
    summary: 'A sensor’s resistance from the voltage at its pull-up resistor.',
    parameters: [
      quantity('volts', 'V', 'voltage at the sensor'),
      quantity('supply', 'V', 'voltage that the pull-up hangs on'),
      quantity('pullup', 'kΩ', 'resistance of the pull-up'),
    ],
    result: { kind: 'fixed', unit: 'Ω' },
    formula: 'R = pullup · volts/(supply − volts)',
    range: 'voltage from 0 to below the supply',
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
    name: 'nernst_volts',
    family: 'sensors',
    summary: 'The voltage of a zirconia sensor from its temperature and the oxygen in the exhaust.',
    parameters: [
      temperaturePoint('temperature', 'temperature of the zirconia'),
      quantity('oxygen', '1', 'oxygen as a fraction of one atmosphere: 0.01, or 10 ^ -18 of rich exhaust'),
    ],
    result: { kind: 'fixed', unit: 'V' },
    formula: 'E = R·T/(4·F) · ln(0.209/oxygen)',
    range: 'a hot sensor, about 350 .. 900 °C',
    errors: ['The oxygen is not above 0, or above one atmosphere.'],
    source: 'Nernst’s equation with the constants of CODATA 2018',
    example: { expression: 'nernst_volts(626.85 °C, 0.01)', result: '0.05894 V' },
    compute: ofNumbers(nernstVolts),
  },
];

function thermistorOf([resistance, table]: readonly Plain[]): Answer {
  if (typeof resistance !== 'number' || !Number.isFinite(resistance))
    return noAnswer('One of the values is no number.');
  if (typeof table !== 'object') return noAnswer('The sensor’s table is missing.');
  return thermistorTemperature(resistance, table);
}

/** A temperature in the shape of the resistance, for a table from temperature to resistance. */
function thermistorType([resistance, table]: readonly (Type | undefined)[]): ComputedType {
  if (resistance?.kind !== 'one' && resistance?.kind !== 'members' && resistance?.kind !== 'series')
    return { wrong: 0, takes: 'a resistance' };
  const [unit, resistor] = [unitOf('°C'), unitOf('Ω')];
  if (
    unit === undefined ||
    table?.kind !== 'curve' ||
    table.x.dimension !== unit.dimension ||
    table.y.dimension !== resistor?.dimension
  ) {
    return {
      wrong: 1,
      takes: 'a curve from temperature to resistance (`[[0 °C, 5.9 kΩ], [25 °C, 2.1 kΩ]]`)',
    };
  }
  return { type: { ...resistance, quantity: { dimension: unit.dimension, kind: 'point', unit } } };
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
