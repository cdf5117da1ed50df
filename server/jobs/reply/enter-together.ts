import type { Action, Surroundings } from '../../../procedures/actions/action.ts';
import { readLate } from '../../../procedures/late.ts';
import { Refusal } from '../../../safety/refusal.ts';
import { actOnJob, type JobCall } from '../acts.ts';
import { type LoadedJob, loadJob } from '../load.ts';
import { type CardsDone, cardsDone, type Entered } from './cards-done.ts';
import { afterKept, forCard } from './refusals.ts';

export interface EnterCall extends Omit<JobCall, 'action' | 'signatory'> {
  /** The newest line that the person had seen. */
  readonly place: number;
  /** Cards of one row, or rows of one table, in their order. */
  readonly offered: readonly Entered[];
}

/**
 * Several cards, or rows of the open table, entered in one go, each an act and a line of its own, judged in order. Every
 * line says with which it was entered together. The first refusal stops the rest.
 *
 * @throws Refusal of the one that was refused, saying how many lines before it are kept
 */
export async function enterTogether(call: EnterCall): Promise<void> {
  const { services, catalogue, person, offered } = call;
  const loaded = await loadJob(call.job, { services, catalogue, person });
  checkTimes(offered, loaded.around);
  const isTable = areRows(offered, loaded);
  const { all, stop }: CardsDone = isTable ? { all: offered, stop: null } : cardsDone(offered, loaded);
  for (const [index, one] of all.entries()) {
    try {
      await enter(one, { call, index, isOne: all.length === 1 });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      throw afterKept(isTable ? error : forCard(error, one.step), { kept: index, of: all.length });
    }
  }
  if (stop !== null) throw afterKept(stop, { kept: all.length, of: offered.length });
}

async function enter(
  { step, given, late }: Entered,
  { call, index, isOne }: { readonly call: EnterCall; readonly index: number; readonly isOne: boolean },
): Promise<void> {
  const together = { first: call.place + 1 };
  // Each line follows its own predecessor: where another's came between, the rest is refused.
  const action: Action = {
    kind: 'answer',
    place: call.place + index,
    step,
    given,
    ...(late === undefined ? {} : { late }),
    ...(isOne ? {} : { together }),
  };
  await actOnJob({
    ...call,
    requestId: index === 0 ? call.requestId : `${call.requestId}-${index}`,
    action,
  });
}

function areRows(offered: readonly Entered[], { around }: LoadedJob): boolean {
  const first = offered[0]?.step ?? '';
  const { steps } = around.compiled.definition;
  return steps[first]?.kind === 'table' && offered.every(({ step }) => step === first);
}

/** Each time is one that can be meant, and none is before that of the card above it. */
function checkTimes(offered: readonly Entered[], around: Pick<Surroundings, 'today' | 'nowMs'>): void {
  const times = offered.flatMap(({ step, late }) => {
    if (late === undefined) return [];
    try {
      return [readLate(late, around).claimedAt];
    } catch (error) {
      throw error instanceof Refusal ? forCard(error, step) : error;
    }
  });
  if (times.every((time, index) => time >= (times[index - 1] ?? time))) return;
  throw new Refusal({
    kind: 'unreadable',
    code: 'RPL-011',
    what: 'One of these cards is said to be done before the card above it.',
    kept: 'Nothing was counted. What you wrote is still there.',
    next: 'Write the times in the order of the cards, or leave out what you do not remember.',
  });
}
