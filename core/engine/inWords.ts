import { cannotCompute } from '../expression/absent.ts';
import type { ComputedType, NoAnswer, Plain, WholeFunction } from '../expression/functionRow.ts';
import type { Type } from '../expression/type.ts';
import type { Value } from '../expression/value.ts';
import { halfWidth } from '../quantity/amount.ts';
import type { SourceId } from '../quantity/types.ts';

/** What a reading usually means, as one of the row's sayings; or a sentence that says why nothing can be said. */
export type Wording = string | NoAnswer;

type Arguments = readonly (Value | undefined)[];

/** The part of a row that answers in words. */
type InWords = Pick<WholeFunction, 'form' | 'result' | 'evaluate'>;

/**
 * A function that answers in words from single values: numbers in SI units and texts, in the parameters' order.
 * Where the values' uncertainty would change the words, the answer is that it is too close to call,
 * so that a pattern never looks more certain than its readings. What the formula refuses cannot be the truth, and is left out.
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

function worded(name: string, formula: (args: readonly Plain[]) => Wording, args: Arguments): Value {
  const plain = args.map(plainOf);
  const said = formula(plain);
  if (typeof said !== 'string') return cannotCompute(`\`${name}\`: ${said.noAnswer}`);
  const mayBe = new Set([said]);
  for (const shifted of withinUncertainty(args, plain)) {
    const other = formula(shifted);
    if (typeof other === 'string') mayBe.add(other);
  }
  if (mayBe.size === 1) return { kind: 'words', text: said };
  const words = [...mayBe].map((each) => `"${each}"`).join(' or ');
  return {
    ...cannotCompute(`\`${name}\` is too close to call: with the readings’ uncertainty it may be ${words}`),
    mayBe: [...mayBe],
  };
}

/**
 * The arguments as they may be within their uncertainty: each source moved alone by its half-width, and all together so
 * far that they make one half-width in quadrature (JCGM 100:2008, 5.1.2).
 */
function* withinUncertainty(args: Arguments, plain: readonly Plain[]): Generator<readonly Plain[]> {
  const ways = waysToMove(args);
  const moved = (shares: readonly number[]): readonly Plain[] =>
    plain.map((each, at) =>
      typeof each === 'number'
        ? ways.reduce((si, way, i) => si + (shares[i] ?? 0) * (way[at] ?? 0), each)
        : each,
    );
  for (const way of ways)
    for (const sign of [-1, 1]) yield moved(ways.map((each) => (each === way ? sign : 0)));
  if (ways.length < 2) return;
  const share = 1 / Math.sqrt(ways.length);
  for (let signs = 0; signs < 2 ** ways.length; signs++)
    yield moved(ways.map((_, i) => ((signs >> i) & 1 ? share : -share)));
}

/** With more sources each argument moves on its own. */
const mostSources = 8;

/** For each source of uncertainty by how much it moves each argument; one that several arguments share moves them all. */
function waysToMove(args: Arguments): readonly (readonly number[])[] {
  const ways = new Map<SourceId, number[]>();
  for (const [at, arg] of args.entries()) {
    if (arg?.kind !== 'one' || arg.amount.spread.length > mostSources) continue;
    for (const { source, by } of arg.amount.spread) {
      const way = ways.get(source) ?? args.map(() => 0);
      way[at] = by;
      ways.set(source, way);
    }
  }
  const ofOneArgument = args.map((arg, at) =>
    args.map((_, i) => (i === at && arg?.kind === 'one' ? halfWidth(arg.amount) : 0)),
  );
  const many = args.some((arg) => arg?.kind === 'one' && arg.amount.spread.length > mostSources);
  return many || ways.size > mostSources
    ? ofOneArgument.filter((way) => way.some((by) => by !== 0))
    : [...ways.values()];
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
