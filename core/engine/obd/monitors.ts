import type { Item, ItemValue } from './item.ts';

/*
 * Parameter 01 of service 01 (SAE J1979, value from memory): lamp and number of codes in the first byte; in the
 * second the monitors that always run; in the third and fourth those that run once a drive, bit by bit supported and
 * not complete. Bit 3 of the second byte says which set: spark ignition or compression ignition.
 * Parameter 41 has the same bits for this driving cycle, enabled for supported, and nothing in its first byte
 * (value from memory). Controllers of older editions may leave its bit 3 at 0 whatever the ignition.
 */

/** The monitors that always run, with their bit. */
const always = [
  [0, 'misfire_monitor', 'Misfire monitor'],
  [1, 'fuel_monitor', 'Fuel system monitor'],
  [2, 'component_monitor', 'Monitor of the components'],
] as const;

type Monitor = readonly [bit: number, signal: string, meaning: string];

const spark: readonly Monitor[] = [
  [0, 'catalyst_monitor', 'Catalyst monitor'],
  [1, 'heated_catalyst_monitor', 'Heated catalyst monitor'],
  [2, 'evap_monitor', 'Evaporative system monitor'],
  [3, 'air_monitor', 'Secondary air monitor'],
  [4, 'ac_monitor', 'Air conditioning refrigerant monitor'],
  [5, 'o2_monitor', 'Oxygen sensor monitor'],
  [6, 'o2_heater_monitor', 'Oxygen sensor heater monitor'],
  [7, 'egr_monitor', 'Exhaust gas recirculation or valve timing monitor'],
];

/** Bits 2 and 4 are reserved. */
const compression: readonly Monitor[] = [
  [0, 'hydrocarbon_catalyst_monitor', 'Hydrocarbon catalyst monitor'],
  [1, 'nox_monitor', 'Monitor of the NOx aftertreatment'],
  [3, 'boost_monitor', 'Charge pressure monitor'],
  [5, 'exhaust_sensor_monitor', 'Exhaust gas sensor monitor'],
  [6, 'filter_monitor', 'Particulate filter monitor'],
  [7, 'egr_monitor', 'Exhaust gas recirculation or valve timing monitor'],
];

/** Lamp, number of codes, each monitor, and how many of those that are supported have not run to the end. */
export function monitorItems(bytes: Uint8Array, from: number): readonly Item[] {
  const [a = 0, b = 0, c = 0, d = 0] = bytes.subarray(from, from + 4);
  const items: Item[] = [
    item('Malfunction indicator lamp, as commanded', 'mil', words(a >= 0x80 ? 'on' : 'off'), from, 1),
    item('Stored codes', 'dtc_count', count(a & 0x7f), from, 1),
  ];
  const all = monitorsIn(b, c, d);
  for (const { signal, meaning, isThere, isLeft, at, size } of all) {
    const value: ItemValue = isThere
      ? words(isLeft ? 'incomplete' : 'complete')
      : { is: 'absent', why: 'not supported' };
    items.push(item(meaning, signal, value, from + at, size));
  }
  const left = all.filter(({ isLeft }) => isLeft).length;
  items.push(
    item('Supported monitors that have not run to the end', 'monitors_left', count(left), from + 1, 3),
  );
  return items;
}

/** Each monitor in this driving cycle, and how many of those that are enabled have not run to the end. They are no readings of the signals that say it since the codes were cleared. */
export function cycleMonitorItems(bytes: Uint8Array, from: number): readonly Item[] {
  const [, b = 0, c = 0, d = 0] = bytes.subarray(from, from + 4);
  const all = monitorsIn(b, c, d);
  const items = all.map(({ meaning, isThere, isLeft, at, size }) =>
    item(
      `${meaning}, this driving cycle`,
      undefined,
      words(isThere ? (isLeft ? 'incomplete' : 'complete') : 'not enabled'),
      from + at,
      size,
    ),
  );
  const left = all.filter(({ isLeft }) => isLeft).length;
  return [
    ...items,
    item('Enabled monitors that have not run to the end', undefined, count(left), from + 1, 3),
  ];
}

/** A monitor as three bytes have it. Not complete and not there contradict each other: it has nothing to complete. */
interface MonitorBits {
  readonly signal: string;
  readonly meaning: string;
  readonly isThere: boolean;
  readonly isLeft: boolean;
  readonly at: number;
  readonly size: number;
}

function monitorsIn(b: number, c: number, d: number): readonly MonitorBits[] {
  const once = isSet(b, 3) ? compression : spark;
  return [
    ...always.map(([bit, signal, meaning]) => {
      const isThere = isSet(b, bit);
      return { signal, meaning, isThere, isLeft: isThere && isSet(b, bit + 4), at: 1, size: 1 };
    }),
    ...once.map(([bit, signal, meaning]) => {
      const isThere = isSet(c, bit);
      return { signal, meaning, isThere, isLeft: isThere && isSet(d, bit), at: 2, size: 2 };
    }),
  ];
}

/** The four bytes of an engine whose monitors are these: those named are supported, those in `incomplete` not complete. */
export function encodeMonitors(of: {
  readonly lamp: boolean;
  readonly codes: number;
  readonly ignition: Ignition;
  readonly supported: readonly string[];
  readonly incomplete: readonly string[];
}): readonly number[] {
  const first = (of.lamp ? 0x80 : 0) | Math.min(127, Math.max(0, of.codes));
  return [first, ...monitorBytes(of.ignition, of.supported, of.incomplete)];
}

/** The four bytes of parameter 41, by the names of the signals that parameter 01 has. */
export function encodeCycleMonitors(of: {
  readonly ignition: Ignition;
  readonly enabled: readonly string[];
  readonly incomplete: readonly string[];
}): readonly number[] {
  return [0, ...monitorBytes(of.ignition, of.enabled, of.incomplete)];
}

type Ignition = 'spark' | 'compression';

function monitorBytes(
  ignition: Ignition,
  there: readonly string[],
  incomplete: readonly string[],
): readonly number[] {
  const bits = (list: readonly Monitor[], names: readonly string[]): number =>
    list.reduce((sum, [bit, signal]) => sum | (names.includes(signal) ? 1 << bit : 0), 0);
  const once = ignition === 'spark' ? spark : compression;
  return [
    bits(always, there) | (bits(always, incomplete) << 4) | (ignition === 'spark' ? 0 : 0x08),
    bits(once, there),
    bits(once, incomplete),
  ];
}

const isSet = (byte: number, bit: number): boolean => ((byte >> bit) & 1) === 1;

const words = (text: string): ItemValue => ({ is: 'words', text });

const count = (value: number): ItemValue => ({ is: 'number', value, unit: '1', kind: 'none', step: 0 });

function item(
  meaning: string,
  signal: string | undefined,
  value: ItemValue,
  from: number,
  size: number,
): Item {
  return { meaning, signal, member: undefined, value, from, to: from + size };
}
