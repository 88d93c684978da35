import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeObd } from '../../../core/engine/obd/decodeObd.ts';
import { foundIn } from './bytes.ts';

/** Runs it and gives the time in milliseconds. */
function timeOf(run: () => void): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}

describe('whatever stands there', () => {
  it('may be one line of hundreds of thousands of codes', () => {
    expect(decodeObd(`43${'0171'.repeat(300_000)}`).codes.length).toBeGreaterThan(299_000);
  });

  it('is read without a fault, and told within the text', () => {
    const piece = fc.constantFrom(
      '7E8',
      '04',
      '41',
      '0C',
      '1A',
      'F8',
      '10',
      '14',
      '21',
      '22',
      '30',
      '7F',
      '48',
      '6B',
      '49',
      '02',
      '0:',
      '014',
      '>',
      '#',
      '\n',
      ' ',
      'NO DATA',
      '...',
      '[8]',
      'x',
      '4',
      '18DAF110',
      'can0',
      '(1)',
    );
    const text = fc.array(piece, { maxLength: 60 }).map((pieces) => pieces.join(' '));
    fc.assert(
      fc.property(fc.oneof(text, fc.string({ maxLength: 200 })), (each) => {
        const { diagnostics, tape, answers } = decodeObd(each);
        for (const { span } of diagnostics) {
          expect(span.start).toBeGreaterThanOrEqual(0);
          expect(span.end).toBeLessThanOrEqual(each.length);
        }
        expect(tape.length).toBeLessThanOrEqual(tape.bytes.length);
        for (const { to } of answers) expect(to).toBeLessThanOrEqual(tape.length);
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ['one line of hexadecimal digits', () => '41'.repeat(1_000_000)],
    ['one line of digits with a letter at its end', () => `${'41 '.repeat(500_000)}x`],
    ['one line of points', () => `A${'.'.repeat(1_000_000)}`],
    ['one line of spaces with a letter at its end', () => `A..${' '.repeat(1_000_000)}x`],
    ['a million prompts', () => '>'.repeat(1_000_000)],
    ['a million empty lines', () => '\n'.repeat(1_000_000)],
    ['first frames without an end', () => '7E8 10 14 49 02 01 31 31 31\n'.repeat(40_000)],
    [
      'first frames of many controllers',
      () =>
        Array.from(
          { length: 40_000 },
          (_, i) =>
            `${(i % 256) + 0x700 > 0x7ff ? '7E8' : ((i % 256) + 0x700).toString(16)} 1F FF 49 02 01 31 31 31`,
        ).join('\n'),
    ],
    ['numbered lines that never end', () => `FFF\n${'0: 49 02 01 31 31 31\n'.repeat(40_000)}`],
    ['lines with one digit too many', () => '41 0C 1A F81\n'.repeat(80_000)],
    ['parts of a number that never ends', () => '49 02 01 00 00 00 31\n'.repeat(50_000)],
  ])('is read in time: %s', (_, make) => {
    const text = make();
    let told = 0;
    const time = timeOf(() => {
      told = decodeObd(text).diagnostics.length;
    });
    expect(told).toBeLessThanOrEqual(23);
    expect(time).toBeLessThan(5000);
  });

  it('tells the first findings and counts the rest', () => {
    const found = foundIn('41 0C 1A F81\n'.repeat(100));
    expect(found).toHaveLength(21);
    expect(found[20]).toBe(
      '20:10-13 obd-more-problems: There are 80 more findings of this sort in the recording. Put the first ones right, or record it again.',
    );
  });

  it('is refused when it is too long', () => {
    expect(foundIn(' '.repeat(16 * 1024 * 1024 + 1))).toEqual([
      '1:1-2 obd-too-long: The recording is longer than the 16777216 characters that are read. Cut it into parts, or keep the moment that matters.',
    ]);
  });
});
