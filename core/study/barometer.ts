import { noBarometer } from '../expression/absent.ts';
import { lift } from '../expression/lift.ts';
import type { Absent, One } from '../expression/value.ts';
import { functionRow } from './functions.ts';
import { sameAmount } from './keepValues.ts';
import type { Reading } from './types.ts';

/** The barometer that conversions, and functions that lack one, use at a place, and the readings that it is. */
export interface Barometer {
  readonly value: One | Absent;
  readonly from: readonly string[];
  /** Where none is certain because parts of what is converted have their own: what those are. */
  readonly among: readonly string[];
}

/** The barometers of a case: the certain one for all of it, and those that single cells hold. */
export interface Barometers {
  readonly ofCase: Barometer;
  /** By cell, then by the cell's own name for the state ('' outside a state's column). */
  readonly ofCell: ReadonlyMap<number, ReadonlyMap<string, Barometer>>;
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
  const ofCell = new Map<number, Map<string, Barometer>>();
  const baros: Barometer[] = [];
  const keyOn: Barometer[] = [];
  for (const reading of readings) {
    if (reading.value.kind !== 'one' || !isBarometer(reading)) continue;
    const found = { value: reading.value, from: [reading.fullName], among: [] };
    if (reading.signal?.name === 'baro') {
      baros.push(found);
      const columns = ofCell.get(reading.cell) ?? new Map<string, Barometer>();
      const column = reading.column ?? '';
      if (!columns.has(column)) columns.set(column, found);
      ofCell.set(reading.cell, columns);
    }
    if (isKeyOnManifold(reading)) keyOn.push(found);
  }
  return { ofCell, ofCase: onlyOne(baros) ?? onlyOne(keyOn) ?? fromSite(header) ?? none };
}

/** The barometer of a cell, or of a state's column in it; else that of the case. */
export function barometerAt(barometers: Barometers, cell: number, column: string | undefined): Barometer {
  const columns = barometers.ofCell.get(cell);
  if (columns === undefined) return barometers.ofCase;
  const own = columns.get(column ?? '') ?? columns.get('') ?? onlyOne([...columns.values()]);
  return own ?? barometers.ofCase;
}

/** The barometer of values that were taken at several places: the one that all of them have. */
export function commonBarometer(found: ReadonlySet<Barometer>): Barometer {
  const only = onlyOne([...found]);
  if (only !== undefined) return only;
  return { value: severalBarometers, from: [], among: [...new Set([...found].flatMap((each) => each.from))] };
}

/** Whether conversions come to the same with one as with the other. */
export function sameBarometer(a: Barometer | undefined, b: Barometer | undefined): boolean {
  if (a === b) return true;
  if (a === undefined || b === undefined) return false;
  if (!sameNames(a.from, b.from) || !sameNames(a.among, b.among)) return false;
  const [one, other] = [a.value, b.value];
  if (one === other) return true;
  // The station's pressure is computed each time.
  return one.kind === 'one' && other.kind === 'one' && sameAmount(one.amount, other.amount);
}

const sameNames = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((each, index) => each === b[index]);

/** Whether a reading is one that conversions may use as a barometer. */
export function isBarometer(reading: Reading): boolean {
  return reading.from !== 'reference' && (reading.signal?.name === 'baro' || isKeyOnManifold(reading));
}

/** A manifold pressure with the engine standing still is a barometer. */
export function isKeyOnManifold(reading: Reading): boolean {
  return reading.signal?.name === 'map' && reading.state?.known?.name === 'key on engine off';
}

/** With the uncertainty of both figures: the same as `station_pressure(…)` of them, and from the same sources. */
function fromSite(header: ReadonlyMap<string, Reading>): Barometer | undefined {
  const altitude = header.get('site.altitude');
  const seaLevel = header.get('site.sea_level_pressure');
  const row = functionRow('station_pressure');
  if (altitude?.value.kind !== 'one' || seaLevel?.value.kind !== 'one' || row?.form !== 'scalar')
    return undefined;
  const value = lift(row, [seaLevel.value, altitude.value], seaLevel.value.type);
  if (value.kind !== 'one') return undefined;
  return { value, from: [altitude.fullName, seaLevel.fullName], among: [] };
}

const onlyOne = <T>(list: readonly T[]): T | undefined => (list.length === 1 ? list[0] : undefined);

const none: Barometer = { value: noBarometer, from: [], among: [] };

const severalBarometers: Absent = {
  kind: 'absent',
  status: 'cannot compute',
  why: 'what is converted was not all measured under one barometer',
};
