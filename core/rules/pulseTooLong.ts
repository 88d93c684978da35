import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { formatNumber } from '../quantity/format.ts';
import { inForm, writtenAs } from './measured.ts';
import type { MomentRule } from './rule.ts';

/** An injector pulse longer than an engine cycle. */
export const pulseTooLong: MomentRule = {
  code: 'pulse-too-long',
  of: ['pulse_width'],
  checkMoment: (moment, { car: { isTwoStroke } }): Diagnostic | undefined => {
    const pulse = inForm(moment.values.pulse_width, 'ms');
    const rpm = inForm(moment.values.rpm, 'rpm');
    if (pulse === undefined || rpm === undefined || !(rpm.si > 0)) return undefined;
    const cycle = (isTwoStroke ? 1 : 2) / rpm.si;
    // A scan shows speed and pulse of slightly different moments.
    if (pulse.si - pulse.halfWidth <= (1 + apart) * cycle) return undefined;
    const facts = {
      name: pulse.name,
      written: writtenAs(pulse),
      rpm: writtenAs(rpm),
      cycle: `${formatNumber(Number((cycle * 1000).toPrecision(3)))} ms`,
    };
    return diagnose('pulse-too-long', pulse.reading.valueSpan, facts);
  },
};

const apart = 0.1;
