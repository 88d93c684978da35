import { meansByCell, operatingCells } from '../../core/waveform/trims/operatingCells.ts';
import { trimPattern } from '../../core/waveform/trims/trimPattern.ts';
import { drive, islandRound, neededAt, type TrimFault } from '../support/signal/driveLog.ts';
import type { AccuracySection, AccuracyTable } from './table.ts';

const wanders = [0.005, 0.01, 0.02, 0.04];

/** Idle, light load, cruise, heavy load of the drive. */
const legs = [0, 1, 3, 5];
const names = ['idle', 'light load', 'cruise', 'heavy load'];

function cellsOf(fault: TrimFault, wander: number, seed: number) {
  const log = drive(islandRound, fault, wander, seed);
  const cells = operatingCells(
    {
      time: log.time,
      rpm: log.rpm.map((each) => each / 60),
      load: log.map.map((each) => each / 100),
      speed: log.vss.map((each) => each / 3.6),
      loop: log.loop,
      pulseWidth: undefined,
    },
    { idleSpeed: 1100 / 60, light: 0.35, heavy: 0.7, overrun: 0.24, settle: 2 },
  );
  if (!(cells instanceof Int8Array)) return undefined;
  const trims = meansByCell(
    log.stft.map((each, i) => each + (log.ltft[i] ?? 0)),
    cells,
  );
  return { trims, air: meansByCell(log.maf, cells) };
}

const about = [
  'A drive of four minutes over idle, light load, cruise and a climb, with overrun and full throttle between, ten readings a second.',
  'Trims in steps of 1/128 that wander about what the fault needs and forget in a second.',
];

const byCell: AccuracyTable = {
  of: 'by_operating_cell(trim, rpm, map)',
  about: [...about, 'The fault is a hole of 0.9 g/s.'],
  unit: '% of trim',
  rowsAre: 'operating cell',
  rows: names,
  columnsAre: 'wander (standard deviation)',
  columns: wanders.map((each) => `${100 * each} %`),
  error: (row, column, seed) => {
    const leg = islandRound[legs[row] ?? 0];
    const mean = cellsOf({ hole: 0.9 }, wanders[column] ?? 0, seed)?.trims[row]?.mean;
    return mean === undefined || leg === undefined
      ? undefined
      : 100 * (mean - neededAt(leg, { hole: 0.9 }).trim);
  },
};

const holes = [0.4, 0.7, 1, 1.4];

const grams: AccuracyTable = {
  of: 'trim_pattern(trim, air).grams',
  about: [
    ...about,
    'The pattern is taken with a wander of 2 %; no answer where it is not named “same grams”.',
  ],
  unit: 'g/s',
  rowsAre: 'hole',
  rows: holes.map((each) => `${each} g/s`),
  columnsAre: 'wander (standard deviation)',
  columns: wanders.map((each) => `${100 * each} %`),
  error: (row, column, seed) => {
    const hole = holes[row] ?? 0;
    const cells = cellsOf({ hole }, wanders[column] ?? 0, seed);
    const points = names.flatMap((name, at) => {
      const [trim, air] = [cells?.trims[at], cells?.air[at]];
      return trim === undefined || air === undefined
        ? []
        : [{ name, air: air.mean / 1000, trim: trim.mean, halfWidth: Math.hypot(0.02, trim.scatter) }];
    });
    const found = trimPattern(points).grams;
    return found === undefined ? undefined : 1000 * ((found.low + found.high) / 2) - hole;
  },
};

const section: AccuracySection = {
  page: 'core/waveform/ACCURACY.md',
  title: 'Trims over the load',
  tables: [byCell, grams],
};

export default section;
