import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { UnitId } from '../../../procedures/calculations/unit-table.ts';
import { unitsOf } from '../../../procedures/calculations/units.ts';
import {
  type Expected,
  NUMBER_FAULTS,
  type NumberFaultCode,
  readNumber,
} from '../../../procedures/readings/number-text.ts';

const gaugePsi: Expected = { dimensions: ['pressure'], unit: 'psi' };
const anyLength: Expected = { dimensions: ['length'] };

function readTo(text: string, expected: Expected = gaugePsi): readonly [number, string] {
  const read = readNumber(text, expected);
  if (!read.ok) throw new Error(`${text}: ${read.what} ${read.next}`);
  return [read.value, read.unit];
}

describe('a number as people write it', () => {
  test.each([
    ['9', 9],
    [' 9 ', 9],
    ['9.0', 9],
    ['12,1', 12.1],
    ['12.1', 12.1],
    ['0,125', 0.125],
    ['0.125', 0.125],
    ['1.125', 1.125],
    ['1234,567', 1234.567],
    ['.75', 0.75],
    [',75', 0.75],
    ['+5', 5],
    ['-5', -5],
    ['\u22125,5', -5.5],
    ['007', 7],
    ['-0', 0],
    ['1.2345678901234567', 1.2345678901234567],
    ['100000000', 1e8],
  ])('%s is %d', (text, value) => {
    expect(readTo(text)).toEqual([value, 'psi']);
    // A zero with a sign would print as "-0".
    expect(Object.is(readTo(text)[0], -0)).toBe(false);
  });

  test.each([
    ['9 psi', 9, 'psi'],
    ['9psi', 9, 'psi'],
    ['9 PSI', 9, 'psi'],
    ['9 psig', 9, 'psi'],
    ['9 psi.', 9, 'psi'],
    ['60 kPa', 60, 'kPa'],
    ['60 kpa', 60, 'kPa'],
    ['0,6 bar', 0.6, 'bar'],
    ['0.6 barg', 0.6, 'bar'],
    ['1.4 MPa', 1.4, 'MPa'],
    ['0 bar', 0, 'bar'],
    ['0bar', 0, 'bar'],
    ['600 mbar', 600, 'mbar'],
    ['12 inH2O', 12, 'inH2O'],
    ['12 inH₂O (4 °C)', 12, 'inH2O 4C'],
  ] as const)('%s is in its own unit', (text, value, unit) => {
    expect(readTo(text)).toEqual([value, unit]);
  });

  test.each([
    ['12,1 mm', 12.1, 'mm'],
    ['0.750 in', 0.75, 'in'],
    ['0.750"', 0.75, 'in'],
    ['0.750 in.', 0.75, 'in'],
    ['1 inch', 1, 'in'],
  ] as const)('a length may be written as %s', (text, value, unit) => {
    expect(readTo(text, anyLength)).toEqual([value, unit]);
  });

  test.each([
    ['50 %', 'percent', 50],
    ['50%', 'percent', 50],
    ['50 percent', 'percent', 50],
    ['1600 lbf/in', 'forcePerLength', 1600],
    ['1600 lb/in', 'forcePerLength', 1600],
    ['100 in²', 'area', 100],
    ['100 sq in', 'area', 100],
    ['645 cm2', 'area', 645],
    ['12 Cv', 'flowCoefficient', 12],
    ['2 turns', 'turns', 2],
    ['0.72', 'ratio', 0.72],
  ] as const)('%s is a %s', (text, dimension, value) => {
    expect(readTo(text, { dimensions: [dimension], unit: unitsOf(dimension)[0]?.id as UnitId })[0]).toBe(
      value,
    );
  });

  test('SI comes with it, by the exact factor', () => {
    expect(readNumber('9 psi', gaugePsi)).toMatchObject({ valueSi: 9 * 6894.757293168361 });
    expect(readNumber('-40 °F', { dimensions: ['temperature'] })).toMatchObject({ value: -40 });
    const cold = readNumber('-40 °F', { dimensions: ['temperature'] });
    expect(cold.ok && cold.valueSi).toBeCloseTo(233.15, 9);
  });

  test('the text comes back as it was typed, taken or refused', () => {
    expect(readNumber(' 12,1 mm', anyLength).typed).toBe(' 12,1 mm');
    expect(readNumber(' ten ', anyLength).typed).toBe(' ten ');
  });

  test('it is told apart whether the unit was written or understood', () => {
    expect(readNumber('9', gaugePsi)).toMatchObject({ unit: 'psi', unitWritten: false });
    expect(readNumber('9 psi', gaugePsi)).toMatchObject({ unit: 'psi', unitWritten: true });
  });
});

const REFUSED: readonly (readonly [
  text: string,
  code: NumberFaultCode,
  says: string,
  expected?: Expected,
])[] = [
  ['', 'NUM-001', 'Nothing was written'],
  ['  \t', 'NUM-001', 'Nothing was written'],
  ['ten', 'NUM-002', '“ten” is not a number'],
  ['NaN', 'NUM-002', '“NaN” is not a number'],
  ['Infinity', 'NUM-002', 'is not a number'],
  ['psi', 'NUM-002', 'is not a number'],
  ['-', 'NUM-002', 'is not a number'],
  ['- 5', 'NUM-002', 'is not a number'],
  ['5.', 'NUM-002', 'is not a number'],
  ['.', 'NUM-002', 'is not a number'],
  ['٣', 'NUM-002', 'is not a number'],
  ['９', 'NUM-002', 'is not a number'],
  ['about 9', 'NUM-002', 'is not a number'],
  ['9'.repeat(61), 'NUM-002', 'is not a number'],
  ['1e9', 'NUM-003', '“1e9” has an exponent'],
  ['1E9', 'NUM-003', 'has an exponent'],
  ['1.5e-3 bar', 'NUM-003', 'has an exponent'],
  ['0x10', 'NUM-004', '“0x10” is written in another base'],
  ['0b101', 'NUM-004', 'another base'],
  ['0o17', 'NUM-004', 'another base'],
  ['1,234', 'NUM-005', 'may mean 1.234 or 1234'],
  ['-12,345 kPa', 'NUM-005', 'may mean 12.345 or 12345'],
  ['1,234.5', 'NUM-006', 'without thousands signs'],
  ['1.234,5', 'NUM-006', 'without thousands signs'],
  ['1,234,567', 'NUM-006', 'without thousands signs'],
  ["1'234", 'NUM-006', 'without thousands signs'],
  ['12,,3', 'NUM-006', 'more signs'],
  ['12..3', 'NUM-006', 'more signs'],
  ['1 234', 'NUM-007', 'more than one number'],
  ['3 to 15', 'NUM-007', 'more than one number'],
  ['3-15 psi', 'NUM-007', '“3-15” is more than one number'],
  ['3\u201315', 'NUM-007', 'more than one number'],
  ['9 psi 50 %', 'NUM-007', 'one more number'],
  ['3/4 in', 'NUM-008', 'Write 0.75.', anyLength],
  ['1 1/2 in', 'NUM-008', 'Write 1.5.', anyLength],
  ['1/0 in', 'NUM-008', 'Write it with decimals.', anyLength],
  ['100000001', 'NUM-015', 'larger than any reading'],
  ['9 psi or % or', 'NUM-011', 'no unit known here'],
  ['0.123456789012345678', 'NUM-009', 'more than 17 digits'],
  ['12,1', 'NUM-010', 'Of what? The unit is missing. Write it with its unit: in or mm.', anyLength],
  ['9 stone', 'NUM-011', '“stone” is no unit known here'],
  ['9 mPa', 'NUM-011', '“mPa” is no unit known here'],
  ['9 mm', 'NUM-012', '“mm” measures length, not pressure. Write it with its unit: psi or kPa.'],
  ['9 psia', 'NUM-013', 'is absolute pressure'],
  ['1 bar a', 'NUM-013', 'is absolute pressure'],
  [
    '-1 psi',
    'NUM-014',
    '−1 psi cannot be. It must be at least 0 psi.',
    { ...gaugePsi, possible: { atLeastSi: 0 } },
  ],
  ['0', 'NUM-014', 'It must be above 0 mm', { dimensions: ['length'], unit: 'mm', possible: { aboveSi: 0 } }],
  [
    '1.1 MPa',
    'NUM-015',
    '1.1 MPa cannot be. It must be at most 1 MPa.',
    { ...gaugePsi, possible: { atMostSi: 1e6 } },
  ],
];

describe('a text that could be read in two ways, or in none', () => {
  const each = REFUSED.map(([text, code, says, expected]) => ({ text, code, says, expected }));
  test.each(each)('$text is refused as $code', ({ text, code, says, expected = gaugePsi }) => {
    const read = readNumber(text, expected);
    expect(read).toMatchObject({ ok: false, code });
    expect(read.ok ? '' : `${read.what} ${read.next}`).toContain(says);
  });

  test('every code is provoked here', () => {
    expect(new Set(REFUSED.map(([, code]) => code))).toEqual(new Set(Object.keys(NUMBER_FAULTS)));
  });
});

const units = fc.constantFrom<UnitId>('psi', 'kPa', 'bar', 'MPa', 'kgf/cm2', 'inH2O');
const plain = fc
  .tuple(fc.nat(999_999), fc.stringMatching(/^\d{0,6}$/), fc.constantFrom('', '-', '\u2212', '+'))
  .map(([whole, part, sign]) => ({ whole, part, sign }));

describe('any text', () => {
  test('a number written with a point reads as the machine reads it, with every unit', () => {
    fc.assert(
      fc.property(plain, units, ({ whole, part, sign }, unit) => {
        const digits = part === '' ? `${whole}` : `${whole}.${part}`;
        const value = Number(`${sign === '-' || sign === '\u2212' ? '-' : ''}${digits}`);
        expect(readTo(`${sign}${digits} ${unit}`)).toEqual([value === 0 ? 0 : value, unit]);
      }),
    );
  });

  test('comma and point mean the same, or the comma is refused as ambiguous', () => {
    fc.assert(
      fc.property(plain, ({ whole, part, sign }) => {
        fc.pre(part !== '');
        const withPoint = readNumber(`${sign}${whole}.${part}`, gaugePsi);
        const withComma = readNumber(`${sign}${whole},${part}`, gaugePsi);
        const ambiguous = part.length === 3 && whole > 0 && whole < 1000;
        if (ambiguous) expect(withComma).toMatchObject({ ok: false, code: 'NUM-005' });
        else expect({ ...withComma, typed: '' }).toEqual({ ...withPoint, typed: '' });
      }),
    );
  });

  test('whatever is typed is taken as a finite number or refused with a reason; nothing throws', () => {
    const messy = fc.stringMatching(/^[-+\u22120-9.,'eExX/ %a-z"]{0,20}$/);
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), messy), (text) => {
        const read = readNumber(text, gaugePsi);
        expect(read.typed).toBe(text);
        if (read.ok) expect(Number.isFinite(read.value) && Number.isFinite(read.valueSi)).toBe(true);
        else expect(Math.min(read.what.length, read.next.length)).toBeGreaterThan(6);
      }),
      { numRuns: 500 },
    );
  });

  test('what is taken without a unit means exactly its digits', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[-+0-9.,e]{1,12}$/), (text) => {
        const read = readNumber(text, gaugePsi);
        if (read.ok) expect(read.value).toBe(Number(text.replace(',', '.')) + 0);
      }),
      { numRuns: 2000 },
    );
  });
});
