import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Finding } from '../../study/types.ts';
import { type Measured, writtenAs } from '../measured.ts';
import { fullNameOf } from '../moments.ts';
import type { CaseRule } from '../rule.ts';
import { spokenPressure } from '../spokenPressure.ts';
import { explained, pressureSensor, pressureStep } from '../tolerance.ts';
import { barometersOf } from './barometerOf.ts';
import { type Known, type Site, siteByAnything } from './site.ts';

/** A barometer that the altitude and the weather cannot give. */
export const barometerUnfit: CaseRule = {
  code: 'barometer-unfit',
  reads: ['baro', 'map'],
  of: ['baro', 'map'],
  check: (ruled) => {
    const found: Finding[] = [];
    for (const one of barometersOf(ruled)) {
      const here = siteThatRefuses(one, ruled.car.site);
      if (here !== undefined) found.push(findingOf(one, here));
    }
    return found;
  },
};

function findingOf(one: Measured, here: Known): Finding {
  const facts = {
    name: fullNameOf(one),
    written: writtenAs(one),
    about: spokenPressure(here.si, one),
    from: here.from,
    isHigh: one.si > here.si && one.si > leastAtSea,
  };
  return { cell: one.reading.cell, diagnostic: diagnose('barometer-unfit', one.reading.valueSpan, facts) };
}

/** What the place has on that day, where the reading cannot be that. */
export function siteThatRefuses(one: Measured, site: Site): Known | undefined {
  const here = siteByAnything(site, one.reading.when);
  if (here === undefined) return undefined;
  const width = explained(Math.max(one.halfWidth, pressureSensor), pressureStep, here.halfWidth);
  return Math.abs(one.si - here.si) > width ? here : undefined;
}

/** Pa: from here on it may be a figure for the sea level. */
const leastAtSea = 98000;
