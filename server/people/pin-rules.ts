/** Which PINs are guessed first. Lists of such PINs agree on these shapes; from memory. */

const DIGITS_MAX = 32;

/** Lines over the keys, and pairs that people like; from memory. */
const LIKED = [
  '147258',
  '258369',
  '258025',
  '147896',
  '159357',
  '159753',
  '123321',
  '112233',
  '102030',
  '100200',
  '010203',
  '131313',
  '112358',
  '314159',
  '271828',
  '696969',
  '420420',
  '147147',
  '741852',
  '852963',
  '963852',
  '789456',
  '456789',
  '456123',
  '789123',
  '142536',
  '159159',
  '235689',
];

export interface PinContext {
  readonly digitsMin: number;
  /** Numbers that everybody at this site knows: digits of valve tags, of the person's own id. */
  readonly known: readonly string[];
}

/**
 * What is wrong with a PIN that somebody chose, in words for beside the field; null if nothing is.
 *
 * @example pinFault('123456', { digitsMin: 6, known: [] }) // 'Digits in a row are guessed first. …'
 */
export function pinFault(pin: string, { digitsMin, known }: PinContext): string | null {
  if (!/^\d+$/.test(pin)) return 'A PIN has digits only.';
  if (pin.length < digitsMin) return `At least ${digitsMin} digits.`;
  if (pin.length > DIGITS_MAX) return `At most ${DIGITS_MAX} digits.`;
  if (isRepeated(pin)) return 'Repeated digits are guessed first. Choose others.';
  if (isInARow(pin)) return 'Digits in a row are guessed first. Choose others.';
  if (LIKED.some((liked) => pin.startsWith(liked) || pin === reversed(liked))) {
    return 'Many people choose this one, and so it is guessed first. Choose another.';
  }
  if (isDate(pin)) return 'It reads as a date, and dates are guessed first. Choose another.';
  if (holdsYear(pin)) return 'It holds a year, and years of birth are guessed first. Choose another.';
  if (known.some((number) => isMadeOf(pin, number))) return 'It is a number of this site. Choose another.';
  return null;
}

function reversed(text: string): string {
  return [...text].reverse().join('');
}

/** One group of up to four digits over and over; a group of its own length is no repetition. */
function isRepeated(pin: string): boolean {
  return [1, 2, 3, 4].some((length) => {
    if (length * 2 > pin.length) return false;
    const group = pin.slice(0, length);
    return pin === group.repeat(Math.ceil(pin.length / length)).slice(0, pin.length);
  });
}

/** Up or down by the same step, round the end as well: 789012. */
function isInARow(pin: string): boolean {
  const steps = [...pin].slice(1).map((digit, index) => (Number(digit) - Number(pin[index]) + 10) % 10);
  return new Set(steps).size === 1 && steps[0] !== 0;
}

/** Day, month and year, or month and year, in any of the orders in which people write them. */
function isDate(pin: string): boolean {
  const orders =
    pin.length === 6
      ? [
          /^(?<m>..)(?<y>\d{4})$/,
          /^(?<y>\d{4})(?<m>..)$/,
          /^(?<d>..)(?<m>..)(?<y>..)$/,
          /^(?<m>..)(?<d>..)(?<y>..)$/,
          /^(?<y>..)(?<m>..)(?<d>..)$/,
        ]
      : [/^(?<d>..)(?<m>..)(?<y>\d{4})$/, /^(?<m>..)(?<d>..)(?<y>\d{4})$/, /^(?<y>\d{4})(?<m>..)(?<d>..)$/];
  return orders.some((order) => {
    const { d = '1', m, y } = order.exec(pin)?.groups ?? {};
    const day = Number(d);
    const month = Number(m);
    const year = y?.length === 4 ? Number(y) : 2000;
    return day >= 1 && day <= 31 && month >= 1 && month <= 12 && year >= 1900 && year < 2100;
  });
}

/** A year that somebody here may be born in, or have begun in, with two digits before or behind it. */
function holdsYear(pin: string): boolean {
  const year = '(?:19[3-9]\\d|20[0-2]\\d)';
  return pin.length === 6 && new RegExp(`^(?:${year}..|..${year})$`).test(pin);
}

/** The number alone, between noughts, or over and over. */
function isMadeOf(pin: string, number: string): boolean {
  if (number.length < 2) return false;
  const bare = pin.replace(/^0+|0+$/g, '');
  return (
    bare === number.replace(/^0+|0+$/g, '') || pin === number.repeat(Math.ceil(pin.length / number.length))
  );
}
