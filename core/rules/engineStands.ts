import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { engineStates } from '../signals/states.ts';
import { inForm, writtenAs } from './measured.ts';
import type { MomentRule } from './rule.ts';

/** Speed, or vacuum on the gauge, at a state in which the engine stands. After shut-down the vacuum fades only slowly, so it is left alone there. */
export const engineStands: MomentRule = {
  code: 'engine-stands',
  of: ['rpm', 'vacuum'],
  at: engineStates.filter(({ engine }) => engine === 'off').map(({ name }) => name),
  checkMoment: (moment): Diagnostic | undefined => {
    const state = moment.state?.known;
    if (state?.engine !== 'off') return undefined;
    const rpm = inForm(moment.values.rpm, 'rpm');
    const vacuum = state.name === 'key on engine off' ? inForm(moment.values.vacuum, 'inHg') : undefined;
    for (const [one, most] of [[rpm, stillTurns] as const, [vacuum, stillVacuum] as const]) {
      if (one === undefined || one.si - one.halfWidth <= most) continue;
      const facts = { name: one.name, written: writtenAs(one), state: state.name };
      return diagnose('engine-stands', one.reading.valueSpan, facts);
    }
    return undefined;
  },
};

/** In turns a second: a starter turns an engine at 130 rpm and more (common practice), and noise on a sensor may read as some. */
export const stillTurns = 50 / 60;
/** In Pa: 1 inHg, what gauges are off zero (common practice). */
const stillVacuum = 3386.4;
