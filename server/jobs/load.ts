import type { Surroundings } from '../../procedures/actions/action.ts';
import type { Job } from '../../procedures/job.ts';
import type { Language } from '../../views/language/language.ts';
import type { Person } from '../people/person.ts';
import type { Services } from '../services.ts';
import { noSuchJob, pointTags } from './acts.ts';
import type { Catalogue } from './catalogue.ts';
import { jobKind } from './job-stream.ts';
import { pointKind } from './point-stream.ts';
import { readInOf, shownDigest } from './shown.ts';

export interface LoadedJob {
  readonly job: Job;
  readonly around: Surroundings;
}

/** A job with all that its page and its interlock look at, as last committed. @throws Refusal JOB-000 */
export async function loadJob(
  id: string,
  {
    services,
    catalogue,
    person,
    language = 'en',
  }: {
    readonly services: Services;
    readonly catalogue: Catalogue;
    readonly person: Person;
    readonly language?: Language;
  },
): Promise<LoadedJob> {
  const job = await services.log.state(jobKind, id);
  if (job.status === 'none') throw noSuchJob(id);
  const compiled = await catalogue.of(job, services.log);
  const points = await Promise.all(
    pointTags(job).map(
      async ([lock, tag]) => [lock, { ...(await services.log.state(pointKind, tag)), tag }] as const,
    ),
  );
  const now = services.now();
  const readIn = readInOf(job, { definition: compiled.definition, language });
  const around: Surroundings = {
    compiled,
    nowMs: now.getTime(),
    today: now.toISOString().slice(0, 10),
    person: { id: person.id, role: person.role },
    points: Object.fromEntries(points),
    shownDigest: shownDigest(job, { ...compiled, readIn }),
  };
  return { job, around };
}
