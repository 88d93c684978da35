/**
 * The weights with which the columns add up to the target with the least sum of squares, from rows `from` up to `to`
 * (not included), by the normal equations (Gauss elimination with the greatest pivot); with the share of the target's
 * squares that they explain. Undefined where the columns do not tell the weights apart.
 */
export function leastSquares(
  columns: readonly Float64Array[],
  target: Float64Array,
  from = 0,
  to = target.length,
): { readonly weights: readonly number[]; readonly explained: number } | undefined {
  const n = columns.length;
  const matrix = columns.map((left, i) => {
    const row = new Float64Array(n + 1);
    for (let j = 0; j < n; j++) row[j] = j < i ? 0 : dot(left, columns[j] ?? target, from, to);
    row[n] = dot(left, target, from, to);
    return row;
  });
  for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) set(matrix, i, j, at(matrix, j, i));
  return solved(matrix, dot(target, target, from, to));
}

/**
 * The share of a target's squares, `whole`, that columns explain, by their normal equations: a row for each column, with its
 * products with all columns and, last, with the target. The rows are used up. Undefined as above.
 */
export function explainedBy(matrix: Float64Array[], whole: number): number | undefined {
  return solved(matrix, whole)?.explained;
}

function solved(matrix: Float64Array[], whole: number): ReturnType<typeof leastSquares> {
  const n = matrix.length;
  const product = matrix.map((row) => row[n] ?? 0);
  if (!eliminate(matrix)) return undefined;
  const weights = matrix.map((row) => row[n] ?? 0);
  const told = weights.reduce((sum, weight, i) => sum + weight * (product[i] ?? 0), 0);
  return { weights, explained: whole > 0 ? told / whole : 0 };
}

function dot(a: Float64Array, b: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}

const at = (matrix: readonly Float64Array[], i: number, j: number): number => matrix[i]?.[j] ?? 0;

function set(matrix: readonly Float64Array[], i: number, j: number, to: number): void {
  const row = matrix[i];
  if (row !== undefined) row[j] = to;
}

/** Leaves the solution in the last column; false where the matrix has no inverse to speak of. */
function eliminate(matrix: Float64Array[]): boolean {
  const n = matrix.length;
  let scale = 0;
  for (let i = 0; i < n; i++) scale = Math.max(scale, Math.abs(at(matrix, i, i)));
  for (let i = 0; i < n; i++) {
    let pivot = i;
    for (let k = i + 1; k < n; k++)
      if (Math.abs(at(matrix, k, i)) > Math.abs(at(matrix, pivot, i))) pivot = k;
    const [upper, lower] = [matrix[i], matrix[pivot]];
    if (upper === undefined || lower === undefined) return false;
    matrix[i] = lower;
    matrix[pivot] = upper;
    const lead = lower[i] ?? 0;
    if (!(Math.abs(lead) > 1e-10 * scale)) return false;
    for (let j = i; j <= n; j++) lower[j] = (lower[j] ?? 0) / lead;
    for (let k = 0; k < n; k++) {
      const row = matrix[k];
      const factor = row?.[i] ?? 0;
      if (row === undefined || k === i || factor === 0) continue;
      for (let j = i; j <= n; j++) row[j] = (row[j] ?? 0) - factor * (lower[j] ?? 0);
    }
  }
  return true;
}
