import { inForm, type Measured } from '../measured.ts';
import type { Moment } from '../moments.ts';
import type { RuledCase } from '../rule.ts';

/** The vacuum of the same moment, or else those of the same visit and state. */
export function vacuumsLike(moment: Moment, gauges: Gauges): readonly Gauge[] {
  const own = ownGauge(moment);
  if (own !== undefined) return [own];
  const { likeness } = moment;
  return likeness === undefined || gauges.size === 0 ? none : (gauges.get(likeness) ?? none);
}

/** The vacuum of a moment itself. */
export const ownGauge = (moment: Moment): Measured | undefined => inForm(moment.values.vacuum, 'inHg');

/** A vacuum, Pa, and nothing of where it stands: it is the same while its number is. */
export type Gauge = Pick<Measured, 'si' | 'halfWidth'>;
export type Gauges = ReadonlyMap<NonNullable<Moment['likeness']>, readonly Gauge[]>;

const none: readonly Gauge[] = [];
export const noGauges: Gauges = new Map();

/** The vacuums of a case by the likeness of their moments; the very same as before a change while their numbers are. */
export function gaugesOf(ruled: RuledCase): Gauges {
  return ruled.once(readGauges);
}

function readGauges({ holding }: RuledCase, before: Gauges | undefined): Gauges {
  const gauges = new Map<NonNullable<Moment['likeness']>, Gauge[]>();
  for (const moment of holding('vacuum')) {
    const vacuum = ownGauge(moment);
    const { likeness } = moment;
    if (vacuum === undefined || likeness === undefined) continue;
    const { si, halfWidth } = vacuum;
    const group = gauges.get(likeness);
    if (group === undefined) gauges.set(likeness, [{ si, halfWidth }]);
    else group.push({ si, halfWidth });
  }
  return before !== undefined && isSameGauges(before, gauges) ? before : gauges;
}

function isSameGauges(a: Gauges, b: Gauges): boolean {
  if (a.size !== b.size) return false;
  for (const [likeness, group] of a) {
    const other = b.get(likeness);
    if (other === undefined || other.length !== group.length) return false;
    for (const [at, { si, halfWidth }] of group.entries())
      if (other[at]?.si !== si || other[at].halfWidth !== halfWidth) return false;
  }
  return true;
}
