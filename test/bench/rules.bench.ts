import { readCase } from '../../core/casefile/readCase.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { study } from '../../core/study/study.ts';
import type { Study } from '../../core/study/types.ts';
import { generate } from '../support/engineModel/generate.ts';
import { buildingSeeds } from '../support/engineModel/seeds.ts';
import { fleetCase } from './fleetCase.ts';
import { report } from './harness.ts';
import type { Measured } from './judge.ts';

/**
 * All always-on rules together, as what `checkCase` costs beyond `study`, against reading the same text into cells.
 * Both are timed alternately, case by case, so that a busy machine slows both.
 */
const cases = [
  ...Array.from({ length: 32 }, (_, n) => fleetCase(n)),
  ...buildingSeeds(32).map((seed) => generate(seed).text),
];

const rounds = 9;
const repeats = 6;
let kept: unknown;
process.on('exit', () => void kept);

const rules: Measured = { name: 'all rules', rounds: [] };
const parsing: Measured = { name: 'reading the cells of the same case', rounds: [] };
const keystroke: Measured = { name: 'all rules after a keystroke in 200 cells', rounds: [] };

const time = (run: () => unknown): number => {
  const start = performance.now();
  kept = run();
  return (performance.now() - start) / 1000;
};

for (let round = 0; round <= rounds; round++) {
  let [checked, studied, read, count] = [0, 0, 0, 0];
  for (let repeat = 0; repeat < repeats; repeat++) {
    for (const text of cases) {
      studied += time(() => study(text));
      checked += time(() => checkCase(text));
      read += time(() => readCase(text));
      count += 1;
    }
  }
  // The first round warms up.
  if (round === 0) continue;
  (rules.rounds as number[]).push(Math.max(0, checked - studied) / count);
  (parsing.rounds as number[]).push(read / count);
}

report(
  `All rules on a case (${cases.length} cases)`,
  [rules, parsing],
  [{ to: parsing.name, atMost: 0.25 }],
  (seconds) => `${(seconds * 1e6).toFixed(0)} µs`,
);

/** A notebook of many loads, of which one number changes at a time. */
const many = (value: number): string => {
  const cells = Array.from({ length: 200 }, (_, n) => {
    const idle = n === 100 ? value : 34;
    return `readings: Visit ${n}\nas: visit${n}\nstate: warm idle\nvalues:\n  rpm: 700 rpm\n  map: ${idle} kPa\n  maf: 3.5 g/s\n  iat: 98 °F\n  ect: 195 °F\n  vacuum: 19.8 inHg\n  ltft_b1: +2 %\n`;
  });
  return [
    'diag: 1\ncase: Many\nengine:\n  displacement: 2.4 L\n  aspiration: natural\nsite:\n  altitude: 40 ft\n  sea level pressure: 29.9 inHg\n',
    ...cells,
  ].join('---\n');
};

let [withRules, without]: readonly [Study, Study] = [checkCase(many(34)), study(many(34))];
const reading: Measured = { name: 'studying the keystroke', rounds: [] };
for (let round = 0; round <= rounds; round++) {
  let [checked, studied] = [0, 0];
  for (let key = 0; key < 20; key++) {
    const text = many(30 + ((round * 20 + key) % 9));
    studied += time(() => {
      without = study(text, without);
    });
    checked += time(() => {
      withRules = checkCase(text, withRules);
    });
  }
  if (round === 0) continue;
  (keystroke.rounds as number[]).push(Math.max(0, checked - studied) / 20);
  (reading.rounds as number[]).push(studied / 20);
}

report(
  'A keystroke in a notebook of 200 cells',
  [keystroke, reading],
  [{ to: reading.name, atMost: 1 }],
  (seconds) => `${(seconds * 1e6).toFixed(0)} µs`,
);
