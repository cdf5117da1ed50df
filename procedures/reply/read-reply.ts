import type { Surroundings } from '../actions/action.ts';
import type { Job } from '../job.ts';
import type { Given } from '../readings/given.ts';
import { fill } from '../say.ts';
import { type Ask, askOf } from './ask.ts';
import { commandOf } from './commands.ts';
import { commaChoices, commaVariants } from './commas.ts';
import { firstLineSaid } from './first-line-said.ts';
import { hedged } from './hedged.ts';
import { judged } from './judged.ts';
import { DONE } from './listened-for.ts';
import { inEachUnit } from './other-units.ts';
import { outputAsPercent } from './output-said.ts';
import { isQuestion, questionAnswer } from './reference/answer-question.ts';
import { type Choice, type Reply, type ReplyPartial, type ReplyUnderstood, told } from './reply.ts';
import { readRow } from './row-text.ts';
import { cellsOf, saidOf } from './said.ts';
import { afterRow, severalRows } from './table-rows.ts';
import { knownTags, tagOf } from './tags.ts';
import { tidyText } from './tidy-text.ts';
import type { Fault } from './values.ts';
import { wordsOf } from './words.ts';

const TEXT_MAX = 400;
/** More choices than these are no help. */
const CHOICES_MAX = 6;

/**
 * What somebody who writes at the foot of a job means. Pure: nothing is counted here, and no way leads past a hold.
 *
 * @param text as typed or scanned
 * @returns what it was understood as, the choices where it may mean several things, an answer to a question, or why not
 * @example readReply('9 psi 50', { job, around }) // kind 'understood', said 'Signal: 9 psi; Travel: 50 %'
 */
export function readReply(
  text: string,
  { job, around }: { readonly job: Job; readonly around: Surroundings },
): Reply {
  const typed = text.normalize('NFC').trim();
  const ask = askOf(job, around);
  if (typed === '')
    return unknown('Nothing was written.', 'Write a reading or an answer, or ask a question.');
  if (typed.length > TEXT_MAX)
    return unknown('This is too long to be read.', `Write at most ${TEXT_MAX} letters.`);
  return (
    commandOf(typed, ask) ??
    (isQuestion(typed) ? questionAnswer(typed, ask) : null) ??
    scanned(typed, ask) ??
    answerOf(typed, ask)
  );
}

function unknown(what: string, next: string): Reply {
  return { kind: 'unknown', what, next };
}

/** One tag and nothing else: where no field of the card wants it, it is said what it is. */
function scanned(typed: string, ask: Ask): Reply | null {
  const known = tagOf(typed, knownTags(ask.job));
  if (known === undefined || readRow(typed, ask).givens.length > 0) return null;
  const { fault } = readRow(typed, ask);
  if (fault?.wrongTag !== undefined) return faultReply(fault);
  const next =
    known.kind === 'gauge' ? 'Write what it reads, with its unit.' : 'This card does not ask for it.';
  return told(`${known.tag} is ${known.is}.`, { lines: [next] });
}

function faultReply({ what, next, wrongTag }: Fault): Reply {
  return { kind: 'unknown', what, next, ...(wrongTag === undefined ? {} : { wrongTag }) };
}

function answerOf(typed: string, ask: Ask): Reply {
  switch (ask.kind) {
    case 'none':
      return unknown('No card of this job is open.', 'Take the job up again, or choose another.');
    case 'hold':
      return told('A hold is not answered here: no reply can sign it.', {
        lines: [
          'It is signed on the card above, by name and PIN, by somebody who had no hand in this work, or sent back.',
          'Ask a question here, go back, park the job, or make safe and stop.',
        ],
      });
    case 'blocked':
      return told('This card cannot be answered now: it says why.', {
        lines: ['Go back to where it is shown safe, or make safe and stop.'],
      });
    case 'done':
      return doneOf(typed, ask);
    default:
      return fromFields(typed, ask);
  }
}

const DONE_SAID = 'Done';

/** `done`, or `ok, done, next`: each word says it. */
function saysDone(typed: string): boolean {
  const words = wordsOf(typed.replaceAll(/[,;.]/g, ' '));
  return DONE.includes(words.join(' ')) || (words.length > 0 && words.every((word) => DONE.includes(word)));
}

function doneOf(typed: string, ask: Ask): Reply {
  if (!saysDone(typed))
    return (
      questionAnswer(typed, ask, { isOrder: false }) ??
      unknown(`“${typed}” is not understood on this card.`, 'Write done when it is done, or ask a question.')
    );
  const verdict = judged({}, ask);
  if (verdict.kind === 'refused') return unknown(verdict.fault.what, verdict.fault.next);
  const title = ask.step === null ? '' : fill(ask.step.title, ask.job);
  return {
    kind: 'understood',
    act: { act: 'answer', givens: [{}] },
    rows: [[{ label: DONE_SAID, value: title }]],
    said: DONE_SAID,
    notes: [],
  };
}

function fromFields(typed: string, ask: Ask): Reply {
  const text = outputAsPercent(firstLineSaid(tidyText(typed), ask), ask);
  const early = commaChoices(text) ?? hedged(text, ask);
  if (early !== null) return early;
  const ways = new Map<string, ReplyUnderstood | ReplyPartial>();
  const faults: Fault[] = [];
  for (const variant of commaVariants(text, ask)) {
    const read = readRow(variant, ask);
    if (read.fault !== null) faults.push(read.fault);
    for (const given of read.givens.flatMap((one) => inEachUnit(one, ask))) {
      const reply = replyOf([given], ask);
      if ('fault' in reply) faults.push(reply.fault);
      else ways.set(reply.said, reply);
    }
    for (const rows of severalRows(variant, ask)) {
      const reply = replyOf(rows, ask);
      if (!('fault' in reply)) ways.set(reply.said, reply);
    }
  }
  const [only, ...more] = ways.values();
  if (only === undefined) return refused(typed, { ask, faults });
  return more.length === 0 ? only : whichOf(typed, [only, ...more]);
}

/** A term by its name alone is a question; else the card says why it takes nothing of this. */
function refused(
  typed: string,
  { ask, faults }: { readonly ask: Ask; readonly faults: readonly Fault[] },
): Reply {
  const asked = questionAnswer(typed, ask, { isOrder: false });
  if (asked !== null) return asked;
  const fault = faults[0];
  return fault === undefined
    ? unknown(`“${typed}” is not understood on this card.`, 'Write it another way, or answer on the card.')
    : faultReply(withAnswers(fault, ask));
}

/** So few answers are named where none of them was understood. */
const ANSWERS_MAX = 4;

/** A card with one choice among its fields names what may be answered, where words stood for none of it. */
function withAnswers(fault: Fault, { fields }: Ask): Fault {
  const [only, ...more] = fields.filter((field) => field.type === 'choice');
  if (fault.code !== 'RPL-001' || only === undefined || more.length > 0) return fault;
  const labels = only.choices.map(({ label }) => label);
  return labels.length > ANSWERS_MAX ? fault : { ...fault, next: `The card takes: ${labels.join('; ')}.` };
}

function whichOf(typed: string, ways: readonly (ReplyUnderstood | ReplyPartial)[]): Reply {
  if (ways.length > CHOICES_MAX)
    return unknown(
      `“${typed}” may mean ${ways.length} different things on this card.`,
      'Write the name of the field before each value, or answer on the card.',
    );
  const choices = ways.map((way): Choice => {
    const left = way.kind === 'partial' ? ` (still wanted: ${way.missing.join(', ')})` : '';
    return { text: `${way.said}${left}`, reply: way.said };
  });
  return { kind: 'ambiguous', what: `“${typed}” may mean:`, choices };
}

function replyOf(
  givens: readonly Given[],
  ask: Ask,
): ReplyUnderstood | ReplyPartial | { readonly fault: Fault } {
  const rows = [];
  const said: string[] = [];
  const notes: string[] = [];
  let now = ask;
  for (const given of givens) {
    const verdict = judged(given, now);
    if (verdict.kind === 'refused') return { fault: verdict.fault };
    rows.push(cellsOf(given, now));
    said.push(saidOf(given, now));
    if (verdict.kind === 'partial')
      return {
        kind: 'partial',
        cells: cellsOf(given, now),
        said: said.join(' then '),
        missing: verdict.missing,
      };
    if (verdict.aboveLimit) notes.push(ABOVE_LIMIT);
    now = afterRow(given, now) ?? now;
  }
  if (givens.length > 1) notes.push(`${givens.length} rows, each a line of its own, entered together.`);
  const [first = {}] = givens;
  const act =
    ask.kind === 'prove-again'
      ? { act: 'prove-again' as const, given: first }
      : { act: 'answer' as const, givens };
  return { kind: 'understood', act, rows, said: said.join(' then '), notes };
}

const ABOVE_LIMIT =
  'This is more than the case may have: shut the regulator and vent first. Counting it stops the work.';
