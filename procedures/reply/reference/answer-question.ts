import { ZERO_CELSIUS_K } from '../../calculations/gas-states.ts';
import { SOURCES, type SourceId } from '../../calculations/sources.ts';
import type { Job } from '../../job.ts';
import { FIGURES } from '../../quantities.ts';
import { say, sayFigure } from '../../say.ts';
import type { Ask } from '../ask.ts';
import { type Reply, type ReplyTold, told } from '../reply.ts';
import { plainText } from '../words.ts';
import { aboutCard } from './about-card.ts';
import { aboutGear } from './about-gear.ts';
import { aboutJob } from './about-job.ts';
import { termsIn, termsNamed, termsNear } from './find-term.ts';
import { PRACTICE, type Term, type TermNumber } from './term.ts';
import { TERMS } from './terms.ts';
import { workedQuestion } from './worked-question.ts';

const ASKS =
  /^(?:what|whats|what's|wat|wats|why|how|where|when|which|wich|who|whom|whose|explain|define|tell me|meaning of)\b/;

/** Ends with a question mark, or begins as a question does. */
export function isQuestion(text: string): boolean {
  return /\?\s*$/.test(text) || ASKS.test(plainText(text));
}

/**
 * The answer from this job or from the built-in reference, with this valve's numbers; where neither knows it, that
 * is said. A text that is no question is only answered where it is the whole name of a term: null for any other.
 */
export function questionAnswer(text: string, ask: Ask): Reply;
export function questionAnswer(text: string, ask: Ask, as: { readonly isOrder: false }): Reply | null;
export function questionAnswer(text: string, ask: Ask, as?: { readonly isOrder: false }): Reply | null {
  const own =
    aboutCard(text, ask) ??
    aboutJob(text, ask) ??
    aboutGear(text, ask) ??
    (as === undefined ? workedQuestion(text, ask) : null);
  if (own !== null) return own;
  const named = termsNamed(text, TERMS);
  const found = named.length > 0 || as !== undefined ? named : termsIn(text, TERMS);
  const [only, ...more] = found;
  if (only === undefined) return as === undefined ? notNamed(text) : null;
  return more.length === 0 ? termAnswer(only, ask.job) : whichTerm(found);
}

function termAnswer(term: Term, job: Job): ReplyTold {
  const numbers = term.numbers.map((number) => numberWords(number, job)).filter((line) => line !== '');
  const [name = term.id] = term.words;
  return told(`${name.slice(0, 1).toUpperCase()}${name.slice(1)}`, {
    lines: [term.says, ...(numbers.length === 0 ? [] : [`On ${job.tag}: ${numbers.join('; ')}.`])],
    source: term.source === PRACTICE ? PRACTICE : SOURCES[term.source as SourceId].title,
    calculation: term.calculation,
  });
}

function numberWords(number: TermNumber, job: Job): string {
  if (typeof number === 'string')
    return `${FIGURES[number].label} ${sayFigure(number, job).replace(/\.$/, '')}`;
  const value = job.sheet[number.sheet];
  if (value === null || value === undefined || value === '') return `${number.label} not on the sheet`;
  if (typeof value !== 'number' || number.dimension === 'text') return `${number.label} ${String(value)}`;
  const valueSi = number.sheet === 'processTemperatureC' ? value + ZERO_CELSIUS_K : value;
  return `${number.label} ${say({ valueSi, dimension: number.dimension, units: job.sheet.units })}`;
}

/** A name that is spelt nearly so is offered, never taken. */
function notNamed(text: string): Reply {
  const near = termsNear(text, TERMS);
  return near.length === 0
    ? notKnown(text)
    : whichTerm(near, 'No term is spelled so. Is one of these meant?');
}

function whichTerm(terms: readonly Term[], what = 'Several things are called that. Which one?'): Reply {
  return {
    kind: 'ambiguous',
    what,
    choices: terms.map(({ words: [name = ''] }) => ({ text: name, reply: `what is ${name}?` })),
  };
}

function notKnown(text: string): ReplyTold {
  return told(`The built-in reference does not know “${text.trim().replace(/[\s?]+$/, '')}”.`, {
    lines: [
      `It explains ${TERMS.length} terms by their names, such as bench set, seating turns, hysteresis or test air, and says where you are and what is left.`,
      'Ask somebody who knows, or look in the maker’s manual.',
    ],
  });
}
