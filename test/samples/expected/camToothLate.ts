import { usualTiming } from '../../support/signal/cylinderPressure.ts';
import type { ExpectedCase } from '../expectedCase.ts';
import { toothAngle } from '../sampleCaptures.ts';
import { kPa, percent, psi } from '../secondRoute.ts';

const degrees = (value: number): number => value / 360;

/** The captures' truth is the timing that their generator was given: all four events a tooth, 18°, later. */
export const camToothLate: ExpectedCase = {
  file: 'cam-tooth-late.diag',
  values: { 'low.even': percent((100 * 138) / 141) },
  near: {
    'valves.own.evo': { truth: degrees(usualTiming.evo - toothAngle), within: degrees(14) },
    'valves.own.ivc': { truth: degrees(usualTiming.ivc + toothAngle), within: degrees(10) },
    'valves.good.evo': { truth: degrees(usualTiming.evo), within: degrees(14) },
    'valves.good.ivo': { truth: degrees(usualTiming.ivo), within: degrees(6) },
    'valves.evo_later': { truth: degrees(toothAngle), within: degrees(4) },
    'valves.ivo_later': { truth: degrees(toothAngle), within: degrees(5) },
    'valves.evc_later': { truth: degrees(toothAngle), within: degrees(5) },
    'valves.teeth': { truth: (toothAngle * 40) / 720, within: 0.2 },
    // 2 kPa in the port, and what the valve holds back.
    'breathing.plateau': { truth: kPa(2), within: kPa(1.5) },
  },
  halfWidths: { 'low.even': (138 / 141) * Math.hypot(psi(3) / psi(138), psi(3) / psi(141)) },
  notHolding: {
    'expect: idle.vacuum in usual.vacuum': 'fails',
    'expect: cranked.compression in usual.compression': 'fails',
    'expect: evo_later < 9 °CA': 'fails',
    'expect: ivo_later < 9 °CA': 'fails',
  },
  suspects: {
    'camshaft a tooth late': 'still possible',
    'blocked exhaust': 'ruled out',
    'rings worn in all cylinders': 'ruled out',
    'one intake lobe worn': 'ruled out',
  },
  findings: [],
};
