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

const WHAT_IS_WRONG =
  /^(?:what (?:is|are) (?:the )?(?:most )?(?:likely )?(?:causes?|faults?)|what is wrong(?: with it| here)?|likely causes?|what (?:do|should) (?:i|we) (?:check|look at) next|(?:which|what) check(?: is)?(?: next)?|what is the next check)$/;

/** What is asked of the open card itself: how long it waits, which row is due, what a search makes likely; null for anything else. */
export function aboutCard(question: string, ask: Ask): ReplyTold | null {
  const asked = plainText(question);
  if (ask.step?.kind === 'wait' && HOW_LONG.test(asked)) return waiting(ask.step, ask);
  if (ask.step?.kind === 'table' && WHICH_SETTING.test(asked)) return row(ask.step, ask);
  if (isHub(ask) && WHAT_IS_WRONG.test(asked))
    return told('The likely causes stand on this card, the likeliest first.', {
      lines: [
        'Each has its chance, and what speaks for it and against it. Above them stands the check that tells most for its minutes.',
        'None is certain until its own check has shown it.',
      ],
    });
  return null;
}

function isHub({ step }: Ask): boolean {
  return step?.kind === 'reading' && step.asks.some(({ name }) => name === 'hubChoice');
}

function leftOfWait(leftS: number): string {
  if (leftS === 0) return 'The time is over.';
  return leftS === 1 ? '1 s of it is left.' : `${leftS} s of it are left.`;
}

function waiting(step: WaitStep<string>, { job, around }: Ask): ReplyTold {
  const leftS = waitLeftS(job, step, around);
  return told(`This card waits ${step.waitS} s.`, { lines: [leftOfWait(leftS)] });
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
