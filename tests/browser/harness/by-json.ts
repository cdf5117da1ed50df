import { GEAR_IN_PSI } from '../../../server/demo/earlier-jobs.ts';
import { valveKind } from '../../../server/valves/valve-stream.ts';
import { type ComparableEntry, comparableJob } from '../../builders/comparable-log.ts';
import { JobClient } from '../../server/jobs/job-client.ts';
import { wireTo } from '../../server/jobs/wire.ts';
import { loadedPlant } from './demo-plant.ts';
import { inRole } from './people.ts';

/** Does a stroke check of a demo valve in the line as JSON, on a server of its own. @returns what its log holds of it */
export async function strokeCheckByJson({
  tag,
  startsAt,
}: {
  readonly tag: string;
  /** The demo plant's gear is dated by the day on which it is loaded. */
  readonly startsAt: Date;
}): Promise<readonly ComparableEntry[]> {
  const { server, people } = await loadedPlant(startsAt);
  try {
    const { sheet } = await server.services.log.state(valveKind, tag);
    if (sheet === null) throw new Error(`the demo plant has no ${tag}`);
    const technician = inRole(people, 'technician');
    const wire = await wireTo({ origin: () => server.origin, who: technician.id, pin: technician.pin });
    const client = new JobClient({ wire, ask: 'json', sheet, signer: inRole(people, 'supervisor') });
    const id = await client.open('line', GEAR_IN_PSI);
    await client.doAll(id, (ms) => server.wait(ms || 5000));
    return await comparableJob(server.services.log, id);
  } finally {
    await server.close();
  }
}
