import { judge } from '../../../procedures/actions/answer.ts';
import { nextStep } from '../../../procedures/compile.ts';
import type { Late } from '../../../procedures/job.ts';
import { readLate } from '../../../procedures/late.ts';
import { soundOf } from '../../../procedures/one-go.ts';
import type { Given } from '../../../procedures/readings/given.ts';
import { fill } from '../../../procedures/say.ts';
import type { OpenStep } from '../../../procedures/vocabulary.ts';
import { Refusal } from '../../../safety/refusal.ts';
import type { LoadedJob } from '../load.ts';
import { forCard, notTogether } from './refusals.ts';

/** One card of several that are entered in one go. */
export interface Entered {
  readonly step: string;
  readonly given: Given;
  /** Something of it was filled in: a card of the form may be left for later. */
  readonly isDone: boolean;
  /** When it was done by the word of whoever enters it, where that was earlier. */
  readonly late?: Late;
}

/** What is counted of the cards that were offered together. */
export interface CardsDone {
  readonly all: readonly Entered[];
  /** Why the card after them is answered by itself; null where all that was filled in is counted. */
  readonly stop: Refusal | null;
}

/**
 * The cards that were done, from the open one down to the first that was left blank, or whose answer leads elsewhere.
 * Every one of them is read before any is counted.
 *
 * @param offered the cards of the form in their order, filled in or not
 * @throws Refusal RPL-010 for cards that are not entered together, RPL-012 for a blank one above one that is not, and that of
 * whatever cannot be read, its fields named by their card
 */
export function cardsDone(offered: readonly Entered[], loaded: LoadedJob): CardsDone {
  checkRow(offered, loaded);
  const blank = offered.findIndex(({ isDone }) => !isDone);
  const all = blank < 0 ? offered : offered.slice(0, blank);
  if (all.length === 0 || offered.slice(all.length).some(({ isDone }) => isDone))
    throw leftBlank(offered[all.length], loaded);
  const outcomes = all.map((one) => outcomeOf(one, loaded));
  const other = all.findIndex(
    ({ step }, index) => soundOf(stepOf(step, loaded))?.outcome !== outcomes[index],
  );
  return other < 0
    ? { all, stop: null }
    : { all: all.slice(0, other), stop: leadsElsewhere(all[other], loaded) };
}

/** They follow one another from the open card on, each a card for one go. */
function checkRow(offered: readonly Entered[], { job, around: { compiled } }: LoadedJob): void {
  const { steps } = compiled.definition;
  const inOrder = offered.every(({ step }, index) => {
    const before = offered[index - 1]?.step;
    if (soundOf(steps[step]) === null || steps[step]?.phase !== steps[offered[0]?.step ?? '']?.phase)
      return false;
    if (before === undefined) return true;
    const outcome = soundOf(steps[before])?.outcome ?? '';
    return (
      nextStep(compiled, { step: before, event: { type: 'ANSWER', outcome, facts: job.facts } }) === step
    );
  });
  if (!inOrder) throw notTogether();
}

function outcomeOf({ step, given, late }: Entered, { job, around }: LoadedJob): string {
  try {
    const said = late === undefined ? null : readLate(late, around);
    return judge({ ...job, step }, { step: stepOf(step, { around }), given, around, late: said }).outcome;
  } catch (error) {
    throw error instanceof Refusal ? forCard(error, step) : error;
  }
}

function stepOf(id: string, { around }: Pick<LoadedJob, 'around'>): OpenStep {
  const step = around.compiled.definition.steps[id];
  if (step === undefined || step.kind === 'end') throw notTogether();
  return step;
}

function titleOf(card: Entered | undefined, loaded: LoadedJob): string {
  return fill(stepOf(card?.step ?? '', loaded).title, loaded.job);
}

function leftBlank(card: Entered | undefined, loaded: LoadedJob): Refusal {
  return new Refusal({
    kind: 'unreadable',
    code: 'RPL-012',
    what: `“${titleOf(card, loaded)}” is left blank.`,
    kept: 'Nothing was counted. What you wrote is still there.',
    next: 'Fill the cards in from the top, without a gap.',
  });
}

function leadsElsewhere(card: Entered | undefined, loaded: LoadedJob): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'RPL-013',
    what: `Not all of “${titleOf(card, loaded)}” is as it should be: that is answered on its own card.`,
    kept: 'Nothing was counted.',
    next: 'Answer the open card.',
  });
}
