import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { writtenAs } from '../measured.ts';
import { fullNameOf, type Moment, stateName } from '../moments.ts';
import type { CellRule } from '../rule.ts';
import { leastOpen, vacuumLeft } from '../tolerance.ts';
import type { RuledSignal } from '../values.ts';

/** What must follow the throttle. */
const followers = ['map', 'maf', 'tp', 'load', 'load_abs', 'vacuum'] as const;

/** Exactly the same number with the throttle closed and wide open: the sensor does not follow, or one column was copied. */
export const frozenReading: CellRule = {
  code: 'frozen-reading',
  of: followers,
  at: ['wide open throttle'],
  checkCell: ({ moments }) => {
    if (moments.length < 2) return [];
    const open = moments.find((each) => stateName(each) === 'wide open throttle');
    const shut = moments.find((each) => closed.has(stateName(each) ?? ''));
    if (open === undefined || shut === undefined) return [];
    return followers.flatMap((signal) =>
      signal === 'map' && isLowByChance(shut, open, moments) ? [] : frozen(signal, shut, open),
    );
  },
};

const closed: ReadonlySet<string> = new Set([
  'warm idle',
  'idle in gear',
  '1500 rpm no load',
  '2500 rpm no load',
]);

/** Pa: no idling manifold that a sensor follows has more. */
const mostAtIdle = 55000;

/**
 * In whole kilopascals a throttle that hardly opens may leave what the idle has; at other loads the sensor follows.
 * `stateContradicted` tells what is wrong with it, where there is more than a vacuum can be.
 */
function isLowByChance(shut: Moment, open: Moment, moments: readonly Moment[]): boolean {
  const { map } = open.values;
  if (map === undefined || map.si < vacuumLeft || map.si >= leastOpen) return false;
  if (followers.some((signal) => signal !== 'map' && isSame(signal, shut, open))) return false;
  return moments.some(({ values }) => values.map !== undefined && values.map.si !== map.si);
}

const isSame = (signal: RuledSignal, shut: Moment, open: Moment): boolean =>
  shut.values[signal] !== undefined && shut.values[signal].si === open.values[signal]?.si;

function frozen(signal: RuledSignal, shut: Moment, open: Moment): readonly Diagnostic[] {
  const [here, there] = [shut.values[signal], open.values[signal]];
  if (here === undefined || there === undefined || !isSame(signal, shut, open)) return [];
  // A manifold that stays at the barometer is told as that.
  if (signal === 'map' && here.si > mostAtIdle) return [];
  const facts = {
    name: fullNameOf(there),
    other: fullNameOf(here),
    written: writtenAs(there),
    states: [shut.state?.name ?? '', open.state?.name ?? ''] as const,
  };
  return [diagnose('frozen-reading', there.reading.valueSpan, facts)];
}
