import { diagnose } from '../../diagnostics/diagnostic.ts';
import { standardPressure } from '../../engine/air/standardAtmosphere.ts';
import { formatQuantity } from '../../quantity/format.ts';
import type { Header } from '../../study/header.ts';
import type { Finding } from '../../study/types.ts';
import { headerNumber } from '../engineFacts.ts';
import { keeping } from '../kept.ts';
import { writtenAs } from '../measured.ts';
import { fullNameOf, inForm, type Moment } from '../moments.ts';
import type { CaseRule } from '../rule.ts';
import { spokenPressure } from '../spokenPressure.ts';
import { isSeaLevelFigure, siteBarometer } from './barometerOf.ts';

/** The weather report's figure where the barometer at the car belongs, or the other way round. */
export const seaLevelForStation: CaseRule = {
  code: 'sea-level-for-station',
  check: ({ header, holding }) => [
    ...kept(header, [], () => inHeader(header)),
    ...inReadings(header, holding('baro')),
  ],
};

const kept = keeping<Header, readonly Finding[]>();

function inReadings(header: Header, moments: readonly Moment[]): readonly Finding[] {
  return moments.flatMap((moment): readonly Finding[] => {
    const one = inForm(moment, 'baro', 'kPa');
    const site = one === undefined ? undefined : siteBarometer(header, moment.when, false);
    if (one === undefined || site === undefined || !isSeaLevelFigure(one, header)) return [];
    const facts = {
      name: fullNameOf(one),
      written: writtenAs(one),
      about: spokenPressure(site.si, one),
      where: 'reading' as const,
    };
    return [
      { cell: moment.cell, diagnostic: diagnose('sea-level-for-station', one.reading.valueSpan, facts) },
    ];
  });
}

/** No weather brings the sea level below this, Pa, apart from the eye of a storm; the air of a high place often is. */
const leastAtSea = 95000;

function inHeader(header: Header): readonly Finding[] {
  const reading = header.values.get('site.sea_level_pressure');
  const altitude = headerNumber(header, 'site.altitude');
  if (reading?.value.kind !== 'one' || altitude === undefined) return [];
  const { amount, type } = reading.value;
  const here = standardPressure(altitude);
  if (typeof here !== 'number' || amount.si >= leastAtSea || Math.abs(amount.si - here) > 3500) return [];
  const facts = {
    name: 'sea level pressure',
    written: formatQuantity(amount.si, type),
    about: spokenPressure(here, { type }),
    where: 'header' as const,
  };
  return [{ cell: reading.cell, diagnostic: diagnose('sea-level-for-station', reading.valueSpan, facts) }];
}
