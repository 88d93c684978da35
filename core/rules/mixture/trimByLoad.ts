import { diagnose, type Facts } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import type { Car } from '../car.ts';
import { isSameList } from '../kept.ts';
import { inForm } from '../measured.ts';
import { type Moment, stateName } from '../moments.ts';
import type { CaseRule, RuledCase } from '../rule.ts';
import { steadyStates } from '../steadyStates.ts';
import { areApart } from './banksApart.ts';
import { hasTrim, type TotalTrim, totalTrim, trimShare, writtenTrim } from './totalTrim.ts';

/** How the total trim goes with the air that the engine takes: what falls is a fixed amount, what stays a share, what rises a supply that cannot keep up. */
export const trimByLoad: CaseRule = {
  code: 'trim-by-load',
  reads: ['ltft_b1', 'ltft_b2', 'maf', 'stft_b1', 'stft_b2'],
  of: ['stft_b1', 'ltft_b1', 'stft_b2', 'ltft_b2'],
  at: steadyStates,
  check: (ruled) => {
    const found: Finding[] = [];
    for (const loads of ruled.once(readLoads).values()) found.push(...loads.found);
    return found;
  },
};

/** Loads that belong together, with what was found in them. */
interface Loads {
  readonly moments: readonly Moment[];
  readonly car: Car;
  readonly found: readonly Finding[];
}

/** By the first cell of the loads. After a change those stay whose moments are the same. */
function readLoads(
  ruled: RuledCase,
  before: ReadonlyMap<number, Loads> | undefined,
): ReadonlyMap<number, Loads> {
  const { car } = ruled;
  const loads = new Map<number, Loads>();
  for (const moments of tablesIn(ruled)) {
    const cell = moments[0]?.cell ?? 0;
    const known = before?.get(cell);
    const holds = known !== undefined && known.car === car && isSameList(known.moments, moments);
    loads.set(cell, holds ? known : { moments, car, found: findingsOf(moments, car) });
  }
  return loads;
}

/** The columns of a cell, or the cells of one state each that one visit has, each state once. */
function tablesIn(ruled: RuledCase): readonly (readonly Moment[])[] {
  const tables: (readonly Moment[])[] = [];
  const visits = new Map<string, Moment[]>();
  let last = -1;
  for (const moment of ruled.moments) {
    if (moment.cell === last) continue;
    last = moment.cell;
    const columns = ruled.inCell(moment.cell);
    if (columns.length > 1) {
      if (columns.some((each) => hasTrim(each, 1) || hasTrim(each, 2))) tables.push(columns);
      continue;
    }
    const visit = visits.get(moment.when);
    if (visit !== undefined && visit.length > steadyStates.length) continue;
    if (trimShare(moment, 1) === undefined && trimShare(moment, 2) === undefined) continue;
    if (visit === undefined) visits.set(moment.when, [moment]);
    else visit.push(moment);
  }
  for (const visit of visits.values()) if (visit.length > 1 && hasEachOnce(visit)) tables.push(visit);
  return tables;
}

/** Each state once: there are no more of them than states in which a trim counts. */
function hasEachOnce(visit: readonly Moment[]): boolean {
  return visit.length <= steadyStates.length && new Set(visit.map(stateName)).size === visit.length;
}

function findingsOf(loads: readonly Moment[], car: Car): readonly Finding[] {
  const [first, second] = [patternOf(loads, 1), patternOf(loads, 2)];
  if (first === undefined) return second === undefined ? none : [findingOf(second, 2, car)];
  // Both banks alike are told once.
  if (first.shape === second?.shape) return [findingOf(first, 'both', car)];
  const found = findingOf(first, 1, car);
  return second === undefined ? [found] : [found, findingOf(second, 2, car)];
}

const none: readonly Finding[] = [];

function findingOf({ shape, low, high }: Pattern, bank: 1 | 2 | 'both', { metering }: Car): Finding {
  const facts: Facts['trim-by-load'] = {
    bank,
    alone: bank !== 'both' && [low, high].every(({ moment }) => areApart(moment)),
    shape,
    sign: low.total.share + high.total.share > 0 ? 'adds' : 'takes',
    low: writtenTrim(low.total),
    high: writtenTrim(high.total),
    at: low.moment.state?.name ?? '',
    to: high.moment.state?.name ?? '',
    metering,
  };
  const { cell, valueSpan } = low.total.at.reading;
  return { cell, diagnostic: diagnose('trim-by-load', valueSpan, facts) };
}

interface Taken {
  readonly moment: Moment;
  readonly total: TotalTrim;
  readonly air: number;
}

interface Pattern {
  readonly shape: 'falls' | 'same' | 'rises';
  readonly low: Taken;
  readonly high: Taken;
}

/** Shares: from where on a trim means something (common practice: 10 %), and what two loads must differ by to be a slope. */
const much = 0.1;
const slope = 0.08;

/** The pattern of one bank over loads, from the least air to the most; undefined where there is none, or only one load. */
export function patternOf(moments: readonly Moment[], bank: 1 | 2): Pattern | undefined {
  const all: Taken[] = [];
  let most = 0;
  for (const moment of moments) {
    const total = totalTrim(moment, bank);
    if (total === undefined) continue;
    all.push({ moment, total, air: airAt(moment) });
    most = Math.max(most, Math.abs(total.share));
  }
  if (most < much || all.length < 2) return undefined;
  const low = all.reduce((least, each) => (each.air < least.air ? each : least));
  const high = all.reduce((greatest, each) => (each.air >= greatest.air ? each : greatest));
  if (!isIdle(low.moment) || isIdle(high.moment)) return undefined;
  const [atLow, atHigh] = [low.total.share, high.total.share];
  const apart = Math.abs(atLow - atHigh) >= slope;
  if (apart && Math.abs(atLow) >= much && Math.abs(atLow) > Math.abs(atHigh))
    return { shape: 'falls', low, high };
  if (apart && Math.abs(atHigh) >= much && Math.abs(atHigh) > Math.abs(atLow))
    return { shape: 'rises', low, high };
  const isSame = all.every(({ total }) => Math.abs(total.share) >= much && total.share > 0 === atLow > 0);
  return isSame && !apart ? { shape: 'same', low, high } : undefined;
}

function isIdle(moment: Moment): boolean {
  const state = stateName(moment);
  return state === 'warm idle' || state === 'idle in gear';
}

/** By measured air where there is any, otherwise by the state: they stand in the order of their loads. */
function airAt(moment: Moment): number {
  const maf = inForm(moment.values.maf, 'g/s');
  return maf?.si ?? 1e-6 * (steadyStates.indexOf(stateName(moment) ?? '') + 1);
}
