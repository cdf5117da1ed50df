import { gearKind } from '../gear/gear-stream.ts';
import { restingReadings } from '../gear/rests-on.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { type JobLine, jobKind } from '../jobs/job-stream.ts';
import type { SiteLog } from '../log/site-log.ts';
import type { ValveHistory } from './valve-history.ts';

/** Numbers of gear found wrong, by the job whose readings rest on it. */
export type Doubts = ReadonlyMap<string, readonly string[]>;

/** Asked of the log each time, since gear is found wrong long after a job has closed. */
export async function doubtsIn(
  lines: readonly JobLine[],
  { log, catalogue }: { readonly log: SiteLog; readonly catalogue: Catalogue },
): Promise<Doubts> {
  const doubts = new Map<string, readonly string[]>();
  for (const number of new Set(lines.flatMap(({ gear }) => gear))) {
    const gear = await log.state(gearKind, number);
    if (gear.wrong.length === 0) continue;
    for (const { id } of lines.filter((line) => line.gear.includes(number))) {
      const job = await log.state(jobKind, id);
      const compiled = await catalogue.of(job, log);
      const isResting = restingReadings({ number, gear }, { job, compiled }).length > 0;
      if (isResting) doubts.set(id, [...(doubts.get(id) ?? []), number]);
    }
  }
  return doubts;
}

/** Each reading of a job in doubt says so. It still stands in the trend: how far off it was, people know and no program. */
export function withDoubts(history: ValveHistory, doubts: Doubts): ValveHistory {
  return {
    ...history,
    quantities: history.quantities.map((quantity) => ({
      ...quantity,
      points: quantity.points.map((point) => ({
        ...point,
        doubt: (doubts.get(point.job) ?? []).join(', '),
      })),
    })),
  };
}
