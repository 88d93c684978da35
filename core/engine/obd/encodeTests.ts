import { sensorTests } from './monitorTests.ts';
import { isSigned, testScale } from './testScales.ts';

/*
 * Results of the controller's own tests the other way round, for tests and demonstrations: services 05 and 06.
 */

/**
 * `45 test sensor value [lowest highest]`: values in the test's unit (V or s). Undefined for a test that is not known,
 * or a value that a byte does not carry.
 */
export function encodeSensorTest(
  test: number,
  sensor: number,
  values: readonly [value: number] | readonly [value: number, lowest: number, highest: number],
): readonly number[] | undefined {
  const row = sensorTests[test];
  if (row === undefined) return undefined;
  const [, , step] = row;
  const raws = values.map((value) => Math.round(value / step));
  return raws.every((raw) => raw >= 0 && raw <= 0xff) ? [0x45, test, sensor, ...raws] : undefined;
}

/** One test of service 06: its limits and its value in the scale's unit. */
export interface MonitorTest {
  readonly monitor: number;
  readonly test: number;
  readonly scale: number;
  readonly value: number;
  readonly lowest: number;
  readonly highest: number;
}

/**
 * `46`, then nine bytes a test. Undefined where a scale is not known, or a value is outside what its two bytes carry.
 */
export function encodeMonitorTests(tests: readonly MonitorTest[]): readonly number[] | undefined {
  const bytes = [0x46];
  for (const { monitor, test, scale, value, lowest, highest } of tests) {
    bytes.push(monitor, test, scale);
    for (const each of [value, lowest, highest]) {
      const raw = rawForScale(scale, each);
      if (raw === undefined) return undefined;
      bytes.push(raw >> 8, raw & 0xff);
    }
  }
  return bytes;
}

function rawForScale(id: number, value: number): number | undefined {
  const scale = testScale(id);
  if (scale === undefined) return undefined;
  const raw = Math.round((value - scale.plus) / scale.step);
  const [least, most] = isSigned(id) ? [-0x8000, 0x7fff] : [0, 0xffff];
  return raw >= least && raw <= most ? raw & 0xffff : undefined;
}
