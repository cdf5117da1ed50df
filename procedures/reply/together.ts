import { Refusal } from '../../safety/refusal.ts';
import type { Surroundings } from '../actions/action.ts';
import { advance } from '../advance.ts';
import { afterDraft } from '../evolve.ts';
import type { Job } from '../job.ts';
import type { InstructionStep, Step } from '../vocabulary.ts';

/**
 * A step that may be entered together with others once all of it is done: it asks for no reading and no answer, sets
 * no state that a later card relies on, and has no signal word, which must be read before its own step.
 */
export function isPlain(step: Step | undefined): step is InstructionStep<string> {
  return step?.kind === 'instruction' && step.caution === undefined && setsNothing(step);
}

/** The open card has been seen with its signal word: it may begin a run. */
export function mayBegin(step: Step | undefined): step is InstructionStep<string> {
  return step?.kind === 'instruction' && setsNothing(step);
}

function setsNothing({ next }: InstructionStep<string>): boolean {
  return Object.keys(next.sets ?? {}).length === 0;
}

/**
 * Steps that may be confirmed together from the open card on, in order; none where there are not two. All of one
 * phase and plain; each is judged as if it were answered after the one before, so that what an action needs has been
 * shown by then.
 */
export function runFrom(job: Job, around: Surroundings): readonly string[] {
  const { steps } = around.compiled.definition;
  const first = steps[job.step];
  if (!mayBegin(first)) return [];
  const run: string[] = [];
  for (let now: Job | null = job; now !== null && !run.includes(now.step); ) {
    const step = steps[now.step];
    if (now.status !== 'open' || step?.phase !== first.phase || !(run.length === 0 || isPlain(step))) break;
    const after: Job | null = answered(now, around);
    if (after === null) break;
    run.push(now.step);
    now = after;
  }
  return run.length < 2 ? [] : run;
}

/** The job after its open card was done; null where that would be refused. */
function answered(job: Job, around: Surroundings): Job | null {
  try {
    const draft = advance(job, { kind: 'answer', place: job.place, step: job.step, given: {} }, around);
    return afterDraft(job, { draft, at: new Date(around.nowMs).toISOString(), person: around.person.id });
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}
