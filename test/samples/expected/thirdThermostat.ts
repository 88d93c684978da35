import type { ExpectedCase } from '../expectedCase.ts';
import { together } from '../secondRoute.ts';

/**
 * The temperature of a sensor of 10 kΩ by the polynomial that its component guide prints beside the table
 * ("Temperature Resistance Curves", Rev C, November 2014, material type 1), K.
 */
function byGuide(ohm: number): number {
  const ln = Math.log(ohm / 1e4);
  return 1 / (3.3539438e-3 + 2.5646095e-4 * ln + 2.5158166e-6 * ln ** 2 + 1.0503069e-7 * ln ** 3);
}

/** The resistance at a temperature by Steinhart and Hart through 20, 25 and 40 °C of the table (solved by Cramer's rule), by halving. */
function ohmAt(kelvin: number): number {
  const points = [
    [293.15, 12490],
    [298.15, 10000],
    [313.15, 5325],
  ] as const;
  const rows = points.map(([, ohm]) => [1, Math.log(ohm), Math.log(ohm) ** 3]);
  const right = points.map(([t]) => 1 / t);
  const determinant = ([a = [], b = [], c = []]: readonly number[][]): number => {
    const [a1 = 0, a2 = 0, a3 = 0] = a;
    const [b1 = 0, b2 = 0, b3 = 0] = b;
    const [c1 = 0, c2 = 0, c3 = 0] = c;
    return a1 * (b2 * c3 - b3 * c2) - a2 * (b1 * c3 - b3 * c1) + a3 * (b1 * c2 - b2 * c1);
  };
  const [a = 0, b = 0, c = 0] = [0, 1, 2].map(
    (column) => determinant(rows.map((row, at) => row.with(column, right[at] ?? 0))) / determinant(rows),
  );
  let [low, high] = [5325, 12490];
  for (let step = 0; step < 60; step++) {
    const ohm = (low + high) / 2;
    const ln = Math.log(ohm);
    if (1 / (a + b * ln + c * ln ** 3) > kelvin) low = ohm;
    else high = ohm;
  }
  return (low + high) / 2;
}

/** The current through pull-up, sensor and pin is one: ohms share as volts do. */
const left = 5 - 1.84;
const seen = (2200 * 1.84) / left;
const sensor = (2200 * (1.84 - 0.6)) / left;
const pin = (2200 * 0.6) / left;
const cold = ohmAt(273.15 + 24);

export const thirdThermostat: ExpectedCase = {
  file: 'third-thermostat.diag',
  values: {
    'truth.missing': 92 - 79,
    'circuit.seen': seen,
    'circuit.shown': byGuide(seen),
    'circuit.left': left,
    'circuit.sensor': sensor,
    'circuit.real': byGuide(sensor),
    'circuit.pin': pin,
    'circuit.state': 'between the ends',
    'cold.sensor': cold,
    'cold.shown': byGuide(cold + pin),
    alone: byGuide(872),
  },
  halfWidths: {
    'truth.missing': together(1, 1),
    'circuit.left': together(0.01, 0.01),
    // dR/dU = 2200·5/3.16² at the pin, 2200·1.84/3.16² at the supply.
    'circuit.seen': together(((2200 * 5) / left ** 2) * 0.01, ((2200 * 1.84) / left ** 2) * 0.01),
  },
  notHolding: { 'expect: hot.ect within 4 °C of touched.housing': 'fails' },
  suspects: {
    "resistance in the sensor's ground": 'still possible',
    'thermostat stays open': 'ruled out',
    'sensor has drifted': 'ruled out',
    'resistance in the signal wire': 'ruled out',
    'computer reads its pin wrong': 'ruled out',
  },
  findings: [],
};
