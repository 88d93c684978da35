import type { ParameterRow, Part } from './parameter.ts';
import {
  celsius,
  exhaustCelsius,
  kilopascal,
  lambda,
  number,
  percent,
  plainly,
  signedPercent,
  word,
} from './parameterParts.ts';
import { laterRows } from './parametersLater.ts';

/*
 * SAE J1979 / ISO 15031-5, service 01 (and 02). Rows marked `found` were read in public copies of the table for
 * 04 to 18; all others are values from memory of J1979DA, Annex B.
 */

/** How a vehicle's oxygen sensors are numbered: it answers parameter 13 for the first, 1D for the second. */
export type SensorLayout = 'two banks of four' | 'four banks of two';

/** The row of a parameter; undefined for one that this table does not know. */
export function parameterRow(
  pid: number,
  layout: SensorLayout = 'two banks of four',
): ParameterRow | undefined {
  return byPid(layout)[pid];
}

/** Every row, by ascending number. */
export function allParameters(): readonly ParameterRow[] {
  return byPid('two banks of four').filter((row) => row !== undefined);
}

const tables = new Map<SensorLayout, readonly (ParameterRow | undefined)[]>();

/** Made when the first byte is decoded: a case without such data pays nothing. */
function byPid(layout: SensorLayout): readonly (ParameterRow | undefined)[] {
  let rows = tables.get(layout);
  if (rows === undefined) {
    const table: (ParameterRow | undefined)[] = new Array(256).fill(undefined);
    for (const row of [...firstRows(), ...sensorRows(layout), ...middleRows(), ...laterRows()])
      table[row.pid] = row;
    rows = table;
    tables.set(layout, table);
  }
  return rows;
}

/** A bit for each oxygen sensor, the first bank’s first. */
const oxygenSensors = (banks: number, sensors: number): readonly string[] =>
  Array.from({ length: banks * sensors }, (_, i) => `B${Math.floor(i / sensors) + 1}S${(i % sensors) + 1}`);

/** A parameter of one part, or of several; the source is memory unless `found` says otherwise. */
function parameter(
  pid: number,
  bytes: number,
  parts: Part | readonly Part[],
  source: ParameterRow['source'] = 'from memory',
  meaning?: string,
): ParameterRow {
  const list = Array.isArray(parts) ? (parts as readonly Part[]) : [parts as Part];
  return { pid, bytes, meaning: meaning ?? list[0]?.meaning ?? '', parts: list, source };
}

/** A trim of bank 1 or 2; the byte of bank 3 or 4 follows it where there is such a bank. */
function trim(pid: number, meaning: string, signal: string, source?: ParameterRow['source']): ParameterRow {
  return { ...parameter(pid, 1, signedPercent(meaning, signal), source), furtherBank: true };
}

function firstRows(): ParameterRow[] {
  return [
    ...[0x00, 0x20, 0x40, 0x60, 0x80, 0xa0, 0xc0, 0xe0].map((pid) =>
      parameter(pid, 4, {
        holds: 'supported',
        meaning: 'Parameters that the controller answers',
        signal: undefined,
        at: 0,
        size: 4,
      }),
    ),
    parameter(0x01, 4, {
      holds: 'monitors',
      meaning: 'Lamp, number of codes and monitors since the codes were cleared',
      signal: undefined,
      at: 0,
      size: 4,
    }),
    parameter(0x02, 2, {
      holds: 'code',
      meaning: 'Code that stored the freeze frame',
      signal: 'freeze_dtc',
      at: 0,
      size: 2,
    }),
    parameter(
      0x03,
      2,
      [
        word('Fuel control of bank 1', 'loop', loopWords, { none: 0 }),
        word('Fuel control of bank 2', 'loop_b2', loopWords, { at: 1, none: 0 }),
      ],
      'from memory',
      'Fuel control',
    ),
    parameter(0x04, 1, percent('Calculated load', 'load'), 'found'),
    parameter(0x05, 1, celsius('Coolant temperature', 'ect'), 'found'),
    trim(0x06, 'Short-term fuel trim, bank 1', 'stft_b1', 'found'),
    trim(0x07, 'Long-term fuel trim, bank 1', 'ltft_b1', 'found'),
    trim(0x08, 'Short-term fuel trim, bank 2', 'stft_b2', 'found'),
    trim(0x09, 'Long-term fuel trim, bank 2', 'ltft_b2', 'found'),
    parameter(0x0a, 1, number('Fuel pressure', 'fuel_pressure', 1, [3, 1], 'kPa', 'gauge'), 'found'),
    parameter(
      0x0b,
      1,
      kilopascal('Intake manifold pressure', 'map', { scaledBy: { pid: 0x4f, byte: 3, full: 10 / 255 } }),
      'found',
    ),
    parameter(0x0c, 2, number('Engine speed', 'rpm', 2, [1, 4], 'rpm', 'none'), 'found'),
    parameter(0x0d, 1, number('Vehicle speed', 'vss', 1, [1, 1], 'km/h', 'none'), 'found'),
    parameter(
      0x0e,
      1,
      number('Ignition timing, cylinder 1', 'spark', 1, [1, 2, -64], '°BTDC', 'btdc'),
      'found',
    ),
    parameter(0x0f, 1, celsius('Intake air temperature', 'iat'), 'found'),
    parameter(
      0x10,
      2,
      number('Air flow at the meter', 'maf', 2, [1, 100], 'g/s', 'none', {
        scaledBy: { pid: 0x50, byte: 0, full: 10 / 65535 },
      }),
      'found',
    ),
    parameter(0x11, 1, percent('Throttle position', 'tp'), 'found'),
    parameter(
      0x12,
      1,
      word('Secondary air', 'air_status', [
        [1, 'upstream'],
        [2, 'downstream'],
        [4, 'off'],
        [8, 'test'],
      ]),
    ),
    parameter(
      0x13,
      1,
      {
        holds: 'flags',
        meaning: 'Oxygen sensors, two banks of four',
        signal: undefined,
        at: 0,
        size: 1,
        bits: oxygenSensors(2, 4),
      },
      'found',
    ),
    parameter(
      0x1c,
      1,
      number('Requirement that the vehicle is built to, by its number', undefined, 1, [1, 1], '1', 'none', {
        counts: true,
      }),
    ),
    parameter(0x1d, 1, {
      holds: 'flags',
      meaning: 'Oxygen sensors, four banks of two',
      signal: undefined,
      at: 0,
      size: 1,
      bits: oxygenSensors(4, 2),
    }),
    parameter(0x1e, 1, { holds: 'flags', meaning: 'Power take-off', signal: undefined, at: 0, size: 1 }),
    parameter(0x1f, 2, plainly('Time since the start', 'run_time', 's')),
    parameter(0x21, 2, plainly('Distance with the lamp on', 'distance_with_mil', 'km')),
    parameter(
      0x22,
      2,
      number(
        'Rail pressure above the manifold’s',
        'rail_pressure_relative',
        2,
        [79, 1000],
        'kPa',
        'difference',
      ),
    ),
    parameter(0x23, 2, number('Rail pressure', 'rail_pressure', 2, [10, 1], 'kPa', 'gauge')),
  ];
}

const loopWords: readonly (readonly [number, string])[] = [
  [0x01, 'open cold'],
  [0x02, 'closed'],
  [0x04, 'open load'],
  [0x08, 'open fault'],
  [0x10, 'closed fault'],
];

/** Eight sensors in three forms: switching (14 to 1B), wide-range with volts (24 to 2B) and with current (34 to 3B). */
function sensorRows(layout: SensorLayout): ParameterRow[] {
  const places =
    layout === 'two banks of four'
      ? ['b1s1', 'b1s2', 'b1s3', 'b1s4', 'b2s1', 'b2s2', 'b2s3', 'b2s4']
      : ['b1s1', 'b1s2', 'b2s1', 'b2s2', 'b3s1', 'b3s2', 'b4s1', 'b4s2'];
  return places.flatMap((place, at) => {
    const where = `bank ${place[1]}, sensor ${place[3]}`;
    const hasSignal = place[3] !== '4' && (place[1] === '1' || place[1] === '2');
    const front = hasSignal && place[3] === '1' ? `lambda_b${place[1]}` : undefined;
    const ratio = lambda(`Lambda, ${where}`, front, { scaledBy: { pid: 0x4f, byte: 0, full: 1 / 65536 } });
    return [
      parameter(
        0x14 + at,
        2,
        [
          number(`Oxygen sensor, ${where}`, hasSignal ? `o2_${place}` : undefined, 1, [1, 200], 'V', 'none'),
          signedPercent(`Short-term trim by the sensor, ${where}`, undefined, { at: 1, none: 0xff }),
        ],
        at < 5 ? 'found' : 'from memory',
      ),
      parameter(0x24 + at, 4, [
        ratio,
        number(`Sensor voltage, ${where}`, undefined, 2, [8, 65536], 'V', 'none', {
          at: 2,
          scaledBy: { pid: 0x4f, byte: 1, full: 1 / 65536 },
        }),
      ]),
      parameter(0x34 + at, 4, [
        ratio,
        number(`Sensor current, ${where}`, undefined, 2, [1, 256, -128], 'mA', 'none', {
          at: 2,
          scaledBy: { pid: 0x4f, byte: 2, full: 1 / 32768 },
        }),
      ]),
    ];
  });
}

function middleRows(): ParameterRow[] {
  return [
    parameter(0x2c, 1, percent('Exhaust gas recirculation, commanded', 'egr_cmd')),
    parameter(0x2d, 1, signedPercent('Exhaust gas recirculation, error', 'egr_error')),
    parameter(0x2e, 1, percent('Purge, commanded', 'purge_duty')),
    parameter(0x2f, 1, percent('Fuel level', 'fuel_level')),
    parameter(
      0x30,
      1,
      number('Warm-ups since the codes were cleared', 'warm_ups_since_clear', 1, [1, 1], '1', 'none', {
        counts: true,
      }),
    ),
    parameter(0x31, 2, plainly('Distance since the codes were cleared', 'distance_since_clear', 'km')),
    parameter(0x32, 2, number('Tank pressure', 'tank_pressure', 2, [1, 4], 'Pa', 'gauge', { signed: true })),
    parameter(0x33, 1, kilopascal('Barometric pressure', 'baro')),
    parameter(0x3c, 2, exhaustCelsius('Catalyst temperature, bank 1, sensor 1', 'cat_temp_b1s1')),
    parameter(0x3d, 2, exhaustCelsius('Catalyst temperature, bank 2, sensor 1', 'cat_temp_b2s1')),
    parameter(0x3e, 2, exhaustCelsius('Catalyst temperature, bank 1, sensor 2', 'cat_temp_b1s2')),
    parameter(0x3f, 2, exhaustCelsius('Catalyst temperature, bank 2, sensor 2', 'cat_temp_b2s2')),
    parameter(0x41, 4, {
      holds: 'cycle monitors',
      meaning: 'Monitors in this driving cycle',
      signal: undefined,
      at: 0,
      size: 4,
    }),
    parameter(0x42, 2, number('Supply of the control module', 'battery', 2, [1, 1000], 'V', 'none')),
    parameter(0x43, 2, number('Absolute load', 'load_abs', 2, [100, 255], '%', 'none')),
    parameter(
      0x44,
      2,
      lambda('Lambda, commanded', 'lambda_desired', { scaledBy: { pid: 0x4f, byte: 0, full: 1 / 65536 } }),
    ),
    parameter(0x45, 1, percent('Throttle position, relative', 'tp_relative')),
    parameter(0x46, 1, celsius('Ambient air temperature', 'ambient')),
    parameter(0x47, 1, percent('Throttle position, second sensor', 'tp_2')),
    parameter(0x48, 1, percent('Throttle position, third sensor', undefined)),
    parameter(0x49, 1, percent('Accelerator position, first sensor', 'app_1')),
    parameter(0x4a, 1, percent('Accelerator position, second sensor', 'app_2')),
    parameter(0x4b, 1, percent('Accelerator position, third sensor', undefined)),
    parameter(0x4c, 1, percent('Throttle, commanded', 'tp_desired')),
    parameter(0x4d, 2, plainly('Time with the lamp on', 'time_with_mil', 'min')),
    parameter(0x4e, 2, plainly('Time since the codes were cleared', 'time_since_clear', 'min')),
    parameter(
      0x4f,
      4,
      [
        number('Full scale of lambda', undefined, 1, [1, 1], '1', 'none', { counts: true }),
        number('Full scale of sensor voltage', undefined, 1, [1, 1], 'V', 'none', { at: 1, counts: true }),
        number('Full scale of sensor current', undefined, 1, [1, 1], 'mA', 'none', { at: 2, counts: true }),
        number('Full scale of manifold pressure', undefined, 1, [10, 1], 'kPa', 'absolute', {
          at: 3,
          counts: true,
        }),
      ],
      'from memory',
      'Full scales of lambda, volts, current and manifold pressure',
    ),
    parameter(
      0x50,
      4,
      number('Full scale of air flow', undefined, 1, [10, 1], 'g/s', 'none', { counts: true }),
    ),
    parameter(
      0x51,
      1,
      word('Fuel', undefined, [
        [1, 'petrol'],
        [2, 'methanol'],
        [3, 'ethanol'],
        [4, 'diesel'],
        [5, 'LPG'],
        [6, 'CNG'],
        [7, 'propane'],
        [8, 'electric'],
      ]),
    ),
    parameter(0x52, 1, percent('Ethanol in the fuel', 'ethanol')),
    parameter(
      0x53,
      2,
      number('Tank pressure, absolute', 'tank_pressure_absolute', 2, [1, 200], 'kPa', 'absolute'),
    ),
    trim(0x55, 'Short-term trim of the rear sensor, bank 1', 'stft_b1s2'),
    trim(0x56, 'Long-term trim of the rear sensor, bank 1', 'ltft_b1s2'),
    trim(0x57, 'Short-term trim of the rear sensor, bank 2', 'stft_b2s2'),
    trim(0x58, 'Long-term trim of the rear sensor, bank 2', 'ltft_b2s2'),
    parameter(0x59, 2, number('Rail pressure, absolute', undefined, 2, [10, 1], 'kPa', 'absolute')),
    parameter(0x5a, 1, percent('Accelerator position, relative', undefined)),
    parameter(0x5b, 1, percent('Charge of the hybrid battery', 'soc')),
    parameter(0x5c, 1, celsius('Oil temperature', 'eot')),
    parameter(0x5d, 2, number('Injection timing', 'injection_timing', 2, [1, 128, -210], '°BTDC', 'btdc')),
    parameter(0x5e, 2, number('Fuel used', 'fuel_rate', 2, [1, 20], 'L/h', 'none', { most: 0xfaff })),
    parameter(0x61, 1, number('Torque, demanded', 'torque_demand', 1, [1, 1, -125], '%', 'none')),
    parameter(0x62, 1, number('Torque, actual', 'torque_actual', 1, [1, 1, -125], '%', 'none')),
    parameter(0x63, 2, plainly('Torque that the shares are of', 'torque_reference', 'Nm')),
  ];
}
