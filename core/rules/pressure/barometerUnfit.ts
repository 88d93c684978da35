import { diagnose } from '../../diagnostics/diagnostic.ts';
import type { Header } from '../../study/header.ts';
import type { Finding } from '../../study/types.ts';
import { keeping } from '../kept.ts';
import { type Measured, writtenAs } from '../measured.ts';
import { fullNameOf } from '../moments.ts';
import type { CaseRule } from '../rule.ts';
import { spokenPressure } from '../spokenPressure.ts';
import { explained, pressureSensor, pressureStep } from '../tolerance.ts';
import { barometersOf, type Known, siteBarometer } from './barometerOf.ts';

/** A barometer that the altitude and the weather cannot give. */
export const barometerUnfit: CaseRule = {
  code: 'barometer-unfit',
  of: ['baro', 'map'],
  check: (ruled) => {
    const { header } = ruled;
    const barometers = barometersOf(ruled);
    return kept(barometers, [header], () => unfitAmong(barometers, header));
  },
};

const kept = keeping<readonly Measured[], readonly Finding[]>();

function unfitAmong(barometers: readonly Measured[], header: Header): readonly Finding[] {
  return barometers.flatMap((one): readonly Finding[] => {
    const site = siteThatRefuses(one, header);
    if (site === undefined) return [];
    const facts = {
      name: fullNameOf(one),
      written: writtenAs(one),
      about: spokenPressure(site.si, one),
      from: site.from,
      isHigh: one.si > site.si && one.si > leastAtSea,
    };
    return [
      { cell: one.reading.cell, diagnostic: diagnose('barometer-unfit', one.reading.valueSpan, facts) },
    ];
  });
}

/** What the place has on that day, where the reading cannot be that. */
export function siteThatRefuses(one: Measured, header: Header): Known | undefined {
  const site = siteBarometer(header, one.reading.when, true);
  if (site === undefined) return undefined;
  const width = explained(Math.max(one.halfWidth, pressureSensor), pressureStep, site.halfWidth);
  return Math.abs(one.si - site.si) > width ? site : undefined;
}

/** Pa: from here on it may be a figure for the sea level. */
const leastAtSea = 98000;
