import type { Signal } from '../types.ts';
import { byteOfPercent, petrolEngine, signedByteOfPercent, usually } from './usual.ts';

/** Exhaust gas led back into the intake, and air pumped into the exhaust. */
export const recirculation: readonly Signal[] = [
  {
    name: 'egr_cmd',
    meaning: 'Commanded exhaust gas recirculation',
    family: 'recirculation',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: byteOfPercent('$2C, value from memory'),
        physical: '0 .. 100 %',
        usual: [
          usually('cranking', '0 .. 5 %'),
          usually('cold start', '0 .. 5 %', petrolEngine),
          usually('warm idle', '0 .. 10 %', petrolEngine),
          usually('cruise', '0 .. 60 %'),
          usually('wide open throttle', '0 .. 5 %'),
        ],
      },
    ],
    alsoCalled: ['egr', 'commanded egr', 'egr duty', 'egr command', 'egr desired'],
    note: 'The usual ranges are those of spark ignition. A diesel recirculates at idle too.',
  },
  {
    name: 'egr_actual',
    meaning: 'Actual opening of the recirculation valve, in percent',
    family: 'recirculation',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: byteOfPercent('$69, value from memory'),
        physical: '0 .. 100 %',
        usual: [usually('warm idle', '0 .. 10 %', petrolEngine), usually('wide open throttle', '0 .. 5 %')],
      },
    ],
    alsoCalled: ['egr position', 'actual egr'],
  },
  {
    name: 'egr_error',
    meaning: 'Actual recirculation against the commanded one, relative to the command',
    family: 'recirculation',
    holds: 'quantity',
    forms: [
      {
        unit: '%',
        encoding: signedByteOfPercent('$2D, value from memory'),
        physical: '-100 .. 100 %',
        usual: [usually('warm idle', '-10 .. 10 %'), usually('cruise', '-10 .. 10 %')],
      },
    ],
    alsoCalled: ['egr deviation'],
    note: 'The end of its scale, 99.2 %, is sent while gas flows that was not asked for.',
  },
  {
    name: 'egr_lift',
    meaning: 'Lift of the recirculation valve',
    family: 'recirculation',
    holds: 'quantity',
    forms: [
      { unit: 'mm', physical: '-0.5 .. 20 mm' },
      {
        unit: 'V',
        physical: '0 .. 5.5 V',
        usual: [usually('key on engine off', '0.4 .. 1.5 V'), usually('warm idle', '0.4 .. 1.5 V')],
        failed: [
          { value: '0 V', means: 'a signal wire at ground, or a sensor without supply,' },
          { value: '5 V', means: 'a signal wire at its supply, or an open sensor ground,' },
        ],
      },
    ],
    alsoCalled: ['egr valve lift', 'evp', 'egr valve position'],
  },
  {
    name: 'egr_dp',
    meaning: 'Pressure difference across the recirculation orifice',
    family: 'recirculation',
    holds: 'quantity',
    forms: [
      {
        unit: 'kPa',
        kind: 'difference',
        physical: '-100 .. 100 kPa',
        usual: [usually('key on engine off', '-0.5 .. 0.5 kPa'), usually('warm idle', '-1 .. 1 kPa')],
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
    alsoCalled: ['egr differential pressure', 'differential egr pressure', 'egr delta pressure'],
  },
  {
    name: 'egr_vacuum',
    meaning: 'Vacuum at the recirculation valve’s diaphragm',
    family: 'recirculation',
    holds: 'quantity',
    forms: [
      {
        unit: 'inHg',
        kind: 'vacuum',
        physical: '-2 .. 30 inHg',
        usual: [usually('warm idle', '-0.5 .. 1.5 inHg')],
      },
    ],
    alsoCalled: ['egr valve vacuum'],
  },
  {
    name: 'egrt',
    meaning: 'Temperature of the recirculated gas',
    family: 'recirculation',
    holds: 'quantity',
    forms: [
      {
        unit: '°C',
        kind: 'point',
        physical: '-50 .. 900 °C',
        failed: [{ value: '-40 °C', means: 'an open circuit of the gas temperature sensor' }],
      },
    ],
    alsoCalled: ['egr temp', 'egr temperature', 'egr gas temp'],
  },
  {
    name: 'egr_cooler_in_temp',
    meaning: 'Gas temperature before the recirculation cooler',
    family: 'recirculation',
    holds: 'quantity',
    forms: [{ unit: '°C', kind: 'point', physical: '-50 .. 900 °C' }],
    alsoCalled: ['egr cooler inlet'],
  },
  {
    name: 'egr_cooler_out_temp',
    meaning: 'Gas temperature after the recirculation cooler',
    family: 'recirculation',
    holds: 'quantity',
    forms: [{ unit: '°C', kind: 'point', physical: '-50 .. 600 °C' }],
    alsoCalled: ['egr cooler outlet'],
  },
  {
    name: 'egr_flow',
    meaning: 'Mass flow of recirculated gas',
    family: 'recirculation',
    holds: 'quantity',
    forms: [{ unit: 'kg/h', physical: '-20 .. 1500 kg/h' }],
    alsoCalled: ['egr mass flow'],
  },
  {
    name: 'egr_seat',
    meaning: 'Whether the recirculation valve closes tight',
    family: 'recirculation',
    holds: 'word',
    words: ['holds', 'leaks', 'stuck open', 'stuck shut', 'unclear'],
    forms: [],
    alsoCalled: ['egr valve test'],
  },
  {
    name: 'air_status',
    meaning: 'Where the commanded secondary air goes',
    family: 'recirculation',
    holds: 'word',
    words: ['upstream', 'downstream', 'off', 'test'],
    forms: [],
    alsoCalled: ['secondary air', 'secondary air status', 'commanded secondary air', 'air injection'],
    note: 'SAE J1979 $12: before the first catalyst; after it; to the atmosphere or off; pump on for a test.',
  },
  {
    name: 'air_pump_current',
    meaning: 'Current of the secondary air pump',
    family: 'recirculation',
    holds: 'quantity',
    forms: [{ unit: 'A', physical: '0 .. 120 A' }],
    alsoCalled: ['secondary air pump current'],
  },
  {
    name: 'air_pump_flow',
    meaning: 'Mass flow of secondary air into the exhaust',
    family: 'recirculation',
    holds: 'quantity',
    forms: [{ unit: 'kg/h', physical: '-10 .. 200 kg/h' }],
    alsoCalled: ['secondary air flow', 'air injection flow'],
  },
  {
    name: 'air_pump_pressure',
    meaning: 'Pressure in the secondary air line',
    family: 'recirculation',
    holds: 'quantity',
    forms: [{ unit: 'kPa', kind: 'gauge', physical: '-50 .. 100 kPa' }],
    alsoCalled: ['secondary air pressure', 'air injection pressure'],
  },
];
