import type { OpenStep } from '../../../../procedures/vocabulary.ts';
import type { CardInput, CardView } from './card.ts';
import { faultCard, isFaultCard } from './fault-card.ts';
import { holdCard } from './hold-card.ts';
import { instructionCard, questionCard, readingCard, waitCard } from './plain-cards.ts';
import { judgementCard, tableCard } from './stroke-cards.ts';

/** One builder a kind of step. */
export function buildCard(step: OpenStep, input: CardInput): CardView {
  switch (step.kind) {
    case 'instruction':
      return instructionCard(step, input);
    case 'reading':
      return isFaultCard(step) ? faultCard(step, input) : readingCard(step, input);
    case 'table':
      return tableCard(step, input);
    case 'question':
      return questionCard(step, input);
    case 'hold':
      return holdCard(step, input);
    case 'wait':
      return waitCard(step, input);
    case 'judgement':
      return judgementCard(step, input);
  }
}
