import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { inForm, writtenAs } from '../measured.ts';
import { fullNameOf, stateName } from '../moments.ts';
import type { MomentRule } from '../rule.ts';
import { steadyStates } from '../steadyStates.ts';
import { explained, temperatureSensor } from '../tolerance.ts';

/** States in which fresh air has carried off the heat of a soak. */
const running: readonly string[] = [...steadyStates, 'wide open throttle'];

/** Intake air hotter than the coolant of a warm running engine, with no compressor and no hot soak to explain it. */
export const chargeHotterThanCoolant: MomentRule = {
  code: 'charge-hotter-than-coolant',
  of: ['iat'],
  at: running,
  checkMoment: (moment, { car }): Diagnostic | undefined => {
    const iat = inForm(moment.values.iat, '°C');
    const ect = inForm(moment.values.ect, '°C');
    if (iat === undefined || ect === undefined) return undefined;
    if (iat.si <= ect.si || !car.isUnboosted || !running.includes(stateName(moment) ?? '')) return undefined;
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
