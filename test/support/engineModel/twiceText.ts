import type { Measurements } from './caseText.ts';
import type { Chance } from './chance.ts';
import type { FaultName, OneFault } from './faults.ts';
import type { StateName } from './operation.ts';
import { stoichiometric } from './physics.ts';

/** Looks in which one thing is read in two ways, as lists of a maker's own data show it. */
export function twice(measurements: Measurements, fault: OneFault | undefined, chance: Chance): string[] {
  return looks
    .filter(({ odd }) => odd.some((name) => name === fault?.name) || chance.happens(0.4))
    .map(({ write }) => write(measurements, fault, chance));
}

interface Look {
  /** What shows in it. */
  readonly odd: readonly FaultName[];
  readonly write: (measurements: Measurements, fault: OneFault | undefined, chance: Chance) => string;
}

const looks: readonly Look[] = [
  { odd: ['air-fuel ratio that its lambda does not give'], write: mixture },
  { odd: ['battery read by two meters'], write: charging },
  { odd: ['air of a stroke that its air flow does not give'], write: breathing },
  { odd: ['ratio of another gear', 'slip that its speeds do not give'], write: driveline },
  { odd: ['absolute pressure written as boost'], write: boosted },
  {
    odd: ['dead-head pressure read before the line was shut', 'fuel pressure sensor beside a gauge'],
    write: fuelPressures,
  },
];

/** How much this fault changes what is read; `none` without it. */
const sizeOf = (fault: OneFault | undefined, name: FaultName, none: number): number =>
  fault?.name === name ? fault.size : none;

/** What is true at a state, and what scan data show of it. */
function at({ points, scans }: Measurements, state: StateName) {
  const place = points.findIndex((each) => each.state === state);
  return { point: points[place], scan: scans[place] };
}

/** Lambda and ratio of one sensor: of the fuel in the tank, or of plain gasoline whatever is in it. */
function mixture(measurements: Measurements, fault: OneFault | undefined, chance: Chance): string {
  const lambda = at(measurements, 'wide open throttle').scan?.get('lambda_b1');
  if (lambda === undefined) return '';
  const own = stoichiometric[measurements.engine.fuel];
  const times = sizeOf(fault, 'air-fuel ratio that its lambda does not give', 0);
  const ratio = times === 0 ? lambda * (chance.happens(0.5) ? own : 14.7) : lambda * own * times;
  return `readings: Mixture at full throttle
as: mixture
state: wide open throttle
values:
  lambda_b1: ${lambda.toFixed(3)}
  afr_b1: ${ratio.toFixed(1)}
`;
}

/** The module sees less than the meter at the alternator, by what its wires lose. */
function charging(_: Measurements, fault: OneFault | undefined, chance: Chance): string {
  const made = chance.between(13.5, 14.7);
  const lost = chance.between(0, 0.25) + sizeOf(fault, 'battery read by two meters', 0);
  return `readings: Charging
as: charging
state: warm idle
values:
  battery: ${(made - lost + chance.around(0.05)).toFixed(1)} V
  charging_voltage: ${(made + chance.around(0.03)).toFixed(2)} V
`;
}

/** The program works the air of one stroke out of a flow of some hundredths of a second before. */
function breathing(measurements: Measurements, fault: OneFault | undefined, chance: Chance): string {
  const { point, scan } = at(measurements, chance.oneOf(['warm idle', 'light cruise', 'cruise']));
  const maf = scan?.get('maf');
  if (point === undefined || maf === undefined) return '';
  const stroke = (1000 * maf * 120) / (point.air.rpm * measurements.engine.cylinders);
  const times = sizeOf(fault, 'air of a stroke that its air flow does not give', 1);
  return `readings: Air in a maker's own list
as: breathing
state: as the loads
values:
  rpm: ${scan?.get('rpm')?.toFixed(0)} rpm
  maf: ${maf.toFixed(2)} g/s
  air_charge: ${(times * stroke * (1 + chance.around(0.03))).toFixed(0)} mg/stroke
`;
}

/** Speeds into and out of a transmission, read one after the other. */
function driveline(measurements: Measurements, fault: OneFault | undefined, chance: Chance): string {
  const { point, scan } = at(measurements, 'cruise');
  if (point === undefined) return '';
  const slips = chance.happens(0.5) ? chance.between(20, 250) : chance.around(8);
  const ratio = chance.oneOf([2.2, 1.5, 1, 0.75]);
  const wandering = (): number => 1 + chance.around(0.004);
  const into = (point.air.rpm - slips) * wandering();
  return `readings: Speeds through the transmission
as: driveline
state: cruise
values:
  rpm: ${scan?.get('rpm')?.toFixed(0)} rpm
  tss: ${into.toFixed(0)} rpm
  oss: ${((into / ratio) * wandering()).toFixed(0)} rpm
  gear_ratio: ${(ratio * sizeOf(fault, 'ratio of another gear', 1)).toFixed(2)}
  tcc_slip: ${(slips + sizeOf(fault, 'slip that its speeds do not give', 0)).toFixed(0)} rpm
`;
}

/** A gauge on the charge pipe beside the manifold sensor. */
function boosted(measurements: Measurements, fault: OneFault | undefined, chance: Chance): string {
  const map = at(measurements, 'wide open throttle').scan?.get('map');
  if (map === undefined || !measurements.engine.boosted) return '';
  const { barometer } = measurements.engine.site;
  const isAbsolute = fault?.name === 'absolute pressure written as boost';
  const boost = 1000 * map - (isAbsolute ? 0 : barometer) + chance.around(3000, 7000);
  return `readings: Boost at full throttle
as: boosted
state: wide open throttle
values:
  map: ${map} kPa
  boost: ${(boost / 6894.757).toFixed(1)} psi
`;
}

/**
 * Regulated at idle, and what the pump makes against a shut line: half as much again or twice it (common practice).
 * The car's own sensor, off by 2 % of 700 kPa, shows it in steps of 3 kPa (SAE J1979 $0A); the gauge is off by as much as class 1.6 may be.
 */
function fuelPressures(_: Measurements, fault: OneFault | undefined, chance: Chance): string {
  const regulated = chance.between(280, 420);
  const made = sizeOf(
    fault,
    'dead-head pressure read before the line was shut',
    100 * chance.between(1.5, 2),
  );
  const shut = ((regulated * made) / 100 + chance.around(5)).toFixed(0);
  const low = sizeOf(fault, 'fuel pressure sensor beside a gauge', 0);
  const gauged = regulated + chance.around(5, 11);
  // The pressure wanders a little between two looks.
  const sensed = regulated + chance.around(4, 10) + chance.around(6, 14) - low;
  return `readings: Fuel pressure
as: fuel_regulated
state: warm idle
tool: fuel gauge
values:
  fuel_pressure: ${gauged.toFixed(0)} kPa
---
readings: Fuel pressure, line shut for a moment
as: fuel_shut
state: key on engine off
values:
  dead_head_pressure: ${shut} kPa
---
readings: Fuel pressure by the car's own sensor
as: fuel_sensed
state: warm idle
tool: scan
values:
  fuel_pressure: ${3 * Math.round(sensed / 3)} kPa
`;
}
