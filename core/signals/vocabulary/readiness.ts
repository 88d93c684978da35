import type { Signal } from '../types.ts';
import { usually } from './usual.ts';

/** What the module says of its own tests: monitors, lamp, codes, misfires, and how long since they were cleared. */
export const readiness: readonly Signal[] = [
  monitor('misfire', 'Misfire monitor', ['misfire monitoring']),
  monitor('fuel', 'Fuel system monitor', ['fuel system monitoring']),
  monitor('component', 'Monitor of the components', [
    'comprehensive component monitor',
    'components monitor',
    'ccm',
  ]),
  monitor('catalyst', 'Catalyst monitor', ['cat monitor', 'catalyst readiness']),
  monitor('heated_catalyst', 'Heated catalyst monitor', []),
  monitor('evap', 'Evaporative system monitor', ['evap readiness', 'evaporative system monitor']),
  monitor('air', 'Secondary air monitor', ['secondary air monitor']),
  monitor('ac', 'Air conditioning refrigerant monitor', ['refrigerant monitor', 'air conditioning monitor']),
  monitor('o2', 'Oxygen sensor monitor', ['oxygen sensor monitor', 'o2 sensor monitor']),
  monitor('o2_heater', 'Oxygen sensor heater monitor', ['o2 sensor heater monitor', 'ho2s heater monitor']),
  monitor('egr', 'Exhaust gas recirculation or valve timing monitor', ['vvt monitor', 'egr vvt monitor']),
  monitor('hydrocarbon_catalyst', 'Hydrocarbon catalyst monitor of a diesel', ['nmhc monitor']),
  monitor('nox', 'Monitor of the NOx aftertreatment of a diesel', [
    'scr monitor',
    'nox aftertreatment monitor',
  ]),
  monitor('boost', 'Charge pressure monitor of a diesel', ['boost pressure monitor']),
  monitor('exhaust_sensor', 'Exhaust gas sensor monitor of a diesel', ['exhaust gas sensor monitor']),
  monitor('filter', 'Particulate filter monitor of a diesel', ['pm filter monitor', 'dpf monitor']),
  {
    name: 'monitors_left',
    meaning: 'Supported monitors that have not run to the end',
    family: 'readiness',
    holds: 'quantity',
    forms: [{ unit: '1', physical: '0 .. 16' }],
    alsoCalled: ['incomplete monitors', 'monitors not ready', 'monitors incomplete'],
  },
  {
    name: 'mil',
    meaning: 'Malfunction indicator lamp, as commanded',
    family: 'readiness',
    holds: 'word',
    words: ['off', 'on', 'flashing'],
    forms: [],
    alsoCalled: ['check engine light', 'check engine', 'malfunction indicator', 'mil status', 'engine lamp'],
    note: 'Commanded, from SAE J1979 $01: whether the lamp shines is another matter.',
  },
  {
    name: 'dtc_count',
    meaning: 'Stored codes that the module counts',
    family: 'readiness',
    holds: 'quantity',
    forms: [
      {
        unit: '1',
        encoding: { range: '0 .. 127', step: '1', source: 'SAE J1979 $01, value from memory' },
        physical: '0 .. 127',
      },
    ],
    alsoCalled: ['code count', 'number of codes', 'dtcs', 'number of dtcs', 'dtc cnt'],
  },
  {
    name: 'freeze_dtc',
    meaning: 'Code that stored the freeze frame',
    family: 'readiness',
    holds: 'text',
    forms: [],
    alsoCalled: ['freeze frame code', 'freeze frame dtc', 'dtc that caused freeze frame', 'dtcfrzf'],
    note: 'SAE J1979 $02; `none` where no frame is stored.',
  },
  {
    name: 'time_since_clear',
    meaning: 'Engine run time since the codes were cleared',
    family: 'readiness',
    holds: 'quantity',
    forms: [
      {
        unit: 'min',
        encoding: { range: '0 .. 65535 min', step: '1 min', source: 'SAE J1979 $4E, value from memory' },
        physical: '0 .. 65535 min',
      },
    ],
    alsoCalled: ['time since codes cleared', 'time since dtc cleared', 'clr time'],
    note: 'Short times explain incomplete monitors, and trims that have not learned yet.',
  },
  {
    name: 'distance_since_clear',
    meaning: 'Distance driven since the codes were cleared',
    family: 'readiness',
    holds: 'quantity',
    forms: [
      {
        unit: 'km',
        encoding: { range: '0 .. 65535 km', step: '1 km', source: 'SAE J1979 $31, value from memory' },
        physical: '0 .. 65535 km',
      },
    ],
    alsoCalled: ['distance since codes cleared', 'distance since dtc cleared', 'clr dist'],
  },
  {
    name: 'warm_ups_since_clear',
    meaning: 'Warm-ups since the codes were cleared',
    family: 'readiness',
    holds: 'quantity',
    forms: [
      {
        unit: '1',
        encoding: { range: '0 .. 255', step: '1', source: 'SAE J1979 $30, value from memory' },
        physical: '0 .. 255',
      },
    ],
    alsoCalled: ['warm ups', 'warmups since clear', 'warm up cycles', 'warm ups since codes cleared'],
  },
  {
    name: 'time_with_mil',
    meaning: 'Engine run time with the lamp commanded on',
    family: 'readiness',
    holds: 'quantity',
    forms: [
      {
        unit: 'min',
        encoding: { range: '0 .. 65535 min', step: '1 min', source: 'SAE J1979 $4D, value from memory' },
        physical: '0 .. 65535 min',
      },
    ],
    alsoCalled: ['time with mil on', 'mil time', 'time run with mil on'],
  },
  {
    name: 'distance_with_mil',
    meaning: 'Distance driven with the lamp commanded on',
    family: 'readiness',
    holds: 'quantity',
    forms: [
      {
        unit: 'km',
        encoding: { range: '0 .. 65535 km', step: '1 km', source: 'SAE J1979 $21, value from memory' },
        physical: '0 .. 65535 km',
      },
    ],
    alsoCalled: ['distance with mil on', 'mil distance', 'mil dist'],
  },
  {
    name: 'misfires',
    meaning: 'Misfires counted by cylinder, in their window',
    family: 'readiness',
    holds: 'quantity',
    by: 'cylinder',
    forms: [
      {
        unit: '1',
        encoding: { range: '0 .. 65535', step: '1', source: 'SAE J1979 service $06, value from memory' },
        physical: '0 .. 65535',
      },
    ],
    alsoCalled: ['misfire count', 'misfire counts', 'misfire', 'cylinder misfires', 'current misfires'],
    note: 'A count says something only with its window: give it as `misfire_window`.',
  },
  {
    name: 'misfire_window',
    meaning: 'Turns of the crankshaft over which misfires were counted',
    family: 'readiness',
    holds: 'quantity',
    forms: [{ unit: 'turn', physical: '1 .. 10000000 turn' }],
    alsoCalled: ['misfire revolutions', 'misfire cycles', 'window'],
    note: 'Usual windows are 200 and 1000 turns (common practice).',
  },
  {
    name: 'misfires_mean',
    meaning: 'Misfires by cylinder, mean over the last ten driving cycles',
    family: 'readiness',
    holds: 'quantity',
    by: 'cylinder',
    forms: [
      {
        unit: '1',
        encoding: { range: '0 .. 65535', step: '1', source: 'SAE J1979 service $06, value from memory' },
        physical: '0 .. 65535',
      },
    ],
    alsoCalled: ['average misfires', 'misfire history', 'ewma misfires'],
  },
  {
    name: 'misfires_total',
    meaning: 'Misfires of all cylinders, in their window',
    family: 'readiness',
    holds: 'quantity',
    forms: [{ unit: '1', physical: '0 .. 1000000' }],
    alsoCalled: ['total misfires', 'misfire total'],
  },
  {
    name: 'misfire_rate',
    meaning: 'Share of the power strokes that misfired, by cylinder',
    family: 'readiness',
    holds: 'quantity',
    by: 'cylinder',
    forms: [
      {
        unit: '%',
        physical: '0 .. 100 %',
        usual: [usually('warm idle', '0 .. 2 %'), usually('cruise', '0 .. 1 %')],
      },
    ],
    alsoCalled: ['misfire percent', 'misfire percentage'],
  },
];

/** One monitor: SAE J1979 $01 says supported and complete in a bit each; `not supported` is said with these words. */
function monitor(of: string, meaning: string, alsoCalled: readonly string[]): Signal {
  return {
    name: `${of}_monitor`,
    meaning,
    family: 'readiness',
    holds: 'word',
    words: ['complete', 'incomplete'],
    forms: [],
    ...(alsoCalled.length === 0 ? {} : { alsoCalled }),
    note: 'From SAE J1979 $01. A monitor that this vehicle does not have is `not supported`.',
  };
}
