import type { Measurements } from './caseText.ts';
import type { Chance } from './chance.ts';
import { counters } from './countersText.ts';
import type { Engine } from './engine.ts';
import { burnt, type DryGas } from './exhaustGas.ts';
import type { FaultName, OneFault } from './faults.ts';
import { celsius } from './instruments.ts';
import type { Point } from './operation.ts';
import { compressionGauge, stoichiometric } from './physics.ts';
import { twice } from './twiceText.ts';

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
    ...road(measurements, fault, chance),
    oil(fault, chance),
    counters(measurements, fault, chance),
    ...twice(measurements, fault, chance),
    ethanol(measurements, fault, chance),
  ];
}

/** A sensor in the fuel line. Pumps sell E85 with 51 to 83 % of ethanol by season (ASTM D5798, value from memory), the others with half of what they say, or all of it. */
function ethanol({ engine }: Measurements, fault: OneFault | undefined, chance: Chance): string {
  const isOff = fault?.name === 'ethanol sensor reads high';
  if (!isOff && chance.happens(0.7)) return '';
  const named = Number(engine.fuel.slice(1));
  const sold = engine.fuel === 'E85' ? chance.between(51, 83) : named * chance.between(0.5, 1);
  const shown = sold + chance.around(1, 3) + (isOff ? fault.size : 0);
  return `readings: Fuel sensor
as: fuel_sensor
tool: scan
values:
  ethanol: ${Math.min(100, Math.max(0, shown)).toFixed(0)} %
`;
}

const psi = 6894.757;

/** Two tests of a cylinder differ by some per cent; at idle the throttle fills it from the manifold's pressure. */
function cylinders(
  { engine, instruments, points }: Measurements,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const idle = points.find(({ state }) => state === 'warm idle');
  const wanted = ['compression', 'leak-down', 'puff'].some((word) => fault?.name.includes(word) === true);
  if (idle === undefined || (!wanted && chance.happens(0.5))) return '';
  const sets = {
    compression: '',
    wet_compression: '',
    first_puff: '',
    fifth_puff: '',
    running_compression: '',
    leakdown: '',
  };
  const puffs = fault?.name === 'first and fifth puff swapped';
  const write = (name: keyof typeof sets, cylinder: number, value: string): void => {
    sets[name] += `    ${cylinder}: ${value}\n`;
  };
  for (let cylinder = 1; cylinder <= engine.cylinders; cylinder++) {
    const isOdd = cylinder === 1;
    const full =
      compressionGauge(engine.ratio, engine.site.barometer, engine.exponent) * (1 + instruments.compression);
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
    const first = fifth * (puffs && isOdd ? fault.size / 100 : chance.between(0.45, 0.7));
    write('first_puff', cylinder, pounds(puffs && isOdd ? fifth : first));
    write('fifth_puff', cylinder, pounds(puffs && isOdd ? first : fifth));
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
  const started = fault?.name === 'engine that had started, written as cranking';
  const charging = fault?.name === 'charger connected at rest';
  if (!charged && surface === 0 && !started && !charging && chance.happens(0.5)) return '';
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
  resting_voltage: ${((charging ? fault.size : rest + surface) + chance.around(0.02)).toFixed(2)} V
  specific_gravity: {${gravities.join(', ')}}
---
readings: Battery while cranking
as: turned
state: cranking
values:
  rpm: ${(started ? fault.size : chance.between(150, 280)).toFixed(0)} rpm
  cranking_voltage: ${cranked.toFixed(2)} V
${isMeasured ? `  starter_current: ${current.toFixed(0)} A\n` : ''}`;
}

/** An analyser at a warm idle, with its errors: OIML R 99 class I lets it be off by 5 %, or by 0.5 % of CO2 (from memory). */
function tailpipe(
  { engine, instruments, points }: Measurements,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const off = fault?.name === 'CO2 channel of the analyser reads low' ? fault.size : 0;
  const counted = fault?.name === 'analyser that counts with another fuel' ? fault.size : 0;
  const idle = points.find(({ state }) => state === 'warm idle');
  // Trims are of another fault then, and what the gas says of it is told by other rules.
  const wanted = off + counted !== 0 || fault?.name.startsWith('wide-range sensor shows lambda') === true;
  if (idle === undefined || (!wanted && (fault !== undefined || chance.happens(0.5)))) return '';
  const lambda = (idle.mixtures[0].lambda + idle.mixtures[engine.banks - 1 ? 1 : 0].lambda) / 2;
  // Cylinders differ a little; a leaking probe draws some air.
  const spread = chance.between(0, 0.03);
  const air = chance.happens(0.3) ? chance.between(0, 0.04) : 0;
  const [rich, lean] = [burnt(engine.fuel, lambda - spread, air), burnt(engine.fuel, lambda + spread, air)];
  const mean = (name: keyof DryGas): number => (rich[name] + lean[name]) / 2;
  const shown = (value: number, absolute: number): number =>
    Math.max(
      0,
      value + chance.around(0.4 * Math.max(absolute, 0.05 * value), Math.max(absolute, 0.05 * value)),
    );
  const showsLambda = counted !== 0 || chance.happens(0.5);
  return `readings: Gas at the tailpipe
as: tailpipe
state: warm idle
values:
  co2: ${Math.max(0.1, shown(mean('co2'), 0.5) - off).toFixed(1)} %
  co: ${shown(mean('co'), 0.06).toFixed(2)} %
  o2_gas: ${shown(mean('o2'), 0.1).toFixed(2)} %
  hc: ${chance.between(5, 180).toFixed(0)} ppm
${showsLambda ? `  analyser_lambda: ${(mean('lambda') * (1 + instruments.analyser) + counted).toFixed(3)}\n` : ''}`;
}

/** One look at a cruise and one at full throttle: speeds, pulse, fuel, and the air outside. */
function road(measurements: Measurements, fault: OneFault | undefined, chance: Chance): string[] {
  const { engine, instruments, points, scans } = measurements;
  const wanted = onTheRoad.some((name) => name === fault?.name);
  if (!wanted && chance.happens(0.5)) return [];
  const ambient = engine.site.outside + instruments.ambient + chance.between(-1, 4);
  const used = chance.between(0.9, 1.1);
  return (['cruise', 'wide open throttle'] as const).flatMap((state) => {
    const at = points.findIndex((each) => each.state === state);
    const [point, scan] = [points[at], scans[at]];
    if (point === undefined || scan === undefined) return [];
    const times = fault?.name === 'fuel rate that its air flow does not give' ? fault.size : 1;
    const misread = state !== 'cruise' && fault?.name === 'injector pulse misread' ? fault.size : 1;
    const litres = (fuelFlow(engine, point) / (engine.fuel === 'E85' ? 0.782 : 0.748)) * 3600;
    const maf = scan.get('maf');
    return [
      `readings: One look at ${state}
as: ${state === 'cruise' ? 'road' : 'road_full'}
state: ${state}
tool: scan
values:
  rpm: ${point.air.rpm.toFixed(0)} rpm
  vss: ${scan.get('vss')?.toFixed(0)} km/h
  ect: ${scan.get('ect')?.toFixed(0)} °C
  iat: ${scan.get('iat')?.toFixed(0)} °C
  ambient: ${celsius(ambient)} °C
  pulse_width: ${(misread * pulse(engine, point)).toFixed(2)} ms
  fuel_rate: ${(Math.round(times * litres * 20 * used) / 20).toFixed(2)} L/h
${maf === undefined ? '' : `  maf: ${maf.toFixed(2)} g/s\n`}`,
    ];
  });
}

const onTheRoad: readonly FaultName[] = [
  'injector pulse misread',
  'intake air sensor reads cold',
  'fuel rate that its air flow does not give',
];

/** kg/s */
function fuelFlow({ fuel }: Engine, { air, mixtures }: Point): number {
  return air.air / (stoichiometric[fuel] * mixtures[0].lambda);
}

/** ms: an injector that is open for 85 % of the cycle at the most air that the engine draws, lambda 0.85, and 0.8 ms to open. */
function pulse(engine: Engine, point: Point): number {
  const { fuel, displacement, cylinders, boosted } = engine;
  const most = ((boosted ? 0.11 : 0.06) * displacement * 1000) / stoichiometric[fuel] / 0.85 / cylinders;
  const open = (0.85 * fuelFlow(engine, point)) / cylinders / most;
  return open * (120 / point.air.rpm) * 1000 + 0.8;
}

/** Oil pressure by the car's own sensor before the start and at idle; sensors are off by 2 psi (common practice). */
function oil(fault: OneFault | undefined, chance: Chance): string {
  const off = fault?.name === 'oil pressure sensor off zero' ? fault.size : 0;
  if (off === 0 && chance.happens(0.6)) return '';
  const shown = (pressure: number): string => `${(pressure + off + chance.around(0.8, 2)).toFixed(0)} psi`;
  return `readings: Oil pressure before the start
as: oil_standing
state: key on engine off
values:
  oil_pressure: ${shown(0)}
---
readings: Oil pressure at idle
as: oil_idle
state: warm idle
values:
  oil_pressure: ${shown(chance.between(14, 45))}
`;
}
