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
  const asked = plainName(name);
  const known = fuels.find((fuel) => spellings(fuel).some((spelling) => plainName(spelling) === asked));
  if (known !== undefined) return known;
  const percent = /^e(\d{1,3})$/.exec(asked)?.[1];
  if (percent !== undefined && Number(percent) <= 100) return ethanolBlend(Number(percent) / 100);
  const near = nearest(name.trim(), fuels.flatMap(spellings));
  const offer = near.length === 0 ? '' : ` Did you mean ${near.join(' or ')}?`;
  return noAnswer(
    `The fuel "${name}" is not known.${offer} Known are E0 to E100, ${fuels
      .filter((fuel) => !/^E\d/.test(fuel.name))
      .map((fuel) => fuel.name)
      .join(', ')}.`,
  );
}

function spellings(fuel: Fuel): readonly string[] {
  return [fuel.name, ...fuel.alsoCalled];
}

function plainName(name: string): string {
  return name.toLowerCase().replace(/[\s-]/g, '');
}
