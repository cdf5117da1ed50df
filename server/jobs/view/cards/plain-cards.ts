import { fill } from '../../../../procedures/say.ts';
import type {
  InstructionStep,
  QuestionStep,
  ReadingStep,
  WaitStep,
} from '../../../../procedures/vocabulary.ts';
import { fieldViews } from '../fields.ts';
import { bareCard, type CardInput, type CardView } from './card.ts';

export function instructionCard(step: InstructionStep<string>, input: CardInput): CardView {
  return { ...bareCard(step, input), act: 'Done' };
}

export function readingCard(step: ReadingStep<string>, input: CardInput): CardView {
  return { ...bareCard(step, input), fields: fieldViews(step.asks, input) };
}

export function questionCard(step: QuestionStep<string>, input: CardInput): CardView {
  const choices = Object.entries(step.choices).map(([value, choice]) => ({
    value,
    label: fill(choice.label, input.job),
    reason: choice.reason === true,
  }));
  return { ...bareCard(step, input), choices, act: 'Choose' };
}

export interface WaitCard extends CardView {
  readonly leftS: number;
}

export function waitCard(step: WaitStep<string>, input: CardInput): WaitCard {
  const gone = (input.around.nowMs - Date.parse(input.job.arrivedAt)) / 1000;
  return {
    ...bareCard(step, input),
    leftS: Math.max(0, Math.ceil(step.waitS - gone)),
    act: 'The wait is over',
  };
}
