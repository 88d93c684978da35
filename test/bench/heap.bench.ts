import { checkCase } from '../../core/rules/checkCase.ts';
import { fleetCase } from './fleetCase.ts';
import { formatBytes, report } from './harness.ts';

/**
 * What stays in memory after a thousand cases were checked, against after a hundred, when each result is let go:
 * interned dimensions, units and names must not grow with the number of cases.
 */
const collect = globalThis.gc;
if (collect === undefined) throw new Error('Run with --expose-gc, as `npm run bench` does.');
const gc: () => void = collect;

let checked = 0;
// The first cases fill tables that are made on demand and let the compiler settle.
checkUpTo(50);
const rounds = [0, 1, 2].map((round) => {
  const from = 50 + round * 1000;
  checkUpTo(from + 100);
  const hundred = heapAfterCollection();
  checkUpTo(from + 1000);
  return { hundred, thousand: heapAfterCollection() };
});

report(
  'Heap after collection',
  [
    { name: 'after 1,000 cases', rounds: rounds.map(({ thousand }) => thousand) },
    { name: 'after 100 cases', rounds: rounds.map(({ hundred }) => hundred) },
  ],
  [{ to: 'after 100 cases', atMost: 1.2 }],
  formatBytes,
);

function checkUpTo(count: number): void {
  for (; checked < count; checked++) {
    if (checkCase(fleetCase(checked)).expectations.length === 0)
      throw new Error(`Case ${checked} was not checked.`);
  }
}

function heapAfterCollection(): number {
  gc();
  gc();
  return process.memoryUsage().heapUsed;
}
