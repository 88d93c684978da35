import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import { type Measured, writtenAs } from '../measured.ts';
import { fullNameOf } from '../moments.ts';
import type { CaseRule } from '../rule.ts';
import { spokenDifference } from '../spokenPressure.ts';
import { barometersApart as apart, barometersOf } from './barometerOf.ts';
import { siteThatRefuses } from './barometerUnfit.ts';
import type { Site } from './site.ts';

/** Two readings of the barometer of one visit: `baro`, or the manifold pressure with the key on and the engine still. */
export const barometersApart: CaseRule = {
  code: 'barometers-apart',
  reads: ['baro', 'map'],
  of: ['baro', 'map'],
  check: (ruled) => {
    const barometers = barometersOf(ruled);
    return barometers.length < 2 ? [] : apartAmong(barometers, ruled.car.site);
  },
};

function apartAmong(barometers: readonly Measured[], site: Site): readonly Finding[] {
  const first = new Map<string, Measured>();
  const findings: Finding[] = [];
  for (const one of barometers) {
    // One that the place refuses is told as that: it is known which of the two is wrong.
    if (siteThatRefuses(one, site) !== undefined) continue;
    const { cell, when, valueSpan } = one.reading;
    const other = first.get(when);
    if (other === undefined) {
      first.set(when, one);
      continue;
    }
    const difference = Math.abs(one.si - other.si);
    if (difference <= apart(one.halfWidth, other.halfWidth)) continue;
    const facts = {
      name: fullNameOf(one),
      written: writtenAs(one),
      other: fullNameOf(other),
      otherWritten: writtenAs(other),
      apart: spokenDifference(difference, one),
    };
    findings.push({ cell, diagnostic: diagnose('barometers-apart', valueSpan, facts) });
  }
  return findings;
}
