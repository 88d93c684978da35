import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeParameter } from '../../../core/engine/obd/decodeParameter.ts';
import { encodeParameter } from '../../../core/engine/obd/encodeParameter.ts';
import { carried, type NumberPart, type ParameterRow } from '../../../core/engine/obd/parameter.ts';
import { allParameters, parameterRow } from '../../../core/engine/obd/parameterTable.ts';
import { toSi } from '../../../core/quantity/convert.ts';
import { unitOf } from '../../../core/quantity/unit.ts';
import { allSignals, formFor, signalOf } from '../../../core/signals/lookup.ts';
import { rangesOf } from '../../../core/signals/ranges.ts';
import { bytesOf, numberIn } from './bytes.ts';

const row = (pid: number) => parameterRow(pid) ?? expect.fail(`no parameter ${pid.toString(16)}`);

const numbers = allParameters().flatMap((each) =>
  each.parts.flatMap((part, at) => (part.holds === 'number' ? [{ row: each, part, at }] : [])),
);

/** `0C engine speed` */
const title = (pid: number, part: NumberPart): string =>
  `${pid.toString(16).toUpperCase().padStart(2, '0')} ${part.meaning}`;

describe('the ends of each scale', () => {
  /*
   * SAE J1979 / ISO 15031-5, service 01. 04 to 18: read in public copies of the table (Wikipedia "OBD-II PIDs", ISO 15031).
   * All others: values from memory of J1979DA, Annex B.
   */
  const published: readonly (readonly [
    pid: number,
    part: number,
    low: number,
    high: number,
    unit: string,
  ])[] = [
    [0x04, 0, 0, 100, '%'],
    [0x05, 0, -40, 215, '°C'],
    [0x06, 0, -100, 99.21875, '%'],
    [0x07, 0, -100, 99.21875, '%'],
    [0x08, 0, -100, 99.21875, '%'],
    [0x09, 0, -100, 99.21875, '%'],
    [0x0a, 0, 0, 765, 'kPa'],
    [0x0b, 0, 0, 255, 'kPa'],
    [0x0c, 0, 0, 16383.75, 'rpm'],
    [0x0d, 0, 0, 255, 'km/h'],
    [0x0e, 0, -64, 63.5, '°BTDC'],
    [0x0f, 0, -40, 215, '°C'],
    [0x10, 0, 0, 655.35, 'g/s'],
    [0x11, 0, 0, 100, '%'],
    ...[0x14, 0x15, 0x16, 0x17, 0x18, 0x19, 0x1a, 0x1b].flatMap((pid) => [
      [pid, 0, 0, 1.275, 'V'] as const,
      [pid, 1, -100, 99.21875, '%'] as const,
    ]),
    [0x1f, 0, 0, 65535, 's'],
    [0x21, 0, 0, 65535, 'km'],
    [0x22, 0, 0, 5177.265, 'kPa'],
    [0x23, 0, 0, 655350, 'kPa'],
    ...[0x24, 0x25, 0x26, 0x27, 0x28, 0x29, 0x2a, 0x2b].flatMap((pid) => [
      [pid, 0, 0, 2 - 2 / 65536, '1'] as const,
      [pid, 1, 0, 8 - 8 / 65536, 'V'] as const,
    ]),
    [0x2c, 0, 0, 100, '%'],
    [0x2d, 0, -100, 99.21875, '%'],
    [0x2e, 0, 0, 100, '%'],
    [0x2f, 0, 0, 100, '%'],
    [0x30, 0, 0, 255, '1'],
    [0x31, 0, 0, 65535, 'km'],
    [0x32, 0, -8192, 8191.75, 'Pa'],
    [0x33, 0, 0, 255, 'kPa'],
    ...[0x34, 0x35, 0x36, 0x37, 0x38, 0x39, 0x3a, 0x3b].flatMap((pid) => [
      [pid, 0, 0, 2 - 2 / 65536, '1'] as const,
      [pid, 1, -128, 128 - 1 / 256, 'mA'] as const,
    ]),
    ...[0x3c, 0x3d, 0x3e, 0x3f].map((pid) => [pid, 0, -40, 6513.5, '°C'] as const),
    [0x42, 0, 0, 65.535, 'V'],
    [0x43, 0, 0, 25700, '%'],
    [0x44, 0, 0, 2 - 2 / 65536, '1'],
    [0x45, 0, 0, 100, '%'],
    [0x46, 0, -40, 215, '°C'],
    ...[0x47, 0x48, 0x49, 0x4a, 0x4b, 0x4c].map((pid) => [pid, 0, 0, 100, '%'] as const),
    [0x5c, 0, -40, 215, '°C'],
    // The raw number is limited to FAFF.
    [0x5e, 0, 0, 3212.75, 'L/h'],
    [0x61, 0, -125, 130, '%'],
    [0x62, 0, -125, 130, '%'],
    [0x63, 0, 0, 65535, 'Nm'],
  ];

  it.each(published)('parameter %i, part %i: %d to %d %s', (pid, at, low, high, unit) => {
    const part = row(pid).parts[at];
    if (part?.holds !== 'number') return expect.fail('no number');
    const ends = carried(part);
    expect(part.unit).toBe(unit);
    expect(ends.low).toBeCloseTo(low, 9);
    expect(ends.high).toBeCloseTo(high, 9);
  });

  it.each(numbers.map((each) => [title(each.row.pid, each.part), each] as const))(
    'decodes the lowest and the highest bytes to them: %s',
    (_, { row: of, part, at }) => {
      const { low, high } = carried(part);
      const found = [low, high].map((value) => {
        const values = of.parts.map((__, i) => (i === at ? value : undefined));
        return decoded(of.pid, encodeParameter(of, values), part.meaning);
      });
      if (part.none === 0xff) found[1] = high;
      expect(found[0]).toBeCloseTo(low, 9);
      expect(found[1]).toBeCloseTo(high, 9);
    },
  );

  it.each(
    numbers
      .filter(({ part }) => part.signal !== undefined)
      .map((each) => [title(each.row.pid, each.part), each] as const),
  )('agree with what the signal says that data carry: %s', (_, { row: of, part }) => {
    const signal = signalOf(part.signal ?? '') ?? expect.fail(`no signal ${part.signal}`);
    const unit = unitOf(part.unit) ?? expect.fail(`no unit ${part.unit}`);
    const form = formFor(signal, unit.dimension) ?? expect.fail(`${signal.name} has no form in ${part.unit}`);
    expect(form.kind ?? 'none').toBe(part.kind);
    const { encoding } = rangesOf(form);
    if (encoding === undefined) return expect(part.signal).toBe('monitors_left');
    const { low, high, step } = carried(part);
    if (of.pid === 0x66) {
      // The air flow has two scales, and the signal tells that of 10: 66 carries 2048 g/s in steps of 1/32.
      expect([low, high, step]).toEqual([0, 65535 / 32, 1 / 32]);
      return;
    }
    expect(encoding.low).toBeCloseTo(toSi(low, unit, part.kind), 6);
    expect(encoding.high).toBeCloseTo(toSi(high, unit, part.kind), 6);
    expect(encoding.step / (step * Math.abs(unit.factor))).toBeCloseTo(1, 9);
    if (of.pid < 0x60 && part.at === 0 && of.pid !== 0x34 && of.pid !== 0x38)
      expect(encoding.source).toContain(`$${of.pid.toString(16).toUpperCase().padStart(2, '0')}`);
  });
});

it('has a parameter for every signal that is said to be carried by one', () => {
  const carriedBy = new Set(allParameters().flatMap(({ parts }) => parts.map((part) => part.signal)));
  const without = allSignals().filter(
    ({ name, forms }) =>
      forms.some(({ encoding }) => encoding !== undefined && !/service|\$01,/.test(encoding.source)) &&
      !carriedBy.has(name),
  );
  expect(without.map(({ name }) => name)).toEqual([]);
});

describe('worked examples', () => {
  /* Arithmetic from the stated formulas, written out by hand. */
  it.each([
    ['41 04 00', 'load', 0],
    ['41 04 80', 'load', 50.196078],
    ['41 04 FF', 'load', 100],
    ['41 05 00', 'ect', -40],
    ['41 05 7B', 'ect', 83],
    ['41 05 FF', 'ect', 215],
    ['41 06 00', 'stft_b1', -100],
    // No trim is 128, not 127.5.
    ['41 06 80', 'stft_b1', 0],
    ['41 06 90', 'stft_b1', 12.5],
    ['41 06 FF', 'stft_b1', 99.21875],
    ['41 0A 64', 'fuel_pressure', 300],
    ['41 0A FF', 'fuel_pressure', 765],
    ['41 0C 1A F8', 'rpm', 1726],
    ['41 0C 0B B8', 'rpm', 750],
    ['41 0C FF FF', 'rpm', 16383.75],
    ['41 0E 00', 'spark', -64],
    ['41 0E 98', 'spark', 12],
    ['41 0E FF', 'spark', 63.5],
    ['41 10 01 5E', 'maf', 3.5],
    ['41 10 0C 80', 'maf', 32],
    ['41 10 FF FF', 'maf', 655.35],
    ['41 14 5A FF', 'o2_b1s1', 0.45],
    ['41 14 B4 80', 'o2_b1s1', 0.9],
    ['41 14 B4 80', 'Short-term trim by the sensor, bank 1, sensor 1', 0],
    ['41 22 0E E4', 'rail_pressure_relative', 301.148],
    ['41 23 01 F4', 'rail_pressure', 5000],
    ['41 24 80 00 4E 20', 'lambda_b1', 1],
    ['41 24 7A E1 4E 20', 'lambda_b1', 0.959991],
    ['41 24 80 00 4E 20', 'Sensor voltage, bank 1, sensor 1', 2.44140625],
    ['41 32 80 00', 'tank_pressure', -8192],
    ['41 32 FF FC', 'tank_pressure', -1],
    ['41 32 7F FF', 'tank_pressure', 8191.75],
    ['41 34 80 00 80 00', 'Sensor current, bank 1, sensor 1', 0],
    ['41 34 80 00 7F 80', 'Sensor current, bank 1, sensor 1', -0.5],
    ['41 3C 11 94', 'cat_temp_b1s1', 410],
    ['41 42 37 28', 'battery', 14.12],
    ['41 43 00 40', 'load_abs', 25.098039],
    ['41 43 00 FF', 'load_abs', 100],
    ['41 5E 00 14', 'fuel_rate', 1],
    ['41 5E 01 2C', 'fuel_rate', 15],
    ['41 61 00', 'torque_demand', -125],
    ['41 61 7D', 'torque_demand', 0],
    ['41 61 FF', 'torque_demand', 130],
    ['41 63 01 2C', 'torque_reference', 300],
    // J1979DA, values from memory: a bit for each sensor, then 1/32 g/s, A - 40.
    ['41 66 01 03 20 00 00', 'maf', 25],
    ['41 66 03 03 20 01 90', 'Air flow at the meter, second sensor', 12.5],
    ['41 67 03 7B 50', 'ect', 83],
    ['41 68 03 41 42 00 00 00 00', 'iat', 25],
    ['41 68 03 41 42 00 00 00 00', 'iat_2', 26],
  ])('%s is %s %d', (hex, name, value) => {
    expect(numberIn(hex, name)).toBeCloseTo(value, 5);
  });

  it('takes another full scale where the controller gives one (4F, 50; value from memory)', () => {
    // 40 × 10 kPa over 255 steps, 128 of them.
    expect(numberIn('41 4F 00 00 00 28\n41 0B 80', 'map')).toBeCloseTo((128 * 400) / 255, 9);
    // The order does not matter, and another controller’s scale does not either.
    expect(numberIn('41 0B 80\n41 4F 00 00 00 28', 'map')).toBeCloseTo((128 * 400) / 255, 9);
    expect(numberIn('7E8 03 41 0B 80\n7E9 06 41 4F 00 00 00 28', 'map')).toBe(128);
    // 160 × 10 g/s over 65535 steps.
    expect(numberIn('41 50 A0 00 00 00\n41 10 0C 80', 'maf')).toBeCloseTo((3200 * 1600) / 65535, 9);
    // Lambda to 4 over 65536 steps: half of them is 2.
    expect(numberIn('41 4F 04 10 00 00\n41 24 80 00 80 00', 'lambda_b1')).toBeCloseTo(2, 9);
    // ± 64 mA in place of ± 128.
    const current = 'Sensor current, bank 1, sensor 1';
    expect(numberIn('41 4F 00 00 40 00\n41 34 80 00 C0 00', current)).toBeCloseTo(32, 9);
    expect(numberIn('41 4F 00 00 40 00\n41 34 80 00 80 00', current)).toBeCloseTo(0, 9);
    // 0 leaves the scale as it is.
    expect(numberIn('41 4F 00 00 00 00\n41 0B 80', 'map')).toBe(128);
  });

  it('leaves out what the vehicle does not have', () => {
    const items = decodeParameter(row(0x75), bytesOf('05 50 78 0F A0 07 D0'), 0);
    expect(items.map(({ signal }) => signal)).toEqual(['compressor_in_temp', 'turbine_in_temp']);
  });
});

describe('both directions', () => {
  it.each(numbers.map((each) => [title(each.row.pid, each.part), each] as const))(
    'comes back within one step: %s',
    (_, { row: of, part, at }) => {
      const { low, high, step } = carried(part);
      fc.assert(
        fc.property(fc.double({ min: low, max: high, noNaN: true }), (value) => {
          const bytes = encodeParameter(
            of,
            of.parts.map((__, i) => (i === at ? value : undefined)),
          );
          const back = decoded(of.pid, bytes, part.meaning);
          // FF of a sensor’s trim says that the sensor has none.
          return back === undefined ? part.none === 0xff : Math.abs(back - value) <= step;
        }),
        { numRuns: 60 },
      );
    },
  );

  it('comes back for every word', () => {
    for (const of of allParameters()) {
      for (const [at, part] of of.parts.entries()) {
        if (part.holds !== 'word') continue;
        for (const word of part.words.values()) expect(wordsBack(of, at, word)).toBe(word);
      }
    }
  });

  const special = allParameters().flatMap((each) =>
    each.parts.flatMap((part, at) =>
      part.holds === 'code' || part.holds === 'supported' || part.holds === 'flags'
        ? [{ of: each, part, at }]
        : [],
    ),
  );

  it.each(special.map((each) => [`${each.of.pid} ${each.part.meaning}`, each] as const))(
    'comes back for whatever its bytes say: %s',
    (_, { of, part, at }) => {
      const bytes = fc.uint8Array({ minLength: of.bytes, maxLength: of.bytes });
      fc.assert(
        fc.property(bytes, (any) => {
          const [item] = decodeParameter(of, any, 0).filter(({ meaning }) => meaning === part.meaning);
          return item?.value.is === 'words' && wordsBack(of, at, item.value.text) === item.value.text;
        }),
      );
    },
  );

  it('has a way back for everything that a parameter holds, monitors by their own', () => {
    const held = new Set(allParameters().flatMap(({ parts }) => parts.map(({ holds }) => holds)));
    expect([...held].sort()).toEqual([
      'code',
      'cycle monitors',
      'flags',
      'monitors',
      'number',
      'supported',
      'word',
    ]);
    for (const of of allParameters()) {
      if (of.parts.some(({ holds }) => holds === 'monitors')) expect(of.pid).toBe(0x01);
      if (of.parts.some(({ holds }) => holds === 'cycle monitors')) expect(of.pid).toBe(0x41);
    }
  });

  it('encodes nothing that does not fit', () => {
    expect(encodeParameter(row(0x05), [216])).toBeUndefined();
    expect(encodeParameter(row(0x05), [-41])).toBeUndefined();
    expect(encodeParameter(row(0x05), [Number.NaN])).toBeUndefined();
    expect(encodeParameter(row(0x03), ['somehow'])).toBeUndefined();
    expect(encodeParameter(row(0x02), ['P0171'])).toEqual([0x01, 0x71]);
    expect(encodeParameter(row(0x02), ['X0171'])).toBeUndefined();
    expect(encodeParameter(row(0x00), ['21'])).toBeUndefined();
    expect(encodeParameter(row(0x13), ['B3S1'])).toBeUndefined();
  });
});

/** What a text of a part is after there and back. */
function wordsBack(of: ParameterRow, at: number, text: string): string | undefined {
  const bytes = encodeParameter(
    of,
    of.parts.map((_, i) => (i === at ? text : undefined)),
  );
  const meaning = of.parts[at]?.meaning;
  const item = decodeParameter(of, Uint8Array.from(bytes ?? []), 0).find((each) => each.meaning === meaning);
  return item?.value.is === 'words' ? item.value.text : undefined;
}

/** Decodes the one part of a parameter; undefined where its bytes say that there is no value. */
function decoded(pid: number, bytes: readonly number[] | undefined, meaning: string): number | undefined {
  if (bytes === undefined) return expect.fail(`${meaning} cannot be encoded`);
  const item = decodeParameter(row(pid), Uint8Array.from(bytes), 0).find((each) => each.meaning === meaning);
  return item?.value.is === 'number' ? item.value.value : undefined;
}
