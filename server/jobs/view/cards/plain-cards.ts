import { waitLeftS } from '../../../../procedures/actions/answer.ts';
import { fill } from '../../../../procedures/say.ts';
import type {
  InstructionStep,
  QuestionStep,
  ReadingStep,
  WaitStep,
} from '../../../../procedures/vocabulary.ts';
import { fieldViews } from '../fields.ts';
import { bareCard, type CardInput, type CardView } from './card.ts';
import { judged } from './judged.ts';

export function instructionCard(step: InstructionStep<string>, input: CardInput): CardView {
  return { ...bareCard(step, input), act: 'Done' };
}

export function readingCard(step: ReadingStep<string>, input: CardInput): CardView {
  return { ...bareCard(step, input), fields: fieldViews(step.asks, input) };
}

export interface QuestionCard extends CardView {
  /** What was judged just before: the choice rests on it. */
  readonly findings: readonly object[];
}

export function questionCard(step: QuestionStep<string>, input: CardInput): QuestionCard {
  const choices = Object.entries(step.choices).map(([value, choice]) => ({
    value,
    label: fill(choice.label, input.job),
    reason: choice.reason === true,
  }));
  return { ...bareCard(step, input), choices, findings: judgedBefore(input), act: 'Choose' };
}

/** The findings of a judgement, where a question follows it with nothing done between. */
function judgedBefore({ job, around }: CardInput): readonly object[] {
  const before = job.answers.findLast((one) => !one.superseded);
  const step = before === undefined ? undefined : around.compiled.definition.steps[before.step];
  return step?.kind === 'judgement' ? judged(step, { job, around }).findings : [];
}

export interface WaitCard extends CardView {
  readonly leftS: number;
}

export function waitCard(step: WaitStep<string>, input: CardInput): WaitCard {
  return {
    ...bareCard(step, input),
    leftS: waitLeftS(input.job, step, input.around),
    act: 'The wait is over',
  };
}
