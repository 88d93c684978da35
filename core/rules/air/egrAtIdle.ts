import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import type { Car } from '../car.ts';
import { inForm, type Measured, writtenAs } from '../measured.ts';
import { type Moment, stateName } from '../moments.ts';
import type { MomentRule } from '../rule.ts';

const idle: readonly string[] = ['warm idle', 'idle in gear'];

/** Recirculation that is not commanded at idle and flows nevertheless, or is far open while nobody read the command. Spark ignition only: a diesel recirculates at idle. */
export const egrAtIdle: MomentRule = {
  code: 'egr-at-idle',
  of: ['egr_cmd', 'egr_actual'],
  at: idle,
  checkMoment: (moment, { car }): Diagnostic | undefined => {
    if (!car.hasThrottle || !idle.includes(stateName(moment) ?? '')) return undefined;
    const command = inForm(moment.values.egr_cmd, '%');
    const actual = inForm(moment.values.egr_actual, '%');
    const error = inForm(moment.values.egr_error, '%');
    if (command === undefined) return withoutCommand(actual, moment, car);
    if (command.si > shut) return undefined;
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

/** An engine of which the header does not say what it burns shows by a trim or a throttled manifold that it is no diesel. */
function withoutCommand(
  actual: Measured | undefined,
  { values }: Moment,
  { fuel }: Car,
): Diagnostic | undefined {
  if (actual === undefined || actual.si - actual.halfWidth < farOpen) return undefined;
  const map = inForm(values.map, 'kPa');
  const isSpark = fuel !== undefined || (values.stft_b1 ?? values.ltft_b1) !== undefined;
  if (!isSpark && (map === undefined || map.si > throttled)) return undefined;
  const said = { name: 'egr_actual', written: writtenAs(actual) };
  return diagnose('egr-at-idle', actual.reading.valueSpan, said);
}

/** A share that no sensor of a shut valve shows, and Pa that no diesel idles at (common practice). */
const farOpen = 0.25;
const throttled = 60_000;

/** Shares: a command that means shut, an opening that a shut valve's sensor does not show, and the 99.2 % that are sent for gas that nobody asked for. */
const shut = 0.05;
const open = 0.08;
const endOfScale = 0.95;
