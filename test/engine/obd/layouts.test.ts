import { describe, expect, it } from 'vitest';
import { obdRows } from '../../../core/diagnostics/catalogue/obd.ts';
import { decodeObd } from '../../../core/engine/obd/decodeObd.ts';
import { bytesSaid, codesIn, foundIn, saidBy } from './bytes.ts';

describe('one answer in the usual layouts', () => {
  const rpm = 'rpm 1726 rpm';
  it.each([
    ['without header', '41 0C 1A F8', rpm],
    ['without spaces', '410C1AF8', rpm],
    ['in small letters', '41 0c 1a f8', rpm],
    ['with a tab', '41\t0C\t1A\tF8', rpm],
    ['behind a prompt', '>41 0C 1A F8', rpm],
    ['with the line ends of an old terminal', '010C\r41 0C 1A F8\r\r>', rpm],
    ['with the line ends of a file', '010C\r\n41 0C 1A F8\r\n', rpm],
    ['with an id of 11 bits', '7E8 04 41 0C 1A F8', `7E8 ${rpm}`],
    ['with filler', '7E8 04 41 0C 1A F8 AA AA AA', `7E8 ${rpm}`],
    ['with the line’s length', '7E8 8 04 41 0C 1A F8 AA AA AA', `7E8 ${rpm}`],
    ['with an id, without spaces', '7E804410C1AF8', `7E8 ${rpm}`],
    ['with an id and filler, without spaces', '7E804410C1AF8000000', `7E8 ${rpm}`],
    ['with an id and the line’s length, without spaces', '7E8804410C1AF8AAAAAA', `7E8 ${rpm}`],
    ['with an id, without the byte that counts', '7E8 41 0C 1A F8', `7E8 ${rpm}`],
    ['with an id of 29 bits', '18DAF110 04 41 0C 1A F8', `18DAF110 ${rpm}`],
    ['with an id of 29 bits in bytes', '18 DA F1 10 04 41 0C 1A F8', `18DAF110 ${rpm}`],
    ['with an id of 29 bits, without spaces', '18DAF11004410C1AF8', `18DAF110 ${rpm}`],
    ['with the byte that counts only', '04 41 0C 1A F8 00 00 00', rpm],
    ['with a header of three bytes and a sum', '48 6B 10 41 0C 1A F8 22', `10 ${rpm}`],
    ['with a header of ISO 14230', '84 F1 10 41 0C 1A F8 E4', `10 ${rpm}`],
    ['with a header of ISO 14230 and a byte for the length', '80 F1 10 04 41 0C 1A F8 E4', `10 ${rpm}`],
    ['behind a byte-order mark', '\uFEFF41 0C 1A F8', rpm],
    ['as a network logger writes it', '(1436509052.249713) can0 7E8#04410C1AF8AAAAAA', `7E8 ${rpm}`],
    ['with a time in front', '12:30:01.250 7E8 04 41 0C 1A F8', `7E8 ${rpm}`],
    ['with seconds in front', '[0.125]  41 0C 1A F8', rpm],
    ['as it dumps it', 'can0  7E8   [8]  04 41 0C 1A F8 AA AA AA', `7E8 ${rpm}`],
    ['as programs write bytes', '0x41 0x0C 0x1A 0xF8', rpm],
    ['as programs write bytes, with an id', '0x7E8, 0x04, 0x41, 0x0C, 0x1A, 0xF8', `7E8 ${rpm}`],
    ['with commas', '41,0C,1A,F8', rpm],
    ['with the way it went in front', '< 41 0C 1A F8', rpm],
    ['with both ways, in letters', 'TX: 01 0C\nRX: 7E8 04 41 0C 1A F8', `7E8 ${rpm}`],
    ['with words in front', 'SEARCHING...41 0C 1A F8', rpm],
    ['with a remark', '41 0C 1A F8   # at idle, 41 05 7B', rpm],
    ['with a filled line and no header', '41 0C 1A F8 00 00 00', rpm],
  ])('%s', (_, text, said) => {
    expect(saidBy(text)).toEqual([said]);
    expect(foundIn(text)).toEqual([]);
    expect(bytesSaid(text)).toEqual(['1A F8']);
  });

  it('checks the checksum of SAE J1850, too', () => {
    // Polynomial 1D from FF, inverted: computed by hand with the table-free algorithm, value from memory.
    const crc = crc8([0x48, 0x6b, 0x10, 0x41, 0x05, 0x7b]);
    expect(saidBy(`48 6B 10 41 05 7B ${crc}`)).toEqual(['10 ect 83 °C']);
    const fixed = crc8([0x41, 0x6b, 0x10, 0x41, 0x05, 0x7b]);
    expect(saidBy(`41 6B 10 41 05 7B ${fixed}`)).toEqual(['10 ect 83 °C']);
  });

  it('takes several parameters from one answer', () => {
    expect(saidBy('7E8 08 41 0C 1A F8 0D 32 11 80')).toEqual([
      '7E8 rpm 1726 rpm',
      '7E8 vss 50 km/h',
      '7E8 tp 50.1960784314 %',
    ]);
  });

  it('tells apart who answers', () => {
    expect(saidBy('7E8 03 41 05 7B\n7E9 03 41 05 3C\n18DAF118 03 41 05 50')).toEqual([
      '7E8 ect 83 °C',
      '7E9 ect 20 °C',
      '18DAF118 ect 40 °C',
    ]);
  });

  it('joins numbered lines under their length', () => {
    const text = '0904\n00D\n0: 49 04 01 31 32 33\n1: 34 35 36 37 38 39 30';
    expect(saidBy(text)).toEqual(['Calibration 1234567890']);
    expect(foundIn(text)).toEqual([]);
  });
});

describe('two messages of several frames without ids', () => {
  /* Codes of two controllers, 43 04 and four codes each: which second part is whose, nothing says (ISO 15765-2 joins by the id). */
  const [first, second] = ['43 04 01 71 01 74', '43 04 07 00 07 01'];
  it.each([
    `00A\n0: ${first}\n00A\n0: ${second}\n1: 03 00 04 20\n1: 07 02 07 03`,
    `10 0A ${first}\n10 0A ${second}\n21 03 00 04 20 00 00 00\n21 07 02 07 03 00 00 00`,
  ])('are left out where they run into each other: %j', (text) => {
    expect(codesIn(text)).toEqual([]);
    expect(foundIn(text).map((each) => each.replace(/^[^ ]* /, ''))).toEqual([
      expect.stringContaining('obd-unfinished'),
      'obd-no-first-frame: Here is part 1 once more: two messages run into each other, and nothing says whose each part is. Both are left out; record them again with headers.',
    ]);
  });

  it('are read where the first was only broken off', () => {
    const text = `00A\n0: ${first}\n>03\n00A\n0: ${second}\n1: 07 02 07 03\n41 05 7B`;
    expect(codesIn(text)).toEqual(['P0700 stored', 'P0701 stored', 'P0702 stored', 'P0703 stored']);
    expect(saidBy(text)).toEqual(['ect 83 °C']);
  });

  it('are told apart by their ids', () => {
    const text = `7E8 10 0A ${first}\n7E9 10 0A ${second}\n7E8 21 03 00 04 20\n7E9 21 07 02 07 03`;
    expect(codesIn(text)).toHaveLength(8);
    expect(foundIn(text)).toEqual([]);
  });
});

describe('trims of more than two banks', () => {
  // SAE J1979: the second byte is bank 3 or 4, where there is such a bank.
  it.each([
    ['7E8 04 41 06 80 82', ['7E8 stft_b1 0 %']],
    ['41 09 90 04', ['ltft_b2 12.5 %']],
    ['7E8 05 42 07 00 90 05', ['7E8 ltft_b1 12.5 %']],
    ['41 55 84 0C', ['stft_b1s2 3.125 %']],
    ['7E8 05 41 06 80 05 7B', ['7E8 stft_b1 0 %', '7E8 ect 83 °C']],
  ])('%j', (text, says) => {
    expect(saidBy(text)).toEqual(says);
    expect(foundIn(text)).toEqual([]);
  });
});

describe('requests and noise', () => {
  it.each([
    '010C',
    '01 0C',
    '>01 0C',
    '01 0C 1',
    '010C1',
    '03',
    '0902',
    '7DF 02 01 0C',
    '7E0 30 00 00',
    '68 6A F1 01 0C D0',
    'C2 33 F1 01 0C F3',
    '18DB33F1 02 01 0C',
    '22 F1 90',
    '3E 00',
    '30 00 00',
  ])('counts %s as a request', (line) => {
    const { requests, noise, answers } = decodeObd(`${line}\n41 05 7B`);
    expect([requests, noise, answers.length]).toEqual([1, 0, 1]);
  });

  it('passes over what an interface says, and counts it', () => {
    const text =
      'SEARCHING...\n41 05 7B\nNO DATA\nUNABLE TO CONNECT\nBUS INIT: OK\nCAN ERROR\n?\nOK\n41 0C 1A <RX ERROR\nATZ';
    expect(saidBy(text)).toEqual(['ect 83 °C']);
    expect(foundIn(text)).toEqual([
      '1:1-13 obd-noise: 9 lines hold no data and are passed over, the first: `SEARCHING...`.',
    ]);
    expect(foundIn('41 05 7B\nNO DATA')).toEqual([
      '2:1-8 obd-noise: One line holds no data and is passed over: `NO DATA`.',
    ]);
  });

  it('says when there is no answer at all', () => {
    expect(foundIn('')).toEqual([
      '1:1-1 obd-nothing: There is no answer in here. An answer starts with the service plus 40: `41 0C 1A F8`.',
    ]);
    expect(foundIn('01 0C\n01 05')).toEqual([
      '1:1-1 obd-nothing: There are 2 requests in here and no answer. An answer starts with the service plus 40: `41 0C 1A F8`.',
    ]);
  });
});

describe('lines that cannot be read', () => {
  it.each([
    [
      '41 05 7B\n41 0C 1A F',
      '2:10-11 obd-odd-length: `F` has 1 digit, and a byte is two. A digit is missing or one too many; copy the line again.',
    ],
    [
      '410C1AF',
      '1:1-8 obd-odd-length: `410C1AF` has 7 digits, and a byte is two. A digit is missing or one too many; copy the line again.',
    ],
    [
      '7E8 04 41 0C 1A F8A',
      '1:17-20 obd-odd-length: `F8A` has 3 digits, and a byte is two. A digit is missing or one too many; copy the line again.',
    ],
    [
      '41 OC 1A F8',
      '1:4-6 obd-not-hex: `OC` is no hexadecimal number: only 0 to 9 and A to F stand in one. Look whether a letter was taken for a digit, such as O for 0 or l for 1; a remark goes behind ` #`.',
    ],
    [
      '4l0C1AF8',
      '1:1-9 obd-not-hex: `4l0C1AF8` is no hexadecimal number: only 0 to 9 and A to F stand in one. Look whether a letter was taken for a digit, such as O for 0 or l for 1; a remark goes behind ` #`.',
    ],
    [
      '41 0C 1A',
      '1:4-9 obd-short-answer: Engine speed (0C): 2 bytes are due, and only 1 is here. Copy the whole line, or record it again.',
    ],
    [
      '41 05',
      '1:4-6 obd-short-answer: Coolant temperature (05): 1 byte is due, and none is here. Copy the whole line, or record it again.',
    ],
    [
      '7E8 04 41 0C 1A',
      '1:5-16 obd-short-frame: The frame should carry 4 bytes and has 3. Copy the whole line, or record it again.',
    ],
    [
      '48 6B 10 41 05 7B 85',
      '1:19-21 obd-wrong-checksum: The checksum at the end is 85 and should be 84 or 06: the line was damaged on the way, or copied without its last byte. It is left out; record it again.',
    ],
    [
      '41 05 7B\n41 9D 01 02',
      '2:1-12 obd-unknown-parameter: Service 01 answers 9D, which is not known here. Its bytes are kept as they are: 01 02.',
    ],
    [
      '62 F1 90 31',
      '1:1-12 obd-unknown-answer: `62 F1 90 31` is no answer of services 01 to 0A, and is left as it is. A maker’s own answer is written under `values`, with what the maker’s information says it means.',
    ],
    [
      '7E8 03 7F 01 12',
      '1:8-16 obd-refused: The controller refuses service 01 with 12: it does not have this parameter, or the request had a wrong form.',
    ],
    [
      '7F 03 11',
      '1:1-9 obd-refused: The controller refuses service 03 with 11: it does not have this service.',
    ],
    [
      '7F 01 22',
      '1:1-9 obd-refused: The controller refuses service 01 with 22: not in this state, for example not while the engine runs.',
    ],
    [
      '7F 01 5A',
      '1:1-9 obd-refused: The controller refuses service 01 with 5A: a reason that is not known here.',
    ],
  ])('%j', (text, found) => {
    expect(foundIn(text)).toEqual([found]);
  });

  it('are not filled up with the line below', () => {
    expect(foundIn('46\n45\n49\n41 05 7B').map((each) => each.split(':').slice(0, 3).join(':'))).toEqual(
      ['1:1-3', '2:1-3', '3:1-3'].map((place) => `${place} obd-short-answer: The answer`),
    );
  });

  it('do not keep the others from being read', () => {
    expect(saidBy('41 0C 1A F\n41 05 7B\n41 OC 1A F8\n41 0D 32')).toEqual(['ect 83 °C', 'vss 50 km/h']);
  });

  it('are told once for a parameter that comes again and again', () => {
    expect(foundIn('41 9D 01 02\n41 9D 01 03\n41 9E 00 00')).toHaveLength(2);
  });

  it('say nothing of an answer that comes later', () => {
    expect(foundIn('7E8 03 7F 01 78\n7E8 03 41 05 7B')).toEqual([]);
  });
});

describe('the pages of the findings', () => {
  it.each(Object.entries(obdRows))(
    '%s is found in its wrong example and not in its right one',
    (code, { wrong, right }) => {
      if (code === 'obd-too-long' || code === 'obd-more-problems') return expect(wrong).toContain('…');
      // Its example is a header: test/rules/spec/vin-form holds it.
      if (code === 'vin-form') return expect(wrong).toContain('vehicle:');
      const linesOf = (example: string): string => example.replace(/^obd: \|\n/, '').replace(/^ {2}/gm, '');
      expect(foundIn(linesOf(wrong)).join()).toContain(` ${code}: `);
      expect(foundIn(linesOf(right))).toEqual([]);
    },
  );
});

describe('sensors of four banks', () => {
  it('are named by parameter 1D: the third is the first of bank 2', () => {
    expect(saidBy('41 16 5A FF')).toContain('o2_b1s3 0.45 V');
    expect(saidBy('41 1D 0F\n41 16 5A FF')).toContain('o2_b2s1 0.45 V');
    expect(saidBy('41 1D 0F\n41 26 80 00 00 00')).toContain('lambda_b2 1');
    expect(saidBy('41 1D 0F\n41 18 5A FF')).toContain('Oxygen sensor, bank 3, sensor 1 0.45 V');
  });
});

it('reads codes in each layout', () => {
  for (const text of ['43 01 71 00 00 00 00', '7E8 04 43 01 01 71', '48 6B 10 43 01 71 00 00 00 00 78'])
    expect(codesIn(text), text).toEqual(['P0171 stored']);
});

/** SAE J1850 by its shift register, bit by bit. */
function crc8(bytes: readonly number[]): string {
  let register = 0xff;
  for (const byte of bytes)
    for (let bit = 7; bit >= 0; bit--) {
      const top = ((register >> 7) ^ (byte >> bit)) & 1;
      register = ((register << 1) & 0xff) ^ (top === 1 ? 0x1d : 0);
    }
  return (register ^ 0xff).toString(16).padStart(2, '0');
}
