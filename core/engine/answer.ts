import type { NoAnswer, Plain } from '../expression/functionRow.ts';

/** What a formula gives: a number in SI units, or a sentence that says why there is none. */
export type Answer = number | NoAnswer;

export function noAnswer(sentence: string): NoAnswer {
  return { noAnswer: sentence };
}

export function isNoAnswer(answer: Answer): answer is NoAnswer {
  return typeof answer !== 'number';
}

/**
 * A row's `compute` for a formula of numbers only: arguments in the parameters' order, in SI units.
 * Invariant: what a row computes is a finite number or a sentence, never NaN or infinite.
 */
export function ofNumbers(formula: (...numbers: number[]) => Answer): (args: readonly Plain[]) => Answer {
  return (args) => {
    const numbers = numbersOf(args, args.length);
    return numbers === undefined ? notANumber : finite(formula(...numbers));
  };
}

/** The same for a formula whose last argument is a fuel's name. */
export function ofNumbersAndFuel(
  formula: (numbers: readonly number[], fuel: string) => Answer,
): (args: readonly Plain[]) => Answer {
  return (args) => {
    const fuel = args[args.length - 1];
    if (typeof fuel !== 'string') return noAnswer('The fuel must be named, for instance "E10".');
    const numbers = numbersOf(args, args.length - 1);
    return numbers === undefined ? notANumber : finite(formula(numbers, fuel));
  };
}

function finite(answer: Answer): Answer {
  if (typeof answer === 'number' && !Number.isFinite(answer)) {
    return noAnswer('The result is beyond any number. Check the values and their units.');
  }
  return answer;
}

const notANumber = noAnswer('One of the values is no number.');

function numbersOf(args: readonly Plain[], count: number): number[] | undefined {
  const numbers: number[] = [];
  for (let at = 0; at < count; at++) {
    const arg = args[at];
    if (typeof arg !== 'number' || !Number.isFinite(arg)) return undefined;
    numbers.push(arg);
  }
  return numbers;
}
