import { comesNext } from '../../procedures/comes-next.ts';
import type { Job } from '../../procedures/job.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { Definition } from '../../procedures/vocabulary.ts';

export interface NextProcedure {
  readonly procedure: string;
  readonly title: string;
  /** Why this valve may not have it now; blank where it may. */
  readonly because: string;
  /** Where a job on it is opened; blank where it may not. */
  readonly href: string;
}

/** What the answers of a job named as the next work on its valve, as it is served today. */
export function nextProcedures(job: Job, definition: Definition): readonly NextProcedure[] {
  return comesNext(job, definition).map((procedure) => {
    const served = PROCEDURES.find((one) => one.definition.id === procedure);
    const because =
      served === undefined ? 'It is not served any more.' : (served.whyNot(job.sheet, job.facts.place) ?? '');
    const query = new URLSearchParams({ tag: job.tag, procedure, place: job.facts.place });
    return {
      procedure,
      title: served?.definition.title ?? procedure,
      because,
      href: because === '' ? `/jobs/new?${query.toString()}` : '',
    };
  });
}
