import { Refusal } from '../../safety/refusal.ts';
import type { Surroundings } from '../actions/action.ts';
import { checkMayAct, checkMayEnter, move } from '../actions/move.ts';
import { afterDraft } from '../evolve.ts';
import type { Job } from '../job.ts';
import { ONE_GO_MAX, soundOf } from '../one-go.ts';

/**
 * Cards that may be entered together from the open one on, in order; none where there are not two. All of one phase, and
 * each a card for one go; each is judged as if it were answered after the one before, so that what an action needs has
 * been shown by then.
 *
 * @example runFrom(job, around) // ['caseParts', 'diaphragmNew', 'diaphragmIn', 'closeCase']
 */
export function runFrom(job: Job, around: Surroundings): readonly string[] {
  const { steps } = around.compiled.definition;
  const phase = steps[job.step]?.phase;
  const run: string[] = [];
  for (let now: Job | null = job; now !== null && !run.includes(now.step) && run.length < ONE_GO_MAX; ) {
    if (now.status !== 'open' || steps[now.step]?.phase !== phase) break;
    const after = leftSound(now, around);
    if (after === null) break;
    run.push(now.step);
    now = after;
  }
  return run.length < 2 ? [] : run;
}

/** The job after its open card was done as it should be; null where that would be refused, or is entered by itself. */
function leftSound(job: Job, around: Surroundings): Job | null {
  const sound = soundOf(around.compiled.definition.steps[job.step]);
  if (sound === null) return null;
  try {
    checkMayAct(job, around);
    const event = { type: 'ANSWER', outcome: sound.outcome };
    const effects = move(job, { event, words: job.words, around });
    checkMayEnter(job, { effects, around });
    const inputs = { step: job.step, readings: [], words: {}, row: null };
    const draft = { kind: 'step-answered', inputs, outcome: { name: sound.outcome, figures: {} }, effects };
    return afterDraft(job, { draft, at: new Date(around.nowMs).toISOString(), person: around.person.id });
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}
