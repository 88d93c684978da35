import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { engineFunctions } from '../../core/engine/engineFunctions.ts';
import type {
  FunctionRow,
  Parameter,
  Plain,
  ScalarFunction,
  WholeFunction,
} from '../../core/expression/functionRow.ts';
import type { Value } from '../../core/expression/value.ts';
import { scanQuantity } from '../../core/quantity/scan.ts';
import type { Unit } from '../../core/quantity/types.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { compute, numberOf, rpm, sentenceOf } from './answers.ts';

const scalars = engineFunctions().filter((row): row is ScalarFunction => row.form === 'scalar');
const named = (rows: readonly FunctionRow[]) => rows.map((row) => row.name);

function unit(symbol: string): Unit {
  const found = unitOf(symbol);
  if (found === undefined) expect.fail(`no unit ${symbol}`);
  return found;
}

describe('the table of engine functions', () => {
  it('has every name once', () => {
    expect(new Set(named(engineFunctions())).size).toBe(engineFunctions().length);
  });

  it.each(engineFunctions().map((row) => [row.name, row] as const))(
    '%s is written out in full',
    (name, row) => {
      expect(name).toMatch(/^[a-z][a-z0-9_]*$/);
      expect(row.summary).toMatch(/^[A-Z].*\.$/);
      for (const line of row.formula.split('\n')) expect(line).toMatch(/^\S.*[^.\s]$|^\S$/);
      expect(row.source).toMatch(/^\S.{5,}[^.]$/);
      expect(row.errors.length).toBeGreaterThan(0);
      for (const error of row.errors) expect(error).toMatch(/^[A-Z].*\.$/);
      expect(row.example.expression).toContain(`${name}(`);
      expect(row.example.result).not.toBe('');
      for (const { words, meaning } of row.says ?? []) {
        expect(words).toMatch(/^[a-z].*[^.]$/);
        expect(meaning).toMatch(/^\S.*\.$/s);
      }
      if (row.result.kind === 'fixed') unit(row.result.unit);
      if (row.result.kind === 'like')
        expect(row.parameters.map((each) => each.name)).toContain(row.result.parameter);
      for (const { name: parameter, takes, meaning, header, otherwise } of row.parameters) {
        expect(parameter).toMatch(/^[a-z][a-z0-9_]*$/);
        expect(meaning).toMatch(/^\S.*[^.]$/);
        if (takes.unit !== undefined) unit(takes.unit);
        expect(takes.what !== 'quantity' || takes.unit !== undefined).toBe(true);
        if (header !== undefined) expect(header).toMatch(/^(engine|site)\.[a-z_]+$/);
        if (otherwise !== undefined && takes.what === 'quantity')
          expect(scanQuantity(otherwise, 0)?.quantity, otherwise).toBeDefined();
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

  const worded = engineFunctions().filter(
    (row): row is WholeFunction => row.form === 'whole' && row.says !== undefined,
  );
  const anyValue = ({ takes }: Parameter): fc.Arbitrary<Value> =>
    takes.what === 'text'
      ? fc.constantFrom('E10', 'tailpipe', 'high', '1-3-4-2', '').map((text) => ({ kind: 'words', text }))
      : fc.record({ si: anyNumber, by: fc.double({ min: 0, max: 1, noNaN: true }) }).map(({ si, by }) => ({
          kind: 'one',
          type: { dimension: unit(takes.unit ?? '1').dimension, kind: 'none', unit: unit(takes.unit ?? '1') },
          amount: { si, spread: by === 0 ? [] : [{ source: 'any', by }] },
        }));

  it.each(worded.map((row) => [row.name, row] as const))(
    '%s says one of its sayings, or why not',
    (_, row) => {
      const sayings = row.says?.map(({ words }) => words);
      fc.assert(
        fc.property(fc.tuple(...row.parameters.map(anyValue)), (args) => {
          const value = row.evaluate(args);
          if (value.kind === 'words') expect(sayings).toContain(value.text);
          else expect(value.kind === 'absent' && value.why).toMatch(/^`[a-z_]+`/);
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
