import { toSi } from '../quantity/convert.ts';
import { isAbsence, isRange, parseReading } from '../quantity/parse.ts';
import type { Kind, Quantity } from '../quantity/types.ts';
import type { Burning, Form } from './types.ts';

/** From low to high in SI, both ends included; an open end is infinite. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** What is usual in an engine state, and who says so. */
export interface UsualRange {
  readonly state: string;
  readonly range: Interval;
  readonly source: string;
  /** The engines that it is true of; undefined for all. */
  readonly of: Burning | undefined;
}

/** A form's ranges as numbers in SI. Temperatures are points in kelvin; steps are differences. */
export interface FormRanges {
  /** What is possible at all; undefined when the form does not say. */
  readonly physical: Interval | undefined;
  /** What the encoding carries, and the smallest difference that it shows. */
  readonly encoding: (Interval & { readonly step: number; readonly source: string }) | undefined;
  readonly usual: readonly UsualRange[];
  /** Values that say that a circuit failed. */
  readonly failed: readonly (Interval & { readonly means: string })[];
}

/** The ranges of a form, read from their text once. A text that is no range counts as none. */
export function rangesOf(form: Form): FormRanges {
  let ranges = read.get(form);
  if (ranges === undefined) {
    ranges = readRanges(form);
    read.set(form, ranges);
  }
  return ranges;
}

/** What is usual in this state alone: the other states' texts stay unread. */
export function usualIn(form: Form, state: string): UsualRange | undefined {
  for (const each of form.usual ?? []) {
    if (each.state !== state) continue;
    const usual = readUsual(each, form);
    if (usual !== undefined) return usual;
  }
  return undefined;
}

const read = new WeakMap<Form, FormRanges>();

function readRanges(form: Form): FormRanges {
  const kind = form.kind ?? 'none';
  const { encoding } = form;
  const carried = encoding === undefined ? undefined : intervalOf(encoding.range, kind);
  const step = encoding === undefined ? undefined : singleOf(encoding.step, 'difference');
  let usual: readonly UsualRange[] | undefined;
  return {
    physical: intervalOf(form.physical, kind),
    encoding:
      encoding === undefined || carried === undefined || step === undefined
        ? undefined
        : { ...carried, step, source: encoding.source },
    get usual() {
      usual ??= (form.usual ?? []).flatMap((each) => readUsual(each, form) ?? []);
      return usual;
    },
    failed: (form.failed ?? []).flatMap(({ value, means }) => {
      const end = intervalOf(value, kind);
      return end === undefined ? [] : [{ ...end, means }];
    }),
  };
}

function readUsual({ state, range: text, source, of }: UsualText, form: Form): UsualRange | undefined {
  const range = intervalOf(text, form.kind ?? 'none');
  return range === undefined ? undefined : { state, range, source, of };
}

type UsualText = NonNullable<Form['usual']>[number];

/** `0 .. 255 kPa`, `at most 1.5 psi`; a single value is an interval of no width. */
function intervalOf(text: string, kind: Kind): Interval | undefined {
  if (text === '') return undefined;
  const reading = parseReading(text).value;
  if (reading === undefined || isAbsence(reading)) return undefined;
  if (!isRange(reading)) {
    const si = siOf(reading, kind);
    return { low: si, high: si };
  }
  const { low, high } = reading;
  return {
    low: low === undefined ? Number.NEGATIVE_INFINITY : siOf(low, kind),
    high: high === undefined ? Number.POSITIVE_INFINITY : siOf(high, kind),
  };
}

function singleOf(text: string, kind: Kind): number | undefined {
  const reading = parseReading(text).value;
  return reading === undefined || isAbsence(reading) || isRange(reading) ? undefined : siOf(reading, kind);
}

/** The kind is the signal's own: its ranges are written without qualifiers. */
function siOf({ value, unit }: Quantity, kind: Kind): number {
  return toSi(value, unit, kind);
}
