import { gearFaults } from '../../../procedures/test-gear/fit.ts';
import type { GearItem } from '../../../procedures/test-gear/gear.ts';
import type { GearRole } from '../../../procedures/test-gear/roles.ts';
import { wantedOf } from '../../../procedures/test-gear/wanted.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import type { Services } from '../../services.ts';
import { type JobLine, jobKind } from '../job-stream.ts';

/** Somebody's last job stands among so many, or is too long ago to say what is in a hand today. */
const JOBS_MAX = 60;

export interface SameGear {
  readonly job: string;
  readonly tag: string;
  /** Number of the gear by what it is there for. */
  readonly numbers: { readonly [R in GearRole]?: string };
}

/**
 * The gear that a person chose for the last job of theirs, as far as this valve can be measured with it: offered, never
 * chosen by itself, because a reading names the gear that was in the hand.
 *
 * @returns null where there is none
 */
export async function sameGear(
  { log }: Services,
  asked: {
    readonly person: string;
    readonly roles: readonly GearRole[];
    readonly inUse: readonly GearItem[];
    readonly sheet: ValveSheet;
    readonly today: string;
  },
): Promise<SameGear | null> {
  const pages = await Promise.all(
    (['up', 'down'] as const).map((order) => log.summaries(jobKind.kind, { limit: JOBS_MAX, order })),
  );
  const last = pages
    .flat()
    .map(({ body }) => body as unknown as JobLine)
    .filter(({ openedBy, gear }) => openedBy === asked.person && gear.length > 0)
    .reduce<JobLine | null>(
      (one, other) => (one === null || other.openedAt > one.openedAt ? other : one),
      null,
    );
  if (last === null) return null;
  const { gear } = await log.state(jobKind, last.id);
  const numbers = Object.fromEntries(
    asked.roles.flatMap((role) => {
      const item = asked.inUse.find(({ number }) => number === gear[role]?.number);
      if (item === undefined) return [];
      const stops = gearFaults(item, { wanted: wantedOf(role, asked.sheet), today: asked.today });
      return stops.some((fault) => fault.stops) ? [] : [[role, item.number] as const];
    }),
  );
  return Object.keys(numbers).length === 0 ? null : { job: last.id, tag: last.tag, numbers };
}
