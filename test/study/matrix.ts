import { allFunctions } from '../../core/study/functions.ts';

/** A case that holds a value of every sort, and the checks of `statements` over them, each as a `let` and an `expect`. */
export function caseOver(statements: readonly string[]): string {
  const quoted = statements.map((each) => `'${each.replaceAll("'", "''")}'`);
  const lets = quoted.map((each, i) => `  x${i}: ${each}\n`).join('');
  const expects = quoted.map((each) => `  - ${each}\n`).join('');
  return `${held}check: Matrix\nas: m\nlet:\n${lets}expect:\n${expects}`;
}

const held = `diag: 1
case: Values of every sort
engine:
  displacement: 2 L
  cylinders: 4
  firing order: 1-3-4-2
  compression ratio: 10
  bore: 84 mm
  stroke: 90 mm
  rod length: 140 mm
  fuel: E10
signals:
  own:
    meaning: a drop of the case's own
    unit: V
    by: label
---
readings: Key on
as: k
state: key on engine off
values:
  map: 29.6 ± 0.1 inHg
---
readings: Idle
as: a
state: warm idle
values:
  map: 13.1 ± 0.2 inHg
  vacuum: 16.4 inHg
  fuel_pressure: 45 psi
  ect: 88 °C
  battery: 12.6 ± 0.1 V
  rpm: 780 rpm
  maf: 4 g/s
  stft_b1: 8 %
  spark: 10 °BTDC
  loop: closed
  compression:
    1: 181 psi
    2: 178 psi
    3: not taken
    4: 0 psi
  own:
    front: 1 V
    back: 0 V
  iat: not taken
---
readings: Loads
as: s
states:
  idle: warm idle
  fast: 2500 rpm no load
table: |
  reading   idle   fast   unit
  stft_b1   3      -4     %
  maf       4      -      g/s
---
reference: Limits
as: r
values:
  vacuum: 17 .. 21 inHg
  back_pressure: at most 1.5 psi
  maf_curve: [[0.4 V, 2 g/s], [1.1 V, 9 g/s], [2.6 V, 55 g/s]]
---
capture: Log
as: log
rows: |
  time   front   rpm
  s      V       rpm
  0      0.1     700
  1      0.9     800
  2      -       900
  3      0.2     1000
channels:
  front:
    column: front
    signal: o2_b1s1
  rpm:
    column: rpm
---
capture: Another
as: scope
rows: |
  time   front
  s      V
  0      0.1
  1      0.9
---
capture: Gone
as: gone
file: gone.csv
channels:
  front:
    column: front
    unit: V
---
test: Smoke
as: smoke
did: Half a psi.
result: yes
---
check: Computed
as: l
let:
  n: 5
  truth: 3 > 2
  divided: a.battery / 0
  missing: a.iat
  broken: nosuch + 1
  zero: 0 V
  negative: 0 - 3
  huge: 10 ^ 120
  difference: a.map - k.map
  warmer: a.ect - 80 °C
  fields: catalyst(log.front, log.front)
---
`;

/** Something of every sort, written and named, sound and broken. */
const operands: readonly string[] = [
  ...['5', '0', '-3', '10 %', '10 psi', '3 psi gauge', '20 °C', '3 V', '1 ± 2 V', '10 °ATDC', '1 s'],
  ...['"closed"', 'yes', 'true', 'a.loop', 'smoke.result', 'engine.displacement', 'engine.fuel'],
  ...['a.map', 'k.map', 'a.vacuum', 'a.fuel_pressure', 'a.ect', 'a.battery', 'a.rpm', 'a.spark', 'a.iat'],
  ...['a.compression', 'a.own', 's.stft_b1', 's.maf', 'a.compression[1]', 'a.compression[3]'],
  ...['a.compression[9]', 'a.own["front"]', 'log.front', 'log.rpm', 'scope.front', 'gone.front'],
  ...['r.vacuum', 'r.back_pressure', 'r.maf_curve', 'l.n', 'l.truth', 'l.divided', 'l.missing', 'l.broken'],
  ...['l.zero', 'l.negative', 'l.huge', 'l.difference', 'l.warmer', 'l.fields', 'l.fields.ratio'],
  ...['a', 's.idle', 'nosuch', 'min', '(1', ''],
];

const between = [
  ...['+', '-', '*', '/', '^', '<', '<=', '>', '>=', '==', '..', '.', 'is', 'is not', 'and', 'or', 'in'],
  ...['not in', 'within 1 V of', 'within 2 % of', 'between 1 V and', 'between 0 and', 'from 1 s to'],
];

/** Every operator between each pair of them. */
export function* operations(): Generator<string> {
  for (const a of operands) {
    for (const sign of ['-', '+', 'not ', '- -', 'not not ']) yield sign + a;
    for (const b of operands) {
      for (const operator of between) yield `${a} ${operator} ${b}`;
      yield `${a} where (${b})`;
      yield `if ${a} then 1 else 2`;
      yield `if l.n > 3 then ${a} else ${b}`;
      yield `${a}[${b}]`;
    }
  }
}

const oddArguments = [
  ...['0', '-1', '-0', '0.000000000000000000001', '0 V', '-5 V', '1000000 rpm', '-300 °C', '0 K', '0 kPa'],
  ...['-1 kPa', '0 rpm', '0 %', '101 %', '-1 %', '""', '"x"', '0 s', '0 L', '0 g/s', '0 A', '0 Ω', '0 mm'],
  ...['360 °CA', '100 km'],
];

/** Every function with too few, too many, swapped and wrong arguments, by place and by name. */
export function* calls(): Generator<string> {
  for (const { name, parameters, example } of allFunctions()) {
    const of = (args: readonly string[]): string => `${name}(${args.join(', ')})`;
    yield* [name, of([]), `${name}(`, `${name}(,)`, `${name}[1]`, `${name}.x`, of(['nosuch = 3'])];
    for (const each of operands) {
      yield of([each]);
      yield of(parameters.map(() => each));
      for (const parameter of parameters) yield of([`${parameter.name} = ${each}`]);
    }
    const sound = argumentsOf(example.expression);
    yield* [of(sound.slice(0, -1)), of([...sound, ...sound.slice(0, 1)]), of(sound.toReversed())];
    for (let at = 0; at < sound.length; at++) {
      for (const each of [...operands, ...oddArguments]) yield of(sound.with(at, each));
    }
  }
}

function argumentsOf(call: string): readonly string[] {
  const inside = /\((.*)\)/.exec(call)?.[1] ?? '';
  return inside.split(/,(?![^()]*\))/).map((each) => each.trim());
}
