import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { inForm, writtenAs } from '../measured.ts';
import { fullNameOf } from '../moments.ts';
import type { MomentRule } from '../rule.ts';

/** Intake air far colder than the air outside, on the road. */
export const chargeColderThanOutside: MomentRule = {
  code: 'charge-colder-than-outside',
  of: ['ambient'],
  at: ['light cruise', 'cruise', 'heavy load', 'wide open throttle'],
  checkMoment: (moment): Diagnostic | undefined => {
    const iat = inForm(moment.values.iat, '°C');
    const ambient = inForm(moment.values.ambient, '°C');
    if (iat === undefined || ambient === undefined) return undefined;
    if (ambient.si - iat.si <= far + iat.halfWidth + ambient.halfWidth) return undefined;
    const facts = {
      charge: fullNameOf(iat),
      written: writtenAs(iat),
      outside: fullNameOf(ambient),
      outsideWritten: writtenAs(ambient),
    };
    return diagnose('charge-colder-than-outside', iat.reading.valueSpan, facts);
  },
};

/** K: two sensors, and an outside one that still shows the sun of a stop (common practice). */
const far = 12;
