/** What was measured for one contestant: one number a round, in seconds (or bytes), smaller is better. */
export interface Measured {
  readonly name: string;
  readonly rounds: readonly number[];
}

/** How the subject must stand to another: at most so many times its cost, or at least so many times its rate. */
export type Bound =
  | { readonly to: string; readonly atMost: number }
  | { readonly to: string; readonly atLeastTheRate: number };

export interface Judged {
  readonly name: string;
  /** The median of the rounds. */
  readonly cost: number;
  /** The subject's cost over this one's, taken within each round; the median. Undefined for the subject itself. */
  readonly ratio: number | undefined;
  readonly bound: string;
  readonly verdict: 'ok' | 'over' | '';
}

/** Compares the first contestant, the subject, with each other one. Ratios are taken round by round, so that a slow moment of the machine hits both sides. */
export function judge(measured: readonly Measured[], bounds: readonly Bound[]): Judged[] {
  const [subject, ...others] = measured;
  if (subject === undefined) return [];
  const unknown = bounds.find(({ to }) => !others.some(({ name }) => name === to));
  if (unknown !== undefined) throw new Error(`A bound names ${unknown.to}, which was not measured.`);
  return [
    { name: subject.name, cost: median(subject.rounds), ratio: undefined, bound: '', verdict: '' },
    ...others.map(({ name, rounds }): Judged => {
      const ratio = median(rounds.map((cost, round) => (subject.rounds[round] ?? Number.NaN) / cost));
      const bound = bounds.find(({ to }) => to === name);
      if (bound === undefined) return { name, cost: median(rounds), ratio, bound: '', verdict: '' };
      const most = 'atMost' in bound ? bound.atMost : 1 / bound.atLeastTheRate;
      const words =
        'atMost' in bound ? `at most ${bound.atMost} ×` : `at least ${bound.atLeastTheRate} × the rate`;
      return { name, cost: median(rounds), ratio, bound: words, verdict: ratio <= most ? 'ok' : 'over' };
    }),
  ];
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  const [low, high] = [sorted[sorted.length % 2 === 1 ? middle : middle - 1], sorted[middle]];
  return low === undefined || high === undefined ? Number.NaN : (low + high) / 2;
}
