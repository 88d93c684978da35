import type { Measurements } from './caseText.ts';
import type { Chance } from './chance.ts';
import { burnt } from './exhaustGas.ts';
import type { OneFault } from './faults.ts';
import { compressionGauge, stoichiometric } from './physics.ts';

/** What else a workshop measures on a car: cylinders by gauge, the battery, the tailpipe, what controllers count. */
export function workshopText(
  measurements: Measurements,
  fault: OneFault | undefined,
  chance: Chance,
): string[] {
  return [
    cylinders(measurements, fault, chance),
    battery(measurements, fault, chance),
    tailpipe(measurements, fault, chance),
    road(measurements, chance),
    counters(chance),
  ];
}

const psi = 6894.757;

/** Two tests of a cylinder differ by some per cent; at idle the throttle fills it from the manifold's pressure. */
function cylinders(
  { engine, instruments, points }: Measurements,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const idle = points.find(({ state }) => state === 'warm idle');
  const wanted = fault?.name.includes('compression') === true || fault?.name.includes('leak-down') === true;
  if (idle === undefined || (!wanted && chance.happens(0.5))) return '';
  const exponent = chance.between(1.15, 1.24);
  const sets = {
    compression: '',
    wet_compression: '',
    first_puff: '',
    fifth_puff: '',
    running_compression: '',
    leakdown: '',
  };
  const write = (name: keyof typeof sets, cylinder: number, value: string): void => {
    sets[name] += `    ${cylinder}: ${value}\n`;
  };
  for (let cylinder = 1; cylinder <= engine.cylinders; cylinder++) {
    const isOdd = cylinder === 1;
    const full =
      compressionGauge(engine.ratio, engine.site.barometer, exponent) * (1 + instruments.compression);
    const repeated = (pressure: number): number => pressure * (1 + chance.around(0.02, 0.04));
    const pounds = (pressure: number): string => `${Math.max(0, pressure / psi).toFixed(0)} psi`;
    const swapped = fault?.name === 'dry and wet compression swapped' && isOdd;
    const worn = swapped ? 0.6 * full : full;
    const dry = repeated(worn);
    const wet = repeated(worn * (1 + (swapped ? fault.size / 100 : chance.between(0, 0.06))));
    const atIdle = idle.air.map * engine.ratio ** chance.between(1.25, 1.32) - engine.site.barometer;
    const held = fault?.name === 'running compression that the gauge held' && isOdd;
    const lost = chance.between(2, 15);
    const wrongStroke = fault?.name === 'leak-down on the wrong stroke' && isOdd;
    write('compression', cylinder, pounds(swapped ? wet : dry));
    write('wet_compression', cylinder, pounds(swapped ? dry : wet));
    const fifth = repeated(full);
    write('first_puff', cylinder, pounds(fifth * chance.between(0.45, 0.7)));
    write('fifth_puff', cylinder, pounds(fifth));
    write('running_compression', cylinder, pounds(held ? (fault.size / 100) * dry : repeated(atIdle)));
    write('leakdown', cylinder, `${(wrongStroke ? fault.size : lost).toFixed(0)} %`);
  }
  const lines = Object.entries(sets).map(([name, values]) => `  ${name}:\n${values.trimEnd()}`);
  return `readings: Cylinders, one after the other\nas: by_gauge\nstate: as the gauge needs it\nvalues:\n${lines.join('\n')}\n`;
}

/** A charged battery with some milliohms inside, and its acid: 0.845 V and the specific gravity a cell. */
function battery(_: Measurements, fault: OneFault | undefined, chance: Chance): string {
  const charged = fault?.name === 'charger connected while cranking';
  const surface = fault?.name === 'surface charge beside the acid' ? fault.size : 0;
  if (!charged && surface === 0 && chance.happens(0.5)) return '';
  const rest = chance.between(12.35, 12.85);
  const current = chance.between(90, 260);
  const isMeasured = chance.happens(0.5);
  const inside = chance.between(0.003, 0.009);
  const cranked = charged ? rest + fault.size : rest - current * inside + chance.around(0.03);
  const gravities = Array.from(
    { length: 6 },
    (_each, at) => `${at + 1}: ${(rest / 6 - 0.845 + chance.around(0.008)).toFixed(3)}`,
  );
  return `readings: Battery at rest
as: rested
state: key off
values:
  resting_voltage: ${(rest + surface + chance.around(0.02)).toFixed(2)} V
  specific_gravity: {${gravities.join(', ')}}
---
readings: Battery while cranking
as: turned
state: cranking
values:
  rpm: ${chance.between(150, 280).toFixed(0)} rpm
  cranking_voltage: ${cranked.toFixed(2)} V
${isMeasured ? `  starter_current: ${current.toFixed(0)} A\n` : ''}`;
}

/** An analyser at a warm idle, with its errors: OIML R 99 class I lets it be off by 5 %, or by 0.5 % of CO2 (from memory). */
function tailpipe({ engine, points }: Measurements, fault: OneFault | undefined, chance: Chance): string {
  const off = fault?.name === 'CO2 channel of the analyser reads low' ? fault.size : 0;
  const idle = points.find(({ state }) => state === 'warm idle');
  // Trims are of another fault then, and what the gas says of it is told by other rules.
  if (idle === undefined || (off === 0 && (fault !== undefined || chance.happens(0.5)))) return '';
  const lambda = (idle.mixtures[0].lambda + idle.mixtures[engine.banks - 1 ? 1 : 0].lambda) / 2;
  // Cylinders differ a little; a leaking probe draws some air.
  const spread = chance.between(0, 0.03);
  const air = chance.happens(0.3) ? chance.between(0, 0.04) : 0;
  const [rich, lean] = [burnt(engine.fuel, lambda - spread, air), burnt(engine.fuel, lambda + spread, air)];
  const mean = (name: 'co2' | 'co' | 'o2'): number => (rich[name] + lean[name]) / 2;
  const shown = (value: number, absolute: number): number =>
    Math.max(
      0,
      value + chance.around(0.4 * Math.max(absolute, 0.05 * value), Math.max(absolute, 0.05 * value)),
    );
  return `readings: Gas at the tailpipe
as: tailpipe
state: warm idle
values:
  co2: ${Math.max(0.1, shown(mean('co2'), 0.5) - off).toFixed(1)} %
  co: ${shown(mean('co'), 0.06).toFixed(2)} %
  o2_gas: ${shown(mean('o2'), 0.1).toFixed(2)} %
  hc: ${chance.between(5, 180).toFixed(0)} ppm
`;
}

/** One look at a cruise: speeds, pulse, fuel, and the air outside. */
function road({ engine, instruments, points, scans }: Measurements, chance: Chance): string {
  const at = points.findIndex(({ state }) => state === 'cruise');
  const [point, scan] = [points[at], scans[at]];
  if (point === undefined || scan === undefined || chance.happens(0.5)) return '';
  const lambda = point.mixtures[0].lambda;
  const fuel = point.air.air / (stoichiometric[engine.fuel] * lambda);
  const litres = (fuel / (engine.fuel === 'E85' ? 0.782 : 0.748)) * 3600;
  // An injector that is open for 85 % of the time at 35 g/s of air a litre, and 0.8 ms to open.
  const most = (0.035 * engine.displacement * 1000) / stoichiometric[engine.fuel] / 0.85 / engine.cylinders;
  const pulse = (fuel / engine.cylinders / most) * (120 / point.air.rpm) * 1000 + 0.8;
  const maf = scan.get('maf');
  return `readings: One look on the road
as: road
state: cruise
tool: scan
values:
  rpm: ${point.air.rpm.toFixed(0)} rpm
  vss: ${((point.air.rpm / 1000) * chance.between(32, 46)).toFixed(0)} km/h
  iat: ${(point.charge + instruments.iat - 273.15).toFixed(0)} °C
  ambient: ${(engine.site.outside + instruments.ambient + chance.between(-1, 4) - 273.15).toFixed(0)} °C
  pulse_width: ${pulse.toFixed(2)} ms
  fuel_rate: ${(Math.round(litres * 20 * chance.between(0.9, 1.1)) / 20).toFixed(2)} L/h
${maf === undefined ? '' : `  maf: ${maf.toFixed(2)} g/s\n`}`;
}

/** What a controller counts, all of one moment. */
function counters(chance: Chance): string {
  if (chance.happens(0.5)) return '';
  const driven = Math.round(chance.between(0, 4000));
  const lamp = Math.round(driven * chance.between(0, 1));
  const left = chance.happens(0.5) ? 1 : 0;
  return `readings: What the controller counts
as: counted
state: key on engine off
tool: scan
values:
  mil: on
  dtc_count: 1
  monitors_left: ${left}
  catalyst_monitor: complete
  evap_monitor: ${left === 1 ? 'incomplete' : 'complete'}
  distance_since_clear: ${driven} km
  distance_with_mil: ${lamp} km
  warm_ups_since_clear: ${Math.min(255, Math.round(driven / chance.between(8, 60)))}
`;
}
