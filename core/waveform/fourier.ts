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
  const turns = turnsOf(size);
  reverseBits(re, im, turns);
  let half = 1;
  // Two stages in one walk over the numbers: fetching them costs more than reckoning with them.
  for (; 4 * half <= size; half *= 4) twoStages(re, im, half, turns);
  if (half < size) lastStage(re, im, half, turns);
}

/** The stages that join halves of this length, and then what they made. */
function twoStages(re: Float64Array, im: Float64Array, half: number, { cosine, sine }: Turns): void {
  const size = re.length;
  const near = size / (2 * half);
  const far = near / 2;
  for (let start = 0; start < size; start += 4 * half) {
    for (let k = 0; k < half; k++) {
      const p = start + k;
      const q = p + half;
      const r = q + half;
      const s = r + half;
      const c1 = cosine[k * near] ?? 0;
      const s1 = sine[k * near] ?? 0;
      const qr = re[q] ?? 0;
      const qi = im[q] ?? 0;
      const sr = re[s] ?? 0;
      const si = im[s] ?? 0;
      const tr = qr * c1 + qi * s1;
      const ti = qi * c1 - qr * s1;
      const ur = sr * c1 + si * s1;
      const ui = si * c1 - sr * s1;
      const pr = re[p] ?? 0;
      const pi = im[p] ?? 0;
      const rr = re[r] ?? 0;
      const ri = im[r] ?? 0;
      const c2 = cosine[k * far] ?? 0;
      const s2 = sine[k * far] ?? 0;
      // The sums of the two halves go together, and their differences a quarter of a turn further.
      const vr = (rr + ur) * c2 + (ri + ui) * s2;
      const vi = (ri + ui) * c2 - (rr + ur) * s2;
      const wr = (rr - ur) * c2 + (ri - ui) * s2;
      const wi = (ri - ui) * c2 - (rr - ur) * s2;
      re[p] = pr + tr + vr;
      im[p] = pi + ti + vi;
      re[r] = pr + tr - vr;
      im[r] = pi + ti - vi;
      re[q] = pr - tr + wi;
      im[q] = pi - ti - wr;
      re[s] = pr - tr - wi;
      im[s] = pi - ti + wr;
    }
  }
}

/** The last stage, where their number is odd. */
function lastStage(re: Float64Array, im: Float64Array, half: number, { cosine, sine }: Turns): void {
  for (let a = 0; a < half; a++) {
    const b = a + half;
    const c = cosine[a] ?? 0;
    const s = sine[a] ?? 0;
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

function reverseBits(re: Float64Array, im: Float64Array, { reversed }: Turns): void {
  for (let i = 1; i < reversed.length; i++) {
    const j = reversed[i] ?? 0;
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
  /** Each place with the bits of its number in the other order. */
  readonly reversed: Uint32Array;
}

/** The roots of unity of the last size: a transform there and back asks twice. */
let kept: Turns = { cosine: new Float64Array(), sine: new Float64Array(), reversed: new Uint32Array() };

function turnsOf(size: number): Turns {
  const half = size >> 1;
  if (kept.reversed.length === size) return kept;
  const cosine = new Float64Array(half);
  const sine = new Float64Array(half);
  for (let k = 0; k < half; k++) {
    const angle = (2 * Math.PI * k) / size;
    cosine[k] = Math.cos(angle);
    sine[k] = Math.sin(angle);
  }
  const reversed = new Uint32Array(size);
  for (let i = 1; i < size; i++) reversed[i] = ((reversed[i >> 1] ?? 0) >> 1) | (i & 1 ? half : 0);
  kept = { cosine, sine, reversed };
  return kept;
}
