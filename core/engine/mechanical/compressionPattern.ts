import type { Saying } from '../../expression/functionRow.ts';
import { noAnswer } from '../answer.ts';
import type { Wording } from '../inWords.ts';
import { sayPressure } from '../sayValue.ts';

/*
 * What a compression gauge usually means (common practice, no standard behind it). Pressures in Pa, all on one gauge.
 * `best` is the highest cranking figure among the cylinders: a cylinder is judged by its neighbours, not by a book.
 */

/** The least share of the best cylinder that still counts as even. */
const even = 0.75;

export const runningSayings: readonly Saying[] = [
  {
    words: 'seals and breathes',
    meaning: 'cranking, running and snap figures stand in their usual proportions.',
  },
  {
    words: 'leaks',
    meaning:
      'low when cranking already: rings, a valve or the head gasket. A wet test and where the leaking air comes out tell which.',
  },
  {
    words: 'cannot fill',
    meaning:
      'normal when cranking, low with the engine running or snapped: too little air gets in. Often a worn intake lobe, a rocker or a blocked port; valve timing where all cylinders do it.',
  },
  {
    words: 'cannot empty',
    meaning:
      'normal when cranking, high with the engine running: spent gas stays in. Often an exhaust valve that opens too little, or a blocked exhaust where all cylinders do it.',
  },
];

/** Usual shares of the cranking figure: running at idle 28 to 55 %, snap throttle 60 to 105 % (usual: 35 to 40 % and 80 %). */
const running = { low: 0.28, high: 0.55 } as const;
const snap = { low: 0.6, high: 1.05 } as const;

/** Cranking, running and snap-throttle compression of one cylinder, in one of the words of `runningSayings`. */
export function compressionPattern(cranking: number, atIdle: number, snapped: number, best: number): Wording {
  const wrong =
    unlikelyCompression(cranking, best) ?? unlikelyCompression(atIdle) ?? unlikelyCompression(snapped);
  if (wrong !== undefined) return wrong;
  if (cranking < even * best) return 'leaks';
  if (atIdle > running.high * cranking || snapped > snap.high * cranking) return 'cannot empty';
  if (atIdle < running.low * cranking || snapped < snap.low * cranking) return 'cannot fill';
  return 'seals and breathes';
}

export const puffSayings: readonly Saying[] = [
  { words: 'even from the first', meaning: 'a good first puff and a good end: rings and valves seal.' },
  {
    words: 'builds up slowly',
    meaning:
      'a weak first puff that climbs to a fair end: usually rings, which the oil film and speed help to seal. A wet test should lift the first puff.',
  },
  {
    words: 'weak and stays weak',
    meaning: 'a weak first puff and a low end: usually a valve or the head gasket, which no puff helps.',
  },
  {
    words: 'stops early',
    meaning:
      'a good first puff and a low end: the gauge’s valve, a slow starter or a valve that hangs. Take the reading again.',
  },
];

/** The least share of the fifth puff that the first one of a sealed cylinder makes. */
const firstShare = 0.5;

/** The first puff of a cranking test against the fifth, in one of the words of `puffSayings`. */
export function puffPattern(first: number, fifth: number, best: number): Wording {
  const wrong = unlikelyCompression(fifth, best) ?? unlikelyCompression(first, fifth);
  if (wrong !== undefined) return wrong;
  const strong = fifth >= even * best;
  const quick = first >= firstShare * (strong ? fifth : even * best);
  if (quick) return strong ? 'even from the first' : 'stops early';
  return strong ? 'builds up slowly' : 'weak and stays weak';
}

export const wetSayings: readonly Saying[] = [
  {
    words: 'not low',
    meaning: 'the dry figure is even with the best cylinder: the oil has nothing to show.',
  },
  {
    words: 'oil seals it',
    meaning: 'the oil lifts a low figure close to the others: usually the rings or the bore.',
  },
  {
    words: 'oil helps in part',
    meaning:
      'the oil lifts it, but it stays low: worn rings and something else, or too little oil. Find where the leaking air comes out.',
  },
  {
    words: 'oil does not help',
    meaning:
      'still low with oil: usually a valve, the head gasket or a hole. Where the leaking air comes out tells which.',
  },
];

/** A rise that oil makes on rings: at least this share of what is missing to the best cylinder. */
const rise = { little: 0.25, most: 0.7 } as const;

/** Dry against wet compression of one cylinder, in one of the words of `wetSayings`. */
export function wetPattern(dry: number, wet: number, best: number): Wording {
  const wrong = unlikelyCompression(dry, best) ?? unlikelyCompression(wet);
  if (wrong !== undefined) return wrong;
  if (dry >= even * best) return 'not low';
  const share = (wet - dry) / (best - dry);
  if (share >= rise.most) return 'oil seals it';
  return share >= rise.little ? 'oil helps in part' : 'oil does not help';
}

function unlikelyCompression(reading: number, highest = Number.POSITIVE_INFINITY) {
  if (!(reading >= 0))
    return noAnswer(`A compression of ${sayPressure(reading)} on the gauge does not exist.`);
  if (reading <= highest * 1.0001) return undefined;
  return noAnswer(
    `The figure of ${sayPressure(reading)} is above the one of ${sayPressure(highest)} that it is compared with. Check their order.`,
  );
}
