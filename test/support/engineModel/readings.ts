import type { Chance } from './chance.ts';
import type { Engine } from './engine.ts';
import type { OneFault } from './faults.ts';
import { meteredAir } from './fuelPath.ts';
import type { Instruments } from './instruments.ts';
import * as shown from './instruments.ts';
import { type CarFaults, moving, type Point } from './operation.ts';

/** What the scan data show at one state, in the units of the encoding: kPa, °C, g/s, rpm, %. */
export type Shown = ReadonlyMap<string, number>;

/** Measures a point with the car's own sensors; what an instrument's fault changes is changed here. */
export function scanned(
  point: Point,
  engine: Engine,
  car: CarFaults,
  instruments: Instruments,
  fault: OneFault | undefined,
  chance: Chance,
  hasMap: boolean,
): Shown {
  const { air, mixtures } = point;
  const values = new Map<string, number>();
  const size = fault?.size ?? 0;
  const dropsOut = fault?.name === 'engine speed signal that drops out';
  values.set('rpm', dropsOut ? size : shown.speed(air.rpm * (1 + chance.around(0.003))));
  values.set('vss', vehicleSpeed(point, engine, fault));
  const hoseOff = fault?.name === 'hose of the manifold pressure sensor off';
  const offset = fault?.name === 'manifold pressure sensor off' ? 1000 * size : 0;
  if (hasMap) {
    const pressure = hoseOff ? engine.site.barometer : air.map;
    values.set('map', shown.kilopascals(pressure + instruments.map + offset));
  }
  const flow = meteredAir(engine, air, car) * (1 + chance.around(0.006));
  if (engine.metering !== 'manifold pressure') {
    values.set('maf', shown.airFlow(flow));
    const perStroke = (120 * flow) / (air.rpm * engine.displacement);
    values.set('load_abs', shown.absoluteLoad(perStroke / 1.184));
  }
  values.set('ect', shown.celsius(point.coolant + instruments.ect));
  const hot = fault?.name === 'intake air sensor reads hot' ? point.coolant + size - point.charge : 0;
  values.set('iat', shown.celsius(point.charge + instruments.iat + hot));
  for (const bank of engine.banks === 2 ? ([0, 1] as const) : ([0] as const)) {
    const { trim, seen } = mixtures[bank];
    const short = point.isClosedLoop ? chance.around(0.014, 0.035) : 0;
    values.set(`stft_b${bank + 1}`, shown.trimPercent(short));
    values.set(`ltft_b${bank + 1}`, shown.trimPercent(trim - short));
    if (engine.frontSensor === 'wideband') {
      values.set(`lambda_b${bank + 1}`, shown.lambdaStep(seen * (1 + instruments.wideband)));
    } else if (!point.isClosedLoop) {
      const rich = seen < 0.98;
      values.set(`o2_b${bank + 1}s1`, shown.sensorVolts(rich ? chance.between(0.8, 0.92) : 0.1));
    } else {
      values.set(`o2_b${bank + 1}s1`, shown.sensorVolts(chance.between(0.1, 0.85)));
    }
  }
  if (engine.recirculates) {
    const isUnread = fault?.name === 'recirculation valve far open, its command not read';
    const isStuck = isUnread || fault?.name === 'recirculation valve stuck open';
    const stuck = isStuck && point.state === 'warm idle' ? size / 100 : 0;
    if (!isUnread) values.set('egr_cmd', shown.percent(2.5 * point.commandedGas));
    const byVacuum = fault?.name === 'recirculation valve opened by a vacuum that leaks to it' ? air.gas : 0;
    const opened =
      Math.max(2.5 * point.commandedGas, 2.5 * byVacuum, stuck) + Math.max(0, chance.around(0.006));
    values.set('egr_actual', shown.percent(opened));
  }
  if (engine.idleControl === 'valve' && point.state === 'warm idle') {
    values.set('iac', Math.max(0, Math.round(10 * (2 + 30 * air.idleValve + chance.around(1))) / 10));
  }
  const high = fault?.name === 'throttle position sensor reads high' ? size / 100 : 0;
  values.set('tp', shown.percent(0.1 + 0.9 * throttleAngle(Math.min(1, air.open)) + high));
  return values;
}

/** km/h: the car stands but where it is driven. */
function vehicleSpeed({ state, air }: Point, { gearing }: Engine, fault: OneFault | undefined): number {
  if (fault?.name === 'speed sensor that sees nothing') return moving.has(state) ? fault.size : 0;
  if (fault?.name === 'idle read while the car rolls' && state === 'warm idle') return fault.size;
  return moving.has(state) ? shown.vehicleSpeed((air.rpm / 1000) * gearing) : 0;
}

/** Share of the way from closed to open at which a butterfly opens this share of its bore: 1 − cos θ. */
function throttleAngle(open: number): number {
  return Math.acos(1 - open) / (Math.PI / 2);
}

/** What a gas analyser shows of the mean of both banks, dry percent by volume, and the lambda that it computes. */
export function analysed(point: Point, engine: Engine, instruments: Instruments): Shown {
  const lambda = (point.mixtures[0].lambda + point.mixtures[engine.banks - 1 ? 1 : 0].lambda) / 2;
  const off = Math.round(lambda * (1 + instruments.analyser) * 1000) / 1000;
  return new Map([['analyser_lambda', off]]);
}
