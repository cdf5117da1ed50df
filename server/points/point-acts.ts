/** What engineers and supervisors say of a point: what it is, and where a tag alone may hang. */
import { POINT_KINDS, type PointKind } from '../../safety/isolation-points.ts';
import { pointKind } from '../jobs/point-stream.ts';
import type { EntryDraft } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { By } from '../people/people.ts';

export interface PointText {
  readonly tag: string;
  readonly kind: PointKind;
  readonly place: string;
  readonly lockable: boolean;
}

const bare = { outcome: {}, effects: {} };

/** Describes points anew, all of them or none. @returns how many */
export async function describePoints(
  { log, by }: { readonly log: SiteLog; readonly by: By },
  points: readonly PointText[],
): Promise<number> {
  const entries = points.map(
    ({ tag, ...inputs }): EntryDraft => ({
      stream: streamOf(pointKind.kind, tag),
      kind: 'point-described',
      inputs,
      ...bare,
    }),
  );
  await log.act({
    ...by,
    fingerprint: fingerprintOf({ describePoints: points.map((point) => ({ ...point })) }),
    streams: [...new Set(entries.map(({ stream }) => stream))],
    decide: () => ({ entries, answer: { points: points.length } }),
  });
  return points.length;
}

/** A supervisor allows a tag alone on a point for one job, with the reason; each tag that hangs so carries it. */
export async function allowTag(
  { log, by }: { readonly log: SiteLog; readonly by: By },
  { tag, job, because }: { readonly tag: string; readonly job: string; readonly because: string },
): Promise<void> {
  const stream = streamOf(pointKind.kind, tag);
  const entry: EntryDraft = { stream, kind: 'tag-allowed', inputs: { job, because }, ...bare };
  await log.act({
    ...by,
    fingerprint: fingerprintOf({ allowTag: tag, job, because }),
    streams: [stream],
    decide: () => ({ entries: [entry], answer: { tag } }),
  });
}

/** @example isPointKind('cock') // true */
export function isPointKind(text: string): text is PointKind {
  return (POINT_KINDS as readonly string[]).includes(text);
}
