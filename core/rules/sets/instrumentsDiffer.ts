import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import { isSameList } from '../kept.ts';
import { inForm, type Measured, writtenAs } from '../measured.ts';
import { fullNameOf, type Moment, stateName } from '../moments.ts';
import type { CaseRule, RuledCase } from '../rule.ts';
import { explained, idleWander, pressureSensor, temperatureSensor, vacuumGauge } from '../tolerance.ts';
import type { RuledSignal } from '../values.ts';

/** What is read with two instruments, and how far apart sound ones may be: half-widths in SI, common practice. */
interface Steady {
  readonly signal: RuledSignal;
  readonly unit: string;
  /** What an instrument of which nothing is said may be off. */
  readonly off: number;
  /** What the engine wanders between two looks at one state. */
  readonly wander: number;
}

/** What holds still while the engine does. Voltages follow the load, and trims, idle speed and oxygen sensors their control. */
const steady: readonly Steady[] = [
  // The fan comes and goes, and a probe on a housing reads its surface.
  { signal: 'ect', unit: '°C', off: temperatureSensor, wander: 8 },
  { signal: 'fuel_pressure', unit: 'kPa', off: 15_000, wander: 10_000 },
  // Oil thins as it warms.
  { signal: 'oil_pressure', unit: 'psi', off: 14_000, wander: 50_000 },
  { signal: 'map', unit: 'kPa', off: pressureSensor, wander: 2 * idleWander },
  { signal: 'vacuum', unit: 'inHg', off: vacuumGauge, wander: 2 * idleWander },
];
const signals = steady.map(({ signal }) => signal);

/** One thing read with two named instruments in one engine state of one visit, in cells of their own. On the road no two looks are at one load. */
export const instrumentsDiffer: CaseRule = {
  code: 'instruments-differ',
  of: signals,
  at: ['warm idle', 'idle in gear', '1500 rpm no load', '2500 rpm no load'],
  check: (ruled) => {
    const found: Finding[] = [];
    for (const pair of ruled.once(pairsIn).pairs) {
      if (!isRepaired(pair, ruled)) found.push(findingOf(pair));
    }
    return found;
  },
};

const states: ReadonlySet<string | undefined> = new Set(instrumentsDiffer.at);

/** One look with one instrument. */
interface Look {
  readonly one: Measured;
  readonly moment: Moment;
}

/** Two looks that differ, in the order of the text. */
type Pair = readonly [earlier: Look, later: Look];

interface Pairs {
  /** The looks at a state that holds still. */
  readonly looks: readonly Moment[];
  readonly pairs: readonly Pair[];
}

function pairsIn(ruled: RuledCase, before: Pairs | undefined): Pairs {
  const looks = ruled.moments.filter((moment) => states.has(stateName(moment)));
  if (before !== undefined && isSameList(before.looks, looks)) return before;
  const pairs: Pair[] = [];
  for (const row of steady) {
    if (!areMixed(looks, row)) continue;
    for (const moment of looks) {
      const alike = moment.values[row.signal] === undefined ? [] : ruled.alike(moment, row.signal);
      if (alike[0] === moment && areMixed(alike, row)) addPairs(alike, row, pairs);
    }
  }
  return { looks, pairs };
}

/** Whether looks of two instruments are among them. */
function areMixed(looks: readonly Moment[], { signal }: Steady): boolean {
  let first: string | undefined;
  for (const { values } of looks) {
    const tool = values[signal]?.reading.tool;
    if (tool === undefined) continue;
    if (first !== undefined && tool !== first) return true;
    first = tool;
  }
  return false;
}

/** The least and the most that one instrument showed. */
interface Shown {
  readonly low: Look;
  readonly high: Look;
}

/** Adds a pair for each two instruments of which no look fits one of the other's. Where one of them differs from itself, the engine changed. */
function addPairs(alike: readonly Moment[], row: Steady, pairs: Pair[]): void {
  for (const looks of inCircumstances(alike, row).values()) {
    const byTool = new Map<string, Shown>();
    for (const look of looks) {
      const { one } = look;
      const tool = one.reading.tool ?? '';
      const known = byTool.get(tool);
      const low = known === undefined || one.si < known.low.one.si ? look : known.low;
      const high = known === undefined || one.si > known.high.one.si ? look : known.high;
      byTool.set(tool, { low, high });
    }
    const shown = [...byTool.values()];
    if (shown.some(({ low, high }) => areApart(low, high, row))) continue;
    for (const [at, a] of shown.entries()) {
      for (const b of shown.slice(at + 1)) {
        const [lower, upper] = a.low.one.si < b.low.one.si ? [a.high, b.low] : [b.high, a.low];
        if (lower.one.si >= upper.one.si || !areApart(lower, upper, row) || !isSameEngine(lower, upper))
          continue;
        pairs.push(lower.moment.cell < upper.moment.cell ? [lower, upper] : [upper, lower]);
      }
    }
  }
}

/** Looks by what else is said of their state. Of a cell that has the state in two columns nobody knows what parts them; a needle that moves shows no one number. */
function inCircumstances(alike: readonly Moment[], row: Steady): ReadonlyMap<string, readonly Look[]> {
  const groups = new Map<string, Look[]>();
  for (const [at, moment] of alike.entries()) {
    if (alike[at - 1]?.cell === moment.cell || alike[at + 1]?.cell === moment.cell) continue;
    const one = inForm(moment.values[row.signal], row.unit);
    if (one?.reading.tool === undefined || (one.reading.saw ?? 'steady') !== 'steady') continue;
    const key = [...(moment.state?.more ?? [])]
      .map((entry) => entry.join(': '))
      .sort()
      .join('\n');
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [{ one, moment }]);
    else group.push({ one, moment });
  }
  return groups;
}

const areApart = (a: Look, b: Look, { off, wander }: Steady): boolean =>
  Math.abs(a.one.si - b.one.si) >
  explained(Math.max(off, a.one.halfWidth), Math.max(off, b.one.halfWidth), wander);

/** As far as both cells tell: at one speed and equally warm, and where both say at which place, at one. */
function isSameEngine(
  { one, moment: { values: a } }: Look,
  { one: other, moment: { values: b } }: Look,
): boolean {
  const [rpm, otherRpm] = [inForm(a.rpm, 'rpm'), inForm(b.rpm, 'rpm')];
  const [ect, otherEct] = [inForm(a.ect, '°C'), inForm(b.ect, '°C')];
  const [at, otherAt] = [one.reading.at, other.reading.at];
  if (at !== undefined && otherAt !== undefined && at !== otherAt) return false;
  if (rpm !== undefined && otherRpm !== undefined && Math.abs(rpm.si - otherRpm.si) > ofSpeed * rpm.si)
    return false;
  return (
    one === ect || ect === undefined || otherEct === undefined || Math.abs(ect.si - otherEct.si) <= asWarm
  );
}

/** A share of the speed, and K. */
const ofSpeed = 0.1;
const asWarm = 10;

/** Whether a repair stands between two looks. */
function isRepaired([earlier, later]: Pair, ruled: RuledCase): boolean {
  for (let cell = earlier.moment.cell + 1; cell < later.moment.cell; cell++) {
    if (ruled.isRepair(cell)) return true;
  }
  return false;
}

function findingOf([{ one: other }, { one }]: Pair): Finding {
  const facts = {
    name: fullNameOf(one),
    written: writtenAs(one),
    other: fullNameOf(other),
    otherWritten: writtenAs(other),
    tools: [one.reading.tool ?? '', other.reading.tool ?? ''] as const,
  };
  return { cell: one.reading.cell, diagnostic: diagnose('instruments-differ', one.reading.valueSpan, facts) };
}
