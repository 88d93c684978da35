import type { NoAnswer } from '../../expression/functionRow.ts';
import { nearest } from '../../text/nearest.ts';
import { noAnswer } from '../answer.ts';
import { ethanolBlend } from './ethanolBlend.ts';
import { type Fuel, fuels } from './fuels.ts';

/**
 * The fuel of that name; capitals, spaces and hyphens do not matter ("e 10" is E10).
 * E and a whole number from 0 to 100 is that share of ethanol by volume. An unknown name says which are near.
 */
export function findFuel(name: string): Fuel | NoAnswer {
  // A series asks for the same fuel at every sample, so the table is read once.
  if (bySpelling.size === 0) readTable();
  const known = bySpelling.get(name) ?? bySpelling.get(plainName(name)) ?? blendOf(plainName(name));
  if (known !== undefined) return known;
  const near = nearestFuels(name);
  const offer = near.length === 0 ? '' : ` Did you mean ${near.join(' or ')}?`;
  return noAnswer(`The fuel "${name}" is not known.${offer} Known are ${fuelNames().join(', ')}.`);
}

/** The names that were most likely meant. */
export function nearestFuels(name: string): readonly string[] {
  return nearest(name.trim(), fuels.flatMap(spellings));
}

/** "E0 to E100", then the others, as they are printed. */
export function fuelNames(): readonly string[] {
  return ['E0 to E100', ...fuels.map((fuel) => fuel.name).filter((each) => !/^E\d/.test(each))];
}

const bySpelling = new Map<string, Fuel>();

/** `e37`, which no row of the table has. */
function blendOf(plain: string): Fuel | undefined {
  const percent = /^e(\d|[1-9]\d|100)$/.exec(plain)?.[1];
  if (percent === undefined) return undefined;
  const blend = ethanolBlend(Number(percent) / 100);
  bySpelling.set(plain, blend);
  return blend;
}

function readTable(): void {
  for (const fuel of fuels) {
    for (const spelling of spellings(fuel)) {
      bySpelling.set(spelling, fuel);
      bySpelling.set(plainName(spelling), fuel);
    }
  }
}

function spellings(fuel: Fuel): readonly string[] {
  return [fuel.name, ...fuel.alsoCalled];
}

function plainName(name: string): string {
  return name.toLowerCase().replace(/[\s-]/g, '');
}
