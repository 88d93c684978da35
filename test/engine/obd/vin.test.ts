import { describe, expect, it } from 'vitest';
import { checkDigit, vinProblem } from '../../../core/engine/obd/vin.ts';
import { foundIn, saidBy } from './bytes.ts';

describe('the check digit', () => {
  /*
   * 49 CFR 565.15(c): the regulation's own worked example; the example of the NHTSA outline for manufacturers, p. 18;
   * a worked example of an encyclopedia (value from memory); ones, whose weights without position 9 add up to 89.
   */
  it.each([
    ['1G4AH59H45G118341', '4'],
    ['1J9RP1A36A1644345', '6'],
    ['1M8GDM9AXKP042788', 'X'],
    ['11111111111111111', '1'],
  ])('of %s is %s', (vin, digit) => {
    expect(checkDigit(vin)).toBe(digit);
    expect(vinProblem(vin)).toBeUndefined();
    for (const other of '0123456789X') {
      if (other === digit) continue;
      const wrong = `${vin.slice(0, 8)}${other}${vin.slice(9)}`;
      expect(vinProblem(wrong)).toEqual({ kind: 'check digit', is: other, due: digit });
    }
  });

  it.each(['I', 'O', 'Q', 'i', 'a', ' ', '-', 'Ä'])('has no value for %j', (character) => {
    const vin = `111111111111${character}1111`;
    expect(vinProblem(vin)).toEqual({ kind: 'character', character, at: 12 });
  });

  it('needs 17 characters', () => {
    expect(vinProblem('1111111111111111')).toEqual({ kind: 'length', length: 16 });
    expect(vinProblem('')).toEqual({ kind: 'length', length: 0 });
  });

  it('does not notice one character for another of the same value: A, J and 1', () => {
    expect(vinProblem('A1111111111111111')).toBeUndefined();
    expect(vinProblem('J1111111111111111')).toBeUndefined();
    expect(vinProblem('B1111111111111111')).toBeDefined();
  });
});

describe('a number in a recording', () => {
  const hexOf = (text: string): string[] => [...text].map((each) => each.charCodeAt(0).toString(16));
  const recorded = (vin: string): string => {
    const [a, b, c] = [hexOf(vin).slice(0, 3), hexOf(vin).slice(3, 10), hexOf(vin).slice(10)];
    return `7E8 10 14 49 02 01 ${a.join(' ')}\n7E8 21 ${b.join(' ')}\n7E8 22 ${c.join(' ')}`;
  };

  it('is read and checked', () => {
    expect(saidBy(recorded('11111111111111111'))).toEqual([
      '7E8 Vehicle identification number 11111111111111111',
    ]);
    expect(foundIn(recorded('11111111111111111'))).toEqual([]);
  });

  it('is told where its check digit does not fit, at the byte', () => {
    expect(foundIn(recorded('11111111211111111'))).toEqual([
      '2:23-25 vin-form: `11111111211111111` has 2 in position 9, and the other characters make it 1. On a vehicle built for North America a character is wrong; elsewhere the position may hold anything.',
    ]);
  });

  it.each(['I', 'O', 'Q'])('is told where it has %s, at the byte', (character) => {
    const vin = `1111${character}111111111111`;
    expect(foundIn(recorded(vin))).toEqual([
      `2:11-13 vin-form: \`${vin}\` has \`${character}\` in position 5. A vehicle identification number has capitals and digits only, and never I, O or Q, which look like 1 and 0.`,
    ]);
  });

  it('is told where it is short', () => {
    expect(foundIn('7E8 10 0A 49 02 01 31 31 31\n7E8 21 31 31 31 31 00 00 00')).toEqual([
      '1:20-19 vin-form: `1111111` has 7 characters, and a vehicle identification number has 17. Some are missing or too many.',
    ]);
  });

  it('comes in five messages before CAN, filled up in front', () => {
    const lines = ['01 00 00 00 31', '02 31 31 31 31', '03 31 31 31 31', '04 31 31 31 31', '05 31 31 31 31'];
    expect(saidBy(lines.map((each) => `49 02 ${each}`).join('\n'))).toEqual([
      'Vehicle identification number 11111111111111111',
    ]);
    const [first, , third] = lines.map((each) => `49 02 ${each}`);
    expect(foundIn(`${first}\n${third}`).map((each) => each.split('.')[0])).toEqual([
      '2:1-21 obd-wrong-sequence: Part 3 of the message stands where part 2 is due: a frame is missing, or lines were moved',
    ]);
    expect(foundIn(`${first}`).map((each) => each.split('.')[0])).toEqual([
      '1:1-21 obd-unfinished: The message announces 20 bytes and stops after 4',
    ]);
  });
});
