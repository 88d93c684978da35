import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { engineFunctions } from '../../core/engine/engineFunctions.ts';
import type { FunctionRow, Parameter, Plain, ScalarFunction } from '../../core/expression/functionRow.ts';
import { fromSi, toSi } from '../../core/quantity/convert.ts';
import type { Unit } from '../../core/quantity/types.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { printed, result } from '../support/expressionResult.ts';
import { curve } from '../support/expressionScope.ts';
import { compute, numberOf, rpm, sentenceOf } from './answers.ts';

const scalars = engineFunctions().filter((row): row is ScalarFunction => row.form === 'scalar');
const named = (rows: readonly FunctionRow[]) => rows.map((row) => row.name);

function unit(symbol: string): Unit {
  const found = unitOf(symbol);
  if (found === undefined) expect.fail(`no unit ${symbol}`);
  return found;
}

/** A literal as an example writes it, in SI, with its unit and the decimals that it shows. */
function literal(written: string, parameter: Parameter | undefined) {
  const text = /^"(.*)"$/.exec(written)?.[1];
  if (text !== undefined) return { plain: text, unit: unit('1'), decimals: 0 };
  const [, digits = '', symbol = '1'] =
    /^([+-]?\d+(?:\.\d+)?)(?: (\S+))?$/.exec(written) ?? expect.fail(written);
  const of = unit(symbol);
  const decimals = digits.split('.')[1]?.length ?? 0;
  return { plain: toSi(Number(digits), of, parameter?.takes.kind ?? 'none'), unit: of, decimals };
}

/** The arguments of an example in the order of the row's parameters; what is left out stands as the row says. */
function argumentsOf(row: FunctionRow): Plain[] {
  const inside = /^(\w+)\((.*)\)$/.exec(row.example.expression);
  expect(inside?.[1]).toBe(row.name);
  const given = new Map<string, string>();
  for (const [at, argument] of (inside?.[2] ?? '').split(/, */).entries()) {
    const [, name, value] = /^(?:(\w+) = )?(.*)$/.exec(argument) ?? [];
    given.set(name ?? row.parameters[at]?.name ?? expect.fail(argument), value ?? '');
  }
  return row.parameters.map((parameter) => {
    const written =
      given.get(parameter.name) ?? parameter.otherwise ?? expect.fail(`${row.name}: ${parameter.name}`);
    const isText = parameter.takes.what === 'text' && !written.startsWith('"');
    return literal(isText ? `"${written}"` : written, parameter).plain;
  });
}

describe('the table of engine functions', () => {
  it('has what is computed now', () => {
    expect(named([...scalars, ...engineFunctions().filter((row) => row.form === 'whole')]).sort()).toEqual(
      'absolute_load air_density air_per_stroke airflow altitude_of calculated_load coil_current compression_pressure cylinder_volume divider_resistance fuel_correction injector_duty injector_flow interpolate lambda_from_gas lambda_of nernst_volts standard_pressure state_of_charge station_pressure stoichiometric_ratio thermistor_temperature total_trim volumetric_efficiency wire_drop'.split(
        ' ',
      ),
    );
  });

  it('declares what is computed later', () => {
    expect(named(engineFunctions().filter((row) => row.form === 'later')).sort()).toEqual(
      'crank_angle relative_compression valve_events'.split(' '),
    );
  });

  it('has every name once', () => {
    expect(new Set(named(engineFunctions())).size).toBe(engineFunctions().length);
  });

  it.each(engineFunctions().map((row) => [row.name, row] as const))(
    '%s is written out in full',
    (name, row) => {
      expect(name).toMatch(/^[a-z][a-z0-9_]*$/);
      expect(row.summary).toMatch(/^[A-Z].*\.$/);
      expect(row.formula).toMatch(/^.+[^.\n]$/);
      expect(row.source).toMatch(/^\S.{5,}[^.]$/);
      expect(row.errors.length).toBeGreaterThan(0);
      for (const error of row.errors) expect(error).toMatch(/^[A-Z].*\.$/);
      expect(row.example.expression).toContain(`${name}(`);
      expect(row.example.result).not.toBe('');
      if (row.result.kind === 'fixed') unit(row.result.unit);
      if (row.result.kind === 'like')
        expect(row.parameters.map((each) => each.name)).toContain(row.result.parameter);
      for (const { name: parameter, takes, meaning, header, otherwise } of row.parameters) {
        expect(parameter).toMatch(/^[a-z][a-z0-9_]*$/);
        expect(meaning).toMatch(/^\S.*[^.]$/);
        if (takes.unit !== undefined) unit(takes.unit);
        expect(takes.what !== 'quantity' || takes.unit !== undefined).toBe(true);
        if (header !== undefined) expect(header).toMatch(/^(engine|site)\.[a-z_]+$/);
        if (otherwise !== undefined && takes.what === 'quantity') literal(otherwise, undefined);
      }
    },
  );

  it('has the parameters that must be given before those that may be left out, but where the header comes first by custom', () => {
    const lateFirst = engineFunctions().filter(({ parameters }) => {
      const spare = (each: Parameter) =>
        each.header !== undefined || each.otherwise !== undefined || each.optional === true;
      const firstSpare = parameters.findIndex(spare);
      return firstSpare >= 0 && parameters.slice(firstSpare).some((each) => !spare(each));
    });
    expect(named(lateFirst)).toEqual(['compression_pressure']);
  });
});

describe('examples', () => {
  // What is read off a curve has an example of its own beneath.
  const ofLiterals = scalars.filter(({ parameters }) =>
    parameters.every(({ takes }) => takes.what !== 'curve'),
  );

  it.each(ofLiterals.map((row) => [row.example.expression, row.example.result, row] as const))(
    '%s is %s',
    (_, result, row) => {
      const shown = literal(result, undefined);
      if (row.result.kind === 'fixed') expect(shown.unit).toBe(unit(row.result.unit));
      const value = fromSi(numberOf(row.compute(argumentsOf(row))), shown.unit, 'none');
      expect(value.toFixed(shown.decimals)).toBe(/^\S+/.exec(result)?.[0]);
    },
  );

  it('of interpolate is halfway along the last stretch of 0.4 V 2 g/s, 1.1 V 9 g/s, 2.6 V 55 g/s', () => {
    const row = engineFunctions().find((each) => each.name === 'interpolate');
    if (row?.form !== 'whole') expect.fail('interpolate takes whole values');
    const volts = { dimension: unit('V').dimension, kind: 'none', unit: unit('V') } as const;
    const flow = { dimension: unit('g/s').dimension, kind: 'none', unit: unit('g/s') } as const;
    const value = row.evaluate([
      { kind: 'curve', xType: volts, yType: flow, x: [0.4, 1.1, 2.6], y: [0.002, 0.009, 0.055] },
      { kind: 'one', type: volts, amount: { si: 1.85, spread: [] } },
    ]);
    if (value.kind !== 'one') expect.fail(value.kind);
    expect(`${fromSi(value.amount.si, value.type.unit, 'none').toFixed(0)} ${value.type.unit.symbol}`).toBe(
      row.example.result,
    );
  });

  it('of thermistor_temperature is read off the table 0 °C 32.64 kΩ, 40 °C 5.325 kΩ, 100 °C 678.1 Ω', () => {
    const row = engineFunctions().find((each) => each.name === 'thermistor_temperature');
    const { value, diagnostics } = result(row?.example.expression ?? '', {
      names: {
        'spec.ect_curve': curve([
          ['0 °C', '32.64 kΩ'],
          ['40 °C', '5.325 kΩ'],
          ['100 °C', '678.1 Ω'],
        ]),
      },
      functions: engineFunctions(),
    });
    expect(diagnostics).toEqual([]);
    if (value.kind !== 'one') expect.fail(printed(value));
    expect(`${fromSi(value.amount.si, value.type.unit, 'point').toFixed(1)} ${value.type.unit.symbol}`).toBe(
      row?.example.result,
    );
  });
});

describe('whatever the numbers', () => {
  const anyNumber = fc.oneof(fc.double(), fc.constantFrom(0, -0, 1, -1, 1e308, -1e308, 5e-324, Number.NaN));
  const anyArgument = ({ takes }: Parameter): fc.Arbitrary<Plain> =>
    takes.what === 'text' ? fc.constantFrom('E10', 'hydrogen', 'nothing', '', '__proto__') : anyNumber;

  it.each(scalars.map((row) => [row.name, row] as const))(
    '%s gives a finite number or a sentence',
    (_, row) => {
      fc.assert(
        fc.property(fc.tuple(...row.parameters.map(anyArgument)), (args) => {
          const answer = row.compute(args);
          if (typeof answer === 'number') expect(Number.isFinite(answer)).toBe(true);
          else expect(answer.noAnswer).toMatch(/^[A-Z].*[.?]$/s);
        }),
        { numRuns: 300 },
      );
    },
  );

  it('a missing value is said, not guessed', () => {
    expect(sentenceOf(compute('total_trim', [0.08, undefined]))).toBe('One of the values is no number.');
    expect(sentenceOf(compute('stoichiometric_ratio', [undefined]))).toContain('must be named');
    expect(sentenceOf(compute('total_trim', [1e308, 1e308]))).toContain('beyond any number');
  });

  it('percent results are shares inside: 37.5 % is 0.375', () => {
    expect(numberOf(compute('injector_duty', [0.015, rpm(3000)]))).toBeCloseTo(0.375, 12);
  });
});
