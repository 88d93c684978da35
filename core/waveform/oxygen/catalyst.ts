import { cannotCompute } from '../../expression/absent.ts';
import type { Absent } from '../../expression/value.ts';
import { noiseOf } from '../noise.ts';
import { type Recorded, swingOf } from '../recorded.ts';
import { arcLength } from './arcLength.ts';
import { mirroringOf } from './mirroring.ts';
import { switchingOf } from './switching.ts';

/** Front and rear beside each other: three measures of how much comes through the catalyst, and how alike the two move. */
export interface CatalystReading {
  /** Peak-to-peak amplitude of the rear over the front's. */
  readonly ratio: number | Absent;
  readonly frontSwitches: number;
  readonly rearSwitches: number;
  readonly switchRatio: number | Absent;
  /** V of up and down. */
  readonly frontArc: number;
  readonly rearArc: number;
  readonly arcRatio: number | Absent;
  readonly correlation: number | Absent;
  /** s */
  readonly lag: number | Absent;
  readonly mirrors: boolean | Absent;
}

export interface CatalystLimits {
  readonly level: number;
  /** V of turning back that counts as noise for the arc; more, where the samples show more. */
  readonly noise: number;
  /** From which amplitude ratio and which correlation on the rear mirrors the front. */
  readonly mirrorRatio: number;
  readonly mirrorCorrelation: number;
}

/** Noise hardly ever turns by more of its standard deviations. */
const inNoise = 6;

/** The levels of the switch tests of SAE J1979 about 0.45 V (values from memory): noise between them switches nothing. */
const hysteresis = 0.3;

/**
 * Reads a catalyst by the two-sensor method. Both sensors switch in volts, in closed loop, at a steady speed.
 * The rear mirrors the front when it swings nearly as far and, moved back by its delay, in the same rhythm.
 */
export function catalystReading(
  front: Recorded,
  rear: Recorded,
  { level, noise, mirrorRatio, mirrorCorrelation }: CatalystLimits,
): CatalystReading {
  const before = swingOf(front.samples);
  const behind = swingOf(rear.samples);
  const ratio = over(behind.high - behind.low, before.high - before.low);
  const frontSwitches = switchesOf(front, level);
  const rearSwitches = switchesOf(rear, level);
  // A front sensor that hardly bends from sample to sample was recorded fast enough for both: what is left is noise.
  const ofFront = inNoise * noiseOf(front.samples);
  const isFast = ofFront <= (before.high - before.low) / 2;
  const frontArc = arcLength(front.samples, isFast ? Math.max(noise, ofFront) : noise);
  const rearArc = arcLength(rear.samples, isFast ? Math.max(noise, inNoise * noiseOf(rear.samples)) : noise);
  const alike = mirroringOf(front, rear);
  const flatRear = behind.high === behind.low;
  return {
    ratio,
    frontSwitches,
    rearSwitches,
    switchRatio:
      frontSwitches > 0 ? rearSwitches / frontSwitches : cannotCompute('the front sensor does not switch'),
    frontArc,
    rearArc,
    arcRatio: over(rearArc, frontArc),
    correlation: 'kind' in alike ? alike : alike.correlation,
    lag: 'kind' in alike ? alike : alike.lag,
    mirrors:
      typeof ratio !== 'number'
        ? ratio
        : flatRear || ratio < mirrorRatio
          ? false
          : 'kind' in alike
            ? alike
            : alike.correlation >= mirrorCorrelation,
  };
}

function over(rear: number, front: number): number | Absent {
  return front > 0 ? rear / front : cannotCompute('the front sensor does not move');
}

function switchesOf(record: Recorded, level: number): number {
  const found = switchingOf(record, { level, low: level - hysteresis / 2, high: level + hysteresis / 2 });
  return 'kind' in found ? 0 : found.switches;
}
