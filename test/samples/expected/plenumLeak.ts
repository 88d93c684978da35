import type { ExpectedCase } from '../expectedCase.ts';
import { airOf, trimsOf } from '../logRoute.ts';
import { feet, gramsPerSecond, inHg, percent, station, together } from '../secondRoute.ts';

const grams = { idle: (4.4 * (8 + 17)) / 100, fast: (12.0 * (2 + 6)) / 100, drive: (22.4 * (1 + 3)) / 100 };

export const plenumLeak: ExpectedCase = {
  file: 'plenum-leak.diag',
  values: {
    station: station(inHg(29.88), feet(35)),
    baro_seen: inHg(13.0 + 16.7),
    'trims.idle': percent(8 + 17),
    'trims.fast': percent(2 + 6),
    'trims.drive': percent(1 + 3),
    'hole.idle_air': gramsPerSecond(grams.idle),
    'hole.fast_air': gramsPerSecond(grams.fast),
    'hole.drive_air': gramsPerSecond(grams.drive),
    'hole.most': gramsPerSecond(Math.max(grams.idle, grams.fast, grams.drive)),
    'hole.least': gramsPerSecond(Math.min(grams.idle, grams.fast, grams.drive)),
    'drive.trim': trimsOf('van-14-before.csv'),
    'drive.air': airOf('van-14-before.csv'),
    'drive.pattern': 'same grams',
    'proof.trim': trimsOf('van-14-after.csv'),
  },
  halfWidths: {
    'koeo.map': inHg(0.15),
    'gauged.vacuum': inHg(0.2),
    // The table states none for the pressure at idle, so the gauge's is all there is.
    baro_seen: inHg(together(0.2)),
  },
  notHolding: {
    'expect: idle between -10 % and 10 %': 'fails',
    'expect: before.idle.iac in spec.iac': 'fails',
    'expect: gauged.vacuum in spec.vacuum': 'fails',
  },
  suspects: {
    'air past the meter': 'still possible',
    'weak fuel supply': 'ruled out',
    'air-flow meter that reads low': 'ruled out',
    'throttle stop turned, so that metered air passes the plate': 'ruled out',
    'leaking brake booster': 'ruled out',
  },
  findings: [],
};
