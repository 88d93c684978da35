/** The means of the samples that fall into even steps of time (s) from the first on; an empty step is bridged straight. One pass. */
export function evenly(time: Float64Array, samples: Float64Array, step: number): Float64Array {
  const first = time[0] ?? 0;
  const count = Math.max(1, Math.floor(((time[time.length - 1] ?? 0) - first) / step));
  const out = new Float64Array(count);
  const held = new Float64Array(count);
  for (let i = 0; i < samples.length; i++) {
    const at = Math.floor(((time[i] ?? 0) - first) / step);
    if (at >= count) break;
    out[at] = (out[at] ?? 0) + (samples[i] ?? 0);
    held[at] = (held[at] ?? 0) + 1;
  }
  let last = -1;
  for (let at = 0; at < count; at++) {
    const there = held[at] ?? 0;
    if (there === 0) continue;
    out[at] = (out[at] ?? 0) / there;
    const [from, to] = [out[last] ?? out[at] ?? 0, out[at] ?? 0];
    for (let k = last + 1; k < at; k++) out[k] = from + ((to - from) * (k - last)) / (at - last);
    last = at;
  }
  for (let at = last + 1; at < count; at++) out[at] = out[last] ?? Number.NaN;
  return out;
}
