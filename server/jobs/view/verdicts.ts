import type { Answer } from '../../../procedures/job.ts';
import type { Step } from '../../../procedures/vocabulary.ts';
import type { Verdict } from '../../../views/pictures/marks.ts';

/** How a line came out: a mark, and always a word beside it. */
export interface VerdictView {
  readonly mark: Verdict;
  readonly word: string;
}

/** What a rule found as it should be. */
const GOOD = [
  'agree',
  'all safe',
  'answers',
  'as expected',
  'as found',
  'as the sheet',
  'as the sheet says',
  'as wanted',
  'clean',
  'complete',
  'dry',
  'enough',
  'even, in time',
  'fits',
  'for air',
  'found',
  'free',
  'good',
  'held',
  'holds',
  'inside',
  'known',
  'matches',
  'may be opened',
  'may be read live',
  'none',
  'seals',
  'settles',
  'shown',
  'sound',
  'stands',
  'steady',
  'still zero',
  'tight',
  'tight enough',
  'whole',
  'yes',
];

/** What a rule found otherwise than it should be, or where it leaks. */
const BAD = [
  'a side is dead',
  'above limit',
  'apart up and down',
  'area or meter not fit',
  'bent',
  'bore',
  'both ends shifted',
  'box not clean',
  'case joint',
  'creeps',
  'crossed',
  'crushed',
  'damaged',
  'dead high',
  'dead low',
  'diaphragm',
  'differ',
  'differs',
  'dirty',
  'does not hold shut',
  'does not move',
  'does not repeat',
  'end cap',
  'equaliser',
  'equaliser open',
  'falls',
  'gauge not seen alive',
  'gauge too coarse',
  'gland weeps',
  'guides worn',
  'handwheel in',
  'high',
  'in part',
  'inlet builds up',
  'jets',
  'joint leaks',
  'joint loose',
  'joint weeps',
  'leaks',
  'less',
  'less than expected',
  'loaded side not higher',
  'loose',
  'low',
  'middle off',
  'more',
  'more load than expected',
  'more than expected',
  'must not be turned',
  'no',
  'no room',
  'no supply',
  'not all the way',
  'not as expected',
  'not clean',
  'not enough',
  'not free',
  'not shown',
  'not sound',
  'off',
  'one is not safe',
  'otherwise',
  'outlet builds up',
  'outside',
  'passes',
  'plug loose',
  'plugged',
  'relay not sound',
  'rod',
  'rod seal',
  'sags',
  'scored',
  'seat end off',
  'seat or plug spent',
  'shifted',
  'short',
  'some',
  'span differs',
  'span off',
  'spoiled',
  'stem bent',
  'stem moved',
  'stem not free',
  'stem seal',
  'sticks',
  'still dead',
  'still leaks',
  'still under air',
  'swings',
  'times do not fit',
  'too few turns',
  'too hot to touch',
  'too little',
  'too much for the case',
  'too near its seat',
  'too slow',
  'too tight',
  'uneven',
  'voltage too high',
  'worn',
  'worse',
  'wrong low end',
  'wrong span',
  'zero off',
];

/** Neither: a reading is missing or does not serve, something is left to decide, or what was done is said. */
const PLAIN = [
  'above range',
  'cannot tell',
  'fitted',
  'kept',
  'lap',
  'made',
  'may be tightened',
  'no range',
  'not agreed',
  'not all read',
  'not enough readings',
  'not fitted',
  'not known',
  'not made',
  'not on the sheet',
  'not read',
  'not said how',
  'nothing found',
  'rounds used up',
  'size missing',
  'skip',
  'the fluid wants one',
  'the sheet has one',
  'too little air',
  'too little pressure',
  'too little signal',
  'too short',
  'tries used up',
  'wants an assessment',
  'way does not fit',
];

/** What people did beside answering, in the word of the line. */
const DONE_WELL = ['agrees', 'confirmed', 'proved again', 'reviewed', 'signed', 'waited', 'witnessed'];
const DONE_ILL = ['denied'];
const DONE = [
  ...['done', 'handed over', 'locks removed', 'not witnessed', 'parked', 'review asked for', 'taken up'],
  ...['waived', 'went back'],
];

/** Of rules; a test holds that none is forgotten and none is there for nothing. */
export const OUTCOMES_SAID: readonly string[] = [...GOOD, ...BAD, ...PLAIN, 'too close'];

const MARKS: ReadonlyMap<string, Verdict> = new Map([
  ...[...GOOD, ...DONE_WELL].map((outcome) => [outcome, 'inside'] as const),
  ...[...BAD, ...DONE_ILL].map((outcome) => [outcome, 'outside'] as const),
  ...[...PLAIN, ...DONE].map((outcome) => [outcome, 'record'] as const),
  ['too close', 'too-close'],
]);

/** One word that means the contrary after another rule: no current where a current is wanted. */
const OTHERWISE_BY_RULE: Readonly<Record<string, Readonly<Record<string, Verdict>>>> = {
  loopCurrent: { none: 'outside' },
};

/**
 * The mark of an outcome; null for one that is no word: a check, a procedure, a repair, which the line says itself.
 * @example markOf('sags') // 'outside'
 */
export function markOf(outcome: string, rule = ''): Verdict | null {
  return OTHERWISE_BY_RULE[rule]?.[outcome] ?? MARKS.get(outcome) ?? null;
}

/** Outcomes that are told in another word than the rule has for them. */
const WORDS: Readonly<Record<string, string>> = {
  'for air': 'ready for air',
  lap: 'wants lapping',
  off: 'has come off',
  skip: 'skipped',
};

/** @example sayOutcome('lap') // 'wants lapping' */
export function sayOutcome(outcome: string): string {
  return WORDS[outcome] ?? outcome;
}

/** How a card came out, in one word with its mark. */
export function verdictOf(answer: Answer, step: Step | undefined): VerdictView {
  const { act, outcome, figures } = answer;
  if (act === 'hold-sent-back' || act === 'review-sent-back') return { mark: 'sent-back', word: 'sent back' };
  if (act === 'overridden') return { mark: 'record', word: `${String(figures.judged)}, taken as ${outcome}` };
  if (act === 'made-safe') return { mark: 'record', word: 'stopped' };
  if (figures.advisedBest !== undefined || (act === 'step-answered' && step?.kind === 'question'))
    return { mark: 'record', word: 'chosen' };
  if (outcome === 'more rows') return { mark: 'record', word: 'read' };
  const mark = markOf(outcome, step !== undefined && 'judge' in step ? step.judge.rule : '');
  return mark === null ? { mark: 'record', word: 'told' } : { mark, word: sayOutcome(outcome) };
}
