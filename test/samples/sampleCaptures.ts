import { cranking } from '../support/signal/cranking.ts';
import { breathing, type Timing, usualTiming } from '../support/signal/cylinderPressure.ts';
import { disturbed, type Signal } from '../support/signal/signal.ts';

/** A file in samples/captures and what stands in it. */
export interface SampleCapture {
  readonly file: string;
  readonly text: () => string;
}

/** What cylinder 2 keeps of its compression in the case of the weak cylinder, before and after. */
export const weakKeeps = 0.62;
/** The cam of the van whose belt was set wrong, in its one camshaft's teeth of crank: late by 720°/40. */
export const toothAngle = 18;

/**
 * The captures that the cases read, all of it synthetic: cranking of a four-cylinder engine with one weak cylinder,
 * and the pressure in cylinder 1 with the camshaft a tooth late.
 */
export const sampleCaptures: readonly SampleCapture[] = [
  { file: 'cranking-weak.csv', text: () => crankingText({ 2: weakKeeps }, 21) },
  { file: 'cranking-repaired.csv', text: () => crankingText({}, 22) },
  { file: 'cylinder-known-good.csv', text: () => pressureText(usualTiming, -62, 31) },
  { file: 'cylinder-late.csv', text: () => pressureText(late(toothAngle), -50, 32) },
  { file: 'cylinder-repaired.csv', text: () => pressureText(usualTiming, -61, 33) },
];

/** One camshaft for both sorts of valves: all four events come later together. */
function late(by: number): Timing {
  const { evo, evc, ivo, ivc } = usualTiming;
  return { evo: evo - by, evc: evc + by, ivo: ivo - by, ivc: ivc + by };
}

function crankingText(keeps: Readonly<Record<number, number>>, seed: number): string {
  const { current, battery, sync } = cranking({
    order: [1, 3, 4, 2],
    keeps,
    seconds: 4,
    perSecond: 1000,
    unsteady: 0.05,
  });
  return csv(
    ['Time (s)', 'Starter [A]', 'Battery [V]', 'Coil 1 [V]'],
    current.time,
    [
      disturbed(current, { noise: 3, step: 1 }, seed),
      disturbed(battery, { noise: 0.02, step: 0.01 }, seed + 100),
      disturbed(sync, { noise: 0.02, step: 0.1 }, seed + 200),
    ],
    [0, 2, 1],
  );
}

function pressureText(timing: Timing, intake: number, seed: number): string {
  const { pressure } = breathing({
    timing,
    rpm: 790,
    ripple: 0.01,
    intake,
    exhaust: 2,
    seconds: 1.2,
    perSecond: 5000,
  });
  return csv(
    ['Time (s)', 'Cylinder 1 [kPa]'],
    pressure.time,
    [disturbed(pressure, { noise: 0.4, step: 0.5 }, seed)],
    [1],
  );
}

function csv(
  headings: readonly string[],
  time: Float64Array,
  channels: readonly Signal[],
  decimals: readonly number[],
): string {
  const lines = [
    '# Synthetic, made by test/samples/sampleCaptures from a seed. No vehicle was measured.',
    headings.join(','),
  ];
  time.forEach((t, i) => {
    const values = channels.map(({ samples }, k) => (samples[i] ?? 0).toFixed(decimals[k] ?? 0));
    lines.push([t.toFixed(4), ...values.map((each) => each.replace(/^-(0(\.0*)?)$/, '$1'))].join(','));
  });
  return `${lines.join('\n')}\n`;
}
