import type { ExpectedCase } from '../expectedCase.ts';
import { mm, percent } from '../secondRoute.ts';

export const wornIntakeLobe: ExpectedCase = {
  file: 'worn-intake-lobe.diag',
  values: {
    'breathing.snap_share': { 1: 146 / 178, 2: 148 / 181, 3: 88 / 172, 4: 145 / 179 },
    'breathing.even': percent((100 * 88) / 148),
    // Cranking 98 % of the best, running 35 % and snap 82 % of it: all as usual (common practice).
    'each.first': 'seals and breathes',
    // Cranking 95 % of the best, running 28.5 %, snap 51 %, where 60 % is the least that is usual.
    'each.third': 'cannot fill',
    'lobes.lost': mm(9.42 - 6.21),
  },
  halfWidths: { 'lobes.lost': mm(Math.hypot(0.05, 0.05)) },
  notHolding: {
    'expect: snap_share > 0.65': 'fails',
    'expect: even >= 75 %': 'fails',
    'expect: lift.intake_lift in spec.intake_lift': 'fails',
  },
  suspects: {
    'intake lobe worn': 'still possible',
    'valve or rings leak': 'ruled out',
    'ignition or injector': 'ruled out',
    'blocked exhaust': 'ruled out',
  },
  findings: [],
};
