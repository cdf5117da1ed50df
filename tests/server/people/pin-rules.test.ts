import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pinFault } from '../../../server/people/pin-rules.ts';

const fault = (pin: string, known: readonly string[] = []) => pinFault(pin, { digitsMin: 6, known });

describe('a PIN that somebody chooses (WS-13)', () => {
  test.each([
    ['12345', 'At least 6 digits.'],
    ['', 'A PIN has digits only.'],
    ['12345a', 'A PIN has digits only.'],
    [' 482915', 'A PIN has digits only.'],
    ['٤٨٢٩١٥', 'A PIN has digits only.'],
    ['1'.repeat(33), 'At most 32 digits.'],
    ['111111', 'Repeated digits'],
    ['121212', 'Repeated digits'],
    ['123123', 'Repeated digits'],
    ['48294829', 'Repeated digits'],
    ['123456', 'Digits in a row'],
    ['654321', 'Digits in a row'],
    ['789012', 'Digits in a row'],
    ['135791', 'Digits in a row'],
    ['123456789', 'Digits in a row'],
    ['147258', 'Many people choose'],
    ['258025', 'Many people choose'],
    ['112233', 'Many people choose'],
    ['332211', 'Many people choose'],
    ['1472580', 'Many people choose'],
    ['240385', 'It reads as a date'],
    ['032485', 'It reads as a date'],
    ['850324', 'It reads as a date'],
    ['24031985', 'It reads as a date'],
    ['19850324', 'It reads as a date'],
    ['031985', 'It reads as a date'],
    ['198503', 'It reads as a date'],
    ['198577', 'It holds a year'],
    ['771985', 'It holds a year'],
    ['2580', 'At least 6 digits.'],
  ])('%s is refused: %s', (pin, message) => {
    expect(fault(pin)).toContain(message);
  });

  test.each(['000214', '214000', '021400', '214214'])(
    'made of the digits of a valve of the site is refused: %s',
    (pin) => {
      expect(fault(pin, ['214'])).not.toBeNull();
    },
  );

  test.each(['482915', '619374', '826491', '4829153', '99887762'])(
    'that nobody guesses first is taken: %s',
    (pin) => {
      expect(fault(pin, ['214', '1'])).toBeNull();
    },
  );

  test('at random is taken more often than not, so that nobody despairs', () => {
    const sample = fc.sample(fc.integer({ min: 0, max: 999_999 }), { numRuns: 2000, seed: 7 });
    const taken = sample.filter((number) => fault(String(number).padStart(6, '0'), ['214']) === null);
    expect(taken.length / sample.length).toBeGreaterThan(0.8);
  });
});
