import type { ActionClass } from '../safety/action-classes.ts';
import type { Step, Way } from './vocabulary.ts';

/** Most cards in one go: more are not remembered well enough to be written afterwards. */
export const ONE_GO_MAX = 5;

/** Acts with hands already in: whatever lets them in was shown, read and signed on cards of their own. */
const HANDS_IN: readonly ActionClass[] = [
  'workInCase',
  'closeCase',
  'workInBody',
  'closeBody',
  'workInCylinder',
  'closeCylinder',
  'joinFreeStems',
  'workOnAirParts',
];

/** How a card that may be entered with others is left where all of it was done as it should be. */
export interface Sound {
  readonly outcome: string;
  readonly way: Way<string>;
}

/**
 * Whether a card may be entered in one go with those beside it, and how it is left then; null for any other card.
 * Never a hold, a question, a wait, a table or a judgement; never a card with a signal word, which is read before its own
 * act; never an act that lets hands in; never one that proves a state for a later card. A card that asks is one only where its
 * definition says so and no reading decides where it leads: it is kept, or all of it is as it should be. Any other answer
 * is given at the card itself, so that nothing that is entered so takes a branch.
 *
 * @example soundOf(steps.caseParts)?.outcome // 'yes'
 */
export function soundOf(step: Step | undefined): Sound | null {
  if (step?.kind !== 'instruction' && step?.kind !== 'reading') return null;
  if (step.caution !== undefined) return null;
  if (step.action !== undefined && !HANDS_IN.includes(step.action)) return null;
  if (step.kind === 'instruction')
    return provesNothing(step.next) ? { outcome: 'done', way: step.next } : null;
  if (step.oneGo !== true || !Object.values(step.ways).every(provesNothing)) return null;
  const outcome = { allYes: 'yes', record: 'kept' }[step.judge.rule as string];
  const way = outcome === undefined ? undefined : step.ways[outcome];
  return outcome === undefined || way === undefined ? null : { outcome, way };
}

/** That a look round is due again takes something away; it shows nothing. */
function provesNothing({ sets = {} }: Way<string>): boolean {
  return Object.entries(sets).every(([condition, to]) => condition === 'clear' && to === 'not looked at');
}
