import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { inForm, writtenAs } from '../measured.ts';
import { stateName } from '../moments.ts';
import type { MomentRule } from '../rule.ts';

const idle: readonly string[] = ['warm idle', 'idle in gear'];

/** Recirculation that is not commanded at idle and flows nevertheless. Spark ignition only: a diesel recirculates at idle. */
export const egrAtIdle: MomentRule = {
  code: 'egr-at-idle',
  of: ['egr_cmd'],
  at: idle,
  checkMoment: (moment, { car }): Diagnostic | undefined => {
    if (!car.hasThrottle || !idle.includes(stateName(moment) ?? '')) return undefined;
    const command = inForm(moment.values.egr_cmd, '%');
    const actual = inForm(moment.values.egr_actual, '%');
    const error = inForm(moment.values.egr_error, '%');
    if (command === undefined || command.si > shut) return undefined;
    const facts = { command: writtenAs(command) };
    if (actual !== undefined && actual.si - command.si > open + actual.halfWidth) {
      const said = { ...facts, name: 'egr_actual', written: writtenAs(actual) };
      return diagnose('egr-at-idle', actual.reading.valueSpan, said);
    }
    if (error === undefined || error.si <= endOfScale) return undefined;
    const said = { ...facts, name: 'egr_error', written: writtenAs(error) };
    return diagnose('egr-at-idle', error.reading.valueSpan, said);
  },
};

/** Shares: a command that means shut, an opening that a shut valve's sensor does not show, and the 99.2 % that are sent for gas that nobody asked for. */
const shut = 0.05;
const open = 0.08;
const endOfScale = 0.95;
