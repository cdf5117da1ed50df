import type { Field } from '../vocabulary.ts';
import type { Ask } from './ask.ts';
import { labelWords } from './labels.ts';
import { HEDGES } from './listened-for.ts';
import type { ReplyUnknown } from './reply.ts';
import { plainText, stem, wordsOf } from './words.ts';

/** `9 to 9.1`, with a unit or without: a range, or a change, but no reading. */
const RANGE = /\d\s*[\p{L}%/"]{0,8}\s+to\s+[+\-\u2212]?\d[\d.,]*/iu;
/** `~50`, `>9`, `9?`; the arrow of `9 psi -> 50 %` is no such mark. */
const MARKS = /(?<![-=\u2212])[~\u2248\u2243\u223c<>\u2264\u2265]\s*[+\-\u2212]?\.?\d|\d[^;\n]*\?/;

/** A number that somebody is not sure of is no reading: null where nothing says so, or where no number is asked for. */
export function hedged(text: string, ask: Pick<Ask, 'fields'>): ReplyUnknown | null {
  if (!/\d/.test(text) || ask.fields.every(({ type }) => type !== 'quantity')) return null;
  const mark = text.match(MARKS)?.[0];
  const range = text.match(RANGE)?.[0];
  const named = new Set([...labelWords(ask.fields), ...answerWords(ask.fields)]);
  const plain = ` ${plainText(text)} `;
  const word = HEDGES.find(
    (hedge) => plain.includes(` ${hedge} `) && !hedge.split(' ').some((one) => named.has(stem(one))),
  );
  const met = word ?? mark?.trim();
  if (met === undefined && range !== undefined)
    return {
      kind: 'unknown',
      what: `“${range}” may be a range or two readings.`,
      next: 'Write each reading by itself, with the name of its field before it.',
    };
  if (met === undefined) return null;
  return {
    kind: 'unknown',
    what: `“${met}” says that it was not read for certain.`,
    next: 'Read it again, and write the one number that stands there.',
  };
}

function answerWords(fields: readonly Field[]): readonly string[] {
  return fields.flatMap((field) =>
    field.type === 'choice' ? field.choices.flatMap(({ label }) => wordsOf(label).map(stem)) : [],
  );
}
