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
    const distance = name === word ? 0 : alignment(from, name.toLowerCase());
    if (distance <= limit) found.push({ name, distance });
  }
  found.sort((a, b) => a.distance - b.distance || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  return found.slice(0, most).map((each) => each.name);
}

const longest = 64;

function alignment(a: string, b: string): number {
  let twoBack: number[] = [];
  let back = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min((back[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (back[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        best = Math.min(best, (twoBack[j - 2] ?? 0) + 1);
      }
      row.push(best);
    }
    twoBack = back;
    back = row;
  }
  return back[b.length] ?? 0;
}
