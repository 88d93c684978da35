import type { Chance } from './chance.ts';
import type { Engine } from './engine.ts';
import type { FaultName, OneFault } from './faults.ts';
import { type Hand, pressure, scanPressure, scanTemperature } from './hand.ts';
import type { History } from './history.ts';
import type { Instruments } from './instruments.ts';
import { loads } from './loadsText.ts';
import type { Point } from './operation.ts';
import type { OxygenTrace } from './oxygenTrace.ts';
import { compressionGauge } from './physics.ts';
import type { Shown } from './readings.ts';
import { workshopText } from './workshopText.ts';

/** Everything that was measured on one car, ready to be written down. */
export interface Measurements {
  readonly engine: Engine;
  readonly instruments: Instruments;
  readonly history: History;
  readonly points: readonly Point[];
  readonly scans: readonly Shown[];
  readonly gas: Shown | undefined;
  readonly trace: OxygenTrace | undefined;
}

/** Writes the case as a technician would; a slip of the hand is made here. */
export function caseText(measurements: Measurements, fault: OneFault | undefined, chance: Chance): string {
  const hand: Hand = {
    pressure: chance.oneOf(['kPa', 'inHg']),
    temperature: chance.oneOf(['°C', '°F']),
    statesGauge: chance.happens(0.5),
  };
  const knowsWeather = chance.happens(0.6) || fault?.name === 'weather report taken for the barometer';
  return [
    header(measurements, hand, fault, knowsWeather, chance),
    soak(measurements, hand, fault, chance),
    keyOn(measurements, hand, fault, chance),
    loads(measurements, hand, fault, chance),
    gaugeBeforeStart(measurements, fault, chance),
    gauge(measurements, hand, fault, chance),
    gas(measurements),
    compression(measurements, fault, chance),
    trace(measurements),
    anotherDay(measurements, hand, fault, chance),
    ...workshopText(measurements, fault, chance),
  ]
    .filter((cell) => cell !== '')
    .join('---\n');
}

function header(
  { engine, history: { odometer, unit } }: Measurements,
  hand: Hand,
  fault: OneFault | undefined,
  knowsWeather: boolean,
  chance: Chance,
): string {
  const litres = (
    1000 *
    engine.displacement *
    (fault?.name.startsWith('displacement') === true ? fault.size : 1)
  ).toFixed(2);
  const order = engine.firingOrder.split('-');
  if (fault?.name === 'a cylinder twice in the firing order') order[1] = order[0] ?? '';
  const notesOdometer = ofOdometer.some((name) => name === fault?.name) || chance.happens(0.5);
  const noPoint = fault?.name === 'compression ratio without its decimal point';
  const ratio = noPoint ? (10 * engine.ratio).toFixed(0) : engine.ratio.toFixed(1);
  const code = codeIn(fault);
  return `diag: 1
case: Synthetic engine
vehicle:
  description: island rental fleet, invented
${notesOdometer ? `  odometer: ${odometer.noted} ${unit}\n` : ''}engine:
  displacement: ${litres} L
  cylinders: ${engine.cylinders}
  firing order: ${order.join('-')}
  compression ratio: ${ratio}
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
${hand.statesGauge ? '    accuracy: 0.5 inHg\n' : ''}  fuel gauge:
    description: mechanical fuel pressure gauge
${hand.statesGauge ? '    accuracy: 11 kPa\n' : ''}codes:
  - ${code}
`;
}

/** That bank 1, or all there is, runs lean. The injectors that give too little are those of bank 2. */
function codeIn(fault: OneFault | undefined): string {
  switch (fault?.name) {
    case 'a code with a letter too few':
      return '0171';
    case 'injectors of one bank give too little':
      return 'P0174';
    default:
      return 'P0171';
  }
}

const ofOdometer: readonly FaultName[] = [
  'odometer below the distance since the codes were cleared',
  'two digits of the odometer swapped after the repair',
];

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
    `  ect: ${scanTemperature(coolant, hand)}`,
    `  iat: ${scanTemperature(outside + instruments.iat + chance.around(0.6), hand)}`,
    ...(substituted ? [] : [`  ambient: ${scanTemperature(outside + instruments.ambient, hand)}`]),
  ];
  return `readings: After a night outside\nas: soaked\nstate: cold soak\ntool: scan\nvalues:\n${lines.join('\n')}\n`;
}

function keyOn(
  { engine, instruments, points, scans, history }: Measurements,
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
  const idle = scans[points.findIndex(({ state }) => state === 'warm idle')];
  if (fault?.name === 'idle written as key on, engine off') return idleAsKeyOn(idle, hand, chance);
  const lines = [
    ...(chance.happens(0.5) ? ['  rpm: 0 rpm'] : []),
    ...(written && chance.happens(0.5) ? [] : [`  map: ${scanPressure(map, hand)}`]),
    ...(written || aboutBaro || chance.happens(0.5)
      ? [`  baro: ${written ? pressure(baro, hand) : scanPressure(baro, hand)}`]
      : []),
    `  battery: ${chance.between(12.3, 12.8).toFixed(1)} V`,
  ];
  const odometer = chance.happens(0.3) ? `odometer: ${history.odometer.exact} ${history.unit}\n` : '';
  return `readings: Key on, engine off\nas: koeo\nstate: key on engine off\ntool: scan\n${odometer}values:\n${lines.join('\n')}\n`;
}

/** The engine was started before anyone looked. */
function idleAsKeyOn(idle: Shown | undefined, hand: Hand, chance: Chance): string {
  const map = idle?.get('map');
  return `readings: Key on, engine off
as: koeo
state: key on engine off
tool: scan
values:
  rpm: ${idle?.get('rpm')?.toFixed(0)} rpm
${map === undefined ? '' : `  map: ${scanPressure(1000 * map, hand)}\n`}  battery: ${chance.between(13.6, 14.6).toFixed(1)} V
`;
}

/** A look at the gauge's zero; the needle is read to half an inch. */
function gaugeBeforeStart(
  { instruments }: Measurements,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const off = fault?.name === zeroOff ? fault.size : 0;
  if (off === 0 && chance.happens(0.7)) return '';
  const inches = Math.max(0, Math.round(2 * (instruments.gauge / 3386.389 + off)) / 2);
  return `readings: Vacuum gauge before the start
as: gauge_zero
state: key on engine off
tool: gauge
values:
  vacuum: ${inches.toFixed(1)} inHg
`;
}

const zeroOff = 'vacuum gauge off zero with the engine off';

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
  const off = fault?.name === 'vacuum gauge off' ? fault.size : fault?.name === zeroOff ? -fault.size : 0;
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
  const lines: string[] = [];
  for (let cylinder = 1; cylinder <= engine.cylinders - (leftOut ? 1 : 0); cylinder++) {
    const gaugePressure = compressionGauge(engine.ratio, engine.site.barometer, engine.exponent);
    const read = gaugePressure * (1 + instruments.compression + chance.around(0.02, 0.05));
    lines.push(`    ${cylinder}: ${(read / 6894.757).toFixed(0)} psi`);
  }
  return `readings: Compression, throttle open\nas: cranked\nstate: cranking\nvalues:\n  compression:\n${lines.join('\n')}\n`;
}

/** After a repair, in other weather: nothing of it is to be compared with what was measured before. */
function anotherDay(
  { engine, instruments, points, history }: Measurements,
  hand: Hand,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const swapped = fault?.name === 'two digits of the odometer swapped after the repair';
  if (!swapped && (fault !== undefined || !chance.happens(0.3))) return '';
  const weather = chance.around(1500, 3500);
  const idle = points.find(({ state }) => state === 'warm idle');
  if (idle === undefined) return '';
  const barometer = engine.site.barometer + weather;
  const inches = (barometer - idle.air.map + instruments.gauge) / 3386.389;
  const isNoted = swapped || chance.happens(0.6);
  return `readings: Key on, after
as: koeo_after
when: after
state: key on engine off
tool: scan
${isNoted ? `odometer: ${history.odometer.after} ${history.unit}\n` : ''}values:
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
