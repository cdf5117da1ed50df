import type { JobDraft } from '../evolve.ts';
import type { Job } from '../job.ts';
import type { JudgementStep } from '../vocabulary.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { judge, restarts } from './answer.ts';
import { checkMayEnter, move, openStepOf } from './move.ts';
import { noWay } from './refusals.ts';
import { checkMaySign, noteOf, refusedHold } from './signer.ts';

/** Outcomes that are no opinion: too little was read, or too much air is on. */
const NEVER: readonly string[] = ['not enough readings', 'above limit'];

/** What a judgement can be overridden with; nothing where too little was read to judge. */
export function otherOutcomes(step: JudgementStep<string>, judged: string): readonly string[] {
  if (NEVER.includes(judged)) return [];
  return Object.keys(step.ways).filter((name) => name !== judged && !NEVER.includes(name));
}

/**
 * A supervisor judges a stroke otherwise than the figures do, with a reason. Both stand in the line. Only what a
 * judgement card says of the work is judged so; that an energy is gone is shown or not, and nobody overrides it.
 */
export function override(job: Job, action: ActionOf<'override'>, around: Surroundings): JobDraft {
  const step = openStepOf(job, around);
  if (step.kind !== 'judgement')
    throw noWay('Only the judgement of a stroke is overridden.', 'Answer the card as it stands.');
  checkMaySign(job, around);
  const judged = judge(job, { step, given: {}, around });
  const possible = otherOutcomes(step, judged.outcome);
  const reason = action.reason.trim();
  if (!possible.includes(action.outcome) || reason === '') {
    const fields = {
      ...(possible.includes(action.outcome) ? {} : { outcome: `Choose one of: ${possible.join(', ')}.` }),
      ...(reason === '' ? { reason: 'Write why.' } : {}),
    };
    throw refusedHold({
      kind: 'unreadable',
      code: 'OVR-001',
      what:
        possible.length === 0
          ? 'Too little was read: there is nothing to override.'
          : 'A judgement is overridden with another one and with the reason for it.',
      next: Object.values(fields).join(' ') || 'Read what is missing.',
      fields,
    });
  }
  const effects = move(job, { event: { type: 'ANSWER', outcome: action.outcome }, words: job.words, around });
  checkMayEnter(job, { effects, around });
  return {
    kind: 'overridden',
    inputs: { step: job.step, reason, signature: noteOf('overridden', around) },
    outcome: { name: action.outcome, figures: { ...judged.figures, judged: judged.outcome } },
    effects: { ...effects, ...restarts(job, { step, to: effects.to, around }) },
  };
}
