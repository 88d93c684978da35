import type { ExpectedCase } from '../expectedCase.ts';
import { altitude, filling, inHg, kPa, percent, psi, standard, station, together } from '../secondRoute.ts';

const baro = kPa(79);
const standardLoss = 101325 - standard(2100);
/** LOAD_PCT of SAE J1979: flow over the peak at 25 °C and 29.92 inHg, brought to this air. */
const reached = 34.3 / (51.2 * (baro / inHg(29.92)) * Math.sqrt(298 / (22 + 273)));
const atTheSea = (reading: number) => psi((reading * 101.325) / 79);

export const mountainRoad: ExpectedCase = {
  file: 'mountain-road.diag',
  values: {
    'air.station': station(inHg(30.1), 2100),
    'air.by_rule': inHg(30.1 - 2100 / 304.8),
    'air.shown_altitude': altitude(baro),
    'worn.at_the_sea': { 1: atTheSea(146), 2: atTheSea(144), 3: atTheSea(147), 4: atTheSea(145) },
    'worn.evenness': 144 / 147,
    'worn.least_vacuum': inHg(17) - standardLoss,
    'worn.most_vacuum': inHg(21) - standardLoss,
    'full.reached': reached,
    'full.lost': kPa(79 - 66),
    'full.cylinders_fill': filling({ maf: 34.3, rpm: 3000, litres: 2, pascal: kPa(66), kelvin: 295.15 }),
    'full.trim': percent(1),
    'split.throttle_loss': kPa(79 - 66 - 11.2),
    'split.exhaust_flows': 'free',
  },
  halfWidths: {
    'full.lost': together(kPa(0.5), kPa(0.5)),
    'full.reached': (reached * 0.5) / 79,
    'split.throttle_loss': together(kPa(0.5), kPa(0.5), kPa(0.2)),
  },
  notHolding: {
    'expect: reached > 95 %': 'fails',
    'expect: lost < 5 kPa': 'fails',
  },
  suspects: {
    'intake in front of the throttle blocked': 'still possible',
    'altitude alone': 'ruled out',
    'engine worn': 'ruled out',
    'exhaust blocked': 'ruled out',
    'weak fuel supply': 'ruled out',
  },
  findings: [],
};
