import type { FunctionRow, ResultField } from '../../expression/functionRow.ts';
import type { Absent } from '../../expression/value.ts';
import { voltage, volts } from '../arguments.ts';
import { isRecorded } from '../recorded.ts';
import { type Given, numberOr, type Readings, recordIn, severalOf } from '../several.ts';
import { catalystReading } from './catalyst.ts';
import { notInVolts } from './rearToFrontRow.ts';
import { sensorKind, switchingKind } from './sensorParameter.ts';

const fields: readonly ResultField[] = [
  { name: 'ratio', meaning: 'rear amplitude over front amplitude, peak to peak', unit: '1' },
  { name: 'mirrors', meaning: 'whether the rear mirrors the front: yes or no', unit: 'text' },
  { name: 'correlation', meaning: 'how alike they move when the rear is moved back by the lag', unit: '1' },
  { name: 'lag', meaning: 'by how much the rear comes later', unit: 'ms' },
  { name: 'front_switches', meaning: 'switches of the front', unit: '1' },
  { name: 'rear_switches', meaning: 'switches of the rear', unit: '1' },
  { name: 'switch_ratio', meaning: 'rear switches over front switches', unit: '1' },
  { name: 'front_arc', meaning: 'the front’s way up and down', unit: 'V', like: 'front' },
  { name: 'rear_arc', meaning: 'the rear’s way up and down', unit: 'V', like: 'rear' },
  { name: 'arc_ratio', meaning: 'rear way over front way', unit: '1' },
];

export const catalystRow: FunctionRow = {
  form: 'whole',
  name: 'catalyst',
  family: 'oxygen',
  summary:
    'Lays the sensors before and behind the catalyst beside each other: amplitude, switches, way, and rhythm.',
  parameters: [
    volts('front', 'voltage before the catalyst'),
    volts('rear', 'voltage behind the catalyst'),
    sensorKind,
    voltage('level', 'switching level', '0.45 V'),
    voltage(
      'noise',
      'turns smaller than this are no way up or down, nor smaller than six times the noise that the samples show',
      '0.02 V',
    ),
    plain('mirror_ratio', 'amplitude ratio from which on the rear mirrors the front', '0.7'),
    plain('mirror_correlation', 'correlation from which on it does', '0.7'),
  ],
  result: { kind: 'fields', fields },
  formula:
    'ratios rear/front: of peak to peak, of switches through level ± 0.15 V, of Σ|turn to turn|\ns = median |x₋₁ − 2·x + x₊₁|/(0.6745·√6), where the record is fast enough for the front to hardly bend in it\nmirrors: ratio and correlation at the best lag from 0 to 2 s both reach their limits',
  where: [
    ['s', 'noise that the samples show', 'V'],
    ['x₋₁', 'the sample before', 'V'],
    ['x', 'a sample', 'V'],
    ['x₊₁', 'the sample behind', 'V'],
  ],
  range: 'closed loop, steady speed, warm catalyst, 10 s or more; both sensors switch in volts',
  errors: [
    'There are no samples.',
    'The front sensor does not move.',
    'The front sensor is a wide-range one.',
    'The record has a gap.',
  ],
  source:
    'two-sensor method: Clemmens, Sabourin and Rao, SAE 900062; Koupal, Sabourin and Clemmens, SAE 910561. Noise: Gasser, Sroka and Jennen-Steinmetz, Biometrika 73 (1986) 625 (from memory). The limits for mirroring are common practice; the maker’s come first',
  example: { expression: 'catalyst(o2.front, o2.rear).ratio', result: '0.1' },
  evaluate: severalOf(fields, read),
};

function plain(name: string, meaning: string, otherwise: string) {
  return { name, takes: { what: 'quantity', unit: '1' }, meaning, otherwise } as const;
}

function read([x, y, sensor, level, noise, mirrorRatio, mirrorCorrelation]: readonly Given[]):
  | Readings
  | Absent {
  const kind = switchingKind(sensor, notInVolts);
  if (typeof kind === 'object') return kind;
  const front = recordIn(x);
  const rear = recordIn(y);
  if (!isRecorded(front)) return front;
  if (!isRecorded(rear)) return rear;
  const found = catalystReading(front, rear, {
    level: numberOr(level, Number.NaN),
    noise: numberOr(noise, 0),
    mirrorRatio: numberOr(mirrorRatio, Number.NaN),
    mirrorCorrelation: numberOr(mirrorCorrelation, Number.NaN),
  });
  const { mirrors } = found;
  return {
    ratio: found.ratio,
    mirrors: typeof mirrors === 'boolean' ? (mirrors ? 'yes' : 'no') : mirrors,
    correlation: found.correlation,
    lag: found.lag,
    front_switches: found.frontSwitches,
    rear_switches: found.rearSwitches,
    switch_ratio: found.switchRatio,
    front_arc: found.frontArc,
    rear_arc: found.rearArc,
    arc_ratio: found.arcRatio,
  };
}
