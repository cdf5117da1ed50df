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
  | 'NUM-009';

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
}

/** Longer than any reading; what is pasted by mistake is not searched through. */
const TEXT_MAX = 60;

/** All that a number of the machine keeps. */
const DIGITS_MAX = 17;

const NUMBER = /^([+\-\u2212]?)(\d*)(?:([.,])(\d+))?(?![\d.,])/;

/** What looks like a number and is refused by name, in the order in which it is looked for. */
const LOOKALIKES: readonly { readonly pattern: RegExp; fault(match: RegExpMatchArray): Omit<DigitsFault, 'ok'> }[] = [
  {
    pattern: /^[+\-\u2212]?0[xob][\da-f]+/i,
    fault: ([met]) => ({ code: 'NUM-004', what: `“${met}” is written in another base. Write plain digits.` }),
  },
  {
    pattern: /^[+\-\u2212]?[\d.,]+e[+\-\u2212]?\d+/i,
    fault: ([met]) => ({ code: 'NUM-003', what: `“${met}” has an exponent. Write all its digits.` }),
  },
  {
    pattern: /^[+\-\u2212]?(?:(\d+)\s+)?(\d+)\s*[/\u2044]\s*(\d+)/,
    fault: fraction,
  },
  {
    pattern: /^[+\-\u2212]?(?!0)(\d{1,3}),(\d{3})(?![\d.,])/,
    fault: ([met, whole, part]) => ({
      code: 'NUM-005',
      what: `“${met}” may be ${whole}.${part} or ${whole}${part}. Write ${whole}.${part} or ${whole}${part}.`,
    }),
  },
  {
    pattern: /^[+\-\u2212]?\d*(?:[.,'’]\d*){2,}|^[+\-\u2212]?\d+['’]\d+/,
    fault: ([met]) => ({
      code: 'NUM-006',
      what: `“${met}” has more signs between its digits than one decimal sign. Write it without thousands signs.`,
    }),
  },
  {
    pattern: /^[+\-\u2212]?[\d.,]+\s*(?:to|[-\u2212\u2013\u2026]|\.\.)?\s*\d/,
    fault: ([met]) => ({ code: 'NUM-007', what: `“${met}” is more than one number. Write one.` }),
  },
];

/**
 * @example readDigits('−12,5 °C') // { ok: true, value: -12.5, rest: '°C' }
 * @example readDigits('3/4 in') // { ok: false, code: 'NUM-008', what: '“3/4” is a fraction. Write 0.75.' }
 */
export function readDigits(text: string): DigitsRead | DigitsFault {
  const tidy = text.trim();
  if (tidy === '') return { ok: false, code: 'NUM-001', what: 'Nothing was written. Write the number.' };
  if (tidy.length > TEXT_MAX) return noNumber(`${tidy.slice(0, TEXT_MAX)}…`);
  return lookalike(tidy) ?? plain(tidy);
}

function lookalike(text: string): DigitsFault | null {
  for (const { pattern, fault } of LOOKALIKES) {
    const match = text.match(pattern);
    // "12.5" is no list of numbers: what a plain number takes whole is left to it.
    if (match !== null && text.match(NUMBER)?.[0] !== match[0]) return { ok: false, ...fault(match) };
    if (match !== null && pattern === LOOKALIKES[3]?.pattern) return { ok: false, ...fault(match) };
  }
  return null;
}

function plain(text: string): DigitsRead | DigitsFault {
  const match = text.match(NUMBER);
  const [met = '', sign = '', whole = '', , part = ''] = match ?? [];
  if (whole === '' && part === '') return noNumber(text);
  const digits = (whole + part).replace(/^0+/, '');
  if (digits.length > DIGITS_MAX) {
    return { ok: false, code: 'NUM-009', what: `“${met}” has more than ${DIGITS_MAX} digits. Round it.` };
  }
  const size = Number(`${whole === '' ? '0' : whole}.${part === '' ? '0' : part}`);
  const value = sign === '-' || sign === '\u2212' ? -size : size;
  return { ok: true, value: value === 0 ? 0 : value, rest: text.slice(met.length).trim() };
}

function fraction([met, whole, top, bottom]: RegExpMatchArray): Omit<DigitsFault, 'ok'> {
  const value = Number(whole ?? 0) + Number(top) / Number(bottom);
  const instead = Number.isFinite(value) ? `Write ${Number(value.toFixed(6))}.` : 'Write it with decimals.';
  return { code: 'NUM-008', what: `“${met}” is a fraction. ${instead}` };
}

function noNumber(text: string): DigitsFault {
  return { ok: false, code: 'NUM-002', what: `“${text}” is not a number. Write digits, for example 12.5.` };
}
