import type { Answer } from './job.ts';
import type { Definition } from './vocabulary.ts';

/** In which way a line did not go the straight way. */
export type DepartureKind =
  | 'corrected'
  | 'sent back'
  | 'stopped'
  | 'parked'
  | 'overridden'
  | 'waived'
  | 'not witnessed'
  | 'read again and differs'
  | 'radio denied'
  | 'locks removed'
  | 'above limit'
  | 'departs'
  | 'written late';

const BY_ACT: Readonly<Record<string, DepartureKind>> = {
  corrected: 'corrected',
  'hold-sent-back': 'sent back',
  'review-sent-back': 'sent back',
  'made-safe': 'stopped',
  parked: 'parked',
  overridden: 'overridden',
  'hold-waived': 'waived',
  'not-witnessed': 'not witnessed',
  'radio-denied': 'radio denied',
  'locks-removed': 'locks removed',
};

/**
 * What a signer has to know of a line besides its readings; null where it went the straight way.
 * @example departureOf({ ...answer, act: 'parked' }, definition) // 'parked'
 */
export function departureOf(answer: Answer, { steps }: Definition): DepartureKind | null {
  const byAct = BY_ACT[answer.act];
  if (byAct !== undefined) return byAct;
  if (answer.act === 'read-again') return answer.outcome === 'differs' ? 'read again and differs' : null;
  if (answer.outcome === 'above limit') return 'above limit';
  const step = steps[answer.step];
  if (step?.kind === 'question' && step.choices[answer.outcome]?.reason === true) return 'departs';
  return answer.late === null ? null : 'written late';
}
