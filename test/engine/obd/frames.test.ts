import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spaced, writeMessage } from '../../../core/engine/obd/encodeAnswers.ts';
import { joinFrames, splitIntoFrames } from '../../../core/engine/obd/isoTp.ts';
import { noProblems } from '../../../core/engine/obd/problems.ts';
import { readLines } from '../../../core/engine/obd/readLines.ts';
import { foundIn, saidBy } from './bytes.ts';

/** The messages in a recording, as hexadecimal text. */
function messagesIn(text: string): string[] {
  const problems = noProblems();
  const lines = readLines(text, problems);
  return joinFrames(lines, problems).map(
    ({ id, from, to }) => `${id} ${spaced([...lines.tape.bytes.subarray(from, to)])}`,
  );
}

const counting = (length: number): number[] => [
  0x49,
  ...Array.from({ length: length - 1 }, (_, i) => i & 255),
];

describe('frames of ISO 15765-2', () => {
  it('carry the worked example: 20 bytes in three frames', () => {
    /* Derived from the scheme by hand: 49 02 01 and 17 letters of the regulation's own example (49 CFR 565.15). */
    const message = [0x49, 2, 1, ...[...'1G4AH59H45G118341'].map((each) => each.charCodeAt(0))];
    expect(splitIntoFrames(message).map(spaced)).toEqual([
      '10 14 49 02 01 31 47 34',
      '21 41 48 35 39 48 34 35',
      '22 47 31 31 38 33 34 31',
    ]);
    expect(messagesIn(writeMessage('7E8', message).join('\n'))).toEqual([`7E8 ${spaced(message)}`]);
  });

  it.each([
    [1, 1],
    [7, 1],
    [8, 2],
    [13, 2],
    [14, 3],
    // The frame behind F counts 0 again.
    [6 + 7 * 16 + 1, 18],
    [4095, 1 + Math.ceil((4095 - 6) / 7)],
  ])('carry a message of %i bytes in %i, and back', (length, frames) => {
    const message = counting(length);
    const lines = writeMessage('7E8', message);
    expect(lines).toHaveLength(frames);
    expect(messagesIn(lines.join('\n'))).toEqual([`7E8 ${spaced(message)}`]);
  });

  it('carry any message there and back, and mix with another controller’s', () => {
    const bytes = fc.array(fc.nat(255), { minLength: 0, maxLength: 200 });
    fc.assert(
      fc.property(bytes, bytes, (a, b) => {
        const [one, two] = [
          [0x41, ...a],
          [0x49, ...b],
        ];
        const [first, second] = [writeMessage('7E8', one), writeMessage('7E9', two)];
        const mixed: string[] = [];
        for (let i = 0; i < Math.max(first.length, second.length); i++)
          mixed.push(...[first[i], second[i]].filter((each) => each !== undefined));
        expect(messagesIn(mixed.join('\n')).sort()).toEqual(
          [`7E8 ${spaced(one)}`, `7E9 ${spaced(two)}`].sort(),
        );
      }),
      { numRuns: 100 },
    );
  });

  it('come without ids, the last one short', () => {
    const text = '10 0A 49 04 01 31 31 31\n30 00 00\n21 31 31 31 31\n22 F1 90';
    expect(messagesIn(text)).toEqual([' 49 04 01 31 31 31 31 31 31 31']);
    expect(foundIn(text)).toEqual([]);
  });

  it('pass over flow control, of either side', () => {
    const text = '7E8 10 0A 49 04 01 31 31 31\n7E0 30 00 00\n7E8 30 00 00\n7E8 21 31 31 31 31 00 00 00';
    expect(messagesIn(text)).toEqual(['7E8 49 04 01 31 31 31 31 31 31 31']);
    expect(foundIn(text)).toEqual([]);
  });
});

describe('damaged messages', () => {
  it.each([
    [
      'a frame out of order',
      '7E8 10 14 49 02 01 31 31 31\n7E8 22 31 31 31 31 31 31 31',
      '2:5-28 obd-wrong-sequence: Part 2 of the message of 7E8 stands where part 1 is due: a frame is missing, or lines were moved. The message is left out; record it again.',
    ],
    [
      'a missing frame at the end',
      '7E8 10 14 49 02 01 31 31 31\n7E8 21 31 31 31 31 31 31 31',
      '1:5-28 obd-unfinished: The message of 7E8 announces 20 bytes and stops after 13. Copy the lines that follow, or record it again: an interface without flow control gets only the first frame.',
    ],
    [
      'a message that another one interrupts',
      '7E8 10 14 49 02 01 31 31 31\n7E8 03 41 05 7B',
      '1:5-28 obd-unfinished: The message of 7E8 announces 20 bytes and stops after 6. Copy the lines that follow, or record it again: an interface without flow control gets only the first frame.',
    ],
    [
      'a message without its start',
      '7E8 21 41 48 35 39 48 34 35',
      '1:5-28 obd-no-first-frame: This is part 1 of a message whose first frame is not here. Copy the lines above it, too.',
    ],
    [
      'a single frame that is cut',
      '7E8 04 41 0C 1A',
      '1:5-16 obd-short-frame: The frame should carry 4 bytes and has 3. Copy the whole line, or record it again.',
    ],
    [
      'a first frame that is cut',
      '7E8 10 14 49 02 01 31',
      '1:5-22 obd-short-frame: The frame should carry 6 bytes and has 4. Copy the whole line, or record it again.',
    ],
    [
      'a first frame that announces what fits in a single one',
      '7E8 10 04 49 02 01 31 31 31',
      '1:5-28 obd-short-frame: A first frame announces 4 bytes for the whole message, and so few are sent in a single frame. The line was damaged; record it again.',
    ],
    [
      'a consecutive frame that is cut',
      '7E8 10 14 49 02 01 31 31 31\n7E8 21 31 31 31\n7E8 22 31 31 31 31 31 31 31',
      '2:5-16 obd-short-frame: The frame should carry 7 bytes and has 3. Copy the whole line, or record it again.',
    ],
    [
      'an empty single frame',
      '7E8 00 41 0C 1A F8',
      '1:5-19 obd-short-frame: The frame should carry 0 bytes and has 4. Copy the whole line, or record it again.',
    ],
    [
      'a frame of no known sort',
      '7E8 94 41 0C 1A F8',
      '1:5-7 obd-unknown-frame: The frame starts with 94: the first digit should be 0 (single), 1 (first), 2 (consecutive) or 3 (flow control). The line was damaged, or it is no diagnostic answer.',
    ],
    [
      'numbered lines with one missing',
      '014\n0: 49 02 01 31 31 31\n2: 31 31 31 31 31 31 31',
      '3:4-24 obd-wrong-sequence: Part 2 of the message stands where part 1 is due: a frame is missing, or lines were moved. The message is left out; record it again.',
    ],
    [
      'numbered lines that end early',
      '014\n0: 49 02 01 31 31 31',
      '1:1-4 obd-unfinished: The message announces 20 bytes and stops after 6. Copy the lines that follow, or record it again: an interface without flow control gets only the first frame.',
    ],
    [
      'numbered lines without their length',
      '1: 31 31 31 31 31 31 31',
      '1:4-24 obd-no-first-frame: This is part 1 of a message whose first frame is not here. Copy the lines above it, too.',
    ],
  ])('%s', (_, text, found) => {
    expect(foundIn(text)[0]).toBe(found);
    expect(saidBy(text).filter((each) => !each.includes('ect'))).toEqual([]);
  });

  it('do not spoil what stands beside them', () => {
    const text = '7E8 10 14 49 02 01 31 31 31\n7E9 03 41 05 7B\n7E8 22 31 31 31 31 31 31 31\n7E8 03 41 0D 32';
    expect(saidBy(text)).toEqual(['7E9 ect 83 °C', '7E8 vss 50 km/h']);
  });
});
