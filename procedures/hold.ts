import { type AnyState, CONDITIONS, type ConditionId } from '../safety/conditions.ts';
import { type Situation, stateThatCounts } from '../safety/situation.ts';
import type { EvidenceNote, Job } from './job.ts';
import type { HoldStep } from './vocabulary.ts';

/** One row of what a signer is shown. */
export interface HoldRow {
  readonly condition: ConditionId;
  readonly state: AnyState;
  readonly note: EvidenceNote | null;
}

/** What a hold rests on, in the order of the definition. The signature covers exactly this. */
export function holdEvidence(step: HoldStep<string>, job: Job): readonly HoldRow[] {
  return step.evidence.map((condition) => ({
    condition,
    state: stateThatCounts(job.situation, condition),
    note: job.evidence[condition] ?? null,
  }));
}

const SHOWN: readonly AnyState[] = [
  'isolated',
  'absent',
  'held',
  'contained',
  'released',
  'safe',
  'hung',
  'cleared',
  'overridden',
];

/** Names of the energies that a signer would sign over without their being shown. */
export function unshown(step: HoldStep<string>, situation: Situation): readonly string[] {
  const energies = step.evidence.filter((id) => CONDITIONS[id].group === 'energy');
  return energies
    .filter((id) => !SHOWN.includes(stateThatCounts(situation, id)))
    .map((id) => CONDITIONS[id].name);
}
