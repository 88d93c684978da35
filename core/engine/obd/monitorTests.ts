import { hex, rawOf } from './decodeParameter.ts';
import type { Item, ItemValue } from './item.ts';
import { isSigned, testScale } from './testScales.ts';

/*
 * Results of the controller's own tests: services 05 (oxygen sensors, before CAN) and 06 (SAE J1979, values from memory).
 */

/** Tests of service 05 by their number: what is told, unit, and what one step is. */
export const sensorTests: Readonly<Record<number, readonly [meaning: string, unit: string, step: number]>> = {
  1: ['Threshold from rich to lean', 'V', 0.005],
  2: ['Threshold from lean to rich', 'V', 0.005],
  3: ['Low voltage for the switching time', 'V', 0.005],
  4: ['High voltage for the switching time', 'V', 0.005],
  5: ['Switching time from rich to lean', 's', 0.004],
  6: ['Switching time from lean to rich', 's', 0.004],
  7: ['Lowest voltage in the test', 'V', 0.005],
  8: ['Highest voltage in the test', 'V', 0.005],
  9: ['Time between two switches', 's', 0.04],
  10: ['Period of the sensor', 's', 0.04],
};

/** `45 test sensor value [lowest highest]`; nothing for a test that is not known. */
export function sensorTest(bytes: Uint8Array, from: number, to: number): readonly Item[] {
  const test = sensorTests[bytes[from + 1] ?? 0];
  if (test === undefined || to - from < 4) return [];
  const [meaning, unit, step] = test;
  const sensor = `sensor ${hex(bytes[from + 2] ?? 0)}`;
  const ends = to - from >= 6 ? ['', ', lowest allowed', ', highest allowed'] : [''];
  return ends.map((end, i) => {
    const at = from + 3 + i;
    return item(`${meaning}, ${sensor}${end}`, numberOf((bytes[at] ?? 0) * step, unit, step), at, at + 1);
  });
}

/**
 * `46` and then nine bytes a test: monitor, test, scale, value, lowest, highest allowed. Misfires by cylinder are readings.
 * `unread` is where bytes are left that make no whole test.
 */
export function monitorTests(
  bytes: Uint8Array,
  from: number,
  to: number,
): { readonly items: readonly Item[]; readonly unread: number } {
  const items: Item[] = [];
  let at = from + 1;
  for (; at + 9 <= to; at += 9) {
    const [monitor = 0, test = 0, scaleId = 0] = bytes.subarray(at, at + 3);
    const scale = testScale(scaleId);
    const name = `Monitor ${hex(monitor)}, test ${hex(test)}`;
    const misfires = misfiresOf(monitor, test);
    for (const [i, end] of ['', ', lowest allowed', ', highest allowed'].entries()) {
      const place = at + 3 + 2 * i;
      const raw = rawOf(bytes, place, 2);
      const signed = isSigned(scaleId) && raw >= 0x8000 ? raw - 0x10000 : raw;
      const value: ItemValue =
        scale === undefined
          ? { is: 'words', text: `${hex(raw >> 8)} ${hex(raw & 255)}, scale ${hex(scaleId)}` }
          : numberOf(signed * scale.step + scale.plus, scale.unit, scale.counts ? 0 : scale.step, scale.kind);
      const meaning = misfires === undefined ? `${name}${end}` : `${misfires.meaning}${end}`;
      const reading = i === 0 ? misfires : undefined;
      items.push({
        ...item(meaning, value, place, place + 2),
        signal: reading?.signal,
        member: reading?.cylinder,
      });
    }
  }
  return { items, unread: at };
}

/**
 * Service 06 before CAN: `46 test component value limit`, two bytes each, in steps that are the maker's own. The highest bit of
 * the component says that the limit is the lowest allowed; otherwise it is the highest. Nothing where the length is another.
 */
export function testBeforeCan(bytes: Uint8Array, from: number, to: number): readonly Item[] {
  if (to - from !== 7) return [];
  const [test = 0, component = 0] = bytes.subarray(from + 1, from + 3);
  const name = `Test ${hex(test)}, component ${hex(component & 0x7f)}, in the maker’s steps`;
  const limit = component >= 0x80 ? 'lowest allowed' : 'highest allowed';
  return [name, `${name}, ${limit}`].map((meaning, i) => {
    const at = from + 3 + 2 * i;
    return item(meaning, numberOf(rawOf(bytes, at, 2), '1', 0), at, at + 2);
  });
}

/** Monitors A2 to AD are misfires of cylinder 1 to 12: test 0B the mean of ten drives, 0C this drive or the last. */
function misfiresOf(
  monitor: number,
  test: number,
): { readonly signal: string; readonly cylinder: string; readonly meaning: string } | undefined {
  if (monitor < 0xa2 || monitor > 0xad || (test !== 0x0b && test !== 0x0c)) return undefined;
  const cylinder = `${monitor - 0xa1}`;
  return test === 0x0b
    ? { signal: 'misfires_mean', cylinder, meaning: `Misfires of cylinder ${cylinder}, mean of ten drives` }
    : { signal: 'misfires', cylinder, meaning: `Misfires of cylinder ${cylinder}` };
}

function numberOf(
  value: number,
  unit: string,
  step: number,
  kind: 'none' | 'point' | 'open' = 'none',
): ItemValue {
  return { is: 'number', value, unit, kind, step };
}

function item(meaning: string, value: ItemValue, from: number, to: number): Item {
  return { meaning, signal: undefined, member: undefined, value, from, to };
}
