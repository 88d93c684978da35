import type { Reading } from '../study/types.ts';
import type { Asked } from './rule.ts';

/** Rules that ask for the same signals and states have a bit in common. */
interface Bit extends Asked {
  readonly name: string;
  readonly bit: number;
}

const bits: Bit[] = [];

/** The bit of rules that are asked whatever was read. The lowest ones are those of `oddities`. */
export const always = 32;
const firstBit = 64;
const room = 26;

/** The bit of a rule. */
export function bitOf({ of, at }: Asked): number {
  if (of === undefined && at === undefined) return always;
  const name = `${of?.join()} at ${at?.join()}`;
  const known = bits.find((each) => each.name === name);
  if (known !== undefined) return known.bit;
  // With no bit left it is asked always, which is slower and says the same.
  if (bits.length === room) return always;
  const bit = firstBit << bits.length;
  bits.push({ name, bit, ...(of === undefined ? {} : { of }), ...(at === undefined ? {} : { at }) });
  return bit;
}

/** The bits of the rules that ask for a reading by its signal and state: whoever adds up those of what was read knows whom to ask. */
export function askedFor({ signal, state }: Reading): number {
  let asked = 0;
  for (const { of, at, bit } of bits) {
    if (of !== undefined && !of.some((each) => each === signal?.name)) continue;
    if (at !== undefined && !at.some((each) => each === state?.known?.name)) continue;
    asked |= bit;
  }
  return asked;
}
