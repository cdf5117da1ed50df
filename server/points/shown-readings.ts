import type { EvidenceNote, Job } from '../../procedures/job.ts';
import { CONDITIONS, type ConditionId, ENERGY_IDS } from '../../safety/conditions.ts';
import { stateThatCounts } from '../../safety/situation.ts';
import { doneText, readingOf } from '../jobs/view/energies.ts';
import { asRead, short } from '../jobs/view/words.ts';
import { shownTime } from '../shown-time.ts';

/** How one energy stands, as whoever joins a job is shown it. */
export interface ShownReading {
  readonly energy: string;
  readonly stands: string;
  readonly shown: string;
  readonly by: string;
  readonly at: string;
}

/** What the people before have read: each energy that somebody has recorded, with who read what and when. */
export function shownReadings(job: Job): readonly ShownReading[] {
  return ENERGY_IDS.flatMap((id: ConditionId): readonly ShownReading[] => {
    const note = job.evidence[id];
    if (note === undefined) return [];
    const lapsed = job.situation.lapsed[id];
    const stands = lapsed === undefined ? stateThatCounts(job.situation, id) : `to be shown again: ${lapsed}`;
    return [
      {
        energy: CONDITIONS[id].name,
        stands,
        shown: howShown(job, { id, note }),
        by: short(note.person),
        at: shownTime(note.at),
      },
    ];
  });
}

/** A pressure or a temperature by what was read; else how it was done, as a signer is told it. */
function howShown(job: Job, { id, note }: { readonly id: ConditionId; readonly note: EvidenceNote }): string {
  if (stateThatCounts(job.situation, id) === 'absent') return 'looked for, recorded absent';
  const reading = id === 'spring' ? null : readingOf(note, id);
  if (reading !== null) return asRead(reading);
  return note.words.method === 'vent'
    ? 'vent cracked and watched twice, no flow'
    : doneText({ condition: id }, job);
}
