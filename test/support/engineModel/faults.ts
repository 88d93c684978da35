import type { Engine } from './engine.ts';

/** A fault of the car, or a slip of the hand or of an instrument. */
export interface Fault {
  readonly name: string;
  readonly kind: 'car' | 'instrument' | 'slip';
  /** What its size is counted in, for the table. */
  readonly unit: string;
  /** From too small to tell, up; from `tellable` on it must be told. */
  readonly sizes: readonly [number, ...number[]];
  readonly tellable: number;
  /** What the engine must be for the fault to exist and to be seen. */
  readonly given: Partial<Engine>;
  readonly altitudes?: readonly [number, number];
  /** Any of these codes tells it rightly. */
  readonly codes: readonly [string, ...string[]];
  /** Codes that are true of it as well: they follow from it and are no false alarm. */
  readonly follows?: readonly string[];
}

const metered = { metering: 'air flow', boosted: false } as const;

/** One at a time; several sizes each. */
export const faults = [
  {
    name: 'air leak behind the meter',
    kind: 'car',
    unit: '% of the idle air',
    sizes: [8, 11, 14, 20, 30],
    tellable: 14,
    given: metered,
    codes: ['trim-by-load'],
    follows: ['filling-unlikely'],
  },
  {
    name: 'leak larger than the idle valve can make up for',
    kind: 'car',
    unit: '% of the idle air',
    sizes: [60, 80, 90, 110, 140],
    tellable: 90,
    given: { ...metered, idleControl: 'valve' },
    codes: ['idle-air-shut'],
    follows: ['filling-unlikely'],
  },
  {
    name: 'weak fuel supply',
    kind: 'car',
    unit: '% of the fuel missing at 25 g/s a litre',
    sizes: [20, 30, 38, 45, 55],
    tellable: 38,
    given: metered,
    codes: ['trim-by-load'],
  },
  {
    name: 'air-flow meter reads low everywhere',
    kind: 'car',
    unit: '% of the air',
    sizes: [6, 10, 14, 20],
    tellable: 14,
    given: metered,
    codes: ['trim-by-load'],
    follows: ['filling-unlikely'],
  },
  {
    name: 'injectors of one bank give too little',
    kind: 'car',
    unit: '% of the fuel',
    sizes: [7, 9, 11, 15, 20],
    tellable: 11,
    given: { ...metered, banks: 2 },
    codes: ['banks-apart'],
  },
  {
    name: 'front sensor sees lean: exhaust leak before it',
    kind: 'car',
    unit: '% of lambda',
    sizes: [6, 9, 13, 17, 22],
    tellable: 13,
    given: { ...metered, banks: 1 },
    codes: ['trim-against-gas'],
  },
  {
    name: 'recirculation valve stuck open',
    kind: 'car',
    unit: '% open at idle',
    sizes: [5, 8, 9, 12, 20],
    tellable: 9,
    given: { recirculates: true, boosted: false },
    codes: ['egr-at-idle'],
  },
  {
    name: 'exhaust blocked',
    kind: 'car',
    unit: '% of the filling lost at 25 g/s a litre',
    sizes: [15, 25, 40, 50, 70],
    tellable: 40,
    given: metered,
    codes: ['filling-unlikely'],
  },
  {
    name: 'thermostat opens early',
    kind: 'car',
    unit: 'K below its rating',
    sizes: [10, 15, 20, 25, 30],
    tellable: 20,
    given: {},
    codes: ['thermostat-early'],
  },
  {
    name: 'catalyst stores no oxygen',
    kind: 'car',
    unit: '% of the front swing',
    sizes: [45, 65, 75, 85, 95],
    tellable: 75,
    given: { frontSensor: 'zirconia' },
    codes: ['rear-copies-front'],
  },
  {
    name: 'manifold pressure sensor off',
    kind: 'instrument',
    unit: 'kPa too high',
    sizes: [2, 4, 7, 9, 12],
    tellable: 7,
    given: { boosted: false },
    codes: [
      'barometers-apart',
      'barometer-unfit',
      'pressure-and-vacuum',
      'impossible-value',
      'above-barometer',
    ],
  },
  {
    name: 'barometric sensor off',
    kind: 'instrument',
    unit: 'kPa too low',
    sizes: [2, 4, 7, 9, 14],
    tellable: 7,
    given: {},
    codes: ['barometers-apart', 'barometer-unfit'],
  },
  {
    name: 'vacuum gauge off',
    kind: 'instrument',
    unit: 'inHg too low',
    sizes: [0.8, 1.8, 2.8, 3.5, 5],
    tellable: 2.8,
    given: { metering: 'both', boosted: false },
    codes: ['pressure-and-vacuum'],
  },
  {
    name: 'hose of the manifold pressure sensor off',
    kind: 'instrument',
    unit: '',
    sizes: [1],
    tellable: 1,
    given: { metering: 'both', boosted: false },
    codes: ['manifold-at-barometer'],
  },
  {
    name: 'coolant sensor off after a cold soak',
    kind: 'instrument',
    unit: 'K too high',
    sizes: [8, 12, 15, 20, 30],
    tellable: 15,
    given: {},
    codes: ['cold-soak-apart'],
  },
  {
    name: 'substituted coolant temperature after a cold soak, one other thermometer',
    kind: 'instrument',
    unit: '°C shown',
    sizes: [80],
    tellable: 80,
    given: {},
    codes: ['cold-soak-apart'],
  },
  {
    name: 'intake air sensor reads hot',
    kind: 'instrument',
    unit: 'K above the coolant',
    sizes: [3, 5, 8, 12, 25],
    tellable: 8,
    given: { boosted: false },
    codes: ['charge-hotter-than-coolant'],
  },
  {
    name: 'reading that stays the same at every load',
    kind: 'instrument',
    unit: '',
    sizes: [1],
    tellable: 1,
    given: { metering: 'both', boosted: false },
    codes: ['frozen-reading'],
  },
  {
    name: 'decimal point of an air flow',
    kind: 'slip',
    unit: 'times',
    sizes: [0.1, 10],
    tellable: 0.1,
    given: { metering: 'both' },
    codes: ['filling-unlikely', 'readings-differ', 'impossible-value'],
    follows: ['beyond-sensor'],
  },
  {
    name: 'displacement of a larger engine',
    kind: 'slip',
    unit: 'times',
    sizes: [1.15, 1.3, 1.5, 2, 3],
    tellable: 1.5,
    given: { metering: 'both', boosted: false },
    codes: ['filling-unlikely'],
    follows: ['readings-differ'],
  },
  {
    name: 'displacement of a smaller engine',
    kind: 'slip',
    unit: 'times',
    sizes: [0.9, 0.75, 0.65, 0.5],
    tellable: 0.65,
    given: { metering: 'both', boosted: false },
    codes: ['filling-unlikely'],
    follows: ['readings-differ'],
  },
  {
    name: 'manifold pressure in kPa, written as inHg',
    kind: 'slip',
    unit: '',
    sizes: [1],
    tellable: 1,
    given: { metering: 'both', boosted: false },
    codes: ['unit-slip', 'above-barometer', 'pressure-and-vacuum'],
    follows: ['beyond-sensor'],
  },
  {
    name: 'vacuum written as manifold pressure',
    kind: 'slip',
    unit: '',
    sizes: [1],
    tellable: 1,
    given: { metering: 'both', boosted: false },
    altitudes: [0, 700],
    codes: ['vacuum-for-absolute'],
  },
  {
    name: 'weather report taken for the barometer',
    kind: 'slip',
    unit: 'm above the sea',
    sizes: [150, 300, 400, 600, 1200, 2400],
    tellable: 400,
    given: {},
    codes: ['sea-level-for-station'],
  },
  {
    name: 'a cylinder left out',
    kind: 'slip',
    unit: '',
    sizes: [1],
    tellable: 1,
    given: {},
    codes: ['missing-cylinder'],
  },
  {
    name: 'a cylinder twice in the firing order',
    kind: 'slip',
    unit: '',
    sizes: [1],
    tellable: 1,
    given: {},
    codes: ['firing-order-unfit'],
  },
  {
    name: 'a code with a letter too few',
    kind: 'slip',
    unit: '',
    sizes: [1],
    tellable: 1,
    given: {},
    codes: ['code-form'],
  },
  {
    name: 'absolute load that its air flow does not give',
    kind: 'slip',
    unit: 'times',
    sizes: [1.1, 1.3, 1.4, 2],
    tellable: 1.4,
    given: { metering: 'both' },
    codes: ['readings-differ'],
  },
] as const satisfies readonly Fault[];

export type FaultName = (typeof faults)[number]['name'];

/** Its faults with the size that they have, or none. */
export interface OneFault {
  readonly name: FaultName;
  readonly size: number;
}
