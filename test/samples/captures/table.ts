/** A recording as a scope exports it: a heading with units, one row a moment. */
export function csv(
  time: Float64Array,
  decimalsOfTime: number,
  channels: readonly (readonly [heading: string, samples: Float64Array, decimals: number])[],
): string {
  const lines = [
    '# Synthetic: written by test/samples/captures from equations. No such vehicle was measured.',
    ['Time (s)', ...channels.map(([heading]) => heading)].join(','),
  ];
  for (const [i, t] of time.entries()) {
    const cells = channels.map(([, samples, decimals]) => (samples[i] ?? Number.NaN).toFixed(decimals));
    lines.push([t.toFixed(decimalsOfTime), ...cells].join(','));
  }
  return `${lines.join('\n')}\n`;
}
