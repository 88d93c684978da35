/**
 * The discrete Fourier transform of complex numbers, in place: X[k] = Σ x[n]·exp(−2πi·k·n/N), without a factor.
 * N must be a power of two (Cooley and Tukey, Mathematics of Computation 19 (1965) 297–301).
 * `backward` turns the sign of the exponent; after there and back every number is N times itself.
 */
export function transform(real: Float64Array, imaginary: Float64Array, backward = false): void {
  // Going backward is going forward with the parts exchanged.
  const re = backward ? imaginary : real;
  const im = backward ? real : imaginary;
  const size = re.length;
  if (size < 2) return;
  reverseBits(re, im);
  const { cosine, sine } = turnsOf(size);
  for (let half = 1; half < size; half *= 2) {
    const stride = size / (2 * half);
    for (let start = 0; start < size; start += 2 * half) {
      for (let k = 0, w = 0; k < half; k++, w += stride) {
        const a = start + k;
        const b = a + half;
        const c = cosine[w] ?? 0;
        const s = sine[w] ?? 0;
        const br = re[b] ?? 0;
        const bi = im[b] ?? 0;
        const tr = br * c + bi * s;
        const ti = bi * c - br * s;
        const ar = re[a] ?? 0;
        const ai = im[a] ?? 0;
        re[b] = ar - tr;
        im[b] = ai - ti;
        re[a] = ar + tr;
        im[a] = ai + ti;
      }
    }
  }
}

function reverseBits(re: Float64Array, im: Float64Array): void {
  const size = re.length;
  for (let i = 1, j = 0; i < size; i++) {
    let bit = size >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      const r = re[i] ?? 0;
      re[i] = re[j] ?? 0;
      re[j] = r;
      const m = im[i] ?? 0;
      im[i] = im[j] ?? 0;
      im[j] = m;
    }
  }
}

interface Turns {
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
}

/** The roots of unity of the last size: a transform there and back asks twice. */
let kept: Turns = { cosine: new Float64Array(), sine: new Float64Array() };

function turnsOf(size: number): Turns {
  const half = size >> 1;
  if (kept.cosine.length === half) return kept;
  const cosine = new Float64Array(half);
  const sine = new Float64Array(half);
  for (let k = 0; k < half; k++) {
    const angle = (2 * Math.PI * k) / size;
    cosine[k] = Math.cos(angle);
    sine[k] = Math.sin(angle);
  }
  kept = { cosine, sine };
  return kept;
}
