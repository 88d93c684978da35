import type { ExpectedCase } from '../expectedCase.ts';
import { airBetween, lambdaByAtoms, type PrintedGas, percent, together } from '../secondRoute.ts';

/** E10 as CH1.93O0.033, the reference fuel of UN Regulation No. 83 (value from memory). */
const lambda = (gas: PrintedGas) => lambdaByAtoms(gas, 1.93, 0.033);
const air = (gas: PrintedGas, upstream: number) => airBetween(gas, upstream, 1.93, 0.033);

const idle: PrintedGas = { co2: 12.6, co: 0.04, o2: 3.64, hc: 10 };
const fast: PrintedGas = { co2: 14.3, co: 0.05, o2: 1.35, hc: 11 };
const halfWidth: PrintedGas = { co2: 0.3, co: 0.02, o2: 0.1, hc: 5 };

/** What each gas's half-width does to lambda, together. */
const lambdaWidth = together(
  ...(['co2', 'co', 'o2', 'hc'] as const).map((each) => {
    const by = (sign: number) => lambda({ ...idle, [each]: idle[each] + (sign * halfWidth[each]) / 1000 });
    return (by(1) - by(-1)) * 500;
  }),
);

export const airInTheExhaust: ExpectedCase = {
  file: 'air-in-the-exhaust.diag',
  values: {
    'gas.idle_lambda': lambda(idle),
    'gas.fast_lambda': lambda(fast),
    'gas.idle_pattern': 'lean, or air in the exhaust',
    'gas.unburnt': (6 * 10e-6) / (percent(12.6 + 0.04) + 6 * 10e-6),
    'agree.idle_trim': percent(2),
    'joined.idle': air(idle, 1),
    'joined.fast': air(fast, 1),
    'upstream.port_lambda': lambda({ co2: 15.2, co: 0.05, o2: 0.12, hc: 12 }),
    'upstream.port_pattern': 'burns well',
  },
  halfWidths: { 'gas.idle_lambda': lambdaWidth },
  notHolding: { 'expect: gas.idle_lambda within 0.03 of engine_says.idle.lambda_b1': 'fails' },
  suspects: {
    'air into the exhaust pipe': 'still possible',
    'lean mixture in the engine': 'ruled out',
    misfire: 'ruled out',
    "leak in the analyser's hose": 'ruled out',
    'front sensor reads too rich': 'ruled out',
  },
  findings: [],
};
