import { z } from 'zod';
import type { Json } from '../../procedures/json.ts';
import {
  hang,
  POINT_KINDS,
  type PointKind,
  type PointState,
  takeOff,
} from '../../safety/isolation-points.ts';
import type { StreamKind } from '../log/stream-kind.ts';
import type { LogEntry } from '../store/store.ts';

/** What is known of a point besides its locks. */
export interface SitePoint extends PointState {
  /** Null until somebody has described the point: a valve sheet alone names it. */
  readonly kind: PointKind | null;
  readonly place: string;
  /** A lock can be put on it. What nobody has said counts as so. */
  readonly lockable: boolean;
  /** Tags alone that a supervisor allowed, by job. */
  readonly tagsAllowed: readonly { readonly job: string; readonly by: string; readonly because: string }[];
}

const described = z.object({ kind: z.enum(POINT_KINDS), place: z.string(), lockable: z.boolean() });
const locked = z.object({
  lock: z.string(),
  owner: z.string(),
  job: z.string(),
  because: z.string().optional(),
});
const lifted = z.object({ job: z.string(), owner: z.string().optional(), restores: z.boolean().optional() });
const removed = z.object({ job: z.string(), owner: z.string() });
const handedOn = z.object({ from: z.string(), to: z.string() });
const allowed = z.object({ job: z.string(), because: z.string() });

/** What each entry changes; others only tell. */
const CHANGES: Readonly<Record<string, (point: SitePoint, entry: LogEntry) => SitePoint>> = {
  'point-described': (point, { inputs }) => ({ ...point, ...described.parse(inputs) }),
  'lock-hung': (point, { inputs, at }) => {
    const { lock, owner, job, because = '' } = locked.parse(inputs);
    return hang(point, { lock, owner, job, since: at, ...(because === '' ? {} : { because }) });
  },
  'lock-taken-off': (point, { inputs }) => {
    const { job, owner, restores = true } = lifted.parse(inputs);
    return takeOff(point, { job, restores, ...(owner === undefined ? {} : { owner }) });
  },
  'locks-handed-on': (point, { inputs }) => {
    const { from, to } = handedOn.parse(inputs);
    return { ...point, locks: point.locks.map((lock) => (lock.job === from ? { ...lock, job: to } : lock)) };
  },
  'lock-removed-in-absence': (point, { inputs }) =>
    takeOff(point, { ...removed.parse(inputs), restores: false }),
  'tag-allowed': (point, { inputs, person }) => ({
    ...point,
    tagsAllowed: [...point.tagsAllowed, { ...allowed.parse(inputs), by: person ?? '' }],
  }),
};

/** An isolation point of the site, by its tag: its locks and its position belong to no job. */
export const pointKind: StreamKind<SitePoint> = {
  kind: 'point',
  initial: {
    tag: '',
    position: 'open',
    locks: [],
    kind: null,
    place: '',
    lockable: true,
    tagsAllowed: [],
  },
  evolve: (point, entry) => {
    const tag = entry.stream.slice('point:'.length);
    return CHANGES[entry.kind]?.({ ...point, tag }, entry) ?? point;
  },
  // Those with a lock stand first: a list that is cut short cuts off what is free.
  summarise: (point, id) =>
    point.kind === null && point.locks.length === 0 && point.position === 'open'
      ? null
      : { sort: `${point.locks.length === 0 ? '2' : '1'} ${id}`, body: point as unknown as Json },
};
