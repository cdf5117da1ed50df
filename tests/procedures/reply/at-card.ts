import type { Surroundings } from '../../../procedures/actions/action.ts';
import type { Job } from '../../../procedures/job.ts';
import { readReply } from '../../../procedures/reply/read-reply.ts';
import type { Reply } from '../../../procedures/reply/reply.ts';
import { around, type JobRun, openJob, playTo } from '../../builders/jobs.ts';
import { REPLY_CARDS } from './cards.ts';

export interface AtCard {
  readonly job: Job;
  readonly around: Surroundings;
  read(text: string): Reply;
}

/** A job that stands at one of the cards for replies. */
export function atCard(step: string): AtCard {
  const run = openJob({ compiled: REPLY_CARDS });
  if (!Object.hasOwn(REPLY_CARDS.definition.steps, step)) throw new Error(`there is no card ${step}`);
  return reading(run, { ...run.job, step });
}

/** A stroke check that was played until this card stands open. */
export function inStrokeCheck(step: string): AtCard {
  const run = playTo(openJob(), step);
  return reading(run, run.job);
}

function reading(run: JobRun, job: Job): AtCard {
  const here = around({ ...run, job });
  return { job, around: here, read: (text) => readReply(text, { job, around: here }) };
}
