/**
 * The value below which a share of the numbers lies, linear between the order statistics at 1 + (n − 1)·share
 * (definition 7 of Hyndman and Fan, The American Statistician 50 (1996) 361–365); NaN of none.
 * The numbers, none of them NaN, are put in another order: quickselect (C. A. R. Hoare, Comm. ACM 4 (1961) 321), O(n).
 */
export function quantile(numbers: Float64Array, share: number): number {
  const place = (numbers.length - 1) * share;
  const low = Math.floor(place);
  if (!(low >= 0 && low < numbers.length)) return Number.NaN;
  const below = select(numbers, low);
  const part = place - low;
  if (part === 0) return below;
  let above = Number.POSITIVE_INFINITY;
  for (let i = low + 1; i < numbers.length; i++) above = Math.min(above, numbers[i] ?? above);
  return below + part * (above - below);
}

export function median(numbers: ArrayLike<number>): number {
  return quantile(Float64Array.from(numbers), 0.5);
}

/** Puts the number of this place of the ascending order there, smaller ones before it and greater ones behind. */
function select(numbers: Float64Array, place: number): number {
  let left = 0;
  let right = numbers.length - 1;
  while (left < right) {
    const pivot = numbers[(left + right) >> 1] ?? Number.NaN;
    let i = left;
    let j = right;
    while (i <= j) {
      while ((numbers[i] ?? Number.NaN) < pivot) i++;
      while ((numbers[j] ?? Number.NaN) > pivot) j--;
      if (i > j) break;
      const moved = numbers[i] ?? Number.NaN;
      numbers[i++] = numbers[j] ?? Number.NaN;
      numbers[j--] = moved;
    }
    if (place <= j) right = j;
    else if (place >= i) left = i;
    else break;
  }
  return numbers[place] ?? Number.NaN;
}
