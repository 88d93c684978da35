import { breathing } from '../support/signal/cylinderPressure.ts';

/** A case with one chart of each kind, all synthetic; `cell` is the chart's, from 0. */
export interface ExampleChart {
  readonly name: string;
  readonly text: string;
  readonly cell: number;
}

const head = `diag: 1
case: Charts of every kind
vehicle:
  description: island rental fleet, van 14
engine:
  displacement: 2.4 L
  cylinders: 4
  firing order: 1-3-4-2
`;

export function caseWith(...cells: readonly string[]): string {
  return [head, ...cells].join('---\n');
}

const example = (name: string, ...cells: readonly string[]): ExampleChart => ({
  name,
  text: caseWith(...cells),
  cell: cells.length,
});

/** A row a sample: the time in seconds, then the channels. */
export function rows(
  heading: readonly string[],
  units: readonly string[],
  count: number,
  step: number,
  ...channels: readonly ((t: number) => number)[]
): string {
  const lines = [heading.join('  '), units.join('  ')];
  for (let i = 0; i < count; i++) {
    const t = i * step;
    lines.push([t, ...channels.map((each) => each(t))].map((each) => Number(each.toFixed(4))).join('  '));
  }
  return lines.map((line) => `  ${line}`).join('\n');
}

const front = (t: number): number =>
  0.45 + 0.38 * Math.tanh(3 * Math.sin(2 * Math.PI * 0.9 * t)) + 0.01 * Math.sin(t * 791);
const rear = (t: number): number =>
  0.68 + 0.05 * Math.sin(2 * Math.PI * 0.13 * t) + 0.004 * Math.sin(t * 613);

const readings = `readings: Three loads
as: before
when: before
chart: trims
states:
  idle: warm idle
  fast: 2500 rpm no load
  drive: cruise
table: |
  reading   idle       fast   drive   unit
  rpm       780        2500   2240    rpm
  maf       4.4        12.0   22.4    g/s
  stft_b1   +8 ± 1     +2     +1      %
  ltft_b1   +17 ± 1    +6     +3      %
  stft_b2   +6         +2     0       %
  ltft_b2   +15        +4     +3      %
`;

const sensors = `capture: Sensors before and after the catalyst
as: o2
state: 2500 rpm no load
time: time
rows: |
${rows(['time', 'front', 'rear'], ['s', 'V', 'V'], 400, 0.02, front, rear)}
channels:
  front:
    column: front
    signal: o2_b1s1
  rear:
    column: rear
    signal: o2_b1s2
`;

const drive = `capture: Up the hill
as: log
when: before
state: road test
chart: trace
time: time
rows: |
${rows(
  ['time', 'rpm', 'map', 'front', 'tp'],
  ['s', 'rpm', 'kPa', 'V', '%'],
  240,
  0.25,
  (t) => 1500 + 900 * Math.tanh((t - 20) / 6) + 8 * Math.sin(3 * t),
  (t) => 45 + 40 * Math.exp(-(((t - 24) / 8) ** 2)) + 0.6 * Math.sin(9 * t),
  front,
  (t) => 14 + 55 * Math.exp(-(((t - 23) / 8) ** 2)),
)}
channels:
  rpm: {column: rpm}
  map: {column: map}
  o2_b1s1: {column: front}
  tp: {column: tp}
`;

const compression = `readings: Compression, throttle open
as: cranked
when: before
state: cranking
chart: cylinders
values:
  compression: {1: 181 ± 3 psi, 2: 178 ± 3 psi, 3: 129 ± 3 psi, 4: 179 ± 3 psi}
`;

export function exampleCharts(): readonly ExampleChart[] {
  return [
    example('trims', readings),
    example('switching', sensors.replace('time: time', 'chart: switching\ntime: time')),
    example('trace', drive),
    example(
      'trace in one frame',
      sensors,
      `chart: Front and rear
kind: trace
plot:
  - {plot: o2.front, label: before the catalyst}
  - {plot: o2.rear, label: behind the catalyst}
mark:
  - {mark: 0.2 .. 0.8 V, label: usual swing}
  - {mark: 3 s, label: throttle opened}
`,
    ),
    example('cylinders', compression),
    example(
      'cylinders, before and after',
      compression,
      compression
        .replace('cranked', 'again')
        .replace('before', 'after')
        .replace('129', '176')
        .replaceAll(' ± 3', ''),
      `chart: Compression before and after the valve job
kind: cylinders
plot:
  - {plot: cranked.compression, label: before}
  - {plot: again.compression, label: after}
mark:
  - {mark: at least 142 psi, label: limit}
`,
    ),
    example(
      'scatter',
      drive,
      `chart: Pressure follows the throttle
kind: scatter
plot:
  - {plot: log.map, against: log.tp}
mark:
  - {mark: at most 100 kPa absolute, label: no boost}
`,
    ),
    example(
      'curve',
      `reference: Coolant sensor
as: sensor
values:
  ohms: [[0 °C, 5.6 kΩ], [20 °C, 2.45 kΩ], [40 °C, 1.15 kΩ], [60 °C, 0.59 kΩ], [80 °C, 0.32 kΩ], [100 °C, 0.18 kΩ]]
`,
      `readings: Warm, at the plug
as: warm
values:
  ect: 63 ± 2 °C
  sensor_resistance: 0.93 ± 0.02 kΩ
`,
      `chart: The sensor against its curve
kind: curve
plot:
  - {plot: sensor.ohms, label: coolant sensor}
  - {plot: warm.sensor_resistance, against: warm.ect, label: measured}
`,
    ),
    example(
      'compare',
      pull('healthy', 0.31, 180),
      pull('suspect', 0.44, 128),
      `chart: The starter current, known good and suspect
kind: compare
plot:
  - {plot: healthy.current, label: known good}
  - {plot: suspect.current, label: suspect}
`,
    ),
    example('crank', inCylinder.replace('time: time', 'chart: crank\ntime: time')),
    example(
      'crank with marks of its own',
      inCylinder,
      `chart: Valve events as the maker gives them
kind: crank
plot:
  - {plot: one.pressure, against: crank_angle(one.pressure), label: cylinder 1}
mark:
  - {mark: 50 °BBDC, label: exhaust opens}
  - {mark: 14 °BTDC, label: intake opens}
  - {mark: 12 °ATDC, label: exhaust closes}
  - {mark: 48 °ABDC, label: intake closes}
  - {mark: at most 3 kPa gauge, label: back pressure}
`,
    ),
  ];
}

/** A starter's current (synthetic): the inrush, then a hump for each cylinder. */
function pull(as: string, start: number, third: number): string {
  const current = (t: number): number => {
    const since = t - start;
    if (since < 0) return 0;
    const at = since / 0.15;
    const peak = Math.floor(at) % 4 === 2 ? third : 180;
    return 420 * Math.exp(-since / 0.05) + 60 + (peak - 60) * Math.sin(Math.PI * (at % 1)) ** 2;
  };
  return `capture: Starter current, ${as}
as: ${as}
state: cranking
time: time
rows: |
${rows(['time', 'current'], ['s', 'A'], 420, 0.005, current)}
channels:
  current: {column: current}
`;
}

/** The pressure in a cylinder that does not fire (synthetic): exhaust opens 50° before and intake closes 48° after bottom dead centre. */
const breath = breathing({ rpm: 800, intake: -66, exhaust: 2, leak: 0.0004, seconds: 0.64, perSecond: 2500 });

const inCylinder = `capture: Cylinder 1, idling, plug out
as: one
state: warm idle
time: time
rows: |
${rows(
  ['time', 'pressure'],
  ['s', 'kPa'],
  breath.pressure.samples.length,
  1 / 2500,
  (t) => breath.pressure.samples[Math.round(t * 2500)] ?? 0,
)}
channels:
  pressure: {column: pressure, unit: kPa gauge}
`;
