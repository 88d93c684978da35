import type { Chance } from './chance.ts';
import type { Engine } from './engine.ts';
import { faults, type OneFault } from './faults.ts';
import type { Instruments } from './instruments.ts';
import type { Point } from './operation.ts';
import type { OxygenTrace } from './oxygenTrace.ts';
import { compressionGauge } from './physics.ts';
import type { Shown } from './readings.ts';
import { workshopText } from './workshopText.ts';

/** Everything that was measured on one car, ready to be written down. */
export interface Measurements {
  readonly engine: Engine;
  readonly instruments: Instruments;
  readonly points: readonly Point[];
  readonly scans: readonly Shown[];
  readonly gas: Shown | undefined;
  readonly trace: OxygenTrace | undefined;
}

/** How this author writes: units, and what is written in one cell. */
interface Hand {
  readonly pressure: 'kPa' | 'inHg';
  readonly temperature: '°C' | '°F';
  readonly statesGauge: boolean;
}

const pascals = { kPa: 1000, inHg: 3386.389 } as const;

/** Writes the case as a technician would; a slip of the hand is made here. */
export function caseText(measurements: Measurements, fault: OneFault | undefined, chance: Chance): string {
  const hand: Hand = {
    pressure: chance.oneOf(['kPa', 'inHg']),
    temperature: chance.oneOf(['°C', '°F']),
    statesGauge: chance.happens(0.5),
  };
  const knowsWeather = chance.happens(0.6) || fault?.name === 'weather report taken for the barometer';
  return [
    header(measurements, hand, fault, knowsWeather),
    soak(measurements, hand, fault, chance),
    keyOn(measurements, hand, fault, chance),
    loads(measurements, hand, fault, chance),
    gauge(measurements, hand, fault, chance),
    gas(measurements),
    compression(measurements, fault, chance),
    trace(measurements),
    fault === undefined && chance.happens(0.3) ? anotherDay(measurements, hand, chance) : '',
    ...workshopText(measurements, fault, chance),
  ]
    .filter((cell) => cell !== '')
    .join('---\n');
}

function header(
  { engine }: Measurements,
  hand: Hand,
  fault: OneFault | undefined,
  knowsWeather: boolean,
): string {
  const litres = (
    1000 *
    engine.displacement *
    (fault?.name.startsWith('displacement') === true ? fault.size : 1)
  ).toFixed(2);
  const order = engine.firingOrder.split('-');
  if (fault?.name === 'a cylinder twice in the firing order') order[1] = order[0] ?? '';
  const code = fault?.name === 'a code with a letter too few' ? '0171' : 'P0171';
  return `diag: 1
case: Synthetic engine
vehicle:
  description: island rental fleet, invented
engine:
  displacement: ${litres} L
  cylinders: ${engine.cylinders}
  firing order: ${order.join('-')}
  compression ratio: ${engine.ratio.toFixed(1)}
  fuel: ${engine.fuel}
  aspiration: ${engine.boosted ? 'turbocharged' : 'natural'}
  metering: ${engine.metering}
  front sensor: ${engine.frontSensor}
  idle control: ${engine.idleControl}
  thermostat: ${engine.thermostat} °C
site:
  altitude: ${Math.round(engine.site.altitude)} m
${knowsWeather ? `  sea level pressure: ${(engine.site.seaLevel / 3386.389).toFixed(2)} inHg\n` : ''}tools:
  scan:
    description: generic scan data
  gauge:
    description: vacuum gauge
${hand.statesGauge ? '    accuracy: 0.5 inHg\n' : ''}codes:
  - ${code}
`;
}

function soak(
  { engine, instruments }: Measurements,
  hand: Hand,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const { outside } = engine.site;
  const substituted =
    fault?.name === 'substituted coolant temperature after a cold soak, one other thermometer';
  const off = fault?.name === 'coolant sensor off after a cold soak' ? fault.size : 0;
  const coolant = substituted ? 273.15 + fault.size : outside + instruments.ect + off + chance.around(0.6);
  const lines = [
    `  ect: ${temperature(coolant, hand)}`,
    `  iat: ${temperature(outside + instruments.iat + chance.around(0.6), hand)}`,
    ...(substituted ? [] : [`  ambient: ${temperature(outside + instruments.ambient, hand)}`]),
  ];
  return `readings: After a night outside\nas: soaked\nstate: cold soak\ntool: scan\nvalues:\n${lines.join('\n')}\n`;
}

function keyOn(
  { engine, instruments }: Measurements,
  hand: Hand,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const { barometer, seaLevel } = engine.site;
  const map =
    barometer + instruments.map + (fault?.name === 'manifold pressure sensor off' ? 1000 * fault.size : 0);
  const baro =
    fault?.name === 'weather report taken for the barometer'
      ? seaLevel
      : barometer + instruments.baro - (fault?.name === 'barometric sensor off' ? 1000 * fault.size : 0);
  const written = fault?.name === 'weather report taken for the barometer';
  const aboutBaro = ['barometric sensor off', 'manifold pressure sensor off'].some(
    (name) => name === fault?.name,
  );
  const lines = [
    ...(written && chance.happens(0.5) ? [] : [`  map: ${scanPressure(map, hand)}`]),
    ...(written || aboutBaro || chance.happens(0.5)
      ? [`  baro: ${written ? pressure(baro, hand) : scanPressure(baro, hand)}`]
      : []),
    `  battery: ${chance.between(12.3, 12.8).toFixed(1)} V`,
  ];
  return `readings: Key on, engine off\nas: koeo\nstate: key on engine off\ntool: scan\nvalues:\n${lines.join('\n')}\n`;
}

/** What is written of the loads, in the order of a list of scan data, with the unit of the encoding. */
const listed = [
  'rpm',
  'map',
  'maf',
  'load_abs',
  'ect',
  'iat',
  'tp',
  'stft_b1',
  'ltft_b1',
  'stft_b2',
  'ltft_b2',
  'lambda_b1',
  'lambda_b2',
  'o2_b1s1',
  'o2_b2s1',
  'egr_cmd',
  'egr_actual',
  'iac',
] as const;

function loads(measurements: Measurements, hand: Hand, fault: OneFault | undefined, chance: Chance): string {
  const isInCar = faults.some(({ name, kind }) => name === fault?.name && kind === 'car');
  return (fault === undefined || isInCar) && chance.happens(0.3)
    ? loadsInCells(measurements, hand, fault, chance)
    : loadsInTable(measurements, hand, fault, chance);
}

/** A cell for each state, as one writes who measures one thing after the other. */
function loadsInCells(
  { scans, points }: Measurements,
  hand: Hand,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const cells = points.map(({ state, isClosedLoop }, at) => {
    const values = listed.flatMap((name) => {
      const value = scans[at]?.get(name);
      if (value === undefined) return [];
      const [, number = '', unit = ''] = row(name, [value], hand, fault, chance).split(' ');
      return [`  ${name}: ${number}${unit === '-' ? '' : ` ${unit}`}`];
    });
    const loop = isClosedLoop ? 'closed' : state === 'cold idle' ? 'open cold' : 'open load';
    return `readings: Scan data at ${state}
as: ${columnNames[state] ?? 'load'}_data
state: ${state}
tool: scan
values:
  loop: ${loop}
${values.join('\n')}
`;
  });
  return cells.join('---\n');
}

function loadsInTable(
  { scans, points }: Measurements,
  hand: Hand,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const names = points.map(({ state }) => columnNames[state] ?? state.replaceAll(' ', '_'));
  const states = points.map(({ state }, at) => `  ${names[at]}: ${state}`);
  const rows = listed.flatMap((name) => {
    const values = scans.map((scan) => scan.get(name));
    if (values.every((each) => each === undefined)) return [];
    return [row(name, values, hand, fault, chance)];
  });
  return `readings: The loads one after the other
as: loads
tool: scan
states:
${states.join('\n')}
table: |
  reading ${names.join(' ')} unit
${rows.map((each) => `  ${each}`).join('\n')}
`;
}

const columnNames: Readonly<Record<string, string>> = {
  'cold idle': 'cold',
  deceleration: 'coast',
  'warm idle': 'idle',
  '2500 rpm no load': 'fast',
  'light cruise': 'light',
  cruise: 'drive',
  'wide open throttle': 'full',
};

function row(
  name: string,
  values: readonly (number | undefined)[],
  hand: Hand,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const cells = (of: (value: number, at: number) => string): string =>
    values.map((value, at) => (value === undefined ? '-' : of(value, at))).join(' ');
  if (name === 'map') {
    const first = values.find((each) => each !== undefined) ?? 0;
    const frozen = fault?.name === 'reading that stays the same at every load';
    if (fault?.name === 'manifold pressure in kPa, written as inHg')
      return `${name} ${cells((value) => String(value))} inHg`;
    if (fault?.name === 'vacuum written as manifold pressure') {
      const sea = 101;
      return `${name} ${cells((value) => (Math.max(0, sea - value) / 3.386389).toFixed(1))} inHg`;
    }
    return `${name} ${cells((value) => pressureNumber(1000 * (frozen ? first : value), hand))} ${hand.pressure}`;
  }
  if (name === 'ect' || name === 'iat') {
    return `${name} ${cells((value) => temperatureNumber(value + 273.15, hand))} ${hand.temperature}`;
  }
  if (name === 'maf') {
    const times = fault?.name === 'decimal point of an air flow' ? fault.size : 1;
    return `${name} ${cells((value) => (times * value).toFixed(2))} g/s`;
  }
  if (name === 'load_abs') {
    const times = fault?.name === 'absolute load that its air flow does not give' ? fault.size : 1;
    return `${name} ${cells((value) => (times * value).toFixed(1))} %`;
  }
  if (name === 'rpm') return `${name} ${cells((value) => value.toFixed(0))} rpm`;
  if (name.startsWith('lambda')) return `${name} ${cells((value) => value.toFixed(3))} -`;
  if (name.startsWith('o2')) return `${name} ${cells((value) => value.toFixed(2))} V`;
  if (name === 'iac') return `${name} ${cells((value) => value.toFixed(1))} %`;
  const digits = chance.happens(0.5) ? 0 : 1;
  return `${name} ${cells((value) => value.toFixed(digits))} %`;
}

function gauge(
  { engine, instruments, points }: Measurements,
  hand: Hand,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  if (engine.boosted && chance.happens(0.5)) return '';
  const needed = ['manifold pressure', 'vacuum'].some((word) => fault?.name.includes(word) === true);
  const idle = points.find(({ state }) => state === 'warm idle');
  if (idle === undefined || (!needed && chance.happens(0.3))) return '';
  // The idle wanders a little between two looks.
  const vacuum = engine.site.barometer - idle.air.map + instruments.gauge + chance.around(350);
  const off = fault?.name === 'vacuum gauge off' ? fault.size : 0;
  const inches = Math.round(2 * (vacuum / 3386.389 - off)) / 2;
  const value =
    hand.pressure === 'kPa' && chance.happens(0.3)
      ? `${(inches * 3.386389).toFixed(0)} kPa`
      : `${inches.toFixed(1)} inHg`;
  return `readings: Vacuum gauge at idle\nas: gauged\nstate: warm idle\ntool: gauge\nvalues:\n  vacuum: ${value}\n`;
}

function gas({ gas: shown }: Measurements): string {
  if (shown === undefined) return '';
  const lines = [...shown].map(([name, value]) => `  ${name}: ${value.toFixed(3)}`);
  return `readings: Exhaust gas at warm idle\nas: gas\nstate: warm idle\nvalues:\n${lines.join('\n')}\n`;
}

function compression(
  { engine, instruments }: Measurements,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const leftOut = fault?.name === 'a cylinder left out';
  if (!leftOut && chance.happens(0.5)) return '';
  const exponent = chance.between(1.15, 1.24);
  const lines: string[] = [];
  for (let cylinder = 1; cylinder <= engine.cylinders - (leftOut ? 1 : 0); cylinder++) {
    const gaugePressure = compressionGauge(engine.ratio, engine.site.barometer, exponent);
    const read = gaugePressure * (1 + instruments.compression + chance.around(0.02, 0.05));
    lines.push(`    ${cylinder}: ${(read / 6894.757).toFixed(0)} psi`);
  }
  return `readings: Compression, throttle open\nas: cranked\nstate: cranking\nvalues:\n  compression:\n${lines.join('\n')}\n`;
}

/** After a repair, in other weather: nothing of it is to be compared with what was measured before. */
function anotherDay({ engine, instruments, points }: Measurements, hand: Hand, chance: Chance): string {
  const weather = chance.around(1500, 3500);
  const idle = points.find(({ state }) => state === 'warm idle');
  if (idle === undefined) return '';
  const barometer = engine.site.barometer + weather;
  const inches = (barometer - idle.air.map + instruments.gauge) / 3386.389;
  return `readings: Key on, after
as: koeo_after
when: after
state: key on engine off
tool: scan
values:
  map: ${scanPressure(barometer + instruments.map, hand)}
---
readings: Idle, after
as: after
when: after
state: warm idle
values:
  map: ${scanPressure(idle.air.map + instruments.map, hand)}
  vacuum: ${inches.toFixed(1)} inHg
`;
}

function trace({ trace: taken }: Measurements): string {
  if (taken === undefined) return '';
  const rows = taken.time.map(
    (at, i) => `  ${at.toFixed(1)} ${(taken.front[i] ?? 0).toFixed(3)} ${(taken.rear[i] ?? 0).toFixed(3)}`,
  );
  return `capture: Before and behind the catalyst
as: o2
state: 2500 rpm no load
time: time
rows: |
  time front rear
  s V V
${rows.join('\n')}
channels:
  front:
    column: front
    unit: V
    signal: o2_b1s1
  rear:
    column: rear
    unit: V
    signal: o2_b1s2
`;
}

function pressure(pascal: number, hand: Hand): string {
  return `${pressureNumber(pascal, hand)} ${hand.pressure}`;
}

/** What came over generic data was whole kilopascals before anyone turned it into inches. */
function scanPressure(pascal: number, hand: Hand): string {
  return pressure(1000 * Math.round(pascal / 1000), hand);
}

function pressureNumber(pascal: number, { pressure: unit }: Hand): string {
  return (pascal / pascals[unit]).toFixed(unit === 'kPa' ? 0 : 1);
}

function temperature(kelvin: number, hand: Hand): string {
  return `${temperatureNumber(kelvin, hand)} ${hand.temperature}`;
}

function temperatureNumber(kelvin: number, { temperature: unit }: Hand): string {
  const whole = Math.round(kelvin - 273.15);
  return String(unit === '°C' ? whole : Math.round(whole * 1.8 + 32));
}
