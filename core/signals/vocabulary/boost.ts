import type { Signal } from '../types.ts';
import { byteOfPercent, dieselEngine, usually } from './usual.ts';

/** Compressor, charge-air cooler, turbine, and what steers them. */
export const boost: readonly Signal[] = [
  {
    name: 'boost_desired',
    meaning: 'Charge pressure that the module asks for, absolute',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: 'kPa',
        kind: 'absolute',
        encoding: {
          range: '0 .. 2047.96875 kPa',
          step: '0.03125 kPa',
          source: 'SAE J1979 $70, value from memory',
        },
        physical: '20 .. 600 kPa',
        usual: [
          usually('key on engine off', '60 .. 107 kPa'),
          usually('wide open throttle', '110 .. 350 kPa'),
        ],
      },
    ],
    alsoCalled: ['desired boost', 'boost setpoint', 'commanded boost pressure', 'target boost'],
    note: 'Absolute, as modules send it. What a gauge reads above the barometer is `boost`.',
  },
  {
    name: 'boost_actual',
    meaning: 'Charge pressure before the throttle, absolute',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: 'kPa',
        kind: 'absolute',
        encoding: {
          range: '0 .. 2047.96875 kPa',
          step: '0.03125 kPa',
          source: 'SAE J1979 $70, value from memory',
        },
        physical: '20 .. 600 kPa',
        usual: [
          usually('key on engine off', '60 .. 107 kPa'),
          usually('warm idle', '60 .. 115 kPa'),
          usually('wide open throttle', '110 .. 350 kPa'),
        ],
      },
      {
        unit: 'V',
        physical: '0 .. 5.5 V',
        failed: [
          { value: '0 V', means: 'a signal wire at ground, or a sensor without supply,' },
          { value: '5 V', means: 'a signal wire at its supply, or an open sensor ground,' },
        ],
      },
    ],
    alsoCalled: ['actual boost', 'boost pressure', 'charge pressure', 'throttle inlet pressure', 'tip'],
    note: 'Absolute, as modules send it. What a gauge reads above the barometer is `boost`.',
  },
  {
    name: 'boost',
    meaning: 'Charge pressure above the barometer, at a gauge',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: 'psi',
        kind: 'gauge',
        physical: '-15 .. 80 psi',
        usual: [
          usually('key on engine off', '-0.3 .. 0.3 psi'),
          usually('cruise', '-12 .. 12 psi'),
          usually('wide open throttle', '4 .. 40 psi'),
        ],
      },
    ],
    alsoCalled: ['gauge boost', 'boost gauge', 'turbo pressure'],
  },
  {
    name: 'boost_error',
    meaning: 'Actual charge pressure less the one asked for',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: 'kPa',
        kind: 'difference',
        physical: '-500 .. 500 kPa',
        usual: [usually('cruise', '-15 .. 15 kPa'), usually('wide open throttle', '-20 .. 20 kPa')],
      },
    ],
    alsoCalled: ['boost deviation'],
  },
  {
    name: 'wastegate_duty',
    meaning: 'Commanded duty of the wastegate solenoid',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: byteOfPercent('$72, value from memory'),
        physical: '0 .. 100 %',
      },
    ],
    alsoCalled: ['wastegate', 'wastegate command', 'boost control duty'],
  },
  {
    name: 'wastegate_position',
    meaning: 'Position of the wastegate, 100 % is open',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: byteOfPercent('$72, value from memory'),
        physical: '-5 .. 105 %',
      },
      { unit: 'V', physical: '0 .. 5.5 V' },
    ],
    alsoCalled: ['wastegate actual position', 'wastegate opening'],
  },
  {
    name: 'wastegate_pressure',
    meaning: 'Pressure at the wastegate’s actuator when it starts to move',
    family: 'boost',
    holds: 'quantity',
    forms: [{ unit: 'psi', kind: 'gauge', physical: '-15 .. 60 psi' }],
    alsoCalled: ['wastegate cracking pressure', 'actuator pressure'],
  },
  {
    name: 'wastegate_vacuum',
    meaning: 'Vacuum at the wastegate or vane actuator',
    family: 'boost',
    holds: 'quantity',
    forms: [{ unit: 'inHg', kind: 'vacuum', physical: '-2 .. 30 inHg' }],
    alsoCalled: ['actuator vacuum', 'turbo actuator vacuum'],
  },
  {
    name: 'vane_cmd',
    meaning: 'Commanded position of the turbine’s vanes',
    family: 'boost',
    holds: 'quantity',
    forms: [{ unit: '%', encoding: byteOfPercent('$71, value from memory'), physical: '0 .. 100 %' }],
    alsoCalled: ['vgt command', 'commanded vane position', 'vnt command'],
    note: 'Whether 100 % is open or closed differs: see the maker’s information.',
  },
  {
    name: 'vane_position',
    meaning: 'Actual position of the turbine’s vanes',
    family: 'boost',
    holds: 'quantity',
    forms: [
      { unit: '%', encoding: byteOfPercent('$71, value from memory'), physical: '-5 .. 105 %' },
      { unit: 'V', physical: '0 .. 5.5 V' },
    ],
    alsoCalled: ['vgt position', 'vnt position', 'actual vane position'],
    note: 'Whether 100 % is open or closed differs: see the maker’s information.',
  },
  {
    name: 'turbo_speed',
    meaning: 'Turning speed of the turbocharger',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: 'rpm',
        encoding: { range: '0 .. 655350 rpm', step: '10 rpm', source: 'SAE J1979 $74, value from memory' },
        physical: '0 .. 400000 rpm',
        usual: [
          usually('warm idle', '2000 .. 60000 rpm', dieselEngine),
          usually('wide open throttle', '60000 .. 280000 rpm'),
        ],
      },
    ],
    alsoCalled: ['turbocharger speed', 'turbine speed', 'turbocharger rpm'],
  },
  {
    name: 'compressor_in_pressure',
    meaning: 'Pressure before the compressor, absolute',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: 'kPa',
        kind: 'absolute',
        encoding: { range: '0 .. 255 kPa', step: '1 kPa', source: 'SAE J1979 $6F, value from memory' },
        physical: '20 .. 120 kPa',
        usual: [usually('key on engine off', '60 .. 107 kPa'), usually('warm idle', '58 .. 107 kPa')],
      },
    ],
    alsoCalled: [
      'turbo inlet pressure',
      'compressor inlet pressure',
      'turbocharger compressor inlet pressure',
    ],
  },
  {
    name: 'compressor_in_temp',
    meaning: 'Air temperature before the compressor',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: '°C',
        kind: 'point',
        encoding: { range: '-40 .. 215 °C', step: '1 °C', source: 'SAE J1979 $75, value from memory' },
        physical: '-50 .. 150 °C',
        usual: [usually('warm idle', '-30 .. 70 °C'), usually('cruise', '-30 .. 60 °C')],
        failed: [{ value: '-40 °C', means: 'an open circuit of the sensor before the compressor' }],
      },
    ],
    alsoCalled: ['compressor inlet temperature', 'turbo inlet temperature'],
  },
  {
    name: 'compressor_out_temp',
    meaning: 'Air temperature after the compressor, before the cooler',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: '°C',
        kind: 'point',
        encoding: { range: '-40 .. 215 °C', step: '1 °C', source: 'SAE J1979 $75, value from memory' },
        physical: '-50 .. 300 °C',
        usual: [usually('cruise', '-20 .. 140 °C'), usually('wide open throttle', '40 .. 210 °C')],
        failed: [
          { value: '-40 °C', means: 'an open circuit of the sensor after the compressor' },
          { value: '215 °C', means: 'a short circuit of the sensor after the compressor' },
        ],
      },
    ],
    alsoCalled: ['compressor outlet temperature', 'compressor discharge temperature'],
  },
  {
    name: 'cac_in_temp',
    meaning: 'Air temperature into the charge-air cooler',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: '°C',
        kind: 'point',
        physical: '-50 .. 300 °C',
        usual: [usually('cruise', '-20 .. 140 °C'), usually('wide open throttle', '40 .. 210 °C')],
        failed: [{ value: '-40 °C', means: 'an open circuit of the sensor before the cooler' }],
      },
    ],
    alsoCalled: [
      'intercooler inlet temperature',
      'intercooler in temp',
      'charge air cooler inlet temperature',
    ],
  },
  {
    name: 'cac_out_temp',
    meaning: 'Air temperature out of the charge-air cooler',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: '°C',
        kind: 'point',
        encoding: { range: '-40 .. 215 °C', step: '1 °C', source: 'SAE J1979 $77, value from memory' },
        physical: '-50 .. 200 °C',
        usual: [usually('cruise', '-25 .. 70 °C'), usually('wide open throttle', '-15 .. 90 °C')],
        failed: [
          { value: '-40 °C', means: 'an open circuit of the sensor after the cooler' },
          { value: '215 °C', means: 'a short circuit of the sensor after the cooler' },
        ],
      },
    ],
    alsoCalled: [
      'intercooler outlet temperature',
      'intercooler out temp',
      'charge air cooler temperature',
      'cact',
    ],
  },
  {
    name: 'cac_drop',
    meaning: 'Pressure lost in the charge-air cooler',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: 'kPa',
        kind: 'difference',
        physical: '-5 .. 100 kPa',
        usual: [usually('wide open throttle', '0 .. 15 kPa')],
      },
    ],
    alsoCalled: ['intercooler pressure drop', 'charge air cooler pressure drop'],
  },
  {
    name: 'turbine_in_pressure',
    meaning: 'Exhaust pressure before the turbine, above the barometer',
    family: 'boost',
    holds: 'quantity',
    forms: [{ unit: 'kPa', kind: 'gauge', physical: '-10 .. 800 kPa' }],
    alsoCalled: ['turbine inlet pressure', 'drive pressure', 'exhaust manifold pressure'],
  },
  {
    name: 'turbine_in_temp',
    meaning: 'Exhaust temperature before the turbine',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: '°C',
        kind: 'point',
        encoding: { range: '-40 .. 6513.5 °C', step: '0.1 °C', source: 'SAE J1979 $75, value from memory' },
        physical: '-50 .. 1200 °C',
        usual: [usually('warm idle', '80 .. 550 °C'), usually('wide open throttle', '450 .. 1050 °C')],
      },
    ],
    alsoCalled: ['turbine inlet temperature'],
  },
  {
    name: 'turbine_out_temp',
    meaning: 'Exhaust temperature after the turbine',
    family: 'boost',
    holds: 'quantity',
    forms: [
      {
        unit: '°C',
        kind: 'point',
        encoding: { range: '-40 .. 6513.5 °C', step: '0.1 °C', source: 'SAE J1979 $75, value from memory' },
        physical: '-50 .. 1100 °C',
      },
    ],
    alsoCalled: ['turbine outlet temperature'],
  },
  {
    name: 'bypass_state',
    meaning: 'Bypass or blow-off valve of the compressor',
    family: 'boost',
    holds: 'word',
    words: ['open', 'closed', 'leaks'],
    forms: [],
    alsoCalled: ['blow off valve', 'diverter valve', 'bypass valve', 'recirculation valve of the compressor'],
  },
  {
    name: 'turbo_axial_play',
    meaning: 'Play of the turbocharger’s shaft, in and out',
    family: 'boost',
    holds: 'quantity',
    forms: [{ unit: 'mm', physical: '0 .. 5 mm', usual: [usually('key off', '0.02 .. 0.1 mm')] }],
    alsoCalled: ['axial play', 'end play of the turbo', 'thrust play'],
  },
  {
    name: 'turbo_radial_play',
    meaning: 'Play of the turbocharger’s shaft, side to side',
    family: 'boost',
    holds: 'quantity',
    forms: [{ unit: 'mm', physical: '0 .. 5 mm' }],
    alsoCalled: ['radial play', 'shaft play'],
  },
];
