import type { Plain } from '../../expression/functionRow.ts';
import { type Answer, noAnswer } from '../answer.ts';
import type { Wording } from '../inWords.ts';
import { sayNumber, sayPercent } from '../sayValue.ts';
import { curveAt } from '../sensors/curve.ts';

interface ChargeTable {
  readonly source: string;
  /** Open-circuit volts at room temperature after rest, ascending. */
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** Published tables for flooded batteries differ by 0.05 to 0.1 V among each other: 75 % is 12.4 or 12.45 V. */
const flooded: ChargeTable = {
  source: 'battery council table for flooded batteries (value from memory)',
  x: [11.89, 12.06, 12.24, 12.45, 12.65],
  y: [0, 0.25, 0.5, 0.75, 1],
};

/**
 * A sealed battery with its acid in glass mats, after eight hours of rest: full and empty as printed, straight between.
 * A technical manual of the same army (TM 9-6115-730-24) calls 12.8 to 13.0 V full; other tables in public use have 12.6,
 * 12.3 and 12.0 V at 75, 50 and 25 %, up to 15 points below this line.
 */
const glassMat: ChargeTable = {
  source: 'U.S. Army, TB 43-PS-665 (April 2008), for AGM batteries after eight hours of rest',
  x: [11.4, 12.9],
  y: [0, 1],
};

export const floodedSource: string = flooded.source;
export const glassMatSource: string = glassMat.source;

/** A flooded battery with a stronger plate holds the same acid. */
const tables: ReadonlyMap<string, ChargeTable> = new Map([
  ['flooded', flooded],
  ['efb', flooded],
  ['agm', glassMat],
]);

/** Builds of which no published table is known here that holds beyond one maker's batteries. */
const byMaker: ReadonlySet<string> = new Set(['gel', 'lithium', 'lifepo4']);

/**
 * How full a 12 V battery is, as a share, from its open-circuit voltage (V) at 25 °C after at least three hours of rest
 * (AGM: eight):
 * straight between the points of the build's table, 0 below it and 1 above.
 * Not below 10.5 V, where a cell is shorted or the battery deeply discharged (a damaging level by U.S. Army TM 9-6140-200-14),
 * nor above 13.2 V, which is a charger or a surface charge (common practice).
 */
export function stateOfCharge(volts: number, chemistry: string): Answer {
  const build = chemistry.trim().toLowerCase();
  const table = tables.get(build);
  if (table === undefined) {
    return noAnswer(
      byMaker.has(build)
        ? `For ${chemistry.trim()} batteries there is no table that all makers share. Enter the maker’s own as a \`reference\` and use \`interpolate\`.`
        : `The battery’s build "${chemistry}" is not known. Known are "flooded", "EFB" and "AGM"; for others enter the maker’s table as a \`reference\` and use \`interpolate\`.`,
    );
  }
  if (!(volts >= 10.5)) {
    return noAnswer(
      `A 12 V battery that rests at ${sayNumber(volts)} V has a shorted cell or is deeply discharged; the table does not reach so low. Charge it and test it under load.`,
    );
  }
  if (!(volts <= 13.2)) {
    return noAnswer(
      `No 12 V battery rests at ${sayNumber(volts)} V: it is being charged, or has a surface charge. Take the load and the charger off and let it rest.`,
    );
  }
  const first = table.x[0] ?? Number.NaN;
  if (volts <= first) return 0;
  return curveAt(table, volts)?.y ?? 1;
}

/** The same from a row's arguments: volts, chemistry. */
export function stateOfChargeOf([volts, chemistry]: readonly Plain[]): Answer {
  if (typeof chemistry !== 'string')
    return noAnswer('The battery’s build must be a text, such as "flooded".');
  if (typeof volts !== 'number' || !Number.isFinite(volts))
    return noAnswer('One of the values is no number.');
  return stateOfCharge(volts, chemistry);
}

/** Where the table of a build comes from, with its points, as a text to print beside the result. */
export function chargeTableWords(chemistry: string): Wording {
  const table = tables.get(chemistry.trim().toLowerCase());
  if (table === undefined) {
    const refused = stateOfCharge(12.5, chemistry);
    return typeof refused === 'number' ? noAnswer('There is no table for this build.') : refused;
  }
  const points = table.x.map((volts, at) => `${sayNumber(volts)} V ${sayPercent(table.y[at] ?? Number.NaN)}`);
  return `${table.source}: ${points.toReversed().join(', ')}`;
}
