import { diagnose } from '../../diagnostics/diagnostic.ts';
import { standardPressure } from '../../engine/air/standardAtmosphere.ts';
import { formatQuantity } from '../../quantity/format.ts';
import type { Finding } from '../../study/types.ts';
import type { Car } from '../car.ts';
import { headerNumber } from '../headerWords.ts';
import { inForm, writtenAs } from '../measured.ts';
import { fullNameOf, type Moment } from '../moments.ts';
import type { CaseRule } from '../rule.ts';
import { spokenPressure } from '../spokenPressure.ts';
import { isSeaLevelFigure, siteByReport } from './site.ts';

/** The weather report's figure where the barometer at the car belongs, or the other way round. */
export const seaLevelForStation: CaseRule = {
  code: 'sea-level-for-station',
  reads: ['baro'],
  check: ({ car, holding }) => {
    const found: Finding[] = [];
    const written = inHeader(car);
    if (written !== undefined) found.push(written);
    for (const moment of holding('baro')) {
      const one = inReading(car, moment);
      if (one !== undefined) found.push(one);
    }
    return found;
  },
};

function inReading({ site }: Car, moment: Moment): Finding | undefined {
  const one = inForm(moment.values.baro, 'kPa');
  const here = one === undefined ? undefined : siteByReport(site, moment.when);
  if (one === undefined || here === undefined || !isSeaLevelFigure(one, site)) return undefined;
  const facts = {
    name: fullNameOf(one),
    written: writtenAs(one),
    about: spokenPressure(here.si, one),
    where: 'reading' as const,
  };
  return { cell: moment.cell, diagnostic: diagnose('sea-level-for-station', one.reading.valueSpan, facts) };
}

/** No weather brings the sea level below this, Pa, apart from the eye of a storm; the air of a high place often is. */
const leastAtSea = 95000;

function inHeader({ header, site }: Car): Finding | undefined {
  if (site.seaLevel === undefined || site.seaLevel >= leastAtSea) return undefined;
  const reading = header.values.get('site.sea_level_pressure');
  const altitude = headerNumber(header, 'site.altitude');
  if (reading?.value.kind !== 'one' || altitude === undefined) return undefined;
  const { amount, type } = reading.value;
  const here = standardPressure(altitude);
  if (typeof here !== 'number' || Math.abs(amount.si - here) > 3500) return undefined;
  const facts = {
    name: 'sea level pressure',
    written: formatQuantity(amount.si, type),
    about: spokenPressure(here, { type }),
    where: 'header' as const,
  };
  return { cell: reading.cell, diagnostic: diagnose('sea-level-for-station', reading.valueSpan, facts) };
}
