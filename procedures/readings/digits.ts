/** The number at the front of a text, and what stands behind it. Knows no units. */

export type DigitsFaultCode =
  | 'NUM-001'
  | 'NUM-002'
  | 'NUM-003'
  | 'NUM-004'
  | 'NUM-005'
  | 'NUM-006'
  | 'NUM-007'
  | 'NUM-008'
  | 'NUM-009'
  | 'NUM-015';

export interface DigitsRead {
  readonly ok: true;
  readonly value: number;
  /** What stands behind the number, trimmed; a unit, if anything. */
  readonly rest: string;
}

export interface DigitsFault {
  readonly ok: false;
  readonly code: DigitsFaultCode;
  readonly what: string;
  /** What to write instead. */
  readonly next: string;
}

/** Longer than any reading; what is pasted by mistake is not searched through. */
const TEXT_MAX = 60;

/** All that a number of the machine keeps. */
const DIGITS_MAX = 17;

/** No gauge, scale or sheet has a figure as large as this, in any unit. */
const SIZE_MAX = 1e8;

const NUMBER = /^([+\-\u2212]?)(\d*)(?:([.,])(\d+))?(?![\d.,])/;

interface Lookalike {
  readonly pattern: RegExp;
  fault(match: RegExpMatchArray): Omit<DigitsFault, 'ok'>;
}

/** What looks like a number and is refused by name; the first that fits says why. */
const LOOKALIKES: readonly Lookalike[] = [
  {
    pattern: /^[+\-\u2212]?(?:0x[\da-f]+|0[ob]\d+)/i,
    fault: ([met]) => ({
      code: 'NUM-004',
      what: `“${met}” is written in another base.`,
      next: 'Write plain digits.',
    }),
  },
  {
    pattern: /^[+\-\u2212]?[\d.,]+e[+\-\u2212]?\d+/i,
    fault: ([met]) => ({ code: 'NUM-003', what: `“${met}” has an exponent.`, next: 'Write all its digits.' }),
  },
  { pattern: /^[+\-\u2212]?(?:(\d+)\s+)?(\d+)\s*[/\u2044]\s*(\d+)/, fault: fraction },
  {
    // A leading zero, or four digits before the comma, leave only the decimal sign.
    pattern: /^[+\-\u2212]?(?!0)(\d{1,3}),(\d{3})(?![\d.,'’])/,
    fault: ([met, whole, part]) => ({
      code: 'NUM-005',
      what: `“${met}” may mean ${whole}.${part} or ${whole}${part}.`,
      next: 'Write the one that is meant.',
    }),
  },
  {
    pattern: /^[+\-\u2212]?\d*(?:[.,'’]\d*){2,}|^[+\-\u2212]?\d+['’]\d+/,
    fault: ([met]) => ({
      code: 'NUM-006',
      what: `“${met}” has more signs between its digits than one decimal sign.`,
      next: 'Write it without thousands signs.',
    }),
  },
  {
    pattern: /^[+\-\u2212]?[\d.,]*\d(?:\s+|\s*(?:to|and|[-\u2212\u2013\u2026;&])\s*)[+\-\u2212]?\d[\d.,]*/,
    fault: ([met]) => ({ code: 'NUM-007', what: `“${met}” is more than one number.`, next: 'Write one.' }),
  },
];

/**
 * @example readDigits('−12,5 °C') // { ok: true, value: -12.5, rest: '°C' }
 * @example readDigits('3/4 in') // { ok: false, code: 'NUM-008', what: '“3/4” is a fraction.', next: 'Write 0.75.' }
 */
export function readDigits(text: string): DigitsRead | DigitsFault {
  const tidy = text.trim();
  if (tidy === '')
    return { ok: false, code: 'NUM-001', what: 'Nothing was written.', next: 'Write the number.' };
  if (tidy.length > TEXT_MAX) return noNumber(`${tidy.slice(0, TEXT_MAX)}…`);
  for (const { pattern, fault } of LOOKALIKES) {
    const match = tidy.match(pattern);
    if (match !== null) return { ok: false, ...fault(match) };
  }
  return plain(tidy);
}

function plain(text: string): DigitsRead | DigitsFault {
  const match = text.match(NUMBER);
  const [met = '', sign = '', whole = '', , part = ''] = match ?? [];
  if (whole === '' && part === '') return noNumber(text);
  const digits = (whole + part).replace(/^0+/, '');
  if (digits.length > DIGITS_MAX) {
    return {
      ok: false,
      code: 'NUM-009',
      what: `“${met}” has more than ${DIGITS_MAX} digits.`,
      next: 'Round it.',
    };
  }
  const size = Number(`${whole === '' ? '0' : whole}.${part === '' ? '0' : part}`);
  if (size > SIZE_MAX) {
    return {
      ok: false,
      code: 'NUM-015',
      what: `“${met}” is larger than any reading.`,
      next: 'Read it again.',
    };
  }
  const value = sign === '-' || sign === '\u2212' ? -size : size;
  return { ok: true, value: value === 0 ? 0 : value, rest: text.slice(met.length).trim() };
}

function fraction([met, whole, top, bottom]: RegExpMatchArray): Omit<DigitsFault, 'ok'> {
  const value = Number(whole ?? 0) + Number(top) / Number(bottom);
  const instead = Number.isFinite(value) ? `Write ${Number(value.toFixed(6))}.` : 'Write it with decimals.';
  return { code: 'NUM-008', what: `“${met}” is a fraction.`, next: instead };
}

function noNumber(text: string): DigitsFault {
  return {
    ok: false,
    code: 'NUM-002',
    what: `“${text}” is not a number.`,
    next: 'Write digits, for example 12.5.',
  };
}
