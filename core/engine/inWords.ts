import { cannotCompute } from '../expression/absent.ts';
import type { ComputedType, NoAnswer, Plain, WholeFunction } from '../expression/functionRow.ts';
import type { Type } from '../expression/type.ts';
import type { Value } from '../expression/value.ts';
import { halfWidth } from '../quantity/amount.ts';

/** What a reading usually means, as one of the row's sayings; or a sentence that says why nothing can be said. */
export type Wording = string | NoAnswer;

/** The part of a row that answers in words. */
type InWords = Pick<WholeFunction, 'form' | 'result' | 'evaluate'>;

/**
 * A function that answers in words from single values: numbers in SI units and texts, in the parameters' order.
 * Where a value's half-width would change the words, the answer is that it is too close to call,
 * so that a pattern never looks more certain than its readings.
 */
export function inWords(name: string, formula: (args: readonly Plain[]) => Wording): InWords {
  return {
    form: 'whole',
    result: { kind: 'computed', says: 'one of the texts below', typeOf: ofSingles },
    evaluate: (args) => worded(name, formula, args),
  };
}

/** The same for numbers only; one that is left out is NaN. */
export function numbersInWords(name: string, formula: (...numbers: number[]) => Wording): InWords {
  return inWords(name, (args) => {
    if (args.some((each) => each !== undefined && !(typeof each === 'number' && Number.isFinite(each))))
      return { noAnswer: 'One of the values is no number.' };
    return formula(...args.map((each) => (typeof each === 'number' ? each : Number.NaN)));
  });
}

function worded(
  name: string,
  formula: (args: readonly Plain[]) => Wording,
  args: readonly (Value | undefined)[],
): Value {
  const plain = args.map(plainOf);
  const said = formula(plain);
  if (typeof said !== 'string') return cannotCompute(`\`${name}\`: ${said.noAnswer}`);
  for (const [at, arg] of args.entries()) {
    if (arg?.kind !== 'one') continue;
    const width = halfWidth(arg.amount);
    if (width === 0) continue;
    for (const si of [arg.amount.si - width, arg.amount.si + width]) {
      const other = formula(plain.with(at, si));
      if (other === said) continue;
      const or = typeof other === 'string' ? `"${said}" or "${other}"` : `"${said}"`;
      return cannotCompute(
        `\`${name}\` is too close to call: with the readings’ uncertainty it may be ${or}`,
      );
    }
  }
  return { kind: 'words', text: said };
}

function plainOf(value: Value | undefined): Plain {
  switch (value?.kind) {
    case 'one':
      return value.amount.si;
    case 'words':
      return value.text;
    default:
      return undefined;
  }
}

/** Words are said of one cylinder or one moment. */
function ofSingles(types: readonly (Type | undefined)[]): ComputedType {
  const wrong = types.findIndex((type) => type !== undefined && type.kind !== 'one' && type.kind !== 'words');
  if (wrong >= 0) return { wrong, takes: 'one value; of several take one, such as `cranked.compression[3]`' };
  return { type: { kind: 'words' } };
}
