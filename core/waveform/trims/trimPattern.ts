import { sayGrams, sayShare } from './sayTrim.ts';

/** The total trim at one load. */
export interface TrimPoint {
  /** `idle`, `cruise`. */
  readonly name: string;
  /** kg/s, or anything that is proportional to it. */
  readonly air: number;
  /** A share: 0.08 is 8 %. */
  readonly trim: number;
  /** Half-width of the trim. */
  readonly halfWidth: number;
  /** Half-width of the air, in its unit; 0 when left out. */
  readonly airHalfWidth?: number;
}

export type TrimWord = 'same grams' | 'same percent' | 'rises with load' | 'near zero' | 'no clear pattern';

export interface TrimPattern {
  readonly word: TrimWord;
  /** The patterns that fit where it is none of them alone. */
  readonly fitting: readonly TrimWord[];
  /** More fuel is needed than was counted, or less. */
  readonly leans: 'lean' | 'rich' | undefined;
  /** kg/s of air past the count, where one amount fits every load. */
  readonly grams: Interval | undefined;
  /** The share, where one fits every load. */
  readonly share: Interval | undefined;
  readonly because: string;
  /** The reading that would settle it. */
  readonly next: string | undefined;
}

/** A number known to lie between two. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * The pattern of the total trim over the load, by what fits within every point's uncertainty.
 * Same grams: one air mass m with trim = m / air. Same percent: one trim. Rises with load: further from zero with more air,
 * nowhere clearly nearer. A pattern is named only when exactly one of the three fits; otherwise the words say what is missing.
 * Needs two points or more with air above 0.
 */
export function trimPattern(points: readonly TrimPoint[]): TrimPattern {
  const sorted = points.toSorted((a, b) => a.air - b.air);
  if (sorted.every(({ trim, halfWidth }) => Math.abs(trim) <= halfWidth))
    return {
      ...nothing,
      word: 'near zero',
      because: `No trim is further from zero than it may wander: ${said(sorted)}.`,
    };
  const grams = inside(sorted.map(gramsAt));
  const share = inside(sorted.map(({ trim, halfWidth }) => [trim - halfWidth, trim + halfWidth]));
  const sign = signOf(sorted);
  const rises = sign !== 0 && movesWithLoad(sorted, sign);
  const fitting: TrimWord[] = [];
  if (grams !== undefined && awayFromZero(grams)) fitting.push('same grams');
  if (share !== undefined && awayFromZero(share)) fitting.push('same percent');
  if (rises) fitting.push('rises with load');
  const leans: TrimPattern['leans'] = sign > 0 ? 'lean' : sign < 0 ? 'rich' : undefined;
  const [word, other] = fitting;
  if (word === undefined)
    return {
      ...nothing,
      leans,
      because: `${said(sorted)}: ${whyNone(sorted, sign)}.`,
      next: nextWithout(sign),
    };
  if (other !== undefined) {
    return {
      ...nothing,
      fitting,
      leans,
      because: `${said(sorted)} fit ${fitting.map((each) => `“${each}”`).join(' as well as ')}.`,
      next: whatSeparates(sorted, grams, share),
    };
  }
  const fits = {
    ...nothing,
    word,
    leans,
    grams: word === 'same grams' ? grams : undefined,
    share: word === 'same percent' ? share : undefined,
  };
  return { ...fits, because: `${said(sorted)}: ${fitted(fits)}.` };
}

const nothing: TrimPattern = {
  word: 'no clear pattern',
  fitting: [],
  leans: undefined,
  grams: undefined,
  share: undefined,
  because: '',
  next: undefined,
};

function fitted({ word, grams, share }: TrimPattern): string {
  if (grams !== undefined) return `${sayGrams((grams.low + grams.high) / 2)} of air fit every one of them`;
  if (share !== undefined) return `${sayShare((share.low + share.high) / 2)} fit every one of them`;
  return word === 'rises with load' ? 'the further from zero the more air the engine takes' : 'nothing fits';
}

/** The air past the count at one load: trim · air, as surely as both are known (JCGM 100:2008, 5.1.2). */
function gramsAt({ air, trim, halfWidth, airHalfWidth = 0 }: TrimPoint): readonly [number, number] {
  const width = Math.hypot(halfWidth * air, trim * airHalfWidth);
  return [trim * air - width, trim * air + width];
}

/** What all intervals have in common. */
function inside(intervals: readonly (readonly [number, number])[]): Interval | undefined {
  const low = Math.max(...intervals.map(([a]) => a));
  const high = Math.min(...intervals.map(([, b]) => b));
  return low <= high ? { low, high } : undefined;
}

function awayFromZero({ low, high }: Interval): boolean {
  return low > 0 || high < 0;
}

/** The side on which trims lie clearly; 0 when some lie on either. */
function signOf(points: readonly TrimPoint[]): -1 | 0 | 1 {
  const lean = points.some(({ trim, halfWidth }) => trim > halfWidth);
  const rich = points.some(({ trim, halfWidth }) => trim < -halfWidth);
  return lean === rich ? 0 : lean ? 1 : -1;
}

/** Times this sign, somewhere clearly more than at a lighter load, and nowhere clearly less. */
function movesWithLoad(sorted: readonly TrimPoint[], sign: number): boolean {
  let more = false;
  for (const [at, light] of sorted.entries()) {
    for (const heavy of sorted.slice(at + 1)) {
      const step = sign * (heavy.trim - light.trim);
      const sure = Math.hypot(heavy.halfWidth, light.halfWidth);
      if (step < -sure) return false;
      if (step > sure) more = true;
    }
  }
  return more;
}

function whyNone(sorted: readonly TrimPoint[], sign: number): string {
  if (sign === 0) return 'lean at one load and rich at another, which no single cause of these does';
  const falls = movesWithLoad(sorted, -sign);
  return falls
    ? 'they fall with the load, but not as one and the same amount of air would make them: there may be two causes'
    : 'they go up and down with the load, as none of the patterns does';
}

function nextWithout(sign: number): string {
  return sign === 0
    ? 'Compare the counted air with what the engine must take (volumetric efficiency) at both loads.'
    : 'Take the readings again, each for half a minute at a steady load, in closed loop.';
}

/** Where the patterns that still fit are furthest apart. */
function whatSeparates(
  sorted: readonly TrimPoint[],
  grams: Interval | undefined,
  share: Interval | undefined,
): string {
  const wander = Math.max(...sorted.map(({ halfWidth }) => halfWidth));
  if (grams === undefined || share === undefined)
    return 'Take one more reading in closed loop at a heavier load, such as a long climb.';
  const mass = Math.abs(grams.low + grams.high) / 2;
  const part = Math.abs(share.low + share.high) / 2;
  const most = sorted.at(-1)?.air ?? 0;
  if (part > 2 * wander) {
    const air = mass / (part - 2 * wander);
    if (air > most)
      return `Take one more reading at ${sayGrams(air)} of air or more: one amount of air would be a small share there, one share would stay.`;
  }
  return 'Take one more reading at a load that differs more: idle in neutral, or a long climb in closed loop. Trims this small need steady readings.';
}

function said(points: readonly TrimPoint[]): string {
  return points.map(({ name, trim }) => `${sayShare(trim)} at ${name}`).join(', ');
}
