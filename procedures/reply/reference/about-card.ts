import { waitLeftS } from '../../actions/answer.ts';
import { plannedPa, rowPlan } from '../../cycle-verdict.ts';
import { say } from '../../say.ts';
import type { TableStep, WaitStep } from '../../vocabulary.ts';
import type { Ask } from '../ask.ts';
import { type ReplyTold, told } from '../reply.ts';
import { plainText } from '../words.ts';

const HOW_LONG =
  /^how (?:long(?: (?:do|must|should) (?:i|we) (?:have to )?wait| is the wait| still| left)?|much (?:longer|time)(?: .*)?|many (?:seconds|minutes)(?: .*)?)$/;
const WHICH_SETTING =
  /^(?:what|which) (?:(?:psi|bar|kpa|signal|pressure|air|setting|row)(?: is it)?(?: now| next)?|(?:should|must|do|does) (?:it|i|we) (?:read|set|show|stand at)(?: now| next)?)$/;

/** What is asked of the open card itself: how long it waits, which row of its table is due; null for anything else. */
export function aboutCard(question: string, ask: Ask): ReplyTold | null {
  const asked = plainText(question);
  if (ask.step?.kind === 'wait' && HOW_LONG.test(asked)) return waiting(ask.step, ask);
  if (ask.step?.kind === 'table' && WHICH_SETTING.test(asked)) return row(ask.step, ask);
  return null;
}

function waiting(step: WaitStep<string>, { job, around }: Ask): ReplyTold {
  const leftS = waitLeftS(job, step, around);
  const left = leftS === 0 ? 'The time is over.' : `${leftS} s of it are left.`;
  return told(`This card waits ${step.waitS} s.`, { lines: [left] });
}

function row(step: TableStep<string>, { job }: Ask): ReplyTold {
  const plan = rowPlan(step, job, job.step);
  if (plan === undefined) return told('Every row of this table is written.', { lines: [] });
  const { units } = job.sheet;
  const signal = say({ valueSi: plannedPa(job.sheet, plan), dimension: 'pressure', units });
  const way = plan.direction === 'up' ? 'going up' : 'coming down';
  return told(`Set ${signal}, ${way}.`, {
    lines: [`The sheet wants ${plan.percent} % there. Write what you read, not what is wanted.`],
  });
}
