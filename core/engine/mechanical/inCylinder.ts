import { cannotCompute } from '../../expression/absent.ts';
import type { Absent, Fields, One, Series, Value } from '../../expression/value.ts';
import { add, exact, measured } from '../../quantity/amount.ts';
import type { Amount } from '../../quantity/types.ts';
import { unitOf } from '../../quantity/unit.ts';
import { typeIn } from '../../waveform/arguments.ts';
import { turnsBetween } from '../../waveform/cylinder/crankAngle.ts';
import { cyclesByDegree, meanOf } from '../../waveform/cylinder/profile.ts';
import { meanOfCycles } from '../../waveform/cylinder/spread.ts';
import { type Towers, towersOf } from '../../waveform/cylinder/towers.ts';
import { isRecorded, type Recorded, recorded } from '../../waveform/recorded.ts';
import { sayPressure } from '../sayValue.ts';
import { compressesNothing, numberOf } from './ratioGiven.ts';
import { type CylinderShape, type ValveEvents, valveEventsIn } from './valveEvents.ts';

type Arguments = readonly (Value | undefined)[];

interface Found {
  readonly record: Recorded;
  readonly towers: Towers;
}

function towersIn(pressure: Value | undefined): Found | Absent {
  if (pressure?.kind !== 'series') return cannotCompute('it has no samples');
  const record = recorded(pressure);
  if (!isRecorded(record)) return record;
  const towers = towersOf(record);
  return 'kind' in towers ? towers : { record, towers };
}

/** Turns after the compression's top dead centre, 0 to 2, at the moments of the samples; missing outside the towers. */
export function crankAngle([pressure]: Arguments): Value {
  const found = towersIn(pressure);
  if ('kind' in found) return found;
  if (pressure?.kind !== 'series') return cannotCompute('it has no samples');
  const turns = turnsBetween(pressure.time, found.towers.tops);
  const samples = turns.map((each) => each - 2 * Math.floor(each / 2));
  return { ...pressure, type: typeIn('°ATDC'), samples, spread: [] };
}

const mostCycles = 60;
/** Groups of cycles that are read on their own, for what the reading scatters by. */
const mostGroups = 4;

/**
 * Half-widths, degrees, by which the corner of a pressure lies off the valve's seat (core/waveform/ACCURACY.md): what is
 * the same in every capture, which a difference of two captures is free of, and what is each capture's own.
 */
const offSeat = {
  evo: { common: 13, own: 2 },
  evc: { common: 9, own: 3 },
  ivo: { common: 9, own: 3 },
  ivc: { common: 6, own: 7 },
} as const;

function seat(name: keyof typeof offSeat, from: string): Amount {
  const { common, own } = offSeat[name];
  return add(
    measured(0, `where the pressure turns against the valve’s seat, ${name}`, common / 360),
    measured(0, `${from}, ${name} against the seat`, own / 360),
  );
}

export function valveEvents([pressure, ratio, barometer]: Arguments): Value {
  const shape: CylinderShape = {
    ratio: numberOf(ratio, 10),
    rod: 3.5,
    barometer: numberOf(barometer, 101_325),
  };
  if (!(shape.ratio > 1)) return compressesNothing('valve_events', shape.ratio);
  if (!(shape.barometer > 0))
    return cannotCompute(`\`valve_events\`: a barometer of ${sayPressure(shape.barometer)} does not exist`);
  const found = towersIn(pressure);
  if ('kind' in found) return found;
  if (pressure?.kind !== 'series') return cannotCompute('it has no samples');
  const { record, towers } = found;
  const turns = turnsBetween(record.time, towers.tops);
  const cycles = cyclesByDegree(turns, record.samples, mostCycles);
  if (cycles.length === 0) return cannotCompute('there is less than a sample every 4° of the crank');
  const groups = groupsOf(cycles).map((group) => valveEventsIn(meanOf(group), shape));
  return fieldsOf(pressure, valveEventsIn(meanOf(cycles), shape), groups, towers);
}

function groupsOf(cycles: readonly Float64Array[]): readonly (readonly Float64Array[])[] {
  const count = Math.min(mostGroups, cycles.length);
  return Array.from({ length: count }, (_, g) => cycles.filter((_, k) => k % count === g));
}

function fieldsOf(
  pressure: Series,
  all: ValveEvents,
  groups: readonly ValveEvents[],
  { tops, heights }: Towers,
): Fields {
  const from = `${pressure.capture} ${pressure.time[0] ?? 0}..${pressure.time.at(-1) ?? 0} s`;
  const scatter = (name: string, read: (of: ValveEvents) => number | undefined): Amount => {
    const values = groups.map(read).filter((each) => each !== undefined && Number.isFinite(each));
    const { spread } = meanOfCycles(values as number[], `${from}, ${name} from cycle to cycle`);
    return { si: read(all) ?? Number.NaN, spread: values.length < 2 ? [] : spread };
  };
  const angle = (name: keyof typeof offSeat, position: (degrees: number) => number): One | Absent => {
    if (all[name] === undefined) return unread;
    const amount = scatter(name, (of) => (of[name] === undefined ? undefined : position(of[name]) / 360));
    return one(units[name], add(amount, seat(name, from)));
  };
  const overlap =
    all.evc === undefined || all.ivo === undefined ? unread : one('°CA', overlapOf(scatter, from));
  // What is common to all samples shifts a level, and no angle.
  const level = (amount: Amount, sign: 1 | -1): Amount =>
    pressure.spread.reduce(
      (sum, { source, by }) =>
        typeof by === 'number' ? add(sum, { si: 0, spread: [{ source, by: sign * by }] }) : sum,
      amount,
    );
  const speeds = tops.slice(1).map((top, k) => 2 / (top - (tops[k] ?? 0)));
  const peaks = meanOfCycles(heights, `${from}, peak from cycle to cycle`);
  return {
    kind: 'fields',
    fields: new Map<string, One | Absent>([
      ['evo', angle('evo', (at) => 180 - at)],
      ['evc', angle('evc', (at) => at - 360)],
      ['ivo', angle('ivo', (at) => 360 - at)],
      ['ivc', angle('ivc', (at) => at - 540)],
      ['overlap', overlap],
      [
        'exhaust_plateau',
        one(
          'kPa',
          level(
            scatter('exhaust', (of) => of.exhaust),
            1,
          ),
        ),
      ],
      [
        'intake_plateau',
        one(
          'kPa',
          level(
            scatter('intake', (of) => -of.intake),
            -1,
          ),
        ),
      ],
      [
        'tower_ratio',
        Number.isFinite(all.towerRatio)
          ? one(
              '1',
              scatter('tower', (of) => of.towerRatio),
            )
          : unread,
      ],
      ['peak', one('kPa', level(peaks, 1))],
      ['rpm', one('rpm', meanOfCycles(speeds, `${from}, speed from cycle to cycle`))],
    ]),
  };
}

const units = { evo: '°BBDC', evc: '°ATDC', ivo: '°BTDC', ivc: '°ABDC' } as const;

function overlapOf(
  scatter: (name: string, read: (of: ValveEvents) => number | undefined) => Amount,
  from: string,
): Amount {
  const read = ({ evc, ivo }: ValveEvents): number | undefined =>
    evc === undefined || ivo === undefined ? undefined : (evc - ivo) / 360;
  return add(add(scatter('overlap', read), seat('evc', from)), seat('ivo', from));
}

const unread = cannotCompute('its corner cannot be told from noise');

function one(symbol: string, amount: Amount): One {
  const unit = unitOf(symbol);
  return {
    kind: 'one',
    type: typeIn(unit?.symbol ?? '1'),
    amount: amount.spread.length === 0 ? exact(amount.si) : amount,
  };
}
