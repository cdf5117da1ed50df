/** One procedure goes on where another stands: the line that closes the one opens the other, and nothing is put back between. */

import { factsOf } from '../../procedures/facts.ts';
import { carriedFrom, notTakenOver } from '../../procedures/handing-on.ts';
import type { Job } from '../../procedures/job.ts';
import { isTakenOverUnder } from '../../procedures/standing.ts';
import type { Definition } from '../../procedures/vocabulary.ts';
import { CONDITIONS, type ConditionId } from '../../safety/conditions.ts';
import { Refusal } from '../../safety/refusal.ts';
import type { EntryDraft } from '../log/act.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { SitePoint } from './point-stream.ts';

/** The card of the job before from which the work goes on, and what was answered there. */
export interface GoesOnFrom {
  readonly job: string;
  readonly place: number;
  readonly step: string;
  readonly choice: string;
  readonly reason: string;
}

const bare = { outcome: {}, effects: {} };

/**
 * As what the procedure takes over, where the closing line hands on to it.
 * @throws Refusal HND-002 where it leads to something else
 */
export function handedTo(
  { id }: Definition,
  { from, to }: { readonly from: Definition; readonly to: string },
): { readonly as: string } {
  const end = from.steps[to];
  const handsOver = end?.kind === 'end' ? end.handsOver : undefined;
  if (handsOver?.procedure === id) return { as: handsOver.as };
  throw new Refusal({
    kind: 'conflict',
    code: 'HND-002',
    what: 'The job before does not go on in this procedure.',
    kept: 'Both stand as they were; nothing was opened.',
    next: 'Answer the open card of that job again.',
  });
}

/**
 * The step at which a procedure goes on with a job that closed.
 * @throws Refusal HND-003 where the job is on a revision that leaves the valve otherwise than this one takes it over
 */
export function takenOverAt(
  { takesOver = {} }: Definition,
  { as, closed }: { readonly as: string; readonly closed: Job },
): string {
  const named = takesOver[as];
  const to = named !== undefined && isTakenOverUnder(named, closed.facts) ? named : undefined;
  const otherwise = to === undefined ? [] : notTakenOver(to, closed);
  if (to !== undefined && otherwise.length === 0) return to.at;
  const names = otherwise.map((id) => CONDITIONS[id].name.toLowerCase()).join(', ');
  throw new Refusal({
    kind: 'conflict',
    code: 'HND-003',
    what: `This procedure does not go on from there${names === '' ? '' : `: ${names} would have to stand otherwise`}.`,
    kept: 'Both stand as they were; nothing was opened.',
    next: 'Give the valve back in the job before, then open this procedure from its start.',
  });
}

/** What the new job is opened with beside its gear: sheet, facts and everything that stands. */
export function openedFrom(closed: Job) {
  const { sheet, sheetRevision, facts } = closed;
  return { sheet, sheetRevision, facts: factsOf(sheet, facts.place), ...carriedFrom(closed) };
}

/** Every lock that hangs for the one job hangs from now on for the other; nobody touches it. */
export function locksHandedOn(
  points: { readonly [C in ConditionId]?: SitePoint },
  { from, to }: { readonly from: string; readonly to: string },
): readonly EntryDraft[] {
  const relied = Object.values(points).filter(({ locks }) => locks.some(({ job }) => job === from));
  const tags = [...new Set(relied.map(({ tag }) => tag))];
  return tags.map((tag) => ({
    stream: streamOf('point', tag),
    kind: 'locks-handed-on',
    inputs: { from, to },
    ...bare,
  }));
}
