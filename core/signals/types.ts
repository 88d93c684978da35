/** Ranges are written as the trade writes them, "0 .. 255 kPa"; `signals/ranges.ts` reads them once, when first asked. */
export interface Signal {
  /** SAE J1930 abbreviation in lower case where one exists, otherwise the trade's word. */
  readonly name: string;
  /** What it measures, in a technician's words: "Intake manifold pressure". */
  readonly meaning: string;
  readonly family: string;
  /** A number, a listed word (loop: open, closed …) or free text. */
  readonly holds: 'quantity' | 'word' | 'text';
  /** The listed words, when it holds a word. */
  readonly words?: readonly string[];
  /** Other words that people write, each with the listed one that is meant by it. */
  readonly wordsMeant?: Readonly<Record<string, string>>;
  /** The forms it may take, the usual one first: air flow has g/s, V and Hz. The unit decides. */
  readonly forms: readonly Form[];
  /** May be a map: by cylinder ({1: 181 psi}) or by label ({battery post to starter stud: 0.35 V}). */
  readonly by?: 'cylinder' | 'label';
  /** Other words for it in a scan tool's export or in a slip of the hand; offered, never accepted silently. */
  readonly alsoCalled?: readonly string[];
  /** A remark for its page. */
  readonly note?: string;
}

export interface Form {
  /** The unit that it is usually read in; decides dimension. */
  readonly unit: string;
  /** The units offered for a number without one; where they are not listed, its own and the other system's. */
  readonly offered?: readonly string[];
  /** Kind of pressure or temperature that the signal is: map absolute, fuel_pressure gauge, ect point. */
  readonly kind?:
    | 'absolute'
    | 'gauge'
    | 'vacuum'
    | 'difference'
    | 'point'
    | 'btdc'
    | 'atdc'
    | 'bbdc'
    | 'abdc';
  /** What the encoding can carry and its step, with the source (J1979 parameter). */
  readonly encoding?: { readonly range: string; readonly step: string; readonly source: string };
  /** What is physically possible for a part that is not broken in half. */
  readonly physical: string;
  /** What is usual in an engine state: common practice unless the source says otherwise. */
  readonly usual?: readonly {
    readonly state: string;
    readonly range: string;
    readonly source: string;
    /** The engines that it is true of, where not of all. */
    readonly of?: Burning;
  }[];
  /** Values, or ranges of them, that say "failed" rather than "measured": the ends of the scale, a substitute. */
  readonly failed?: readonly { readonly value: string; readonly means: string }[];
}

/** An engine state that the trade has a name for. */
/** How an engine burns: by spark, of itself as a diesel, or by spark the hydrocarbons of petrol, which the exhaust's carbon dioxide shows. */
export type Burning = 'spark' | 'diesel' | 'petrol';

export interface EngineState {
  /** Its place among the trade's states, counted from 1. */
  readonly number: number;
  readonly name: string;
  readonly meaning: string;
  /** Running, cranking or still: which readings can be compared. */
  readonly engine: 'off' | 'cranking' | 'running' | 'any';
  /** `any`: off in itself, and turned on where a module must be asked. */
  readonly ignition: 'off' | 'on' | 'any';
  /** Other words for it, offered and never accepted silently: KOEO, WOT. */
  readonly alsoCalled?: readonly string[];
}
