import { LineCounter, parseAllDocuments } from 'yaml';
import { checkCase } from '../../core/rules/checkCase.ts';
import { fleetCase } from './fleetCase.ts';
import { contest } from './harness.ts';

/**
 * Checking a whole case (split, parse, schema, names, types, evaluation, rules) against what
 * the yaml package alone takes to parse the same text, with positions.
 */
const cases = Array.from({ length: 64 }, (_, n) => fleetCase(n));

const first = checkCase(fleetCase(0));
const errors = first.findings.filter(({ diagnostic }) => diagnostic.severity === 'error');
if (first.expectations.length !== 10 || errors.length > 0) {
  throw new Error(
    `The case under test is not in order: ${JSON.stringify(errors.map(({ diagnostic }) => diagnostic))}`,
  );
}

contest({
  title: `Check a case of 12 cells (${Math.round(fleetCase(0).length / 100) / 10} kB)`,
  operations: cases.length,
  sides: [
    { name: 'casebook: check everything', run: () => sum(cases, (text) => checkCase(text).findings.length) },
    { name: 'yaml: parse only', run: () => sum(cases, (text) => parse(text)) },
    { name: 'floor: pass over the characters', run: () => sum(cases, passOver) },
  ],
  bounds: [{ to: 'yaml: parse only', atMost: 1.5 }],
});

function parse(text: string): number {
  return parseAllDocuments(text, { lineCounter: new LineCounter() }).length;
}

function passOver(text: string): number {
  let total = 0;
  for (let at = 0; at < text.length; at++) total += text.charCodeAt(at);
  return total;
}

function sum<T>(items: readonly T[], of: (item: T) => number): number {
  let total = 0;
  for (const item of items) total += of(item);
  return total;
}
