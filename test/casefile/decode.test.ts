import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decode } from '../../core/casefile/decode.ts';
import { message } from '../../core/diagnostics/words.ts';

const bytes = (...values: number[]) => Uint8Array.from(values);
const says = (of: Uint8Array) => decode(of).diagnostics.map(message);

describe('the bytes of a case file', () => {
  it('are UTF-8, with a byte-order mark kept', () => {
    const text = '\uFEFFdiag: 1\ncase: 68 °F, 4.7 kΩ ± 2 %, 😀';
    expect(decode(new TextEncoder().encode(text))).toEqual({ value: text, diagnostics: [] });
    expect(decode(bytes())).toEqual({ value: '', diagnostics: [] });
  });

  it('that are Latin-1 are told so, with the place', () => {
    expect(says(bytes(0x65, 0x63, 0x74, 0x3a, 0x20, 0x36, 0x38, 0xb0, 0x46))).toEqual([
      'The file is not UTF-8: byte B0 at position 7 belongs to no character. Save the file again with the encoding UTF-8.',
    ]);
    expect(says(bytes(0x41, 0xe9, 0x20))).toEqual([
      'The file is not UTF-8: byte 20 at position 2 belongs to no character. Save the file again with the encoding UTF-8.',
    ]);
  });

  it('that are UTF-16 are told so, with or without a byte-order mark', () => {
    expect(says(bytes(0xff, 0xfe, 0x64, 0x00))).toEqual([
      'The file is UTF-16 (little-endian). Save it again with the encoding UTF-8.',
    ]);
    expect(says(bytes(0xfe, 0xff, 0x00, 0x64))).toEqual([
      'The file is UTF-16 (big-endian). Save it again with the encoding UTF-8.',
    ]);
    expect(says(bytes(0x64, 0, 0x69, 0, 0x61, 0))[0]).toContain('UTF-16 (little-endian)');
    expect(says(bytes(0, 0x64, 0, 0x69, 0, 0x61))[0]).toContain('UTF-16 (big-endian)');
  });

  it('are refused exactly where the Encoding Standard’s strict decoder refuses them', () => {
    const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
    const expected = (of: Uint8Array): string | undefined => {
      try {
        return strict.decode(of);
      } catch {
        return undefined;
      }
    };
    const edge = fc.constantFrom(
      0x00,
      0x41,
      0x7f,
      0x80,
      0x8f,
      0x90,
      0x9f,
      0xa0,
      0xbf,
      0xc0,
      0xc1,
      0xc2,
      0xdf,
      0xe0,
      0xe1,
      0xec,
      0xed,
      0xee,
      0xef,
      0xf0,
      0xf1,
      0xf3,
      0xf4,
      0xf5,
      0xff,
    );
    let refused = 0;
    fc.assert(
      fc.property(fc.array(fc.oneof(edge, fc.nat(255)), { maxLength: 8 }), (values) => {
        // A letter in front keeps it from looking like UTF-16.
        const of = Uint8Array.from([0x41, 0x42, 0x43, 0x44, ...values]);
        const { value } = decode(of);
        if (value === undefined) refused++;
        expect(value).toBe(expected(of));
      }),
      { numRuns: 20_000 },
    );
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const of = new TextEncoder().encode(`case${text}`);
        expect(decode(of).value).toBe(strict.decode(of));
      }),
    );
    expect(refused).toBeGreaterThan(500);
  });
});
