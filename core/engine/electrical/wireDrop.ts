import type { Plain } from '../../expression/functionRow.ts';
import { type Answer, noAnswer } from '../answer.ts';
import { sayNumber } from '../sayValue.ts';

/** Annealed copper at 20 °C, Ω·m (International Annealed Copper Standard; ASTM B258, NBS Handbook 100). */
const copper = 1.7241e-8;

/**
 * The voltage, V, that a length (m) of copper wire at 20 °C loses at a current (A): I · 1.7241e-8 Ω·m · length/area.
 * Sizes: "18 AWG", "2/0 AWG" (from 4/0 to 40), or the area as "35 mm2". Each degree above 20 °C adds 0.393 %.
 */
export function wireDrop(size: string, length: number, current: number): Answer {
  const area = wireArea(size);
  if (typeof area !== 'number') return area;
  if (!(length >= 0)) return noAnswer(`A wire of ${sayNumber(length)} m does not exist.`);
  return (current * copper * length) / area;
}

/** The same from a row's arguments: size, length, current. */
export function wireDropOf([size, length, current]: readonly Plain[]): Answer {
  if (typeof size !== 'string') return noAnswer('The size must be a text, for instance "18 AWG".');
  if (typeof length !== 'number' || typeof current !== 'number') return notANumber;
  if (!Number.isFinite(length) || !Number.isFinite(current)) return notANumber;
  const drop = wireDrop(size, length, current);
  if (typeof drop !== 'number' || Number.isFinite(drop)) return drop;
  return noAnswer('The result is beyond any number. Check the values and their units.');
}

const notANumber = noAnswer('One of the values is no number.');

/** The cross-section, m², of a size as written; gauge n has a diameter of 0.005 inch · 92^((36 − n)/39) (ASTM B258). */
export function wireArea(size: string): Answer {
  const gauge = gaugeOf(size);
  if (gauge !== undefined) {
    const diameter = 0.005 * 0.0254 * 92 ** ((36 - gauge) / 39);
    return (Math.PI / 4) * diameter ** 2;
  }
  const square = /^\s*(\d+(?:\.\d+)?)\s*mm(?:2|²|\^2)\s*$/i.exec(size)?.[1];
  const area = Number(square);
  if (area >= 0.01 && area <= 1000) return area * 1e-6;
  return noAnswer(
    `The wire size "${size}" is not known. Write it as "18 AWG", "2/0 AWG" (from 4/0 to 40) or "35 mm2".`,
  );
}

/** The gauge number; 2/0 is −1. */
function gaugeOf(size: string): number | undefined {
  const written = /^\s*(?:AWG\s*)?(?:([1-4])\/0|(0{1,4})|([1-9]\d?))\s*(?:AWG)?\s*$/i.exec(size);
  if (written === null || !/awg/i.test(size)) return undefined;
  const [, oughts, zeros, number] = written;
  if (oughts !== undefined) return 1 - Number(oughts);
  if (zeros !== undefined) return 1 - zeros.length;
  return Number(number) <= 40 ? Number(number) : undefined;
}
