import type { ExpectedCase } from '../expectedCase.ts';
import {
  altitude,
  fahrenheit,
  feet,
  filling,
  gramsPerSecond,
  inHg,
  kPa,
  percent,
  station,
} from '../secondRoute.ts';

const full = { rpm: 3000, litres: 1.6, pascal: kPa(101), kelvin: fahrenheit(80) };
const trueFlow = (34.3 * 101) / 88;

export const mountainBarometer: ExpectedCase = {
  file: 'mountain-barometer.diag',
  values: {
    'weather.station': station(inHg(30.05), feet(35)),
    'weather.shown_altitude': altitude(kPa(88)),
    'trims.idle': percent(1 + 14),
    'trims.fast': percent(2 + 13),
    'trims.drive': percent(0 + 15),
    missing: 101 / 88 - 1,
    'breathing.counted': filling({ maf: 34.3, ...full }),
    'breathing.true_flow': gramsPerSecond(trueFlow),
    'breathing.corrected': filling({ maf: trueFlow, ...full }),
    // On the straight line through 0.79 V, 20 kPa and 4.50 V, 105 kPa.
    sent: kPa(20 + ((3.76 - 0.79) / (4.5 - 0.79)) * (105 - 20)),
  },
  halfWidths: {
    'koeo.baro': kPa(0.5),
    // The manifold's pressure stands above and below the line and cancels, with its ± too; the barometer's remains.
    'breathing.corrected': filling({ maf: trueFlow, ...full }) * (0.5 / 88),
    sent: kPa((0.02 * 85) / 3.71),
  },
  notHolding: {
    'expect: koeo.baro within 2 kPa of koeo.map': 'fails',
    'expect: idle between -10 % and 10 %': 'fails',
  },
  suspects: {
    'barometric sensor shifted': 'still possible',
    'air past the meter': 'ruled out',
    'weak fuel supply': 'ruled out',
    'resistance in the signal wire': 'ruled out',
    'port of the sensor blocked': 'ruled out',
  },
  findings: ['barometer-unfit'],
};
