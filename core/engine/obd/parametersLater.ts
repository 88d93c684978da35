import type { ParameterRow, Part } from './parameter.ts';
import {
  celsius,
  exhaustCelsius,
  kilopascal,
  number,
  percent,
  plainly,
  signedPercent,
} from './parameterParts.ts';

/**
 * Parameters from 66 on, whose first byte says which of the values that follow the vehicle has.
 * All are values from memory of J1979DA, Annex B.
 */
export function laterRows(): ParameterRow[] {
  return [
    row(0x66, 5, 'Air flow at the meter, two sensors', [
      number('Air flow at the meter, first sensor', 'maf', 2, [1, 32], 'g/s', 'none', { at: 1, ifBit: 0 }),
      number('Air flow at the meter, second sensor', undefined, 2, [1, 32], 'g/s', 'none', {
        at: 3,
        ifBit: 1,
      }),
    ]),
    row(0x67, 3, 'Coolant temperature, two sensors', [
      celsius('Coolant temperature, first sensor', 'ect', { at: 1, ifBit: 0 }),
      celsius('Coolant temperature, second sensor', undefined, { at: 2, ifBit: 1 }),
    ]),
    row(0x68, 7, 'Intake air temperatures', [
      celsius('Intake air temperature, bank 1, sensor 1', 'iat', { at: 1, ifBit: 0 }),
      celsius('Intake air temperature, bank 1, sensor 2', 'iat_2', { at: 2, ifBit: 1 }),
      celsius('Intake air temperature, bank 1, sensor 3', undefined, { at: 3, ifBit: 2 }),
      celsius('Intake air temperature, bank 2, sensor 1', undefined, { at: 4, ifBit: 3 }),
      celsius('Intake air temperature, bank 2, sensor 2', undefined, { at: 5, ifBit: 4 }),
      celsius('Intake air temperature, bank 2, sensor 3', undefined, { at: 6, ifBit: 5 }),
    ]),
    row(0x69, 7, 'Exhaust gas recirculation', [
      percent('Exhaust gas recirculation, commanded', 'egr_cmd', { at: 1, ifBit: 0 }),
      percent('Exhaust gas recirculation, actual', 'egr_actual', { at: 2, ifBit: 1 }),
      signedPercent('Exhaust gas recirculation, error', 'egr_error', { at: 3, ifBit: 2 }),
    ]),
    row(0x6f, 3, 'Pressure before the compressor', [
      kilopascal('Pressure before the compressor', 'compressor_in_pressure', { at: 1, ifBit: 0 }),
    ]),
    row(0x70, 10, 'Charge pressure', [
      number('Charge pressure, commanded', 'boost_desired', 2, [1, 32], 'kPa', 'absolute', {
        at: 1,
        ifBit: 0,
      }),
      number('Charge pressure, actual', 'boost_actual', 2, [1, 32], 'kPa', 'absolute', { at: 3, ifBit: 1 }),
    ]),
    row(0x71, 6, 'Turbine vanes', [
      percent('Turbine vanes, commanded', 'vane_cmd', { at: 1, ifBit: 0 }),
      percent('Turbine vanes, position', 'vane_position', { at: 2, ifBit: 1 }),
    ]),
    row(0x72, 5, 'Wastegate', [
      percent('Wastegate, commanded', 'wastegate_duty', { at: 1, ifBit: 0 }),
      percent('Wastegate, position', 'wastegate_position', { at: 2, ifBit: 1 }),
    ]),
    row(0x74, 5, 'Turbocharger speed', [
      number('Turbocharger speed', 'turbo_speed', 2, [10, 1], 'rpm', 'none', { at: 1, ifBit: 0 }),
    ]),
    row(0x75, 7, 'Turbocharger temperatures', [
      celsius('Before the compressor', 'compressor_in_temp', { at: 1, ifBit: 0 }),
      celsius('Behind the compressor', 'compressor_out_temp', { at: 2, ifBit: 1 }),
      exhaustCelsius('Before the turbine', 'turbine_in_temp', { at: 3, ifBit: 2 }),
      exhaustCelsius('Behind the turbine', 'turbine_out_temp', { at: 5, ifBit: 3 }),
    ]),
    row(0x77, 5, 'Charge air cooler', [
      celsius('Behind the charge air cooler', 'cac_out_temp', { at: 1, ifBit: 0 }),
    ]),
    row(
      0x78,
      9,
      'Exhaust gas temperatures, bank 1',
      [0, 1, 2, 3].map((at) =>
        exhaustCelsius(`Exhaust gas temperature, bank 1, sensor ${at + 1}`, 'egt', {
          at: 1 + 2 * at,
          ifBit: at,
          member: `bank 1 sensor ${at + 1}`,
        }),
      ),
    ),
    row(0x7a, 7, 'Particulate filter', [
      number('Pressure across the particulate filter', 'dpf_dp', 2, [1, 100], 'kPa', 'difference', {
        at: 1,
        ifBit: 0,
        signed: true,
      }),
    ]),
    row(0x7c, 9, 'Particulate filter temperatures', [
      exhaustCelsius('Before the particulate filter', 'dpf_in_temp', { at: 1, ifBit: 0 }),
      exhaustCelsius('Behind the particulate filter', 'dpf_out_temp', { at: 3, ifBit: 1 }),
    ]),
    row(0x8b, 7, 'Exhaust aftertreatment', [
      plainly('Distance between regenerations, on average', 'regen_interval', 'km', { at: 5, ifBit: 6 }),
    ]),
    row(0xa6, 4, 'Odometer', [number('Odometer', 'odometer', 4, [1, 10], 'km', 'none')]),
  ];
}

function row(pid: number, bytes: number, meaning: string, parts: readonly Part[]): ParameterRow {
  return { pid, bytes, meaning, parts, source: 'from memory' };
}
