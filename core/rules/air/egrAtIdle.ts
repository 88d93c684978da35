import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { hasThrottle } from '../engineFacts.ts';
import { writtenAs } from '../measured.ts';
import { inForm, stateName } from '../moments.ts';
import type { CellRule } from '../rule.ts';

/** Recirculation that is not commanded at idle and flows nevertheless. Spark ignition only: a diesel recirculates at idle. */
export const egrAtIdle: CellRule = {
  code: 'egr-at-idle',
  checkCell: ({ header, moments }) =>
    moments.flatMap((moment): readonly Diagnostic[] => {
      const state = stateName(moment);
      if ((state !== 'warm idle' && state !== 'idle in gear') || !hasThrottle(header)) return [];
      const command = inForm(moment, 'egr_cmd', '%');
      const actual = inForm(moment, 'egr_actual', '%');
      const error = inForm(moment, 'egr_error', '%');
      if (command === undefined || command.si > shut) return [];
      const facts = { command: writtenAs(command) };
      if (actual !== undefined && actual.si - command.si > open + actual.halfWidth)
        return [
          diagnose('egr-at-idle', actual.reading.valueSpan, {
            ...facts,
            name: 'egr_actual',
            written: writtenAs(actual),
          }),
        ];
      if (error !== undefined && error.si > endOfScale)
        return [
          diagnose('egr-at-idle', error.reading.valueSpan, {
            ...facts,
            name: 'egr_error',
            written: writtenAs(error),
          }),
        ];
      return [];
    }),
};

/** Shares: a command that means shut, an opening that a shut valve's sensor does not show, and the 99.2 % that are sent for gas that nobody asked for. */
const shut = 0.05;
const open = 0.08;
const endOfScale = 0.95;
