import type { Kind } from '../../quantity/types.ts';

/**
 * One parameter of generic data (SAE J1979 / ISO 15031-5), as a row: its number, how many bytes it takes,
 * and what stands in them. Services 01 and 02 share the table.
 */
export interface ParameterRow {
  readonly pid: number;
  readonly bytes: number;
  readonly meaning: string;
  readonly parts: readonly Part[];
  /** Engines of more than two banks answer with a byte more, for bank 3 or 4, of which there is no signal. */
  readonly furtherBank?: true;
  /** Whether the scaling was read in a public copy of the standard's text, or is a value from memory. */
  readonly source: 'found' | 'from memory';
}

export type Part = NumberPart | WordPart | SpecialPart;

interface Held {
  readonly meaning: string;
  /** The signal of the vocabulary that it is a reading of; undefined where there is none. */
  readonly signal: string | undefined;
  /** Its name within a signal that has several: a label or a cylinder. */
  readonly member?: string;
  /** The first of its bytes, from 0. */
  readonly at: number;
  readonly size: number;
  /** The bit of the parameter's first byte that says whether the vehicle has it. */
  readonly ifBit?: number;
}

/** A number: raw × times / over + plus, in `unit`. */
export interface NumberPart extends Held {
  readonly holds: 'number';
  readonly times: number;
  readonly over: number;
  readonly plus: number;
  readonly unit: string;
  readonly kind: Kind;
  /** Two's complement. */
  readonly signed: boolean;
  /** The largest raw number that the standard lets be sent, where that is not the largest that fits. */
  readonly most?: number;
  /** A count of things: its step is no uncertainty. */
  readonly counts?: true;
  /** The raw number that says that there is no value. */
  readonly none?: number;
  /** Bits of the bytes that it takes; all without it. */
  readonly mask?: number;
  /** The parameter, and its byte, that may give another end of the scale (SAE J1979, parameters 4F and 50). */
  readonly scaledBy?: { readonly pid: number; readonly byte: number; readonly full: number };
}

/** One of a list of words by its raw number. */
export interface WordPart extends Held {
  readonly holds: 'word';
  readonly mask?: number;
  readonly words: ReadonlyMap<number, string>;
  /** The raw number that says that there is nothing. */
  readonly none?: number;
}

/** What is read by its own rules. */
export type SpecialPart = MonitorsPart | CycleMonitorsPart | CodePart | SupportedPart | FlagsPart;

/** Lamp, number of codes and monitors since the codes were cleared. */
interface MonitorsPart extends Held {
  readonly holds: 'monitors';
}

/** Monitors in this driving cycle. */
interface CycleMonitorsPart extends Held {
  readonly holds: 'cycle monitors';
}

/** A trouble code. */
export interface CodePart extends Held {
  readonly holds: 'code';
}

/** The parameters that are answered, a bit each. */
interface SupportedPart extends Held {
  readonly holds: 'supported';
}

/** Bits, each with its name from the lowest on, or shown by their numbers. */
export interface FlagsPart extends Held {
  readonly holds: 'flags';
  readonly bits?: readonly string[];
}

/** The ends of a number and its step, in its unit: what the encoding can carry. */
export function carried(part: NumberPart): {
  readonly low: number;
  readonly high: number;
  readonly step: number;
} {
  const full = part.mask ?? 256 ** part.size - 1;
  const [least, most] = part.signed ? [-(full + 1) / 2, (full - 1) / 2] : [0, part.most ?? full];
  const ends = [valueFor(part, least), valueFor(part, most)].sort((a, b) => a - b);
  return { low: ends[0] ?? 0, high: ends[1] ?? 0, step: Math.abs(part.times / part.over) };
}

/** The number in its unit for a raw one. */
export function valueFor({ times, over, plus }: NumberPart, raw: number): number {
  return (raw * times) / over + plus;
}
