import { type Answer, noAnswer } from '../answer.ts';
import { sayPercent } from '../sayValue.ts';

/** Short and long trim added, as shares (0.08 is 8 %): the trade's sum, common practice. Both must be above −100 %. */
export function totalTrim(shortTerm: number, longTerm: number): Answer {
  return unlikelyTrim(shortTerm, longTerm) ?? shortTerm + longTerm;
}

/**
 * What both trims do to the fuel, as a change in share (0.2636 is +26.36 %): (1 + s)(1 + l) − 1.
 * A controller multiplies its base amount by one factor after the other, so large trims of one sign do more than their sum.
 */
export function fuelCorrection(shortTerm: number, longTerm: number): Answer {
  // Expanded, so that no digits are lost for small trims.
  return unlikelyTrim(shortTerm, longTerm) ?? shortTerm + longTerm + shortTerm * longTerm;
}

function unlikelyTrim(...trims: number[]): Answer | undefined {
  for (const trim of trims) {
    if (!(trim >= -1)) {
      return noAnswer(
        `A trim of ${sayPercent(trim)} would take away more fuel than there is. Check its sign and unit.`,
      );
    }
  }
  return undefined;
}
