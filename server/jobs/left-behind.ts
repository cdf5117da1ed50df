import { forValve } from '../../procedures/for-valve.ts';
import type { Services } from '../services.ts';
import { valveKind } from '../valves/valve-stream.ts';
import { procedureKind } from './catalogue.ts';
import { jobKind } from './job-stream.ts';
import { nextOf } from './record/parts.ts';
import { day } from './view/words.ts';

export interface LeftBehind {
  /** The job before this one; null where only the sheet says something. */
  readonly job: string | null;
  readonly on: string;
  readonly rows: readonly { readonly label: string; readonly value: string }[];
}

/** What the last person at this valve left for the next: from the job before, or from the sheet while there was none. */
export async function leftBehind(tag: string, { log }: Services): Promise<LeftBehind> {
  const { lastJob, sheet } = await log.state(valveKind, tag);
  if (lastJob !== null) {
    const before = await log.state(jobKind, lastJob);
    const { definition } = await log.state(procedureKind, before.definitionHash);
    if (definition === null) throw new Error(`the log has no definition ${before.definitionHash}`);
    return {
      job: lastJob,
      on: day(before.closedAt ?? before.arrivedAt),
      rows: nextOf(before, forValve(definition, before.facts)),
    };
  }
  const notes = sheet?.notes ?? '';
  return { job: null, on: '', rows: notes === '' ? [] : [{ label: 'notes of the sheet', value: notes }] };
}
