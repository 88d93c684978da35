import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Header } from '../../study/header.ts';
import type { Finding } from '../../study/types.ts';
import { engineWord } from '../engineFacts.ts';
import { inForm, type Moment, stateName } from '../moments.ts';
import type { CaseRule, RuledCase } from '../rule.ts';
import { type TotalTrim, totalTrims, writtenTrim } from './totalTrim.ts';

/** How the total trim goes with the air that the engine takes: what falls is a fixed amount, what stays a share, what rises a supply that cannot keep up. */
export const trimByLoad: CaseRule = {
  code: 'trim-by-load',
  of: ['stft_b1', 'ltft_b1', 'stft_b2', 'ltft_b2'],
  check: (ruled) => loadsOf(ruled).flatMap((loads) => findingsKept(loads, ruled.header)),
};

/** Loads that belong together: the columns of a cell, or the cells of one state each that one visit has, each state once. */
function loadsOf(ruled: RuledCase): readonly (readonly Moment[])[] {
  const tables: (readonly Moment[])[] = [];
  const visits = new Map<string, Moment[]>();
  let last = -1;
  for (const moment of ruled.moments) {
    if (moment.cell === last) continue;
    last = moment.cell;
    const columns = ruled.inCell(moment.cell);
    if (columns.length > 1) {
      if (columns.some(hasTrim)) tables.push(columns);
    } else if (totalTrims(moment).length > 0) {
      const visit = visits.get(moment.when);
      if (visit === undefined) visits.set(moment.when, [moment]);
      else visit.push(moment);
    }
  }
  for (const visit of visits.values()) {
    const states = new Set(visit.map(stateName));
    if (visit.length > 1 && states.size === visit.length) tables.push(visit);
  }
  return tables;
}

const hasTrim = ({ values }: Moment): boolean =>
  values.has('ltft_b1') || values.has('stft_b1') || values.has('ltft_b2') || values.has('stft_b2');

interface Known {
  readonly loads: readonly Moment[];
  readonly header: Header;
  readonly found: readonly Finding[];
}

/** What was found in loads, by the first of them: after a keystroke the moments of most cells are the very same. */
const known = new WeakMap<Moment, Known>();

function findingsKept(loads: readonly Moment[], header: Header): readonly Finding[] {
  const first = loads[0];
  if (first === undefined) return [];
  const before = known.get(first);
  const isSame =
    before?.header === header &&
    before.loads.length === loads.length &&
    before.loads.every((each, at) => each === loads[at]);
  if (isSame) return before.found;
  const found = findingsOf(loads, header);
  known.set(first, { loads, header, found });
  return found;
}

function findingsOf(loads: readonly Moment[], header: Header): readonly Finding[] {
  const patterns = { 1: patternOf(loads, 1), 2: patternOf(loads, 2) };
  return ([1, 2] as const).flatMap((bank) => {
    const pattern = patterns[bank];
    if (pattern === undefined) return [];
    const { shape, low, high } = pattern;
    const other = patterns[bank === 2 ? 1 : 2];
    // Both banks alike are told once.
    if (bank === 2 && other?.shape === shape) return [];
    const facts = {
      bank: other?.shape === shape ? ('both' as const) : bank,
      shape,
      sign: low.total.share + high.total.share > 0 ? ('adds' as const) : ('takes' as const),
      low: writtenTrim(low.total),
      high: writtenTrim(high.total),
      at: low.moment.state?.name ?? '',
      to: high.moment.state?.name ?? '',
      metering:
        engineWord(header, 'metering') === 'manifold pressure' ? ('pressure' as const) : ('flow' as const),
    };
    const { cell, valueSpan } = low.total.at.reading;
    return [{ cell, diagnostic: diagnose('trim-by-load', valueSpan, facts) }];
  });
}

interface Taken {
  readonly moment: Moment;
  readonly total: TotalTrim;
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
  for (const moment of moments) {
    for (const total of totalTrims(moment)) if (total.bank === bank) all.push({ moment, total });
  }
  if (all.length < 2) return undefined;
  all.sort((a, b) => airAt(a.moment) - airAt(b.moment));
  const low = all[0];
  const high = all.at(-1);
  if (low === undefined || high === undefined) return undefined;
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

/** By measured air where there is any, otherwise by the state. */
function airAt(moment: Moment): number {
  const maf = inForm(moment, 'maf', 'g/s');
  return maf?.si ?? 1e-6 * (order.indexOf(stateName(moment) ?? '') + 1);
}

const order = [
  'warm idle',
  'idle in gear',
  '1500 rpm no load',
  '2500 rpm no load',
  'light cruise',
  'cruise',
  'heavy load',
];
