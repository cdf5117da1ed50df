import type { Compiled } from '../../../procedures/compile.ts';
import type { Job } from '../../../procedures/job.ts';
import type { Gear } from '../../gear/gear-stream.ts';
import { restingReadings } from '../../gear/rests-on.ts';
import { runs } from './parts.ts';
import type { JobRecord } from './schema.ts';

/** Gear of a job by its number, as it is known to be now. */
export type GearNow = ReadonlyMap<string, Pick<Gear, 'wrong'>>;

/** Gear that was found wrong after it was read for this job, with the lines that rest on it. */
export function wrongGearOf(
  { job, compiled }: { readonly job: Job; readonly compiled: Compiled },
  gearNow: GearNow,
): JobRecord['gearWrong'] {
  return [...gearNow].flatMap(([number, gear]) => {
    const readings = restingReadings({ number, gear }, { job, compiled });
    const told = gear.wrong.at(-1);
    if (told === undefined || readings.length === 0) return [];
    const { foundOn, rightUntil, howFar } = told;
    const places = [...new Set(readings.map(({ place }) => place))];
    return [{ number, foundOn, rightUntil, howFar, lines: runs(places) }];
  });
}

/** By line of the job, the gear that it rests on and that was found wrong since. */
export function doubtsOf(
  of: { readonly job: Job; readonly compiled: Compiled },
  gearNow: GearNow,
): ReadonlyMap<number, readonly string[]> {
  const doubts = new Map<number, readonly string[]>();
  for (const [number, gear] of gearNow)
    for (const { place } of restingReadings({ number, gear }, of))
      doubts.set(place, [...new Set([...(doubts.get(place) ?? []), number])]);
  return doubts;
}
