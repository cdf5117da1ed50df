import { z } from 'zod';
import type { Json } from '../../procedures/json.ts';
import { hang, type PointState, takeOff } from '../../safety/isolation-points.ts';
import type { StreamKind } from '../log/stream-kind.ts';

const locked = z.object({ lock: z.string(), owner: z.string(), job: z.string() });
const lifted = z.object({ job: z.string() });

/** An isolation point of the site, by its tag: its locks and its position belong to no job. */
export const pointKind: StreamKind<PointState> = {
  kind: 'point',
  initial: { tag: '', position: 'open', locks: [] },
  evolve: (point, entry) => {
    const tag = entry.stream.slice('point:'.length);
    if (entry.kind === 'lock-hung') return hang({ ...point, tag }, locked.parse(entry.inputs));
    return entry.kind === 'lock-taken-off'
      ? takeOff({ ...point, tag }, lifted.parse(entry.inputs).job)
      : point;
  },
  summarise: (point, id) => (point.locks.length === 0 ? null : { sort: id, body: point as unknown as Json }),
};
