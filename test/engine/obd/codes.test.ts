import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodeCodes } from '../../../core/engine/obd/codeAnswers.ts';
import { writeMessage } from '../../../core/engine/obd/encodeAnswers.ts';
import { bytesOfCode, codeOfBytes, isCode, structureOf } from '../../../core/engine/obd/troubleCode.ts';
import { codesIn, foundIn } from './bytes.ts';

describe('trouble codes from bytes', () => {
  /* SAE J2012 / ISO 15031-6: two bits for the letter, two for the first digit. 96 A1 is a published example. */
  it.each([
    [0x01, 0x43, 'P0143'],
    [0x03, 0x00, 'P0300'],
    [0x04, 0x20, 'P0420'],
    [0x01, 0x71, 'P0171'],
    [0x11, 0x30, 'P1130'],
    [0x2b, 0xad, 'P2BAD'],
    [0x41, 0x23, 'C0123'],
    [0x92, 0x34, 'B1234'],
    [0xc1, 0x00, 'U0100'],
    [0x96, 0xa1, 'B16A1'],
  ])('%i %i is %s, and back', (high, low, code) => {
    expect(codeOfBytes(high, low)).toBe(code);
    expect(bytesOfCode(code)).toEqual([high, low]);
    expect(bytesOfCode(code.toLowerCase())).toEqual([high, low]);
  });

  it('come back for every pair of bytes', () => {
    fc.assert(
      fc.property(fc.nat(255), fc.nat(255), (high, low) => {
        expect(bytesOfCode(codeOfBytes(high, low))).toEqual([high, low]);
      }),
    );
  });

  it.each(['P4000', 'X0100', 'P017', 'P01711', 'P0G71', '', 'P0171 '])('%j is no code', (text) => {
    expect(isCode(text)).toBe(false);
    expect(bytesOfCode(text)).toBeUndefined();
    expect(structureOf(text)).toBeUndefined();
  });
});

describe('the structure of a code', () => {
  /* Who defines a code and what its group is about: value from memory of SAE J2012. */
  it.each([
    ['P0171', 'the standard', 'fuel and air metering'],
    ['P0301', 'the standard', 'ignition and misfire'],
    ['P0507', 'the standard', 'vehicle speed, idle control and further inputs'],
    ['P0741', 'the standard', 'transmission'],
    ['P2187', 'the standard', 'fuel and air metering, and emission controls beside them'],
    ['P1130', 'the maker', undefined],
    ['P3100', 'the maker', undefined],
    ['P3400', 'the standard', 'cylinders that are switched off'],
    ['U0100', 'the standard', 'a module that no longer answers'],
    ['C1234', 'the maker', undefined],
    ['B0001', 'the standard', undefined],
    ['B3000', 'the standard, reserved', undefined],
  ])('%s is defined by %s: %s', (code, definedBy, area) => {
    expect(structureOf(`${code}-87`)).toEqual(structureOf(code));
    expect(structureOf(code)).toMatchObject({ code, definedBy });
    expect(structureOf(code)?.area).toBe(area);
  });
});

describe('answers with codes', () => {
  it('come back from what was encoded', () => {
    for (const status of ['stored', 'pending', 'permanent'] as const) {
      const codes = ['P0171', 'B16A1', 'U0100', 'C0123', 'P2BAD'];
      const pairs = codes.flatMap((each) => [bytesOfCode(each) ?? expect.fail(each)]);
      const text = writeMessage('7E8', encodeCodes(status, pairs)).join('\n');
      expect(codesIn(text)).toEqual(codes.map((each) => `${each} ${status}`));
    }
  });

  it('count them on CAN networks', () => {
    expect(codesIn('7E8 06 43 02 01 71 03 00')).toEqual(['P0171 stored', 'P0300 stored']);
    expect(codesIn('7E8 02 43 00\n7E8 04 47 01 01 71\n7E8 04 4A 01 04 20')).toEqual([
      'P0171 pending',
      'P0420 permanent',
    ]);
  });

  it('hold three pairs before CAN, 00 00 for none', () => {
    expect(codesIn('43 01 43 00 00 00 00')).toEqual(['P0143 stored']);
    expect(codesIn('47 01 71 03 00 04 20')).toEqual(['P0171 pending', 'P0300 pending', 'P0420 pending']);
  });

  it('come in several frames where they are many', () => {
    expect(codesIn('7E8 10 0A 43 04 01 71 03 00\n7E8 21 04 20 C1 00 00 00 00')).toEqual([
      'P0171 stored',
      'P0300 stored',
      'P0420 stored',
      'U0100 stored',
    ]);
  });

  it('tell when they are more or fewer than announced', () => {
    expect(foundIn('7E8 04 43 02 01 71')).toEqual([
      '1:11-13 obd-code-count: The answer announces 2 codes and holds 1. Those that are here are read; record it again if one is missing.',
    ]);
  });
});
