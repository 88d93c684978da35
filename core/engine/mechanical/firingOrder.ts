import type { NoAnswer, Saying } from '../../expression/functionRow.ts';
import { type Answer, noAnswer } from '../answer.ts';
import type { Wording } from '../inWords.ts';
import { sayNumber } from '../sayValue.ts';

export const orderSayings: readonly Saying[] = [
  { words: 'fits', meaning: 'every cylinder once.' },
  { words: 'a cylinder stands twice', meaning: 'copied wrong: no cylinder fires twice in a cycle.' },
  { words: 'a cylinder is missing', meaning: 'fewer cylinders than the engine has.' },
  { words: 'a cylinder too many', meaning: 'a number that this engine does not have.' },
];

/** More cylinders than any engine on the road has. */
export const mostCylinders = 24;

/** UTF-16 units: as many cylinders twice, with a hyphen and spaces between. */
const longestOrder = 400;

/** The cylinders in the order they fire: "1-3-4-2", with hyphens, commas, semicolons or spaces between, or "1342". */
export function cylindersInOrder(order: string): readonly number[] | NoAnswer {
  const text = order.trim();
  const digits = singleDigits(text);
  if (digits !== undefined) return digits;
  if (text.length > longestOrder) return unreadable(text);
  const parts = /^[1-9]{2,9}$/.test(text) ? [...text] : text.split(/\s*[-–,;\s]\s*/);
  return parts.every((each) => /^[1-9][0-9]?$/.test(each)) ? parts.map(Number) : unreadable(text);
}

/** The form that nearly all have, digits with a hyphen between, read without taking the text apart; undefined for another. */
function singleDigits(text: string): readonly number[] | undefined {
  if (text.length < 3 || text.length % 2 === 0 || text.length > longestOrder) return undefined;
  const digits: number[] = [];
  for (let at = 0; at < text.length; at++) {
    const digit = text.charCodeAt(at) - zero;
    if (at % 2 === 1 ? digit !== hyphen : digit < 1 || digit > 9) return undefined;
    if (at % 2 === 0) digits.push(digit);
  }
  return digits;
}

const zero = 48;
/** Counted from the digit 0. */
const hyphen = 45 - zero;

function unreadable(text: string): NoAnswer {
  const shown = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  return noAnswer(
    `The firing order "${shown}" cannot be read. Write the cylinders with hyphens between: 1-3-4-2.`,
  );
}

/** Whether a firing order names every cylinder of the engine once, in one of the words of `orderSayings`. */
export function orderFits(order: string, cylinders: number): Wording {
  const wrong = unlikelyCount(cylinders);
  if (wrong !== undefined) return wrong;
  const numbers = cylindersInOrder(order);
  if ('noAnswer' in numbers) return numbers;
  if (new Set(numbers).size < numbers.length) return 'a cylinder stands twice';
  if (numbers.some((each) => each > cylinders)) return 'a cylinder too many';
  return numbers.length < cylinders ? 'a cylinder is missing' : 'fits';
}

/**
 * The cylinder that stands at top dead centre together with this one, a turn later in the order: half the order further.
 * On a waste-spark ignition the two share a coil. An odd number of cylinders has no companions.
 */
export function companionOf(cylinder: number, order: string): Answer {
  const numbers = cylindersInOrder(order);
  if ('noAnswer' in numbers) return numbers;
  const at = numbers.indexOf(cylinder);
  if (at < 0) return notInOrder(cylinder, order);
  if (numbers.length % 2 === 1) {
    return noAnswer(`With ${numbers.length} cylinders none stands at top dead centre together with another.`);
  }
  return numbers[(at + numbers.length / 2) % numbers.length] ?? notInOrder(cylinder, order);
}

/** The cylinder that fires next after this one. */
export function firesAfter(cylinder: number, order: string): Answer {
  const numbers = cylindersInOrder(order);
  if ('noAnswer' in numbers) return numbers;
  const at = numbers.indexOf(cylinder);
  return at < 0
    ? notInOrder(cylinder, order)
    : (numbers[(at + 1) % numbers.length] ?? notInOrder(cylinder, order));
}

function notInOrder(cylinder: number, order: string): NoAnswer {
  return noAnswer(`There is no cylinder ${sayNumber(cylinder)} in the firing order ${order}.`);
}

/** The crank angle from one firing to the next, turns: two turns shared among the cylinders. */
export function firingInterval(cylinders: number): Answer {
  return unlikelyCount(cylinders) ?? 2 / cylinders;
}

/** How often the engine fires, Hz: half the cylinders in each turn. Speed in turns a second. */
export function firingFrequency(rpm: number, cylinders: number): Answer {
  if (!(rpm >= 0)) return noAnswer(`A speed of ${sayNumber(rpm * 60)} rpm does not exist.`);
  return unlikelyCount(cylinders) ?? (rpm * cylinders) / 2;
}

/** The frequency of an engine order, Hz: so many times a turn. One weak cylinder of a four-stroke engine shows at order 0.5. */
export function orderFrequency(order: number, rpm: number): Answer {
  if (!(rpm >= 0)) return noAnswer(`A speed of ${sayNumber(rpm * 60)} rpm does not exist.`);
  if (!(order > 0))
    return noAnswer(
      `An order of ${sayNumber(order)} does not exist; the firing order of a four-cylinder engine is 2.`,
    );
  return order * rpm;
}

/** The engine order of a frequency (Hz) at a speed: how often it happens in a turn. */
export function engineOrder(frequency: number, rpm: number): Answer {
  if (!(rpm > 0)) return noAnswer('The engine stands still: a frequency has no order then.');
  if (!(frequency >= 0)) return noAnswer('A frequency below 0 does not exist.');
  return frequency / rpm;
}

/** The speed, turns a second, from the time (s) of one tooth pitch on a wheel; missing teeth are counted as if they were there. */
export function toothSpeed(time: number, pitches: number): Answer {
  if (!(time > 0)) return noAnswer('The time from tooth to tooth must be above 0.');
  if (!(pitches >= 1 && Number.isInteger(pitches))) {
    return noAnswer(`A wheel has a whole number of pitches, not ${sayNumber(pitches)}; a 60−2 wheel has 60.`);
  }
  return 1 / (time * pitches);
}

function unlikelyCount(cylinders: number): NoAnswer | undefined {
  return cylinders >= 1 && Number.isInteger(cylinders)
    ? undefined
    : noAnswer(`An engine has a whole number of cylinders, not ${sayNumber(cylinders)}.`);
}
