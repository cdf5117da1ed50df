import type { Requirement } from './requirement.ts';

/** What the quality trade asks of a hold, and of the writing of a procedure. */
export const HOLD_POINTS: readonly Requirement[] = [
  {
    id: 'HP-43',
    text: 'Before a lock goes on, its point shall be confirmed by its label, scanned or typed; a wrong one shall be refused and logged.',
    source:
      'INL, human factors guidance for computer-based procedures, as summarised; for critical steps only: common practice, no source',
  },
];
