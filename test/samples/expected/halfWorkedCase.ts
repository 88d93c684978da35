import type { ExpectedCase } from '../expectedCase.ts';
import { inHg, percent } from '../secondRoute.ts';

export const halfWorkedCase: ExpectedCase = {
  file: 'half-worked-case.diag',
  values: {
    even: percent((100 * 128) / 133),
    trim: percent(-1 + 2),
  },
  halfWidths: {
    'gauged.vacuum': inHg(0.5),
    even: (128 / 133) * Math.hypot(3 / 128, 3 / 133),
  },
  // 15.8 ± 0.5 against 16, and 128 ± 3 against 130: the limit lies within the instrument's reach.
  notHolding: {
    'expect: gauged.vacuum in spec.vacuum': 'too close to call',
    'expect: min(dry.compression) in spec.compression': 'too close to call',
  },
  suspects: {
    'camshaft late, chain worn': 'still possible',
    'rings worn': 'not tested',
    'blocked exhaust': 'not tested',
    'air past the throttle': 'ruled out',
  },
  findings: [],
};
