import { describe, expect, it } from 'vitest';
import { compareBanks } from '../../../core/waveform/trims/banks.ts';
import { patternMeaning } from '../../../core/waveform/trims/patternMeaning.ts';
import { type TrimPoint, trimPattern } from '../../../core/waveform/trims/trimPattern.ts';
import { type Leg, neededAt, type TrimFault } from '../../support/signal/driveLog.ts';

/** Three or four steady loads of one engine, as a table holds them. */
const legs: readonly (Leg & { readonly name: string })[] = [
  { name: 'idle', seconds: 1, rpm: 750, pressure: 0.33, speed: 0 },
  { name: 'fast', seconds: 1, rpm: 2500, pressure: 0.31, speed: 0 },
  { name: 'drive', seconds: 1, rpm: 2200, pressure: 0.52, speed: 80 },
  { name: 'climb', seconds: 1, rpm: 2600, pressure: 0.8, speed: 80 },
];

function points(fault: TrimFault, halfWidth = 0.02, of = legs): TrimPoint[] {
  return of.map((leg) => {
    const { trim, counted } = neededAt(leg, fault);
    return { name: leg.name, air: counted / 1000, trim: Math.round(128 * trim) / 128, halfWidth };
  });
}

describe('the pattern of a fault of known size', () => {
  it.each([0.4, 0.6, 0.8, 1, 1.3, 1.6])('a hole of %f g/s is the same grams', (hole) => {
    const found = trimPattern(points({ hole }));
    expect(found.word).toBe('same grams');
    expect(found.leans).toBe('lean');
    const { low, high } = found.grams ?? expect.fail('no grams');
    expect(low * 1000).toBeLessThanOrEqual(hole);
    expect(high * 1000).toBeGreaterThanOrEqual(hole * 0.97);
  });

  it.each([-0.2, -0.12, -0.06, 0.06, 0.1, 0.15, 0.25])('a share of %f is the same percent', (share) => {
    const found = trimPattern(points({ share }));
    expect(found.word).toBe('same percent');
    expect(found.leans).toBe(share > 0 ? 'lean' : 'rich');
    const { low, high } = found.share ?? expect.fail('no share');
    expect(low).toBeLessThanOrEqual(share);
    expect(high).toBeGreaterThanOrEqual(share);
  });

  it.each([-0.4, -0.25, 0.15, 0.25, 0.4, 0.6])(
    'fuel short by %f at 100 g/s rises with load',
    (shortAt100) => {
      const found = trimPattern(points({ shortAt100 }));
      expect(found.word).toBe('rises with load');
      expect(found.leans).toBe(shortAt100 > 0 ? 'lean' : 'rich');
    },
  );

  it('a small fault within what trims wander is near zero', () => {
    for (const fault of [{ hole: 0.05 }, { share: 0.015 }, { shortAt100: 0.03 }, {}])
      expect(trimPattern(points(fault)).word).toBe('near zero');
  });
});

describe('uncertainty decides whether a pattern may be named', () => {
  // At U = 2 % the three loads tell a hole from a share; with ± 12 % they no longer do.
  it.each([
    [0.02, 'same grams'],
    [0.04, 'same grams'],
    [0.12, 'no clear pattern'],
  ])('a hole read with ± %f is %s', (halfWidth, word) => {
    expect(trimPattern(points({ hole: 0.9 }, halfWidth)).word).toBe(word);
  });

  it('two loads that differ little fit both, and the words say what would separate', () => {
    const found = trimPattern([
      { name: 'idle', air: 0.004, trim: 0.2, halfWidth: 0.02 },
      { name: 'idle in gear', air: 0.0045, trim: 0.18, halfWidth: 0.02 },
    ]);
    expect(found.word).toBe('no clear pattern');
    expect(found.because).toBe(
      '+20 % at idle, +18 % at idle in gear fit “same grams” as well as “same percent”.',
    );
    // The middle of what fits: 0.80 g/s and 19 %; apart by more than 4 % from 0.80/(19 − 4) % = 5.4 g/s on.
    expect(found.next).toMatch(/^Take one more reading at 5\.\d g\/s of air or more/);
  });

  it('one more load as proposed does separate them', () => {
    const two: TrimPoint[] = [
      { name: 'idle', air: 0.004, trim: 0.2, halfWidth: 0.02 },
      { name: 'idle in gear', air: 0.0045, trim: 0.18, halfWidth: 0.02 },
    ];
    const at = 0.007;
    const hole = { name: 'light', air: at, trim: 0.0008 / at, halfWidth: 0.02 };
    expect(trimPattern([...two, hole]).word).toBe('same grams');
    expect(trimPattern([...two, { ...hole, trim: 0.19 }]).word).toBe('same percent');
  });

  it('what fits none is not forced', () => {
    const at = (trims: readonly number[]): TrimPoint[] =>
      trims.map((trim, i) => ({ name: `load ${i}`, air: 0.004 * (i + 1), trim, halfWidth: 0.02 }));
    const mixed = trimPattern(at([-0.1, 0, 0.12]));
    expect(mixed).toMatchObject({ word: 'no clear pattern', leans: undefined });
    expect(mixed.because).toMatch(/lean at one load and rich at another/);
    // Half a hole, half a share.
    const two = trimPattern(at([0.3, 0.22, 0.19, 0.17]));
    expect(two.because).toMatch(/there may be two causes/);
    expect(trimPattern(at([0.1, 0.25, 0.08])).because).toMatch(/up and down/);
  });
});

describe('an air flow that is not sure', () => {
  // 20 % of 4 g/s and 8 % of 10 g/s are 0.8 g/s each; trims ± 2 %, air ± 10 %.
  const known = [
    { name: 'idle', air: 0.004, trim: 0.2, halfWidth: 0.02 },
    { name: 'cruise', air: 0.01, trim: 0.08, halfWidth: 0.02 },
  ];
  const unsure = known.map((each) => ({ ...each, airHalfWidth: 0.1 * each.air }));

  it('leaves the grams as unsure as trim and air together (JCGM 100:2008, 5.1.2)', () => {
    const { low, high } = trimPattern(unsure).grams ?? expect.fail('no grams');
    const width = Math.hypot(0.02 * 0.004, 0.2 * 0.0004);
    expect(low).toBeCloseTo(0.0008 - width, 12);
    expect(high).toBeCloseTo(0.0008 + width, 12);
  });

  it('may make one amount of trims that no sure air flow would', () => {
    const apart = { name: 'climb', air: 0.02, trim: 0.065, halfWidth: 0.015 };
    expect(trimPattern([...known, apart]).word).toBe('no clear pattern');
    expect(trimPattern([...unsure, { ...apart, airHalfWidth: 0.004 }]).word).toBe('same grams');
  });
});

describe('banks', () => {
  const fault = points({ share: 0.15 });
  const sound = points({ share: 0.01 });

  it('that agree are read together', () => {
    const { word, points: read } = compareBanks(fault, points({ share: 0.16 }));
    expect(word).toBe('both');
    expect(trimPattern(read).word).toBe('same percent');
  });

  it('of which one is off are read from that one', () => {
    expect(compareBanks(fault, sound)).toEqual({ word: 'bank 1', points: fault });
    expect(compareBanks(sound, fault)).toEqual({ word: 'bank 2', points: fault });
  });

  it('that are off each their own way say so', () => {
    expect(compareBanks(fault, points({ share: -0.15 })).word).toBe('each its own');
  });
});

describe('what a pattern means', () => {
  const words = ['same grams', 'same percent', 'rises with load'] as const;
  const all = words.flatMap((word) => (['lean', 'rich'] as const).map((leans) => ({ word, leans })));

  it.each(all)('$word, $leans: differs by the metering', (pattern) => {
    const meter = patternMeaning(pattern, 'both', 'air flow') ?? expect.fail();
    const pressure = patternMeaning(pattern, 'both', 'manifold pressure') ?? expect.fail();
    expect(meter).not.toBe(pressure);
    expect(patternMeaning(pattern, 'both', undefined)).toContain(meter);
    expect(patternMeaning(pattern, 'both', 'both')).toContain(pressure);
    expect(patternMeaning(pattern, 'bank 2', 'air flow')).toMatch(/^One bank only/);
    // What both share is said not to be the cause, and is not named again.
    expect(patternMeaning(pattern, 'bank 2', 'air flow')?.replace(/\(.*?\)/, '')).not.toMatch(
      /meter|pump|pressure is/,
    );
  });

  it('a hole behind a meter is looked for; behind a pressure sensor it is counted', () => {
    const hole = { word: 'same grams', leans: 'lean' } as const;
    expect(patternMeaning(hole, 'both', 'air flow')).toMatch(/behind the meter/);
    expect(patternMeaning(hole, 'both', 'manifold pressure')).toMatch(/is counted/);
  });

  it('no pattern means nothing', () => {
    expect(patternMeaning({ word: 'near zero', leans: undefined }, 'both', 'air flow')).toBeUndefined();
    expect(patternMeaning({ word: 'no clear pattern', leans: 'lean' }, 'both', 'air flow')).toBeUndefined();
  });
});
