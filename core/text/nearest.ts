/**
 * The candidates that a slip of the hand could have turned into `word`, nearest first, at most `most`.
 * Distance is the optimal string alignment distance (insert, delete, replace, swap neighbours), case ignored;
 * a candidate further than a third of the word's length (at least 1, at most 3) is not offered.
 */
export function nearest(word: string, candidates: Iterable<string>, most = 3): string[] {
  const from = word.slice(0, longest).toLowerCase();
  const limit = Math.max(1, Math.min(3, Math.floor(from.length / 3)));
  const found: { name: string; distance: number }[] = [];
  for (const name of candidates) {
    if (Math.abs(name.length - from.length) > limit) continue;
    const distance = name === word ? 0 : alignment(from, name.toLowerCase(), limit);
    if (distance <= limit) found.push({ name, distance });
  }
  found.sort((a, b) => a.distance - b.distance || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  return found.slice(0, most).map((each) => each.name);
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
  const beyond = limit + 1;
  for (let j = 0; j <= b.length; j++) back[j] = Math.min(j, beyond);
  for (let i = 1; i <= a.length; i++) {
    const first = Math.max(1, i - limit);
    const last = Math.min(b.length, i + limit);
    row[first - 1] = first === 1 ? Math.min(i, beyond) : beyond;
    let least = row[first - 1] ?? beyond;
    const unit = a.charCodeAt(i - 1);
    for (let j = first; j <= last; j++) {
      const other = b.charCodeAt(j - 1);
      let best = (back[j - 1] ?? beyond) + (unit === other ? 0 : 1);
      best = Math.min(best, (row[j - 1] ?? beyond) + 1);
      if (j < i + limit) best = Math.min(best, (back[j] ?? beyond) + 1);
      if (i > 1 && j > 1 && unit === b.charCodeAt(j - 2) && a.charCodeAt(i - 2) === other) {
        best = Math.min(best, (twoBack[j - 2] ?? beyond) + 1);
      }
      row[j] = Math.min(best, beyond);
      if (best < least) least = best;
    }
    if (least > limit) return beyond;
    const free = twoBack;
    twoBack = back;
    back = row;
    row = free;
  }
  return back[b.length] ?? beyond;
}
