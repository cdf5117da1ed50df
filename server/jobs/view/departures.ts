import type { Compiled } from '../../../procedures/compile.ts';
import type { Answer, Job } from '../../../procedures/job.ts';
import { fill } from '../../../procedures/say.ts';
import { given } from './words.ts';

/** Something that did not go the straight way, with who said why. */
export interface Departure {
  readonly place: number;
  readonly at: string;
  readonly person: string;
  readonly what: string;
  /** What stood before, struck but readable; blank where nothing did. */
  readonly struck: string;
  readonly now: string;
  readonly reason: string;
}

/** Answers with a reason, corrections, holds sent back, stops, pauses and air above its limit, oldest first. */
export function departuresOf(job: Job, compiled: Compiled): readonly Departure[] {
  return job.answers.flatMap((answer) => {
    const what = whatOf(answer, { job, compiled });
    if (what === null) return [];
    const { place, at, person } = answer;
    const corrected = answer.act === 'corrected' ? correctedBy(answer, job) : undefined;
    return [
      {
        place,
        at,
        person,
        what,
        struck: corrected === undefined ? '' : given(corrected.readings),
        now: answer.act === 'corrected' ? given(answer.readings) : '',
        reason: answer.reason || (answer.words.reason ?? ''),
      },
    ];
  });
}

function whatOf(
  answer: Answer,
  { job, compiled }: { readonly job: Job; readonly compiled: Compiled },
): string | null {
  const step = compiled.definition.steps[answer.step];
  const title = step === undefined ? answer.step : fill(step.title, job);
  switch (answer.act) {
    case 'corrected':
      return `Corrected: ${title}`;
    case 'hold-sent-back':
      return `Sent back: ${title}`;
    case 'made-safe':
      return `Stopped at: ${title}`;
    case 'parked':
      return `Parked at: ${title}`;
    default:
      if (answer.outcome === 'above limit') return `Air above its limit: ${title}`;
      if (step?.kind === 'question' && step.choices[answer.outcome]?.reason === true)
        return `${title}: ${step.choices[answer.outcome]?.label ?? answer.outcome}`;
      return null;
  }
}

/** The line that a correction stands for: the newest of its step and row that was corrected before it. */
function correctedBy(correction: Answer, job: Job): Answer | undefined {
  return job.answers.findLast(
    (one) =>
      one.corrected &&
      one.place < correction.place &&
      one.step === correction.step &&
      one.row === correction.row,
  );
}
