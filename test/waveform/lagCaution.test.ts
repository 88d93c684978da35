import { expect, it } from 'vitest';
import { resultOf, said, studied } from '../recording/caseFiles.ts';

/** Two sensors that switch once a second, the rear 120 ms later; at 6 s the throttle is opened for once. */
const rows = Array.from({ length: 1000 }, (_, i) => {
  const t = i / 100;
  const front = (at: number): number => 0.45 + 0.35 * Math.tanh(4 * Math.sin(2 * Math.PI * at));
  const opened = (at: number): number => 3 * Math.exp(-(((at - 6) / 0.1) ** 2));
  return `${t},${front(t).toFixed(4)},${front(t - 0.12).toFixed(4)},${opened(t).toFixed(4)},${opened(t - 0.12).toFixed(4)}\n`;
}).join('');
const log = `Time (s),front (V),rear (V),tp (V),flow (V)\n${rows}`;

it('a lag of a steady rhythm says which other one fits nearly as well; one of a single change does not', () => {
  const more =
    '---\ncheck: Delay\nas: delay\nlet:\n  steady: lag(log.front, log.rear)\n  once: lag(log.tp, log.flow)\n';
  const study = studied(log, '', more);
  const { values } = resultOf(study);
  expect(values['delay.steady']?.value).toBeCloseTo(120, 0);
  expect(values['delay.once']?.value).toBeCloseTo(120, 0);
  expect(said(study)).toEqual([
    expect.stringMatching(
      /^fits-as-well: The channels repeat themselves: `lag` comes to 120(\.\d+)? ms, and (-8(79|80)|11(19|20))(\.\d+)? ms fits nearly as well\. Cut out a stretch/,
    ),
  ]);
});
