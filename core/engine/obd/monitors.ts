import type { Item, ItemValue } from './item.ts';

/*
 * Parameter 01 of service 01 (SAE J1979, value from memory): lamp and number of codes in the first byte; in the
 * second the monitors that always run; in the third and fourth those that run once a drive, bit by bit supported and
 * not complete. Bit 3 of the second byte says which set: spark ignition or compression ignition.
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
  let left = 0;
  const add = (
    signal: string,
    meaning: string,
    supported: boolean,
    incomplete: boolean,
    at: number,
    size: number,
  ) => {
    // Not complete and not supported contradict each other: a monitor that is not there has nothing to complete.
    if (supported && incomplete) left++;
    const value: ItemValue = supported
      ? words(incomplete ? 'incomplete' : 'complete')
      : { is: 'absent', why: 'not supported' };
    items.push(item(meaning, signal, value, at, size));
  };
  for (const [bit, signal, meaning] of always)
    add(signal, meaning, isSet(b, bit), isSet(b, bit + 4), from + 1, 1);
  for (const [bit, signal, meaning] of isSet(b, 3) ? compression : spark)
    add(signal, meaning, isSet(c, bit), isSet(d, bit), from + 2, 2);
  items.push(
    item('Supported monitors that have not run to the end', 'monitors_left', count(left), from + 1, 3),
  );
  return items;
}

/** The four bytes of an engine whose monitors are these: those named are supported, those in `incomplete` not complete. */
export function encodeMonitors(of: {
  readonly lamp: boolean;
  readonly codes: number;
  readonly ignition: 'spark' | 'compression';
  readonly supported: readonly string[];
  readonly incomplete: readonly string[];
}): readonly number[] {
  const bits = (list: readonly Monitor[], names: readonly string[]): number =>
    list.reduce((sum, [bit, signal]) => sum | (names.includes(signal) ? 1 << bit : 0), 0);
  const once = of.ignition === 'spark' ? spark : compression;
  return [
    (of.lamp ? 0x80 : 0) | Math.min(127, Math.max(0, of.codes)),
    bits(always, of.supported) | (bits(always, of.incomplete) << 4) | (of.ignition === 'spark' ? 0 : 0x08),
    bits(once, of.supported),
    bits(once, of.incomplete),
  ];
}

const isSet = (byte: number, bit: number): boolean => ((byte >> bit) & 1) === 1;

const words = (text: string): ItemValue => ({ is: 'words', text });

const count = (value: number): ItemValue => ({ is: 'number', value, unit: '1', kind: 'none', step: 0 });

function item(meaning: string, signal: string, value: ItemValue, from: number, size: number): Item {
  return { meaning, signal, member: undefined, value, from, to: from + size };
}
