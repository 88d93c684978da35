import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { inForm, writtenAs } from '../measured.ts';
import { stateName } from '../moments.ts';
import type { MomentRule } from '../rule.ts';

const steady: readonly string[] = [
  '1500 rpm no load',
  '2500 rpm no load',
  'light cruise',
  'cruise',
  'heavy load',
];

/** Recirculation far open with a command that means shut, in a state that holds still; at idle a rule of its own looks closer. */
export const egrNotCommanded: MomentRule = {
  code: 'egr-not-commanded',
  of: ['egr_cmd'],
  at: steady,
  checkMoment: (moment): Diagnostic | undefined => {
    if (!steady.includes(stateName(moment) ?? '')) return undefined;
    const command = inForm(moment.values.egr_cmd, '%');
    const actual = inForm(moment.values.egr_actual, '%');
    if (command === undefined || actual === undefined || command.si > shut) return undefined;
    if (actual.si - actual.halfWidth < open) return undefined;
    const facts = {
      name: actual.name,
      written: writtenAs(actual),
      command: writtenAs(command),
      state: stateName(moment) ?? '',
    };
    return diagnose('egr-not-commanded', actual.reading.valueSpan, facts);
  },
};

/** Shares: a command that means shut, and an opening that no valve has left from a moment before (common practice). */
const shut = 0.03;
const open = 0.25;
