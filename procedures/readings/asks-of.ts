import type { Field, ReadingStep } from '../vocabulary.ts';
import type { Given } from './given.ts';

/** Rules that take a card without the readings of a moving stem for one on which it does not move. The ends of a bench set are not among them: one that was not read has a card of its own. */
const READ_WHERE_IT_MOVES: ReadonlySet<string> = new Set(['contact', 'contactAfter']);

/**
 * The fields of a card, as wanted after what was chosen on it: a stem that moves has its numbers read. They may stay blank
 * where it does not move alone, or the line would say so against the choice.
 *
 * @example asksOf(step, { moves: 'yes' }).some(({ optional }) => optional) // false
 */
export function asksOf({ asks, judge }: ReadingStep<string>, given: Given): readonly Field[] {
  if (!READ_WHERE_IT_MOVES.has(judge.rule) || given.moves !== 'yes') return asks;
  return asks.map((field) => {
    if (field.type !== 'quantity') return field;
    const { optional: _, ...wanted } = field;
    return wanted;
  });
}
