import type { Action, Surroundings } from '../../../procedures/actions/action.ts';
import { nextStep } from '../../../procedures/compile.ts';
import type { Late } from '../../../procedures/job.ts';
import { readLate } from '../../../procedures/late.ts';
import type { Given } from '../../../procedures/readings/given.ts';
import { isPlain, mayBegin } from '../../../procedures/reply/together.ts';
import { Refusal } from '../../../safety/refusal.ts';
import { actOnJob, type JobCall } from '../acts.ts';
import { loadJob } from '../load.ts';

/** One card of several that are entered in one go. */
export interface Entered {
  readonly step: string;
  readonly given: Given;
  /** When it was done by the word of whoever enters it, where that was earlier. */
  readonly late?: Late;
}

export interface EnterCall extends Omit<JobCall, 'action' | 'signatory'> {
  /** The newest line that the person had seen. */
  readonly place: number;
  readonly all: readonly Entered[];
}

/**
 * Several cards entered in one go, each an act and a line of its own, judged in order. Every line says with which
 * it was entered together. The first refusal stops the rest.
 *
 * @throws Refusal of the one that was refused, saying how many lines before it are kept
 */
export async function enterTogether(call: EnterCall): Promise<void> {
  await checkMayBeTogether(call);
  for (const [index, { step, given, late }] of call.all.entries()) {
    const together = { first: call.place + 1 };
    // Each line follows its own predecessor: where another's came between, the rest is refused.
    const said = { ...(late === undefined ? {} : { late }), together };
    const action: Action = { kind: 'answer', place: call.place + index, step, given, ...said };
    try {
      await actOnJob({
        ...call,
        requestId: index === 0 ? call.requestId : `${call.requestId}-${index}`,
        action,
      });
    } catch (error) {
      throw error instanceof Refusal ? afterKept(error, { kept: index, of: call.all.length }) : error;
    }
  }
}

/** Rows of the open table, or plain steps that follow one another. */
async function checkMayBeTogether({ services, catalogue, person, job: id, all }: EnterCall): Promise<void> {
  const { job, around } = await loadJob(id, { services, catalogue, person });
  checkTimes(all, around);
  const { steps } = around.compiled.definition;
  const first = all[0]?.step ?? '';
  if (steps[first]?.kind === 'table' && all.every(({ step }) => step === first)) return;
  const inOrder = all.every(({ step }, index) => {
    const found = steps[step];
    if (index === 0) return mayBegin(found);
    const before = all[index - 1]?.step ?? '';
    const event = { type: 'ANSWER' as const, outcome: 'done', facts: job.facts };
    return (
      isPlain(found) &&
      found.phase === steps[first]?.phase &&
      nextStep(around.compiled, { step: before, event }) === step
    );
  });
  if (!inOrder) throw notTogether();
}

/** Each time is one that can be meant, and none is before that of the card above it. */
function checkTimes(all: readonly Entered[], around: Pick<Surroundings, 'today' | 'nowMs'>): void {
  const times = all.flatMap(({ late }) => (late === undefined ? [] : [readLate(late, around).claimedAt]));
  if (times.every((time, index) => time >= (times[index - 1] ?? time))) return;
  throw new Refusal({
    kind: 'unreadable',
    code: 'RPL-011',
    what: 'One of these cards is said to be done before the card above it.',
    kept: 'Nothing was counted.',
    next: 'Write the times in the order of the cards, or leave out what you do not remember.',
  });
}

function notTogether(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'RPL-010',
    what: 'These cards are not entered together: one of them is read, signed or warned about by itself.',
    kept: 'Nothing was counted.',
    next: 'Answer the open card.',
  });
}

function afterKept(refusal: Refusal, { kept, of }: { readonly kept: number; readonly of: number }): Refusal {
  if (kept === 0) return refusal;
  const lines = kept === 1 ? 'The first is kept' : `The first ${kept} are kept`;
  return new Refusal({
    ...refusal.text,
    kept: `${lines} of ${of}, each a line of its own; the rest was not counted.`,
  });
}
