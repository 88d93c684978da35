import { signalOf } from '../signals/lookup.ts';
import { type FormRanges, type Interval, rangesOf, usualIn } from '../signals/ranges.ts';
import type { Form } from '../signals/types.ts';
import type { Reading } from '../study/types.ts';
import { type StateLimit, stateLimitOf } from './stateLimits.ts';
import { mostStates, stateNumber } from './stateNumber.ts';
import { isRuled, type RuledSignal } from './values.ts';

/** What is known beforehand of a signal's numbers in one form at one engine state. */
export interface Limits {
  readonly form: Form;
  readonly unit: string;
  readonly ranges: FormRanges;
  /** What it can possibly be, where that is known. */
  readonly possible: Interval | undefined;
  /** What is usual in that state. A vacuum's is that at the sea. */
  readonly usual: FormRanges['usual'][number] | undefined;
  /** What it cannot be in that state. */
  readonly ofState: StateLimit | undefined;
  /** From `low` to `high` it is possible, carried, usual, of its state, and no sign of a failed circuit: nothing more needs to be looked up. */
  readonly low: number;
  readonly high: number;
  /** The field of a moment that it stands in. */
  readonly field: RuledSignal | undefined;
  /** The bits of the rules that ask for it; filled by whoever asks first. */
  asked: number | undefined;
}

/** They are worked out once for each form, which is one signal's alone, and state. */
export function limitsOf({ signal, state }: Reading, form: Form): Limits {
  let states = known.get(form);
  if (states === undefined) {
    states = Array.from({ length: mostStates }, () => undefined);
    known.set(form, states);
  }
  const at = stateNumber(state?.known);
  let limits = states[at];
  if (limits === undefined) {
    limits = readLimits(signal?.name ?? '', form, state?.known?.name ?? '');
    states[at] = limits;
  }
  return limits;
}

/** By forms, and by the numbers of engine states: a case's own signals come and go with it, and so do their forms. */
const known = new WeakMap<Form, (Limits | undefined)[]>();

function readLimits(signal: string, form: Form, state: string): Limits {
  const ranges = rangesOf(form);
  const possible = possibleFor(signal, state) ?? ranges.physical;
  const usual = usualIn(form, state);
  const ofState = stateLimitOf(signal, form.unit, state);
  let low = ofState?.least ?? Number.NEGATIVE_INFINITY;
  let high = ofState?.most ?? Number.POSITIVE_INFINITY;
  for (const range of [possible, ranges.encoding, usual?.range]) {
    if (range === undefined) continue;
    low = Math.max(low, range.low);
    high = Math.min(high, range.high);
  }
  for (const end of ranges.failed) {
    const [below, above] = [end.low - 2 * closeTo(end.low), end.high + 2 * closeTo(end.high)];
    if (above < low || below > high) continue;
    if (end.low - low < high - end.high) low = above;
    else high = below;
  }
  // What is usual for a vacuum depends on the altitude.
  if (usual !== undefined && signal === 'vacuum') [low, high] = [0, -1];
  const field = isRuled(signal) ? signal : undefined;
  return { form, unit: form.unit, ranges, possible, usual, ofState, low, high, field, asked: undefined };
}

/** A manifold pressure with the engine standing still is a barometer, so it can only be what the barometer can be. */
function possibleFor(signal: string, state: string): Interval | undefined {
  if (signal !== 'map' || state !== 'key on engine off') return undefined;
  const barometer = signalOf('baro')?.forms[0];
  return barometer === undefined ? undefined : rangesOf(barometer).physical;
}

/** How near a number must be to one that says that a circuit failed, to be it. */
export const closeTo = (si: number): number => Math.max(Math.abs(si), 1) * 1e-6;
