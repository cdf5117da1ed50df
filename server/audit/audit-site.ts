/** The audit over all jobs of a site: looked at again only where a job has grown. */
import { setImmediate as nextTick } from 'node:timers/promises';
import type { Definition } from '../../procedures/vocabulary.ts';
import type { Catalogue, OpenedOn } from '../jobs/catalogue.ts';
import type { JobLine } from '../jobs/job-stream.ts';
import type { SiteLog } from '../log/site-log.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { LogEntry } from '../store/store.ts';
import { auditJobLines, type JobAudit } from './job-rows.ts';

/** More jobs than a site has in years; the oldest beyond are found by narrowing the dates. */
const JOBS_MAX = 5000;

export interface Period {
  /** Days, YYYY-MM-DD; blank for any. */
  readonly from: string;
  readonly to: string;
}

export class SiteAudit {
  readonly #catalogue: Catalogue;
  readonly #known = new Map<string, { readonly audit: JobAudit; readonly isOpen: boolean }>();

  constructor(catalogue: Catalogue) {
    this.#catalogue = catalogue;
  }

  /** Jobs opened in a period, the latest first. */
  async jobs(
    log: SiteLog,
    { period, now }: { readonly period: Period; readonly now: string },
  ): Promise<readonly JobAudit[]> {
    const listed = (await log.summaries('job', { order: 'down', limit: JOBS_MAX })).map(
      ({ body }) => body as unknown as JobLine,
    );
    const within = listed.filter(({ openedAt }) => isWithin(openedAt, period));
    const audits: JobAudit[] = [];
    for (const line of within) {
      const known = this.#known.get(line.id)?.audit;
      const audit = await this.#audit(log, { line, now });
      audits.push(audit);
      // Others are served between one job and the next that is worked out.
      if (audit !== known) await nextTick();
    }
    return audits.sort((one, other) => (one.openedAt < other.openedAt ? 1 : -1));
  }

  async #audit(
    log: SiteLog,
    { line, now }: { readonly line: JobLine; readonly now: string },
  ): Promise<JobAudit> {
    const place = await log.place(streamOf('job', line.id));
    const known = this.#known.get(line.id);
    if (known !== undefined && known.audit.lines === place && !known.isOpen) return known.audit;
    const entries = await log.entriesOf(streamOf('job', line.id));
    const definition = await definitionOf(entries, { catalogue: this.#catalogue, log });
    const audit = auditJobLines(line.id, { entries, definition, now });
    // Of an open job the locks grow older by themselves.
    this.#known.set(line.id, { audit, isOpen: line.status !== 'closed' });
    return audit;
  }
}

/** The definition that a job was opened on; null where this log does not have it. */
export async function definitionOf(
  [first]: readonly LogEntry[],
  { catalogue, log }: { readonly catalogue: Catalogue; readonly log: SiteLog },
): Promise<Definition | null> {
  const { definitionHash = '', facts } = (first?.inputs ?? {}) as Partial<OpenedOn>;
  return facts === undefined ? null : await catalogue.definition({ definitionHash, facts }, log);
}

function isWithin(at: string, { from, to }: Period): boolean {
  const day = at.slice(0, 10);
  return (from === '' || day >= from) && (to === '' || day <= to);
}
