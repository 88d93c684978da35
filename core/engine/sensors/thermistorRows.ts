import type { ComputedType, FunctionRow, Plain, PlainCurve } from '../../expression/functionRow.ts';
import type { Type } from '../../expression/type.ts';
import { unitOf } from '../../quantity/unit.ts';
import { type Answer, noAnswer, ofNumbers } from '../answer.ts';
import { curve, quantity, temperaturePoint } from '../parameters.ts';
import { betaOf, betaTemperature } from './betaThermistor.ts';
import { steinhartHart, thermistorFit } from './steinhartHart.ts';
import { thermistorResistance, thermistorTemperature } from './thermistorTemperature.ts';

const resistance = quantity('resistance', 'kΩ', 'resistance of the sensor alone', {
  within: { above: '0 kΩ' },
});
const table = curve('curve', 'the sensor’s table: pairs of temperature and resistance');
const thermistorTable = 'ect_curve: [[0 °C, 32.64 kΩ], [40 °C, 5.325 kΩ], [100 °C, 0.6781 kΩ]]';
const short = 'The resistance is not above 0.';
const steinhartSource = 'Steinhart and Hart, Deep-Sea Research 15 (1968) 497 (value from memory)';

export const thermistorRows: readonly FunctionRow[] = [
  {
    form: 'scalar',
    name: 'thermistor_temperature',
    family: 'sensors',
    summary: 'The temperature of a thermistor from its resistance and its table.',
    parameters: [resistance, table],
    result: { kind: 'computed', says: 'a temperature in °C', typeOf: alongTable('resistance', '°C') },
    formula: '1/T over ln R: a monotone cubic through the table’s points',
    where: [
      ['T', 'temperature, counted from absolute zero', 'K'],
      ['R', 'resistance'],
    ],
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
      given: thermistorTable,
    },
    compute: ofTable(thermistorTemperature),
  },
  {
    form: 'scalar',
    name: 'thermistor_resistance',
    family: 'sensors',
    summary:
      'The resistance that a thermistor has at a temperature by its table: what an ohmmeter should show.',
    parameters: [temperaturePoint('temperature', 'temperature of the sensor'), table],
    result: { kind: 'computed', says: 'a resistance in Ω', typeOf: alongTable('temperature', 'Ω') },
    formula: 'the curve of thermistor_temperature, read the other way',
    range: 'between the table’s first and last point',
    errors: ['The temperature is outside the table.', 'The table has fewer than two points, or turns back.'],
    source: `${steinhartSource}; curve after Fritsch and Carlson, SIAM Journal on Numerical Analysis 17 (1980) 238–246`,
    example: {
      expression: 'thermistor_resistance(20 °C, spec.ect_curve)',
      result: '12482 Ω',
      given: thermistorTable,
    },
    compute: ofTable(thermistorResistance),
  },
  {
    form: 'scalar',
    name: 'thermistor_fit',
    family: 'sensors',
    summary: 'The temperature of a thermistor by a Steinhart–Hart curve fitted to its points, three or more.',
    parameters: [resistance, table],
    result: { kind: 'computed', says: 'a temperature in °C', typeOf: alongTable('resistance', '°C') },
    formula:
      '1/T = a + b·ln R + c·(ln R)³\nthrough three points; nearest to more than three (least squares in 1/T)',
    where: [
      ['T', 'temperature, counted from absolute zero', 'K'],
      ['a', 'first coefficient, fitted', '1/K'],
      ['b', 'second coefficient, fitted', '1/K'],
      ['c', 'third coefficient, fitted', '1/K'],
      ['R', 'resistance'],
    ],
    range: 'between the lowest and the highest resistance of the points',
    errors: [
      short,
      'The resistance is outside the points.',
      'There are fewer than three points, they hardly differ, or turn back.',
    ],
    source: steinhartSource,
    example: {
      expression: 'thermistor_fit(12.49 kΩ, spec.ect_curve)',
      result: '20.00 °C',
      given: thermistorTable,
    },
    compute: ofTable(thermistorFit),
  },
  {
    form: 'scalar',
    name: 'steinhart_hart',
    family: 'sensors',
    summary: 'The temperature of a thermistor from its three published coefficients.',
    parameters: [
      resistance,
      quantity('a', '1', 'first coefficient, per kelvin'),
      quantity('b', '1', 'second coefficient, per kelvin'),
      quantity('c', '1', 'third coefficient, per kelvin'),
    ],
    result: { kind: 'fixed', unit: '°C', quantityKind: 'point' },
    formula: '1/T = a + b·ln(R/Ω) + c·(ln(R/Ω))³',
    where: [
      ['T', 'temperature, counted from absolute zero', 'K'],
      ['R', 'resistance'],
    ],
    range: 'the range that the coefficients were fitted over',
    errors: [short, 'The coefficients give no temperature.'],
    source: steinhartSource,
    example: {
      expression: 'steinhart_hart(32.65 kΩ, 0.001129148, 0.000234125, 0.0000000876741)',
      result: '0.00 °C',
    },
    compute: ofNumbers((ohms, a, b, c) =>
      steinhartHart(ohms ?? Number.NaN, { a: a ?? Number.NaN, b: b ?? Number.NaN, c: c ?? Number.NaN }),
    ),
  },
  {
    form: 'scalar',
    name: 'beta_temperature',
    family: 'sensors',
    summary:
      'The temperature of a thermistor from its resistance at 25 °C and one constant B; a table is better.',
    parameters: [
      resistance,
      quantity('beta', 'K', 'the constant B', { within: { above: '0 K' }, kind: 'difference' }),
      quantity('at_25', 'kΩ', 'resistance at 25 °C', { within: { above: '0 kΩ' } }),
    ],
    result: { kind: 'fixed', unit: '°C', quantityKind: 'point' },
    formula: '1/T = 1/298.15 K + ln(R/R₂₅)/B',
    where: [
      ['T', 'temperature, counted from absolute zero', 'K'],
      ['R', 'resistance'],
      ['R₂₅', 'at_25'],
      ['B', 'beta'],
    ],
    range: 'near the two temperatures that B belongs to; off by 0.7 °C at 0 °C for a B from 25 to 85 °C',
    errors: [short, 'B or the resistance at 25 °C is not above 0.'],
    source: 'IEC 60539-1 (value from memory)',
    example: { expression: 'beta_temperature(32.64 kΩ, 3977 K, 10 kΩ)', result: '0.71 °C' },
    compute: ofNumbers(betaTemperature),
  },
  {
    form: 'scalar',
    name: 'beta_of',
    family: 'sensors',
    summary: 'The constant B of a thermistor between two of its points.',
    parameters: [
      temperaturePoint('first_temperature', 'temperature of the first point', {
        within: { above: '-273.15 °C' },
      }),
      quantity('first', 'kΩ', 'resistance there', { within: { above: '0 kΩ' } }),
      temperaturePoint('second_temperature', 'temperature of the second point', {
        within: { above: '-273.15 °C' },
      }),
      quantity('second', 'kΩ', 'resistance there', { within: { above: '0 kΩ' } }),
    ],
    result: { kind: 'fixed', unit: 'K', quantityKind: 'difference' },
    formula: 'B = ln(R₁/R₂)/(1/T₁ − 1/T₂)',
    where: [
      ['B', 'the constant', 'K'],
      ['R₁', 'first'],
      ['R₂', 'second'],
      ['T₁', 'first_temperature, counted from absolute zero', 'K'],
      ['T₂', 'second_temperature, counted from absolute zero', 'K'],
    ],
    range: '',
    errors: ['A resistance is not above 0.', 'Both points have the same temperature.'],
    source: 'IEC 60539-1 (value from memory)',
    example: { expression: 'beta_of(25 °C, 10 kΩ, 100 °C, 0.6781 kΩ)', result: '3992 K' },
    compute: ofNumbers(betaOf),
  },
];

/** A row's `compute` for a number and a table. */
function ofTable(formula: (value: number, table: PlainCurve) => Answer): (args: readonly Plain[]) => Answer {
  return ([value, points]) => {
    if (typeof value !== 'number' || !Number.isFinite(value))
      return noAnswer('One of the values is no number.');
    if (typeof points !== 'object') return noAnswer('The sensor’s table is missing.');
    return formula(value, points);
  };
}

/** The result in the shape of the first argument, for a table from temperature to resistance. */
function alongTable(
  first: string,
  gives: '°C' | 'Ω',
): (types: readonly (Type | undefined)[]) => ComputedType {
  return ([value, points]) => {
    if (value?.kind !== 'one' && value?.kind !== 'members' && value?.kind !== 'series')
      return { wrong: 0, takes: `a ${first}` };
    const [celsius, ohm] = [unitOf('°C'), unitOf('Ω')];
    if (
      celsius === undefined ||
      ohm === undefined ||
      points?.kind !== 'curve' ||
      points.x.dimension !== celsius.dimension ||
      points.y.dimension !== ohm.dimension
    ) {
      return {
        wrong: 1,
        takes: 'a curve from temperature to resistance (`[[0 °C, 5.9 kΩ], [25 °C, 2.1 kΩ]]`)',
      };
    }
    const unit = gives === '°C' ? celsius : ohm;
    const kind = gives === '°C' ? 'point' : 'none';
    return { type: { ...value, quantity: { dimension: unit.dimension, kind, unit } } };
  };
}
