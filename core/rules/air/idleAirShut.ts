import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { plainUnit } from '../../quantity/unit.ts';
import { inForm, writtenAs } from '../measured.ts';
import { totalTrims, writtenTrim } from '../mixture/totalTrim.ts';
import { stateName } from '../moments.ts';
import type { MomentRule } from '../rule.ts';

/** The idle valve nearly closed while fuel is added: air comes in another way. */
export const idleAirShut: MomentRule = {
  code: 'idle-air-shut',
  of: ['iac'],
  at: ['warm idle'],
  checkMoment: (moment, { car }): Diagnostic | undefined => {
    const iac = moment.values.iac;
    if (stateName(moment) !== 'warm idle' || iac === undefined) return undefined;
    const isShut = iac.si <= (iac.unit === plainUnit.symbol ? fewSteps : nearlyShut);
    const added = isShut ? totalTrims(moment).find(({ share }) => share >= adding) : undefined;
    if (added === undefined) return undefined;
    const rpm = inForm(moment.values.rpm, 'rpm');
    const facts = {
      written: writtenAs(iac),
      trim: writtenTrim(added),
      bank: added.bank,
      metering: car.metering,
      ...(rpm === undefined ? {} : { rpm: writtenAs(rpm) }),
    };
    return diagnose('idle-air-shut', iac.reading.valueSpan, facts);
  },
};

/** Nearly shut at a normal idle speed (common practice): 5 % of the duty, or 5 steps of the motor; and a trim that adds at least this share. */
const nearlyShut = 0.05;
const fewSteps = 5;
const adding = 0.08;
