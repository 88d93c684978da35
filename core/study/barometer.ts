import { stationPressure } from '../engine/air/stationPressure.ts';
import type { Absent, One } from '../expression/value.ts';
import { exact } from '../quantity/amount.ts';
import type { Reading } from './types.ts';

/** The barometer that conversions use at a place, and the readings that it is. */
export interface Barometer {
  readonly value: One | Absent;
  readonly from: readonly string[];
}

/** The barometers of a case: the certain one for all of it, and those that single cells hold. */
export interface Barometers {
  readonly ofCase: Barometer;
  readonly ofCell: ReadonlyMap<number, Barometer>;
}

/**
 * Finds the case's barometers, in order: `baro` of the same cell; the case's only `baro`;
 * the only key-on, engine-off manifold pressure; the station pressure of the site.
 * It is never the weather report's sea-level figure.
 */
export function findBarometers(
  readings: readonly Reading[],
  header: ReadonlyMap<string, Reading>,
): Barometers {
  const ofCell = new Map<number, Barometer>();
  const baros: Barometer[] = [];
  const keyOn: Barometer[] = [];
  for (const reading of readings) {
    if (reading.from === 'reference' || reading.value.kind !== 'one') continue;
    const found = { value: reading.value, from: [reading.fullName] };
    if (reading.signal?.name === 'baro') {
      baros.push(found);
      if (!ofCell.has(reading.cell)) ofCell.set(reading.cell, found);
    }
    if (isKeyOnManifold(reading)) keyOn.push(found);
  }
  return { ofCell, ofCase: onlyOne(baros) ?? onlyOne(keyOn) ?? fromSite(header) ?? none };
}

/** The barometer where values of these cells are converted: their own, when they have just one. */
export function barometerFor(barometers: Barometers, cells: ReadonlySet<number>): Barometer {
  const own: Barometer[] = [];
  for (const cell of cells) {
    const barometer = barometers.ofCell.get(cell);
    if (barometer !== undefined) own.push(barometer);
  }
  return onlyOne(own) ?? barometers.ofCase;
}

/** A manifold pressure with the engine standing still is a barometer. */
export function isKeyOnManifold(reading: Reading): boolean {
  return reading.signal?.name === 'map' && reading.state?.known?.name === 'key on engine off';
}

function fromSite(header: ReadonlyMap<string, Reading>): Barometer | undefined {
  const altitude = header.get('site.altitude');
  const seaLevel = header.get('site.sea_level_pressure');
  if (altitude?.value.kind !== 'one' || seaLevel?.value.kind !== 'one') return undefined;
  const si = stationPressure(seaLevel.value.amount.si, altitude.value.amount.si);
  if (typeof si !== 'number') return undefined;
  return {
    value: { kind: 'one', type: seaLevel.value.type, amount: exact(si) },
    from: [altitude.fullName, seaLevel.fullName],
  };
}

const onlyOne = <T>(list: readonly T[]): T | undefined => (list.length === 1 ? list[0] : undefined);

const none: Barometer = {
  value: { kind: 'absent', status: 'cannot compute', why: 'there is no certain barometer' },
  from: [],
};
