import type { ExpectedCase } from '../expectedCase.ts';

const minusSide = 0.02 + 1.93 + 0.05 + 0.01;

export const groundSideDrop: ExpectedCase = {
  file: 'ground-side-drop.diag',
  values: {
    'lost.plus_side': 0.02 + 0.24,
    'lost.engine_to_body': 1.93,
    'lost.minus_side': minusSide,
    'bad_joint.resistance': 1.93 / 148,
    'bad_joint.heat': 1.93 * 148,
  },
  halfWidths: {
    'lost.plus_side': Math.hypot(0.01, 0.01),
    'lost.minus_side': 0.02,
    // A quotient's and a product's shares add in squares.
    'bad_joint.resistance': (1.93 / 148) * Math.hypot(0.01 / 1.93, 4 / 148),
    'bad_joint.heat': 1.93 * 148 * Math.hypot(0.01 / 1.93, 4 / 148),
  },
  notHolding: {
    'expect: minus_side in limit.ground_side': 'fails',
    'expect: engine_to_body in limit.connection': 'fails',
  },
  suspects: {
    'bad joint between engine and body': 'still possible',
    'weak battery': 'ruled out',
    'plus cable or its joints': 'ruled out',
    'starter drags or is shorted': 'ruled out',
    'engine turns hard': 'ruled out',
  },
  findings: [],
};
