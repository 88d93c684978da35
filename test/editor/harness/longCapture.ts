/**
 * A capture of so many rows, a thousand a second (synthetic, from a seed): the time, a front sensor that switches, a
 * rear one that is steady, and an air flow.
 */
export function captureOf(rows: number): string {
  const chance = chanceFrom(20_240_305);
  const lines = ['Time (s),front (V),rear (V),maf (g/s)'];
  for (let i = 0; i < rows; i++) {
    const front = 0.45 + 0.35 * Math.sin(i * 0.008) + 0.02 * chance();
    const rear = 0.6 + 0.05 * Math.sin(i * 0.001) + 0.01 * chance();
    const flow = 4 + 0.3 * chance();
    lines.push(`${(i / 1000).toFixed(3)},${front.toFixed(4)},${rear.toFixed(4)},${flow.toFixed(3)}`);
  }
  return `${lines.join('\n')}\n`;
}

/** From 0 to 1. Lehmer's generator (Park and Miller, "Random number generators: good ones are hard to find", CACM 1988). */
function chanceFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
