import { createUnit, parse, type Unit, unit } from 'mathjs';
import { checkExpression } from '../../core/expression/check.ts';
import { evaluate } from '../../core/expression/evaluate.ts';
import { parseExpression } from '../../core/expression/parse.ts';
import type { Environment, Resolution, Scope } from '../../core/expression/scope.ts';
import type { Absent, One } from '../../core/expression/value.ts';
import { convert } from '../../core/quantity/convert.ts';
import { unitOf } from '../../core/quantity/unit.ts';
import { contest } from './harness.ts';

/**
 * Parsing, type-checking and evaluating a comparison of pressures, against parsing and evaluating the same in mathjs.
 * Every text is different, so that neither side can answer from a cache.
 */
const texts = Array.from(
  { length: 250 },
  (_, n) => `(map_idle + vacuum_idle) - baro_seen < ${(n * 0.004).toFixed(3)} inHg`,
);
const readings = { map_idle: 13.1, vacuum_idle: 16.4, baro_seen: 29.1 };

const inHg = unitOf('inHg');
const pascal = unitOf('Pa');
if (inHg === undefined || pascal === undefined) throw new Error('inHg and Pa are units.');
const pascals = convert(1, inHg, pascal) ?? Number.NaN;

createUnit('inHg', { definition: unit(pascals, 'Pa') });
const units: { [name: string]: Unit } = Object.fromEntries(
  Object.entries(readings).map(([name, value]) => [name, unit(value, 'inHg')]),
);

const values = new Map(
  Object.entries(readings).map(([name, value]): [string, One] => [
    name,
    {
      kind: 'one',
      type: { dimension: inHg.dimension, kind: 'difference', unit: inHg },
      amount: { si: value * inHg.factor, spread: [] },
    },
  ]),
);
const absent: Absent = { kind: 'absent', status: 'not measured', why: 'not measured' };
// Names stand ready on both sides: mathjs is given its units, and a case has looked its names up.
const names = new Map(
  [...values].map(([name, { type }]): [string, Resolution] => [
    name,
    { kind: 'value', id: name, type: { kind: 'one', quantity: type }, used: 1, role: undefined },
  ]),
);
const scope: Scope = {
  resolve: (path): Resolution => {
    const resolution = names.get(path[0] ?? '');
    if (resolution === undefined) throw new Error(`${path.join('.')} is not one of the readings.`);
    return resolution;
  },
  functionRow: () => undefined,
  functionNames: () => [],
  headerType: () => undefined,
};
const environment: Environment = {
  value: (id) => values.get(id) ?? absent,
  header: () => undefined,
  barometer: () => absent,
  caution: () => {},
};

for (const text of texts) {
  if (ours(text) !== theirs(text)) throw new Error(`${text} holds for one and not for the other.`);
}

contest({
  title: 'Parse and evaluate an expression with units',
  operations: texts.length,
  sides: [
    { name: 'casebook: parse, types, evaluate', run: () => count(ours) },
    { name: 'mathjs: parse, evaluate', run: () => count(theirs) },
    {
      name: 'floor: pass over the characters',
      run: () => texts.reduce((total, text) => total + passOver(text), 0),
    },
  ],
  bounds: [{ to: 'mathjs: parse, evaluate', atLeastTheRate: 10 }],
});

function ours(text: string): boolean {
  const { value: tree, diagnostics } = parseExpression(text);
  const { value: typed, diagnostics: wrong } = checkExpression(tree, scope);
  if (diagnostics.length + wrong.length > 0) throw new Error(`${text} is in order.`);
  const value = evaluate(typed, environment);
  return value.kind === 'truth' && value.verdict === 'holds';
}

function theirs(text: string): boolean {
  return parse(text).evaluate({ ...units }) === true;
}

function count(of: (text: string) => boolean): number {
  let total = 0;
  for (const text of texts) if (of(text)) total++;
  return total;
}

function passOver(text: string): number {
  let total = 0;
  for (let at = 0; at < text.length; at++) total += text.charCodeAt(at);
  return total;
}
