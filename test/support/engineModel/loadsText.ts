import type { Measurements } from './caseText.ts';
import type { Chance } from './chance.ts';
import { faults, type OneFault } from './faults.ts';
import { type Hand, pressureNumber, temperatureNumber } from './hand.ts';
import type { Point } from './operation.ts';

/** What is written of the loads, in the order of a list of scan data, with the unit of the encoding. */
const listed = [
  'rpm',
  'vss',
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

export function loads(
  measurements: Measurements,
  hand: Hand,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const isInCar = faults.some(({ name, kind }) => name === fault?.name && kind === 'car');
  const hasOneLoad = fault?.name === 'air-flow meter reads low, one load looked at';
  return (fault === undefined || isInCar) && !hasOneLoad && chance.happens(0.3)
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

/** Most look at all loads; who looks at one sees no pattern over them. */
function looksAt(fault: OneFault | undefined, chance: Chance): (point: Point) => boolean {
  if (fault?.name !== 'air-flow meter reads low, one load looked at') return () => true;
  const only = chance.oneOf(['warm idle', '2500 rpm no load', 'light cruise', 'cruise']);
  return ({ state }) => state === only;
}

function loadsInTable(
  { scans: all, points: everywhere }: Measurements,
  hand: Hand,
  fault: OneFault | undefined,
  chance: Chance,
): string {
  const looked = everywhere.map(looksAt(fault, chance));
  const points = everywhere.filter((_, at) => looked[at]);
  const scans = all.filter((_, at) => looked[at]);
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

/** Behind the cold idle. */
const idleColumn = 1;

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
  if (name === 'vss') return `${name} ${cells((value) => value.toFixed(0))} km/h`;
  if (name === 'rpm') return `${name} ${cells((value) => value.toFixed(0))} rpm`;
  if (name.startsWith('lambda')) return `${name} ${cells((value) => value.toFixed(3))} -`;
  if (name === 'o2_b1s1' && fault?.name === 'volts of a wide-range sensor, written as generic sensor volts')
    return `${name} ${cells((value, at) => (at === idleColumn ? fault.size : value).toFixed(2))} V`;
  if (name.startsWith('o2')) return `${name} ${cells((value) => value.toFixed(2))} V`;
  if (name === 'iac') return `${name} ${cells((value) => value.toFixed(1))} %`;
  const digits = chance.happens(0.5) ? 0 : 1;
  return `${name} ${cells((value) => value.toFixed(digits))} %`;
}
