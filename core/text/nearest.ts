/**
 * The candidates that a slip of the hand could have turned into `word`, nearest first, at most `most`.
 * Distance is the optimal string alignment distance (insert, delete, replace, swap neighbours), case ignored;
 * a candidate further than a third of the word's length (at least 1, at most 3) is not offered.
 */
export function nearest(word: string, candidates: Iterable<string>, most = 3): string[] {
  const asked = asking(word);
  const found: Near[] = [];
  for (const name of candidates) {
    if (Math.abs(name.length - asked.small.length) > asked.limit) continue;
    const small = name.toLowerCase();
    addNear(asked, name, small, lettersOf(small), found);
  }
  return first(found, most);
}

/** Candidates that are asked again and again, by their lengths: with what is looked at first of each. */
export type ByLength = readonly (readonly Lettered[] | undefined)[];

interface Lettered {
  readonly name: string;
  /** In small letters. */
  readonly small: string;
  readonly letters: number;
}

export function byLength(candidates: Iterable<string>): ByLength {
  const all: Lettered[][] = [];
  for (const name of candidates) {
    const small = name.toLowerCase();
    const alike = all[name.length] ?? [];
    alike.push({ name, small, letters: lettersOf(small) });
    all[name.length] = alike;
  }
  return all;
}

/** As `nearest`. */
export function nearestAmong(word: string, candidates: ByLength, most = 3): string[] {
  const asked = asking(word);
  const found: Near[] = [];
  const { length } = asked.small;
  for (let long = Math.max(0, length - asked.limit); long <= length + asked.limit; long++) {
    for (const { name, small, letters } of candidates[long] ?? none)
      addNear(asked, name, small, letters, found);
  }
  return first(found, most);
}

const none: readonly Lettered[] = [];

interface Asked {
  readonly word: string;
  readonly small: string;
  readonly letters: number;
  readonly limit: number;
}

interface Near {
  readonly name: string;
  readonly distance: number;
}

function asking(word: string): Asked {
  const small = word.slice(0, longest).toLowerCase();
  const limit = Math.max(1, Math.min(3, Math.floor(small.length / 3)));
  return { word, small, letters: lettersOf(small), limit };
}

function addNear(asked: Asked, name: string, small: string, letters: number, found: Near[]): void {
  // Each slip takes at most one letter away and brings at most one: this costs a tenth of the distance.
  if (beyond(asked.letters, letters, asked.limit)) return;
  const distance = name === asked.word ? 0 : alignment(asked.small, small, asked.limit);
  if (distance <= asked.limit) found.push({ name, distance });
}

function first(found: Near[], most: number): string[] {
  found.sort((a, b) => a.distance - b.distance || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  return found.slice(0, most).map((each) => each.name);
}

/** Words to be asked for near ones again and again, sorted where there are many. */
export interface SortedWords {
  readonly all: readonly string[];
  /** Read forwards, and backwards. */
  readonly forwards: readonly string[];
  readonly backwards: readonly string[];
}

export function sortedWords(words: Iterable<string>): SortedWords {
  const all = [...new Set(words)];
  if (all.length <= many) return { all, forwards: [], backwards: [] };
  return { all, forwards: [...all].sort(), backwards: all.map(turned).sort() };
}

/**
 * Of few words all; of many those that begin or end most like `word`, as one does in which the hand slipped once.
 * A file of thousands of wrong names would otherwise compare each with each.
 */
export function alikeIn({ all, forwards, backwards }: SortedWords, word: string): readonly string[] {
  if (forwards.length === 0) return all;
  return [...around(forwards, word), ...around(backwards, turned(word)).map(turned)];
}

/** The words that stand beside a word in the alphabet. */
function around(sorted: readonly string[], word: string): readonly string[] {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((sorted[middle] ?? '') < word) low = middle + 1;
    else high = middle;
  }
  return sorted.slice(Math.max(0, low - beside), low + beside);
}

const turned = (word: string): string => [...word].reverse().join('');

const beside = 50;

/** A long case has two hundred names. */
const many = 400;

/** Which letters a word has, as bits; several share a bit. */
function lettersOf(word: string): number {
  let letters = 0;
  for (let i = 0; i < word.length; i++) letters |= 1 << (word.charCodeAt(i) & 31);
  return letters;
}

const beyond = (a: number, b: number, limit: number): boolean =>
  hasMore(a & ~b, limit) || hasMore(b & ~a, limit);

/** Whether a set has more members than that. */
function hasMore(set: number, limit: number): boolean {
  let left = set;
  for (let taken = 0; taken < limit; taken++) left &= left - 1;
  return left !== 0;
}

const longest = 64;

/** Rows of the table of distances, kept between calls: thousands of words may be looked up in hundreds. */
let twoBack = new Uint8Array(longest + 5);
let back = new Uint8Array(longest + 5);
let row = new Uint8Array(longest + 5);

/**
 * The distance of two words whose lengths differ by no more than `limit`; more than `limit` where it is beyond that.
 * Only the cells within `limit` of the diagonal can lead to such a distance, and a row of greater ones ends it.
 */
function alignment(a: string, b: string, limit: number): number {
  const tooFar = limit + 1;
  for (let j = 0; j <= b.length; j++) back[j] = Math.min(j, tooFar);
  for (let i = 1; i <= a.length; i++) {
    const first = Math.max(1, i - limit);
    const last = Math.min(b.length, i + limit);
    row[first - 1] = first === 1 ? Math.min(i, tooFar) : tooFar;
    let least = row[first - 1] ?? tooFar;
    const unit = a.charCodeAt(i - 1);
    for (let j = first; j <= last; j++) {
      const other = b.charCodeAt(j - 1);
      let best = (back[j - 1] ?? tooFar) + (unit === other ? 0 : 1);
      best = Math.min(best, (row[j - 1] ?? tooFar) + 1);
      if (j < i + limit) best = Math.min(best, (back[j] ?? tooFar) + 1);
      if (i > 1 && j > 1 && unit === b.charCodeAt(j - 2) && a.charCodeAt(i - 2) === other) {
        best = Math.min(best, (twoBack[j - 2] ?? tooFar) + 1);
      }
      row[j] = Math.min(best, tooFar);
      if (best < least) least = best;
    }
    if (least > limit) return tooFar;
    const free = twoBack;
    twoBack = back;
    back = row;
    row = free;
  }
  return back[b.length] ?? tooFar;
}
