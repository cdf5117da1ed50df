import { readDigits } from '../readings/digits.ts';
import type { Ask } from './ask.ts';
import type { Reply } from './reply.ts';

const COMMA_NUMBER = /(?<![\d.,'\u2019\p{L}_-])[+\-\u2212]?\d+,\d+(?![\d.,'\u2019])/gu;
/** Nothing behind the number but the end, a space and no letter that could be its unit. */
const BARE_COMMA = /(?<![\d.,'\u2019\p{L}_-])([+\-\u2212]?\d+),(\d+)(?=\s*(?:$|[;,\n]|\s[+\-\u2212]?\d))/gu;

/** `1,234` is 1.234 or 1234: both are offered, none is taken. Null where no comma can be read in two ways. */
export function commaChoices(text: string): Reply | null {
  for (const match of text.matchAll(COMMA_NUMBER)) {
    const [met] = match;
    const read = readDigits(met);
    if (read.ok || read.code !== 'NUM-005') continue;
    const meant = [met.replace(',', '.'), met.replace(',', '')];
    return {
      kind: 'ambiguous',
      what: read.what,
      choices: meant.map((number) => {
        const reply = text.slice(0, match.index) + number + text.slice(match.index + met.length);
        return { text: reply, reply };
      }),
    };
  }
  return null;
}

/** The text as typed; and where a bare comma might part two readings, with a space behind it. */
export function commaVariants(text: string, { fields }: Pick<Ask, 'fields'>): readonly string[] {
  const numbers = fields.filter((field) => field.type === 'quantity').length;
  const parted = text.replaceAll(BARE_COMMA, '$1 , $2');
  // Beside a number that a space parts from it, the comma is a decimal sign: `9,5 50`.
  const isDecimal = /\d,\d+\s+[+\-\u2212]?\d|\d\s+[+\-\u2212]?\d+,\d/.test(text);
  return numbers < 2 || parted === text || isDecimal ? [text] : [text, parted];
}
