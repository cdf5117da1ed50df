/** The audit over all jobs of a site: looked at again only where a job has grown. */
import type { Definition } from '../../procedures/vocabulary.ts';
import { derived } from '../derived.ts';
import type { Catalogue, OpenedOn } from '../jobs/catalogue.ts';
import type { JobOfValve } from '../lists.ts';
import type { SiteLog } from '../log/site-log.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { Tell } from '../long/long-work.ts';
import type { Services } from '../services.ts';
import { SITE_STREAM } from '../site-stream.ts';
import type { LogEntry } from '../store/store.ts';
import type { Exception } from './exceptions/exception.ts';
import { siteExceptions } from './exceptions/find-exceptions.ts';
import { auditJobLines, type JobAudit } from './job-rows.ts';

/** More jobs than a site has in years; the oldest beyond are found by narrowing the dates. */
const JOBS_MAX = 5000;

export interface Period {
  /** Days, YYYY-MM-DD; blank for any. */
  readonly from: string;
  readonly to: string;
}

interface Known {
  /** As the list has it: another one once the job has grown. */
  readonly line: JobOfValve;
  readonly audit: JobAudit;
  /** When it was worked out. */
  readonly now: string;
}

/** Of an open job the locks grow older by themselves, by the hour. */
const OPEN_STANDS_MS = 60_000;

interface When {
  readonly period: Period;
  readonly now: string;
}

/** Lists of so many periods are kept beside the jobs in them. */
const LISTS_MAX = 4;

type Of = Pick<Services, 'log' | 'lists'>;

export class SiteAudit {
  readonly #catalogue: Catalogue;
  /** In order of use; the one unused for longest goes first. */
  readonly #known = new Map<string, Known>();
  readonly #lists = new Map<string, readonly JobAudit[]>();
  #site: { readonly place: number; readonly exceptions: readonly Exception[] } | undefined;

  constructor(catalogue: Catalogue) {
    this.#catalogue = catalogue;
  }

  /** How many jobs of a period would have to be worked out. */
  async wanting(of: Of, { period, now }: When): Promise<number> {
    const within = listed(await of.lists.jobs.inOrder(), period);
    return within.filter((line) => this.#knownOf(line, now) === undefined).length;
  }

  /** Jobs opened in a period, the latest first. @throws whatever `tell` throws; what was worked out stays */
  async jobs(of: Of, { period, now, tell }: When & { readonly tell: Tell }): Promise<readonly JobAudit[]> {
    const within = listed(await of.lists.jobs.inOrder(), period);
    const audits: JobAudit[] = [];
    for (const line of within) {
      const known = this.#knownOf(line, now);
      if (known === undefined) await tell({ doing: 'reading job', done: audits.length, of: within.length });
      audits.push(known ?? (await this.#audit(of.log, { line, now })));
    }
    return this.#asBefore(audits, period);
  }

  /** The very list of before where nothing in it is another, so that what was worked out from it still stands. */
  #asBefore(audits: readonly JobAudit[], { from, to }: Period): readonly JobAudit[] {
    const key = `${from} ${to}`;
    const before = this.#lists.get(key);
    const isSame = before?.length === audits.length && audits.every((audit, at) => audit === before[at]);
    if (isSame) return before;
    this.#lists.delete(key);
    this.#lists.set(key, audits);
    for (const oldest of [...this.#lists.keys()].slice(0, -LISTS_MAX)) this.#lists.delete(oldest);
    return audits;
  }

  /** What is worth a question and stands in no job. */
  async ofSite(log: SiteLog): Promise<readonly Exception[]> {
    const place = await log.place(SITE_STREAM);
    if (this.#site?.place !== place)
      this.#site = { place, exceptions: siteExceptions(await log.entriesOf(SITE_STREAM)) };
    return this.#site.exceptions;
  }

  #knownOf(line: JobOfValve, now: string): JobAudit | undefined {
    const known = this.#known.get(line.id);
    if (known?.line !== line) return undefined;
    const isFresh = line.isClosed || Math.abs(Date.parse(now) - Date.parse(known.now)) < OPEN_STANDS_MS;
    return isFresh ? known.audit : undefined;
  }

  async #audit(
    log: SiteLog,
    { line, now }: { readonly line: JobOfValve; readonly now: string },
  ): Promise<JobAudit> {
    const known = this.#knownOf(line, now);
    if (known !== undefined) return known;
    const entries = await log.entriesOf(streamOf('job', line.id));
    const definition = await definitionOf(entries, { catalogue: this.#catalogue, log });
    const audit = auditJobLines(line.id, { entries, definition, now });
    this.#keep({ line, audit, now });
    return audit;
  }

  #keep(known: Known): void {
    this.#known.delete(known.line.id);
    this.#known.set(known.line.id, known);
    if (this.#known.size <= JOBS_MAX) return;
    for (const oldest of this.#known.keys()) {
      this.#known.delete(oldest);
      return;
    }
  }
}

function listed(jobs: readonly JobOfValve[], period: Period): readonly JobOfValve[] {
  const within = latestFirst(jobs).filter(({ openedAt }) => isWithin(openedAt, period));
  return within.slice(0, JOBS_MAX);
}

const latestFirst = derived((jobs: readonly JobOfValve[]) =>
  jobs.toSorted((one, other) =>
    one.openedAt === other.openedAt ? 0 : one.openedAt > other.openedAt ? -1 : 1,
  ),
);

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
