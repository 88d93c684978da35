import type { Plain } from '../../expression/functionRow.ts';
import { type Answer, noAnswer, ofNumbers } from '../answer.ts';
import { isWithin } from '../isWithin.ts';
import { sayNumber, sayTemperature } from '../sayValue.ts';

/** Annealed copper at 20 °C, Ω·m (International Annealed Copper Standard; ASTM B258, NBS Handbook 100). */
const copper = 1.7241e-8;

/** Its resistance grows by this share with each kelvin above 20 °C (ASTM B258, NBS Handbook 100). */
const growth = 0.00393;

/**
 * The resistance, Ω, of a length (m) of copper wire at a temperature (K): 1.7241e-8 Ω·m · length/area · (1 + 0.00393·(t − 20 °C)).
 * Sizes: "18 AWG", "2/0 AWG" (from 4/0 to 40), or the area as "35 mm2". Temperatures from −60 to 250 °C.
 */
export function wireResistance(size: string, length: number, temperature: number): Answer {
  const area = wireArea(size);
  if (typeof area !== 'number') return area;
  if (!(length >= 0)) return noAnswer(`A wire of ${sayNumber(length)} m does not exist.`);
  if (!isWithin(temperature, 213.15, 523.15)) {
    return noAnswer(
      `Copper wire is computed from −60 to 250 °C; ${sayTemperature(temperature)} is outside. Check the unit.`,
    );
  }
  return ((copper * length) / area) * (1 + growth * (temperature - 293.15));
}

/** The voltage, V, that the same wire loses at a current (A); at 20 °C unless a temperature (K) is given. */
export function wireDrop(size: string, length: number, current: number, temperature = 293.15): Answer {
  const resistance = wireResistance(size, length, temperature);
  return typeof resistance === 'number' ? current * resistance : resistance;
}

/** A row's `compute` for a size and numbers. */
export function ofWire(
  formula: (size: string, ...numbers: number[]) => Answer,
): (args: readonly Plain[]) => Answer {
  return ([size, ...rest]) => {
    if (typeof size !== 'string') return noAnswer('The size must be a text, for instance "18 AWG".');
    return ofNumbers((...numbers) => formula(size, ...numbers))(rest);
  };
}

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
