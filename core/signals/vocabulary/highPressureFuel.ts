import type { Signal } from '../types.ts';
import { dieselEngine, usually } from './usual.ts';

/** Direct injection, diesel and gaseous fuel. */
export const highPressureFuel: readonly Signal[] = [
  {
    name: 'rail_pressure',
    meaning: 'Fuel pressure in the high-pressure rail of a direct-injected engine',
    family: 'highPressureFuel',
    holds: 'quantity',
    forms: [
      {
        unit: 'MPa',
        kind: 'gauge',
        encoding: {
          range: '0 .. 655350 kPa',
          step: '10 kPa',
          source: 'SAE J1979 $23, value from memory',
        },
        physical: '-0.1 .. 400 MPa',
        usual: [usually('warm idle', '1.5 .. 60 MPa', 'common practice, direct injection, petrol or diesel')],
      },
    ],
    alsoCalled: ['fuel rail pressure', 'high side pressure', 'high pressure fuel', 'common rail pressure'],
    note: 'Never open such a line: fuel at this pressure goes through skin.',
  },
  {
    name: 'rail_pressure_desired',
    meaning: 'Rail pressure that the control asks for',
    family: 'highPressureFuel',
    holds: 'quantity',
    forms: [{ unit: 'MPa', kind: 'gauge', physical: '-0.1 .. 400 MPa' }],
    alsoCalled: ['desired rail pressure', 'commanded rail pressure', 'rail pressure setpoint'],
  },
  {
    name: 'rail_pressure_relative',
    meaning: 'Fuel rail pressure above the manifold pressure',
    family: 'highPressureFuel',
    holds: 'quantity',
    forms: [
      {
        unit: 'kPa',
        kind: 'difference',
        encoding: {
          range: '0 .. 5177.265 kPa',
          step: '0.079 kPa',
          source: 'SAE J1979 $22, value from memory',
        },
        physical: '-120 .. 6000 kPa',
      },
    ],
    alsoCalled: ['rail pressure relative to manifold', 'relative rail pressure'],
  },
  {
    name: 'low_side_pressure',
    meaning: 'Fuel pressure before the mechanical high-pressure pump',
    family: 'highPressureFuel',
    holds: 'quantity',
    forms: [{ unit: 'kPa', kind: 'gauge', physical: '-100 .. 2000 kPa' }],
    alsoCalled: ['low pressure fuel', 'low side fuel pressure', 'lift pump pressure', 'supply pressure'],
  },
  {
    name: 'supply_vacuum',
    meaning: 'Vacuum in the fuel supply line, before a pump that draws',
    family: 'highPressureFuel',
    holds: 'quantity',
    forms: [{ unit: 'inHg', kind: 'vacuum', physical: '-30 .. 32 inHg' }],
    alsoCalled: ['fuel supply vacuum', 'suction side vacuum', 'fuel inlet restriction'],
  },
  {
    name: 'injection_quantity',
    meaning: 'Fuel injected per stroke',
    family: 'highPressureFuel',
    holds: 'quantity',
    by: 'cylinder',
    forms: [
      { unit: 'mg/stroke', physical: '0 .. 1000 mg/stroke' },
      { unit: 'mm³', physical: '0 .. 1200 mm³' },
    ],
    alsoCalled: ['injected quantity', 'fuel quantity', 'fuel per stroke', 'fuel mass'],
  },
  {
    name: 'injection_timing',
    meaning: 'Crank position at which the main injection starts',
    family: 'highPressureFuel',
    holds: 'quantity',
    forms: [
      {
        unit: '°BTDC',
        kind: 'btdc',
        encoding: {
          range: '-210 .. 301.9921875 °BTDC',
          step: '0.0078125 °CA',
          source: 'SAE J1979 $5D, value from memory',
        },
        physical: '-360 .. 360 °BTDC',
      },
    ],
    alsoCalled: ['start of injection', 'soi', 'fuel injection timing'],
  },
  {
    name: 'balance_rate',
    meaning: 'Correction of one cylinder’s fuel that keeps the crank turning evenly',
    family: 'highPressureFuel',
    holds: 'quantity',
    by: 'cylinder',
    forms: [
      {
        unit: 'mm³',
        physical: '-100 .. 100 mm³',
        usual: [usually('warm idle', '-4 .. 4 mm³', dieselEngine)],
      },
      {
        unit: 'mg/stroke',
        physical: '-100 .. 100 mg/stroke',
        usual: [usually('warm idle', '-4 .. 4 mg/stroke', dieselEngine)],
      },
      { unit: '%', physical: '-100 .. 100 %' },
    ],
    alsoCalled: ['balance rates', 'cylinder balance', 'smooth running', 'cylinder correction'],
  },
  {
    name: 'return_flow',
    meaning: 'Fuel that one diesel injector returns in a stated time',
    family: 'highPressureFuel',
    holds: 'quantity',
    by: 'cylinder',
    forms: [
      { unit: 'mL', physical: '0 .. 2 L' },
      { unit: 'mL/min', physical: '0 .. 2 L/min' },
    ],
    alsoCalled: ['leak off', 'back leakage', 'injector return', 'return volume', 'injector leak back'],
  },
  {
    name: 'regulator_duty',
    meaning: 'Duty of the fuel pressure regulator or metering valve',
    family: 'highPressureFuel',
    holds: 'quantity',
    forms: [
      { unit: '%', physical: '0 .. 100 %' },
      { unit: 'A', physical: '-1 .. 10 A' },
    ],
    alsoCalled: ['fuel pressure regulator', 'pressure regulator duty', 'metering valve', 'rail valve'],
  },
  {
    name: 'glow_current',
    meaning: 'Current of the glow plugs, all together or by cylinder',
    family: 'highPressureFuel',
    holds: 'quantity',
    by: 'cylinder',
    forms: [{ unit: 'A', physical: '-2 .. 400 A' }],
    alsoCalled: ['glow plug current', 'glow plug amps', 'glow amps'],
  },
  {
    name: 'glow_resistance',
    meaning: 'Resistance of one glow plug',
    family: 'highPressureFuel',
    holds: 'quantity',
    by: 'cylinder',
    forms: [{ unit: 'Ω', physical: '0 .. 100 MΩ' }],
    alsoCalled: ['glow plug resistance', 'glow plug ohms'],
  },
  {
    name: 'gas_rail_pressure',
    meaning: 'Pressure of gaseous fuel behind the regulator',
    family: 'highPressureFuel',
    holds: 'quantity',
    forms: [{ unit: 'kPa', kind: 'gauge', physical: '-20 .. 3000 kPa' }],
    alsoCalled: ['gas pressure', 'gas rail', 'lpg pressure', 'cng rail pressure', 'reducer pressure'],
  },
  {
    name: 'gas_tank_pressure',
    meaning: 'Pressure of gaseous fuel in its tank',
    family: 'highPressureFuel',
    holds: 'quantity',
    forms: [{ unit: 'bar', kind: 'gauge', physical: '-0.1 .. 800 bar' }],
    alsoCalled: ['cng tank pressure', 'tank gas pressure', 'cylinder bottle pressure'],
  },
];
