import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { LineCounter, parseAllDocuments } from 'yaml';
import { readCase } from '../../core/casefile/readCase.ts';
import { checkCase, checkStudy } from '../../core/rules/checkCase.ts';
import { collectCell } from '../../core/study/cells/collectCell.ts';
import { noHeader, readHeader } from '../../core/study/header.ts';
import { parserKnowing } from '../../core/study/source.ts';
import { study } from '../../core/study/study.ts';
import { generate } from '../support/engineModel/generate.ts';
import { buildingSeeds } from '../support/engineModel/seeds.ts';
import { fleetCase } from './fleetCase.ts';
import { report } from './harness.ts';

/**
 * All always-on rules together, on a case that was studied, against parsing the same text: by the yaml package, as in
 * `check.bench.ts`, by our own reader up to its cells, which is several times faster, and by our own parsers to the
 * end, that is with the quantities and the expressions in the cells. The sides take turns case by case, so that a busy
 * machine slows all of them. The generated engines' cases are nearly all numbers, which is what rules look at.
 */
const samples = join(import.meta.dirname, '../../samples');
const groups: readonly { readonly name: string; readonly cases: readonly string[] }[] = [
  {
    name: 'samples',
    cases: readdirSync(samples)
      .filter((name) => name.endsWith('.diag'))
      .map((name) => readFileSync(join(samples, name), 'utf8')),
  },
  {
    name: 'a case in many versions, and generated engines',
    cases: [
      ...Array.from({ length: 16 }, (_, n) => fleetCase(n)),
      ...buildingSeeds(16).map((seed) => generate(seed).text),
    ],
  },
];

const rounds = 9;
/** Each of the fifty rules runs a few times a check, so they are compiled later than a parser's loops: by then all sides have settled. */
const warmUp = 8;
let kept: unknown;
process.on('exit', () => void kept);

/** Seconds of the quickest of some runs; what a run needs is made before the clock starts. */
function quickest<T>(times: number, before: () => T, run: (made: T) => unknown): number {
  let best = Number.POSITIVE_INFINITY;
  for (let time = 0; time < times; time++) {
    const made = before();
    const start = performance.now();
    kept = run(made);
    best = Math.min(best, performance.now() - start);
  }
  return best / 1000;
}

/** Rules run right after a study, which leaves them nothing in the processor's caches. So does what they are held against. */
function afterStudy(text: string): string {
  kept = study(text);
  return text;
}

/** The cells, and in them the quantities and expressions, each with its place; nothing is computed. */
function parseAll(text: string): unknown {
  const { cells } = readCase(text);
  const first = cells[0]?.cell;
  const header = first?.kind === 'diag' ? readHeader(first, 0) : noHeader;
  const { parse } = parserKnowing(new Map());
  return cells.map(({ cell, raw }, index) => collectCell(cell, raw.text, index, header, parse, undefined));
}

const microseconds = (seconds: number): string => `${(seconds * 1e6).toFixed(0)} µs`;

function side(name: string): { readonly name: string; readonly rounds: number[] } {
  return { name, rounds: [] };
}

for (const { name, cases } of groups) {
  const rules = side('all rules');
  const yaml = side('yaml: parse only');
  const ours = side('casebook: read the cells');
  const whole = side('casebook: parse it all');
  for (let round = 1 - warmUp; round <= rounds; round++) {
    const sums = { rules: 0, yaml: 0, ours: 0, whole: 0 };
    for (const text of cases) {
      sums.rules += quickest(12, () => study(text), checkStudy);
      sums.ours += quickest(12, () => afterStudy(text), readCase);
      sums.whole += quickest(12, () => afterStudy(text), parseAll);
      sums.yaml += quickest(
        3,
        () => text,
        (each) => parseAllDocuments(each, { lineCounter: new LineCounter() }),
      );
    }
    if (round <= 0) continue;
    rules.rounds.push(sums.rules / cases.length);
    yaml.rounds.push(sums.yaml / cases.length);
    ours.rounds.push(sums.ours / cases.length);
    whole.rounds.push(sums.whole / cases.length);
  }
  report(
    `All rules on a case: ${name} (${cases.length})`,
    [rules, yaml, ours, whole],
    [
      { to: yaml.name, atMost: 0.15 },
      { to: ours.name, atMost: 0.9 },
      { to: whole.name, atMost: 0.25 },
    ],
    microseconds,
  );
}

/** A notebook of 200 cells of one state, in which one number changes. */
function many(value: number): string {
  const header =
    'diag: 1\ncase: Many\nengine:\n  displacement: 2.4 L\n  aspiration: natural\nsite:\n  altitude: 40 ft\n  sea level pressure: 29.9 inHg\n';
  const cells = Array.from({ length: 200 }, (_, n) => {
    const map = n === 100 ? value : 34;
    return `readings: Visit ${n}\nas: visit${n}\nstate: warm idle\nvalues:\n  rpm: 700 rpm\n  map: ${map} kPa\n  maf: 3.5 g/s\n  iat: 98 °F\n  ect: 195 °F\n  vacuum: 19.8 inHg\n  ltft_b1: +2 %\n`;
  });
  return [header, ...cells].join('---\n');
}

const keystroke = side('all rules after a keystroke');
const studying = side('study the keystroke');
let previous = checkCase(many(34));
for (let round = 0; round <= rounds; round++) {
  let [best, slow] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let key = 0; key < 20; key++) {
    const text = many(30 + ((round * 20 + key) % 9));
    const start = performance.now();
    const studied = study(text, previous);
    const middle = performance.now();
    previous = checkStudy(studied, previous);
    best = Math.min(best, performance.now() - middle);
    slow = Math.min(slow, middle - start);
  }
  if (round === 0) continue;
  keystroke.rounds.push(best / 1000);
  studying.rounds.push(slow / 1000);
}
report(
  'A keystroke in a notebook of 200 cells of one state',
  [keystroke, studying],
  [{ to: studying.name, atMost: 2.5 }],
  microseconds,
);
