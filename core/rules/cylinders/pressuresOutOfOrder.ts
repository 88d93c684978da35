import { diagnose, type Facts } from '../../diagnostics/diagnostic.ts';
import type { Finding, Reading } from '../../study/types.ts';
import { inForm, writtenAs } from '../measured.ts';
import { fullNameOf } from '../moments.ts';
import type { CaseRule, RuledCase } from '../rule.ts';
import { byCylinder, extremeOf, nameOf, type OfCylinder, visitsOf, writtenOf } from './bySet.ts';

/** A pressure above one that it cannot pass: running above cranking compression, dry above wet, the first puff above the fifth. */
export const pressuresOutOfOrder: CaseRule = {
  code: 'pressures-out-of-order',
  of: ['wet_compression', 'fifth_puff', 'running_compression', 'dead_head_pressure'],
  check: (ruled) => {
    const found: Finding[] = [];
    const sets = ruled.sets();
    for (const row of rows) addOfRow(row, sets, found);
    addDeadHead(ruled, found);
    return found;
  },
};

interface Row {
  readonly lower: string;
  readonly upper: string;
  readonly pair: Facts['pressures-out-of-order']['pair'];
  /** Only where the upper one is at least this, Pa. */
  readonly from: number;
  /** What two readings differ by, as a share. */
  readonly share: number;
}

/** Pa: a cylinder that seals when it is cranked. One that leaks may seal better at idle, where the time to leak is short. */
const sealed = 690_000;

/** What two tests of one cylinder differ by, a tenth, and the least that any two readings do, Pa: 2 psi (common practice). */
const share = 0.1;
const least = 13_800;

/* An idling engine is half a share below, and puffs are of one reading: there the gauge’s own error is enough. */
const rows: readonly Row[] = [
  { lower: 'running_compression', upper: 'compression', pair: 'running', from: sealed, share: 0.03 },
  { lower: 'compression', upper: 'wet_compression', pair: 'wet', from: 0, share },
  { lower: 'first_puff', upper: 'fifth_puff', pair: 'puffs', from: 0, share: 0.03 },
];

function addOfRow(
  { lower, upper, pair, from, share }: Row,
  sets: readonly Reading[],
  found: Finding[],
): void {
  for (const when of visitsOf(sets, upper)) {
    // Of most engines no cylinder's lower figure is above any other's upper one.
    const [greatest, weakest] = [extremeOf(sets, lower, when, 1), extremeOf(sets, upper, when, -1)];
    if (greatest - weakest <= share * weakest + least) continue;
    const below = byCylinder(sets, lower, when);
    const above = byCylinder(sets, upper, when);
    for (let place = 0; place < above.length; place++) {
      const cylinder = above[place]?.cylinder ?? '';
      // Of several tests the pair that contradicts least: an engine may have been cold at one and warm at the other.
      const one = leastOf(below, cylinder, 1);
      const other = leastOf(above, cylinder, -1);
      if (one === undefined || other === undefined || other.si < from) continue;
      // A cylinder is looked at where it first stands.
      if (above.findIndex((each) => each.cylinder === cylinder) < place) continue;
      if (one.si - other.si <= share * other.si + least + one.halfWidth + other.halfWidth) continue;
      const facts = {
        lower: nameOf(one),
        lowerWritten: writtenOf(one),
        upper: nameOf(other),
        upperWritten: writtenOf(other),
        pair,
      };
      // Told at the later of the two.
      const at = pair === 'running' ? one.reading : other.reading;
      found.push({ cell: at.cell, diagnostic: diagnose('pressures-out-of-order', at.valueSpan, facts) });
    }
  }
}

/** The least figure of a cylinder, or with -1 the greatest. */
function leastOf(figures: readonly OfCylinder[], cylinder: string, sign: 1 | -1): OfCylinder | undefined {
  let found: OfCylinder | undefined;
  for (const each of figures)
    if (each.cylinder === cylinder && (found === undefined || sign * (each.si - found.si) < 0)) found = each;
  return found;
}

/** The regulated pressure of the same visit above what the pump makes against a shut line. */
function addDeadHead(ruled: RuledCase, found: Finding[]): void {
  for (const moment of ruled.holding('dead_head_pressure')) {
    const most = inForm(moment.values.dead_head_pressure, 'kPa');
    if (most === undefined) continue;
    for (const each of ruled.holding('fuel_pressure')) {
      const one = each.when === moment.when ? inForm(each.values.fuel_pressure, 'kPa') : undefined;
      if (one === undefined || one.si - most.si <= share * most.si + least + one.halfWidth + most.halfWidth)
        continue;
      const facts = {
        lower: fullNameOf(one),
        lowerWritten: writtenAs(one),
        upper: fullNameOf(most),
        upperWritten: writtenAs(most),
        pair: 'dead head' as const,
      };
      const { cell, valueSpan } = most.reading;
      found.push({ cell, diagnostic: diagnose('pressures-out-of-order', valueSpan, facts) });
      break;
    }
  }
}
