import { expect } from 'vitest';
import type { Answer } from '../../core/engine/answer.ts';
import { engineFunctions } from '../../core/engine/engineFunctions.ts';
import type { Plain } from '../../core/expression/functionRow.ts';

/** The number of an answer; a sentence instead of one fails the test with that sentence. */
export function numberOf(answer: Answer): number {
  if (typeof answer !== 'number') expect.fail(`no answer: ${answer.noAnswer}`);
  return answer;
}

/** The sentence of an answer that must have none. */
export function sentenceOf(answer: Answer): string {
  if (typeof answer === 'number') expect.fail(`an answer where none was expected: ${answer}`);
  return answer.noAnswer;
}

/** What a row computes from SI values in the order of its parameters. */
export function compute(name: string, args: readonly Plain[]): Answer {
  const row = engineFunctions().find((each) => each.name === name);
  if (row?.form !== 'scalar') expect.fail(`${name} is no function of single numbers`);
  return row.compute(args);
}

export const inHg = 3386.388640341;
export const psi = 6894.757293168362;
export const kelvin = (celsius: number): number => celsius + 273.15;
/** Engine speed in turns a second. */
export const rpm = (perMinute: number): number => perMinute / 60;
