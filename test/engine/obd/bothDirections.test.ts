import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeObd } from '../../../core/engine/obd/decodeObd.ts';
import { spaced, writeMessage } from '../../../core/engine/obd/encodeAnswers.ts';
import {
  encodeChecksums,
  encodeInUseCounters,
  encodeTexts,
  splitBeforeCan,
} from '../../../core/engine/obd/encodeInformation.ts';
import { encodeMonitorTests, encodeSensorTest } from '../../../core/engine/obd/encodeTests.ts';
import { inUseCounters } from '../../../core/engine/obd/inUseCounters.ts';
import { sensorTests } from '../../../core/engine/obd/monitorTests.ts';
import { isSigned, testScale, testScaleIds } from '../../../core/engine/obd/testScales.ts';
import { informationTexts } from '../../../core/engine/obd/vehicleInformation.ts';
import { checkDigit } from '../../../core/engine/obd/vin.ts';
import { foundIn, saidBy } from './bytes.ts';

/** The numbers of an answer, with their units and steps, after it was written as frames and read again. */
function numbersBack(bytes: readonly number[] | undefined) {
  const text = writeMessage('7E8', bytes ?? expect.fail('cannot be encoded')).join('\n');
  expect(foundIn(text)).toEqual([]);
  return decodeObd(text).answers.flatMap(({ items }) =>
    items.map(({ value }) => (value.is === 'number' ? value : expect.fail('no number'))),
  );
}

describe('service 05', () => {
  it.each(Object.entries(sensorTests))('comes back within one step: test %s', (test, [, unit, step]) => {
    const volts = fc.double({ min: 0, max: 255 * step, noNaN: true });
    fc.assert(
      fc.property(
        volts,
        volts,
        volts,
        fc.integer({ min: 1, max: 0xff }),
        (value, lowest, highest, sensor) => {
          const back = numbersBack(encodeSensorTest(Number(test), sensor, [value, lowest, highest]));
          expect(back.map((each) => each.unit)).toEqual([unit, unit, unit]);
          for (const [at, each] of [value, lowest, highest].entries())
            expect(Math.abs((back[at]?.value ?? Number.NaN) - each)).toBeLessThanOrEqual(step);
        },
      ),
      { numRuns: 40 },
    );
    expect(numbersBack(encodeSensorTest(Number(test), 1, [100 * step]))).toHaveLength(1);
  });

  it('makes nothing of what a byte does not carry', () => {
    expect(encodeSensorTest(1, 1, [1.3])).toBeUndefined();
    expect(encodeSensorTest(1, 1, [-0.01])).toBeUndefined();
    expect(encodeSensorTest(1, 1, [Number.NaN])).toBeUndefined();
    expect(encodeSensorTest(0x20, 1, [0.45])).toBeUndefined();
    expect(encodeSensorTest(1, 1, [0.45])).toEqual([0x45, 0x01, 0x01, 0x5a]);
  });
});

describe('service 06', () => {
  it.each(testScaleIds().map((id) => [id.toString(16).toUpperCase().padStart(2, '0'), id] as const))(
    'comes back within one step: scale %s',
    (_, id) => {
      const scale = testScale(id) ?? expect.fail('no scale');
      const [least, most] = isSigned(id) ? [-0x8000, 0x7fff] : [0, 0xffff];
      const raw = fc
        .double({ min: least, max: most, noNaN: true })
        .map((each) => each * scale.step + scale.plus);
      fc.assert(
        fc.property(raw, raw, raw, (value, lowest, highest) => {
          const test = { monitor: 0x21, test: 0x80, scale: id, value, lowest, highest };
          const back = numbersBack(encodeMonitorTests([test, { ...test, test: 0x81 }]));
          expect(back).toHaveLength(6);
          for (const [at, each] of [value, lowest, highest, value, lowest, highest].entries()) {
            expect(back[at]?.unit).toBe(scale.unit);
            expect(Math.abs((back[at]?.value ?? Number.NaN) - each)).toBeLessThanOrEqual(
              scale.step * (1 + 1e-9),
            );
          }
        }),
        { numRuns: 40 },
      );
    },
  );

  it('keeps the ends of what two bytes carry', () => {
    const of = (scale: number, value: number) =>
      encodeMonitorTests([{ monitor: 1, test: 0x80, scale, value, lowest: 0, highest: 0 }]);
    expect(of(0x0b, 65535)).toEqual([0x46, 0x01, 0x80, 0x0b, 0xff, 0xff, 0, 0, 0, 0]);
    expect(of(0x8b, -32768)).toEqual([0x46, 0x01, 0x80, 0x8b, 0x80, 0x00, 0, 0, 0, 0]);
    expect(of(0x8b, -1)).toEqual([0x46, 0x01, 0x80, 0x8b, 0xff, 0xff, 0, 0, 0, 0]);
    expect(of(0x0b, 65536)).toBeUndefined();
    expect(of(0x0b, -1)).toBeUndefined();
    expect(of(0x8b, 32768)).toBeUndefined();
    expect(of(0x7d, 0)).toBeUndefined();
    expect(of(0x0b, Number.NaN)).toBeUndefined();
  });
});

describe('service 09', () => {
  const printable = fc.string({
    unit: fc.integer({ min: 0x21, max: 0x7e }).map((each) => String.fromCharCode(each)),
    minLength: 1,
  });

  const texts = Object.entries(informationTexts).filter(([kind]) => kind !== '2');

  it.each(texts)('comes back: texts of kind %s', (kind, { meaning, length }) => {
    const some = fc.array(
      printable.map((each) => each.slice(0, length)),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(some, (names) => {
        const text = writeMessage('7E8', encodeTexts(Number(kind), names) ?? []).join('\n');
        expect(saidBy(text)).toEqual(names.map((each) => `7E8 ${meaning} ${each}`));
      }),
      { numRuns: 60 },
    );
  });

  const signs = 'ABCDEFGHJKLMNPRSTUVWXYZ0123456789';
  const vins = fc
    .array(fc.constantFrom(...signs), { minLength: 17, maxLength: 17 })
    .map((each) => each.join(''))
    .map((each) => each.slice(0, 8) + checkDigit(each) + each.slice(9));

  it('comes back: vehicle identification numbers, on a CAN network and before', () => {
    fc.assert(
      fc.property(vins, (vin) => {
        const bytes = encodeTexts(2, [vin]) ?? [];
        const can = writeMessage('7E8', bytes).join('\n');
        const before = splitBeforeCan(bytes).map(spaced).join('\n');
        expect(splitBeforeCan(bytes)).toHaveLength(5);
        for (const [text, id] of [
          [can, '7E8 '],
          [before, ''],
        ] as const) {
          expect(saidBy(text)).toEqual([`${id}Vehicle identification number ${vin}`]);
          expect(foundIn(text)).toEqual([]);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('comes back: checksums', () => {
    const some = fc.array(
      fc.uint8Array({ minLength: 4, maxLength: 4 }).map((each) => spaced([...each]).replaceAll(' ', '')),
      { minLength: 1, maxLength: 6 },
    );
    fc.assert(
      fc.property(some, (sums) => {
        const text = writeMessage('7E8', encodeChecksums(sums) ?? []).join('\n');
        expect(saidBy(text)).toEqual(sums.map((each) => `7E8 Checksum of the calibration ${each}`));
      }),
      { numRuns: 60 },
    );
  });

  it.each([...inUseCounters])('comes back: counters of kind %s', (kind, names) => {
    const some = fc.array(fc.integer({ min: 0, max: 0xffff }), { minLength: 1, maxLength: names.length });
    fc.assert(
      fc.property(some, (counters) => {
        const text = writeMessage('7E8', encodeInUseCounters(kind, counters) ?? []).join('\n');
        expect(saidBy(text)).toEqual(counters.map((each, at) => `7E8 ${names[at]} ${each}`));
        expect(foundIn(text)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('reads the sixteen counters of before CAN from eight messages, zeros in front included', () => {
    const counters = [0, 0, 3, 7, 0, 0, 1, 2, 0, 0, 5, 9, 0, 0, 65535, 12];
    const lines = splitBeforeCan(encodeInUseCounters(8, counters) ?? []).map(spaced);
    expect(lines).toHaveLength(8);
    expect(lines[0]).toBe('49 08 01 00 00 00 00');
    const names = inUseCounters.get(8) ?? [];
    expect(saidBy(lines.join('\n'))).toEqual(counters.map((each, at) => `${names[at]} ${each}`));
    expect(foundIn(lines.slice(0, 7).join('\n')).map((each) => each.replace(/^\S+ (\S+):.*/, '$1'))).toEqual([
      'obd-unfinished',
    ]);
  });

  it('makes nothing of what an answer does not carry', () => {
    expect(encodeTexts(2, ['1'.repeat(18)])).toBeUndefined();
    expect(encodeTexts(4, ['Prüfung'])).toBeUndefined();
    expect(encodeTexts(3, ['ONE'])).toBeUndefined();
    expect(encodeChecksums(['1791BC8'])).toBeUndefined();
    expect(encodeInUseCounters(8, [65536])).toBeUndefined();
    expect(encodeInUseCounters(8, new Array<number>(29).fill(1))).toBeUndefined();
    expect(encodeInUseCounters(9, [1])).toBeUndefined();
  });
});
