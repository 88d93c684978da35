import { column, edge, shareAbove, swing, switches } from '../capturedRoute.ts';
import type { ExpectedCase } from '../expectedCase.ts';

const window = [5, 29] as const;
const front = column('mirroring-before.csv', 'O2 B1S1 (V)', ...window);
const rear = column('mirroring-before.csv', 'O2 B1S2 (V)', ...window);
const newFront = column('mirroring-after.csv', 'O2 B1S1 (V)', ...window);
const newRear = column('mirroring-after.csv', 'O2 B1S2 (V)', ...window);

export const mirroringRearSensor: ExpectedCase = {
  file: 'mirroring-rear-sensor.diag',
  values: {
    'witness.front': {
      verdict: 'switching',
      switches: switches(front, 0.3, 0.6),
      rate: switches(front, 0.3, 0.6) / 24,
      time_rich: shareAbove(front, 0.45),
      lean_to_rich: edge(front, 0.3, 0.6),
      rich_to_lean: edge(front, 0.6, 0.3),
      minimum: Math.min(...front.volts),
      maximum: Math.max(...front.volts),
    },
    'both.cat': {
      ratio: swing(rear) / swing(front),
      mirrors: 'yes',
      front_switches: switches(front, 0.3, 0.6),
      rear_switches: switches(rear, 0.3, 0.6),
      switch_ratio: switches(rear, 0.3, 0.6) / switches(front, 0.3, 0.6),
    },
    'proof.cat': {
      ratio: swing(newRear) / swing(newFront),
      mirrors: 'no',
      front_switches: switches(newFront, 0.3, 0.6),
      rear_switches: 0,
      switch_ratio: 0,
    },
    'proof.front': {
      verdict: 'switching',
      lean_to_rich: edge(newFront, 0.3, 0.6),
      rich_to_lean: edge(newFront, 0.6, 0.3),
      time_rich: shareAbove(newFront, 0.45),
    },
  },
  halfWidths: {},
  notHolding: {
    'expect: cat.ratio < 0.3': 'fails',
    'expect: cat.switch_ratio < 0.2': 'fails',
    'expect: cat.mirrors is no': 'fails',
  },
  suspects: {
    'catalyst that stores no oxygen': 'still possible',
    'air that leaks in before the rear sensor': 'ruled out',
    'lazy front sensor': 'ruled out',
    "sensors' plugs crossed": 'ruled out',
    'catalyst that was not hot yet': 'ruled out',
  },
  findings: ['rear-copies-front'],
};
