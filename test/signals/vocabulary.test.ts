import { describe, expect, it } from 'vitest';
import { keywords } from '../../core/expression/scan.ts';
import { fromSi, toSi } from '../../core/quantity/convert.ts';
import { parseReading } from '../../core/quantity/parse.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { allSignals, signalOf } from '../../core/signals/lookup.ts';
import { type Interval, rangesOf } from '../../core/signals/ranges.ts';
import { stateOf } from '../../core/signals/states.ts';
import type { Form, Signal } from '../../core/signals/types.ts';
import { allFunctions } from '../../core/study/functions.ts';

const signals = allSignals();
const forms: readonly (readonly [string, Form])[] = signals.flatMap((signal) =>
  signal.forms.map((form) => [`${signal.name} in ${form.unit}`, form] as const),
);

/** Each form that the claim is not true of, with what it says instead. */
function formsThat(claim: (form: Form) => string | undefined): string[] {
  return forms.flatMap(([name, form]) => {
    const wrong = claim(form);
    return wrong === undefined ? [] : [`${name}: ${wrong}`];
  });
}

function texts(form: Form): string[] {
  return [
    form.physical,
    ...(form.encoding === undefined ? [] : [form.encoding.range, form.encoding.step]),
    ...(form.usual ?? []).map(({ range }) => range),
    ...(form.failed ?? []).map(({ value }) => value),
  ];
}

const within = (inner: Interval, outer: Interval) => inner.low >= outer.low && inner.high <= outer.high;

describe('the vocabulary', () => {
  it('knows at least 140 signals, each name once', () => {
    const names = signals.map(({ name }) => name);
    expect(names.length).toBeGreaterThanOrEqual(140);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
  });

  it('says of each usual range that names the fuel which engines it is true of', () => {
    const wrong = formsThat(({ usual = [] }) => {
      const bad = usual.find(({ source, of }) => {
        const named = /petrol or diesel/.test(source) ? undefined : /\b(petrol|diesel)\b/.exec(source)?.[1];
        return (named === 'diesel') !== (of === 'diesel') || (named === undefined) !== (of === undefined);
      });
      return bad === undefined ? undefined : `${bad.source} (${bad.of})`;
    });
    expect(wrong).toEqual([]);
  });

  it('gives no two signals the same form, since what is known of a form is kept by it', () => {
    const all = forms.map(([, form]) => form);
    expect(new Set(all).size).toBe(all.length);
  });

  it('names a signal in lower case, as a name in an expression is written', () => {
    expect(
      signals.map(({ name }) => name).filter((name) => !/^[a-z][a-z0-9]*(_[a-z0-9]+)*$/.test(name)),
    ).toEqual([]);
  });

  it('names no signal like a function, a keyword or a section of the header', () => {
    const taken = new Set([
      ...allFunctions().map(({ name }) => name),
      ...keywords,
      ...['diag', 'case', 'vehicle', 'engine', 'site', 'tools', 'codes'],
    ]);
    // Only `vacuum` is both: `vacuum(x)` converts, and the reading is never followed by a parenthesis.
    expect(signals.map(({ name }) => name).filter((name) => taken.has(name))).toEqual(['vacuum']);
  });

  it('says what each signal measures, in a sentence that starts with a capital and has no full stop', () => {
    expect(
      signals.filter(({ meaning }) => !/^[A-Z].{2,}[^.\s]$/u.test(meaning)).map(({ name }) => name),
    ).toEqual([]);
  });

  it('gives quantities forms, and words their list', () => {
    const wrong = signals.filter(({ holds, forms: has, words = [] }) => {
      if (holds === 'quantity') return has.length === 0 || words.length > 0;
      return has.length > 0 || (holds === 'word') !== words.length > 1;
    });
    expect(wrong.map(({ name }) => name)).toEqual([]);
  });

  it('holds every signal that a first page of the trade would name', () => {
    const names =
      'rpm map baro vacuum ect iat eot maf vss tp load spark stft_b1 ltft_b1 stft_b2 ltft_b2 o2_b1s1 o2_b1s2 o2_b2s1 o2_b2s2 lambda_b1 lambda_b2 iac egr_cmd fuel_pressure pulse_width compression wet_compression running_compression snap_compression leakdown oil_pressure back_pressure crankcase_pressure co co2 hc o2_gas nox battery loop misfires drops ambient load_abs residual_pressure first_puff fifth_puff';
    expect(names.split(' ').filter((name) => signalOf(name) === undefined)).toEqual([]);
  });
});

describe('a form', () => {
  it('is read in a unit that is known, each of a dimension of its own or a plain number beside a percent', () => {
    expect(formsThat(({ unit }) => (unitOf(unit) === undefined ? 'no such unit' : undefined))).toEqual([]);
    const mixed = signals.filter(({ forms: has }) => {
      const own = has.map(({ unit }) => {
        const known = unitOf(unit);
        return unit === '1' ? '1' : known?.dimension.name;
      });
      return new Set(own).size < own.length;
    });
    expect(mixed.map(({ name }) => name)).toEqual([]);
  });

  it('puts percent before a plain number, so that a percent is never taken for a count', () => {
    const wrong = signals.filter(({ forms: has }) => {
      const plain = has.findIndex(({ unit }) => unit === '1');
      const percent = has.findIndex(({ unit }) => unit === '%');
      return plain >= 0 && percent > plain;
    });
    expect(wrong.map(({ name }) => name)).toEqual([]);
  });

  it('says the kind of every pressure and temperature', () => {
    const pressures = ['absolute', 'gauge', 'vacuum', 'difference'];
    expect(
      formsThat(({ unit, kind = 'none' }) => {
        const dimension = unitOf(unit)?.dimension.name;
        if (dimension === 'pressure') return pressures.includes(kind) ? undefined : kind;
        if (dimension === 'temperature') return kind === 'point' || kind === 'difference' ? undefined : kind;
        return pressures.slice(0, 3).includes(kind) || kind === 'point' ? kind : undefined;
      }),
    ).toEqual([]);
  });

  it('writes its ranges so that they can be read, in its own dimension and without a qualifier', () => {
    expect(
      formsThat((form) => {
        const dimension = unitOf(form.unit)?.dimension;
        return texts(form).find((text) => {
          const { value, diagnostics } = parseReading(text);
          if (value === undefined || typeof value === 'string' || diagnostics.length > 0) return true;
          const ends = 'low' in value ? [value.low, value.high] : [value];
          return ends.some(
            (end) =>
              end !== undefined &&
              (end.unit.dimension !== dimension || /gauge|absolute|vacuum|difference/.test(text)),
          );
        });
      }),
    ).toEqual([]);
  });

  it('says what is possible, with two ends, the lower below the upper', () => {
    expect(
      formsThat((form) => {
        const { physical } = rangesOf(form);
        if (physical === undefined) return 'nothing';
        return Number.isFinite(physical.low) && physical.low < physical.high && physical.high < Infinity
          ? undefined
          : form.physical;
      }),
    ).toEqual([]);
  });

  it('keeps what is usual within what is possible', () => {
    expect(
      formsThat((form) => {
        const { physical, usual } = rangesOf(form);
        return usual.find(({ range }) => physical !== undefined && !within(range, physical))?.state;
      }),
    ).toEqual([]);
  });

  it('keeps what is usual within what the encoding can carry', () => {
    const boosted = new Set(['map', 'load']);
    const wrong = signals.flatMap(({ name, forms: has }) =>
      has.flatMap((form) => {
        const { encoding, usual } = rangesOf(form);
        const beyond = usual.find(({ range }) => encoding !== undefined && !within(range, encoding));
        return beyond === undefined || boosted.has(name) ? [] : [`${name}: ${beyond.state}`];
      }),
    );
    expect(wrong).toEqual([]);
  });

  it('names states that the trade knows, each once', () => {
    expect(
      formsThat(({ usual = [] }) => {
        const names = usual.map(({ state }) => state);
        return names.find((state, at) => stateOf(state) === undefined || names.indexOf(state) !== at);
      }),
    ).toEqual([]);
  });

  it('says where each number comes from', () => {
    expect(
      formsThat(({ encoding, usual = [] }) =>
        [...(encoding === undefined ? [] : [encoding.source]), ...usual.map(({ source }) => source)].find(
          (source) => !/^(common practice|SAE J\d|ISO \d)/.test(source),
        ),
      ),
    ).toEqual([]);
  });

  it('calls a failure what is an end of the scale', () => {
    expect(
      formsThat((form) => {
        const { encoding, failed } = rangesOf(form);
        return failed.find(
          ({ low, high }) =>
            encoding !== undefined && (low !== high || (low !== encoding.low && low !== encoding.high)),
        )?.means;
      }),
    ).toEqual([]);
  });
});

/** The form of a signal in a unit, and a number of that unit in SI. */
function at(name: string, unit: string): { readonly form: Form; si(value: number): number } {
  const signal: Signal | undefined = signalOf(name);
  const asked = unitOf(unit);
  const form = signal?.forms.find((each) => unitOf(each.unit)?.dimension === asked?.dimension);
  if (form === undefined || asked === undefined) throw new Error(`${name} has no form in ${unit}`);
  return { form, si: (value) => toSi(value, asked, form.kind ?? 'none') };
}

function isPossible(name: string, value: number, unit: string): boolean {
  const { form, si } = at(name, unit);
  const limit = rangesOf(form).physical;
  return limit !== undefined && si(value) >= limit.low && si(value) <= limit.high;
}

function isUsual(name: string, value: number, unit: string, state: string): boolean | undefined {
  const { form, si } = at(name, unit);
  const range = rangesOf(form).usual.find((each) => each.state === state)?.range;
  return range === undefined ? undefined : si(value) >= range.low && si(value) <= range.high;
}

describe('what is possible', () => {
  const rows: readonly (readonly [string, number, string, boolean])[] = [
    ['map', 101, 'inHg', false],
    ['map', 101, 'kPa', true],
    ['map', 29.8, 'inHg', true],
    ['map', 40, 'psi', true],
    ['baro', 29.92, 'inHg', true],
    ['baro', 29.92, 'psi', false],
    ['baro', 62, 'kPa', true],
    ['vacuum', 17, 'inHg', true],
    ['vacuum', 64, 'kPa', true],
    ['vacuum', 64, 'inHg', false],
    ['ect', 195, '°F', true],
    ['ect', 195, '°C', false],
    ['ect', -45, '°C', true],
    ['iat', 250, '°F', true],
    ['ambient', 82, '°C', false],
    ['rpm', 18000, 'rpm', true],
    ['fuel_pressure', 380, 'kPa', true],
    ['fuel_pressure', 380, 'psi', false],
    ['rail_pressure', 36000, 'psi', true],
    ['compression', 480, 'psi', true],
    ['compression', 12.5, 'bar', true],
    ['compression', 1250, 'psi', false],
    ['maf', 3.5, 'g/s', true],
    ['maf', 700, 'g/s', true],
    ['maf', 1.1, 'V', true],
    ['maf', 12, 'V', false],
    ['maf', 9.5, 'kHz', true],
    ['spark', 45, '°BTDC', true],
    ['spark', -12, '°BTDC', true],
    ['tp', 4.6, 'V', true],
    ['stft_b1', 99.2, '%', true],
    ['stft_b1', 128, '%', false],
    ['lambda_b1', 15.99, '1', true],
    ['o2_b1s1', 5, 'V', true],
    ['o2_b1s1', 450, 'V', false],
    ['co', 45, '%', false],
    ['o2_gas', 20.9, '%', true],
    ['leakdown', 120, '%', false],
  ];
  it.each(rows)('%s at %d %s: %s', (name, value, unit, possible) => {
    expect(isPossible(name, value, unit)).toBe(possible);
  });
});

describe('what is usual (common practice)', () => {
  const rows: readonly (readonly [string, number, string, string, boolean])[] = [
    ['map', 13.1, 'inHg', 'warm idle', true],
    ['map', 10, 'inHg', 'warm idle', true],
    ['map', 70, 'kPa', 'warm idle', false],
    ['map', 24.9, 'inHg', 'key on engine off', true],
    ['vacuum', 19, 'inHg', 'warm idle', true],
    ['vacuum', 17, 'inHg', 'warm idle', true],
    ['vacuum', 16.4, 'inHg', 'warm idle', false],
    ['vacuum', 14.6, 'inHg', '2500 rpm no load', false],
    ['rpm', 780, 'rpm', 'warm idle', true],
    ['rpm', 1400, 'rpm', 'warm idle', false],
    ['ltft_b1', 17, '%', 'warm idle', false],
    ['ltft_b1', -3, '%', 'cruise', true],
    ['iac', 3, '%', 'warm idle', false],
    ['iac', 24, '%', 'warm idle', true],
    ['ect', 195, '°F', 'warm idle', true],
    ['ect', 156, '°F', 'warm idle', false],
    ['back_pressure', 1.9, 'psi', 'warm idle', false],
    ['back_pressure', 0.9, 'psi', '2500 rpm no load', true],
    ['oil_pressure', 9, 'psi', 'warm idle', false],
    ['oil_pressure', 46, 'psi', '2500 rpm no load', true],
    ['compression', 181, 'psi', 'cranking', true],
    ['compression', 275, 'psi', 'cranking', false],
    ['running_compression', 60, 'psi', 'running compression', true],
    ['co2', 15, '%', 'warm idle', true],
  ];
  it.each(rows)('%s at %d %s, %s: %s', (name, value, unit, state, usual) => {
    expect(isUsual(name, value, unit, state)).toBe(usual);
  });
});

describe('what the generic encoding carries', () => {
  // SAE J1979 / ISO 15031-5, service $01. Where the source says so, the value is from memory.
  const found = 'SAE J1979';
  const memory = 'SAE J1979, value from memory';
  const rows: readonly (readonly [string, string, string, number, number, number, string])[] = [
    ['load', '$04', '%', 0, 100, 100 / 255, found],
    ['ect', '$05', '°C', -40, 215, 1, found],
    ['stft_b1', '$06', '%', -100, 99.21875, 100 / 128, found],
    ['ltft_b1', '$07', '%', -100, 99.21875, 100 / 128, found],
    ['stft_b2', '$08', '%', -100, 99.21875, 100 / 128, found],
    ['ltft_b2', '$09', '%', -100, 99.21875, 100 / 128, found],
    ['fuel_pressure', '$0A', 'kPa', 0, 765, 3, found],
    ['map', '$0B', 'kPa', 0, 255, 1, found],
    ['rpm', '$0C', 'rpm', 0, 16383.75, 0.25, found],
    ['vss', '$0D', 'km/h', 0, 255, 1, found],
    ['spark', '$0E', '°BTDC', -64, 63.5, 0.5, found],
    ['iat', '$0F', '°C', -40, 215, 1, found],
    ['maf', '$10', 'g/s', 0, 655.35, 0.01, found],
    ['tp', '$11', '%', 0, 100, 100 / 255, found],
    ['o2_b1s1', '$14', 'V', 0, 1.275, 0.005, found],
    ['o2_b1s2', '$15', 'V', 0, 1.275, 0.005, found],
    ['o2_b2s1', '$18', 'V', 0, 1.275, 0.005, found],
    ['o2_b2s2', '$19', 'V', 0, 1.275, 0.005, found],
    ['rail_pressure_relative', '$22', 'kPa', 0, 5177.265, 0.079, memory],
    ['rail_pressure', '$23', 'kPa', 0, 655350, 10, memory],
    ['lambda_b1', '$24', '1', 0, (65535 * 2) / 65536, 2 / 65536, memory],
    ['lambda_b1', '$24', 'V', 0, (65535 * 8) / 65536, 8 / 65536, memory],
    ['lambda_b1', '$34', 'mA', -128, 65535 / 256 - 128, 1 / 256, memory],
    ['egr_cmd', '$2C', '%', 0, 100, 100 / 255, memory],
    ['egr_error', '$2D', '%', -100, 99.21875, 100 / 128, memory],
    ['baro', '$33', 'kPa', 0, 255, 1, memory],
    ['cat_temp_b1s1', '$3C', '°C', -40, 6513.5, 0.1, memory],
    ['cat_temp_b2s1', '$3D', '°C', -40, 6513.5, 0.1, memory],
    ['cat_temp_b1s2', '$3E', '°C', -40, 6513.5, 0.1, memory],
    ['battery', '$42', 'V', 0, 65.535, 0.001, memory],
    ['load_abs', '$43', '%', 0, 25700, 100 / 255, memory],
    ['lambda_desired', '$44', '1', 0, (65535 * 2) / 65536, 2 / 65536, memory],
    ['tp_relative', '$45', '%', 0, 100, 100 / 255, memory],
    ['ambient', '$46', '°C', -40, 215, 1, memory],
    ['tp_desired', '$4C', '%', 0, 100, 100 / 255, memory],
    ['eot', '$5C', '°C', -40, 215, 1, memory],
    ['fuel_rate', '$5E', 'L/h', 0, 3212.75, 0.05, memory],
    ['torque_demand', '$61', '%', -125, 130, 1, memory],
    ['torque_actual', '$62', '%', -125, 130, 1, memory],
    ['torque_reference', '$63', 'Nm', 0, 65535, 1, memory],
  ];
  it.each(rows)('%s, %s in %s: %d .. %d by %d (%s)', (name, pid, unit, low, high, step) => {
    const { form } = at(name, unit);
    const { encoding } = rangesOf(form);
    const read = unitOf(unit);
    if (encoding === undefined || read === undefined) throw new Error(`${name} has no encoding`);
    const kind = form.kind ?? 'none';
    expect(encoding.source).toMatch(`SAE J1979 ${pid}`);
    expect(fromSi(encoding.low, read, kind)).toBeCloseTo(low, 9);
    expect(fromSi(encoding.high, read, kind)).toBeCloseTo(high, 9);
    expect(encoding.step / read.factor).toBeCloseTo(step, 12);
  });

  it('marks as from memory what was not read in a public copy of the table', () => {
    const read = new Set(rows.filter((row) => row[6] === found).map((row) => row[1]));
    // $14 to $1B are one row of the table.
    for (const pid of ['$16', '$17', '$1A', '$1B']) read.add(pid);
    expect(
      formsThat(({ encoding }) => {
        if (encoding === undefined) return undefined;
        const pid = /J1979 (\$[0-9A-F]{2})/.exec(encoding.source)?.[1] ?? '';
        return read.has(pid) === encoding.source.includes('from memory') ? encoding.source : undefined;
      }),
    ).toEqual([]);
  });
});
