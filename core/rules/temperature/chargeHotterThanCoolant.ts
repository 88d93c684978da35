import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { isUnboosted } from '../engineFacts.ts';
import { writtenAs } from '../measured.ts';
import { fullNameOf, inForm, stateName } from '../moments.ts';
import type { MomentRule } from '../rule.ts';
import { explained, temperatureSensor } from '../tolerance.ts';

/** Intake air hotter than the coolant of a warm running engine, with no compressor and no hot soak to explain it. */
export const chargeHotterThanCoolant: MomentRule = {
  code: 'charge-hotter-than-coolant',
  of: ['iat'],
  checkMoment: (moment, { header }): Diagnostic | undefined => {
    if (!running.has(stateName(moment) ?? '') || !isUnboosted(header)) return undefined;
    const iat = inForm(moment, 'iat', '°C');
    const ect = inForm(moment, 'ect', '°C');
    if (iat === undefined || ect === undefined) return undefined;
    const width = explained(
      Math.max(iat.halfWidth, temperatureSensor),
      Math.max(ect.halfWidth, temperatureSensor),
    );
    if (iat.si - ect.si <= width) return undefined;
    const facts = {
      charge: fullNameOf(iat),
      written: writtenAs(iat),
      coolant: fullNameOf(ect),
      coolantWritten: writtenAs(ect),
    };
    return diagnose('charge-hotter-than-coolant', iat.reading.valueSpan, facts);
  },
};

/** States in which fresh air has carried off the heat of a soak. */
const running: ReadonlySet<string> = new Set([
  'warm idle',
  'idle in gear',
  '1500 rpm no load',
  '2500 rpm no load',
  'light cruise',
  'cruise',
  'heavy load',
  'wide open throttle',
]);
