import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sha256 } from '../../../server/log/chain.ts';
import { checkNumber, isCheckNumberOf } from '../../../server/log/check-number.ts';

const hash = fc.string({ unit: fc.constantFrom(...'0123456789abcdef'), minLength: 64, maxLength: 64 });

describe('the check number', () => {
  test.each([
    ['0'.repeat(64), '0000-0000-0000'],
    ['f'.repeat(64), 'ZZZZ-ZZZZ-ZZZZ'],
    // Worked by hand: 00001 00010 00011 00100 00101 00110 ... are the values 1 to 12 in five bits each.
    [`08864298e84a96c${'0'.repeat(49)}`, '1234-5678-9ABC'],
    [`${'0'.repeat(15)}f${'0'.repeat(48)}`, '0000-0000-0000'],
  ])('of %s is %s', (of, short) => {
    expect(checkNumber(of)).toBe(short);
  });

  test('is three groups of four, without the letters that are mistaken for others', () => {
    fc.assert(
      fc.property(hash, (of) => {
        expect(checkNumber(of)).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}(-[0-9A-HJKMNP-TV-Z]{4}){2}$/);
      }),
    );
  });

  test('differs when any of its 60 bits differs', () => {
    const of = sha256('head');
    const others = Array.from({ length: 60 }, (_, bit) => {
      const digit = Number.parseInt(of.charAt(bit >> 2), 16) ^ (1 << (bit & 3));
      return checkNumber(of.slice(0, bit >> 2) + digit.toString(16) + of.slice((bit >> 2) + 1));
    });
    expect(new Set([checkNumber(of), ...others]).size).toBe(61);
  });

  test('is known again as people type it', () => {
    fc.assert(
      fc.property(hash, (of) => {
        const short = checkNumber(of);
        for (const typed of [
          short.toLowerCase(),
          short.replaceAll('-', ' '),
          ` ${short} `,
          short.replaceAll('0', 'O'),
          short.replaceAll('1', 'l'),
          short.replaceAll('1', 'I'),
        ]) {
          expect(isCheckNumberOf(typed, of)).toBe(true);
        }
        expect(isCheckNumberOf(short.slice(0, 13), of)).toBe(false);
      }),
    );
  });

  test('is made of nothing but a whole hash', () => {
    expect(() => checkNumber('abc')).toThrow('64 hexadecimal digits');
  });
});
