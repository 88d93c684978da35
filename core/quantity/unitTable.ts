import {
  capacitance,
  charge,
  conductance,
  current,
  energy,
  energyRate,
  force,
  frequency,
  inductance,
  length,
  mass,
  plain,
  pressure,
  resistance,
  speed,
  temperature,
  time,
  turn,
  turnRate,
  voltage,
  volume,
  volumeFlow,
} from './dimension.ts';
import type { Dimension, Kind } from './types.ts';

/** One symbol that stands by itself. si = value × factor + offset. */
export interface UnitRow {
  /** As printed. */
  readonly symbol: string;
  /** Other ways to write the same: ASCII forms, look-alike characters. */
  readonly also: readonly string[];
  readonly name: string;
  readonly dimension: Dimension;
  readonly factor: number;
  /** The factor as an exact quotient of two decimals, where it is no decimal itself. */
  readonly ratio?: readonly [string, string];
  /** Where the factor comes from. */
  readonly source: string;
  /** Only for temperature points. */
  readonly offset?: number;
  /** Where the symbol itself says it. */
  readonly kind?: Kind;
  /** The symbol that takes its place in a joined unit: a stroke is counted, it has no dimension. */
  readonly joinsAs?: string;
}

const si = 'BIPM, The International System of Units, 9th edition (2019)';
const nist = 'NIST SP 811 (2008), appendix B.8';
const inchPound =
  'NIST SP 811 (2008), appendix B.8, from 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g_n = 9.80665 m/s²';
const mercury = 'conventional column of 13 595.1 kg/m³ under g_n = 9.80665 m/s² (NIST SP 811, appendix B.8)';
const water = 'conventional column of 1000 kg/m³ under g_n = 9.80665 m/s² (NIST SP 811, appendix B.8)';
const turning = 'ISO 80000-3:2019: one turn is 360 degrees';
const ratio = 'ISO 80000-1:2022: percent is 0.01; parts per million are 1e-6';
const perStroke = 'common practice: what one intake stroke draws in';

function row(
  symbol: string,
  also: string,
  name: string,
  dimension: Dimension,
  factor: number,
  source: string,
  more: Pick<UnitRow, 'offset' | 'kind' | 'joinsAs' | 'ratio'> = {},
): UnitRow {
  return { symbol, also: also === '' ? [] : also.split(' '), name, dimension, factor, source, ...more };
}

/**
 * The units that stand by themselves; all others are joined from these with `/`, `·` and powers.
 * Factors are exact by definition, or the exact ratio rounded once to the nearest double.
 */
export const unitRows: readonly UnitRow[] = [
  row('1', '', 'plain number', plain, 1, si),
  row('%', 'percent pct', 'percent', plain, 0.01, ratio),
  row('ppm', '', 'parts per million', plain, 1e-6, ratio),

  row('Pa', '', 'pascal', pressure, 1, si),
  row('hPa', '', 'hectopascal', pressure, 100, si),
  row('kPa', '', 'kilopascal', pressure, 1000, si),
  row('MPa', '', 'megapascal', pressure, 1e6, si),
  row('bar', '', 'bar', pressure, 1e5, nist),
  row('mbar', '', 'millibar', pressure, 100, nist),
  row('psi', '', 'pound-force per square inch', pressure, 6894.757293168362, inchPound, {
    ratio: ['4.4482216152605', '0.00064516'],
  }),
  row('inHg', '', 'inch of mercury at 0 °C', pressure, 3386.388640341, mercury),
  row('cmHg', '', 'centimetre of mercury at 0 °C', pressure, 1333.22387415, mercury),
  row('mmHg', '', 'millimetre of mercury at 0 °C', pressure, 133.322387415, mercury),
  row('inH2O', 'inH₂O', 'inch of water', pressure, 249.08891, water),
  row('mmH2O', 'mmH₂O', 'millimetre of water', pressure, 9.80665, water),
  row('Torr', 'torr', 'torr', pressure, 101325 / 760, nist, { ratio: ['101325', '760'] }),
  row('atm', '', 'standard atmosphere', pressure, 101325, nist),

  row('K', 'kelvin', 'kelvin', temperature, 1, si, { offset: 0 }),
  row('°C', 'degC ℃', 'degree Celsius', temperature, 1, si, { offset: 273.15 }),
  row('°F', 'degF ℉', 'degree Fahrenheit', temperature, 5 / 9, nist, {
    offset: 459.67 / 1.8,
    ratio: ['5', '9'],
  }),

  row('turn', 'rev', 'turn', turn, 1, turning),
  row('°', 'deg', 'degree of angle', turn, 1 / 360, turning, { ratio: ['1', '360'] }),
  row('°CA', 'degCA', 'degree of crank angle', turn, 1 / 360, turning, { ratio: ['1', '360'] }),
  row('°BTDC', 'degBTDC', 'degree before top dead centre', turn, 1 / 360, turning, {
    ratio: ['1', '360'],
    kind: 'btdc',
  }),
  row('°ATDC', 'degATDC', 'degree after top dead centre', turn, 1 / 360, turning, {
    ratio: ['1', '360'],
    kind: 'atdc',
  }),
  row('°BBDC', 'degBBDC', 'degree before bottom dead centre', turn, 1 / 360, turning, {
    ratio: ['1', '360'],
    kind: 'bbdc',
  }),
  row('°ABDC', 'degABDC', 'degree after bottom dead centre', turn, 1 / 360, turning, {
    ratio: ['1', '360'],
    kind: 'abdc',
  }),
  row('rpm', '', 'turn per minute', turnRate, 1 / 60, turning, { ratio: ['1', '60'] }),

  row('s', '', 'second', time, 1, si),
  row('ms', '', 'millisecond', time, 1e-3, si),
  row('µs', 'us μs', 'microsecond', time, 1e-6, si),
  row('min', '', 'minute', time, 60, si),
  row('h', '', 'hour', time, 3600, si),
  row('day', 'd', 'day', time, 86400, si),
  row('Hz', '', 'hertz', frequency, 1, si),
  row('kHz', '', 'kilohertz', frequency, 1e3, si),
  row('MHz', '', 'megahertz', frequency, 1e6, si),

  row('kg', '', 'kilogram', mass, 1, si),
  row('g', '', 'gram', mass, 1e-3, si),
  row('mg', '', 'milligram', mass, 1e-6, si),
  row('lb', '', 'pound', mass, 0.45359237, nist),
  row('oz', '', 'ounce', mass, 0.028349523125, nist),
  row('mg/stroke', '', 'milligram per stroke', mass, 1e-6, perStroke, { joinsAs: 'mg' }),
  row('g/stroke', '', 'gram per stroke', mass, 1e-3, perStroke, { joinsAs: 'g' }),

  row('m', '', 'metre', length, 1, si),
  row('km', '', 'kilometre', length, 1000, si),
  row('cm', '', 'centimetre', length, 0.01, si),
  row('mm', '', 'millimetre', length, 1e-3, si),
  row('µm', 'um μm', 'micrometre', length, 1e-6, si),
  row('inch', '', 'inch', length, 0.0254, nist),
  row('thou', '', 'thousandth of an inch', length, 2.54e-5, nist),
  row('ft', '', 'foot', length, 0.3048, nist),
  row('mi', 'mile', 'mile', length, 1609.344, nist),
  row('mph', '', 'mile per hour', speed, 0.44704, nist),

  row('L', 'l', 'litre', volume, 1e-3, si),
  row('mL', 'ml', 'millilitre', volume, 1e-6, si),
  row('cc', '', 'cubic centimetre', volume, 1e-6, si),
  row('gal', '', 'US gallon', volume, 0.003785411784, 'NIST Handbook 44, appendix C: 231 cubic inches'),
  row('qt', '', 'US quart', volume, 0.000946352946, 'NIST Handbook 44, appendix C: a quarter gallon'),
  row('pt', '', 'US pint', volume, 0.000473176473, 'NIST Handbook 44, appendix C: an eighth of a gallon'),
  row('cfm', '', 'cubic foot per minute', volumeFlow, 0.028316846592 / 60, nist),

  row('N', '', 'newton', force, 1, si),
  row('kN', '', 'kilonewton', force, 1e3, si),
  row('lbf', '', 'pound-force', force, 4.4482216152605, inchPound),
  row('kgf', '', 'kilogram-force', force, 9.80665, nist),
  row('Nm', 'N·m N.m', 'newton metre', energy, 1, si),
  row(
    'lb·ft',
    'lb.ft lbft lbf·ft lbf.ft ft·lb ft.lb ftlb ft·lbf',
    'pound-force foot',
    energy,
    1.3558179483314003,
    inchPound,
  ),
  row(
    'inch·lb',
    'inch.lb lb·inch lb.inch inch·lbf lbf·inch',
    'pound-force inch',
    energy,
    0.1129848290276167,
    inchPound,
  ),
  row('J', '', 'joule', energy, 1, si),
  row('kJ', '', 'kilojoule', energy, 1e3, si),
  row('MJ', '', 'megajoule', energy, 1e6, si),
  row('mJ', '', 'millijoule', energy, 1e-3, si),
  row('Wh', '', 'watt hour', energy, 3600, si),
  row('kWh', '', 'kilowatt hour', energy, 3.6e6, si),
  row('W', '', 'watt', energyRate, 1, si),
  row('kW', '', 'kilowatt', energyRate, 1e3, si),
  row('mW', '', 'milliwatt', energyRate, 1e-3, si),
  row('hp', '', 'horsepower of 550 foot pounds-force per second', energyRate, 745.6998715822702, inchPound),

  row('V', '', 'volt', voltage, 1, si),
  row('mV', '', 'millivolt', voltage, 1e-3, si),
  row('µV', 'uV μV', 'microvolt', voltage, 1e-6, si),
  row('kV', '', 'kilovolt', voltage, 1e3, si),
  row('A', '', 'ampere', current, 1, si),
  row('mA', '', 'milliampere', current, 1e-3, si),
  row('µA', 'uA μA', 'microampere', current, 1e-6, si),
  row('Ω', 'Ω ohm', 'ohm', resistance, 1, si),
  row('mΩ', 'mΩ mohm', 'milliohm', resistance, 1e-3, si),
  row('kΩ', 'kΩ kohm kOhm', 'kiloohm', resistance, 1e3, si),
  row('MΩ', 'MΩ Mohm', 'megaohm', resistance, 1e6, si),
  row('S', '', 'siemens', conductance, 1, si),
  row('mS', '', 'millisiemens', conductance, 1e-3, si),
  row('µS', 'uS μS', 'microsiemens', conductance, 1e-6, si),
  row('F', '', 'farad', capacitance, 1, si),
  row('µF', 'uF μF', 'microfarad', capacitance, 1e-6, si),
  row('nF', '', 'nanofarad', capacitance, 1e-9, si),
  row('pF', '', 'picofarad', capacitance, 1e-12, si),
  row('H', '', 'henry', inductance, 1, si),
  row('mH', '', 'millihenry', inductance, 1e-3, si),
  row('µH', 'uH μH', 'microhenry', inductance, 1e-6, si),
  row('Ah', 'A·h A.h', 'ampere hour', charge, 3600, si),
  row('mAh', 'mA·h mA.h', 'milliampere hour', charge, 3.6, si),
];
