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

interface KnownList {
  /** All jobs, as the list had them. */
  readonly all: readonly JobOfValve[];
  readonly audits: readonly JobAudit[];
  readonly now: string;
}

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
  readonly #lists = new Map<string, KnownList>();
  #site: { readonly place: number; readonly exceptions: readonly Exception[] } | undefined;

  constructor(catalogue: Catalogue) {
    this.#catalogue = catalogue;
  }

  /** How many jobs of a period would have to be worked out. */
  async wanting(of: Of, { period, now }: When): Promise<number> {
    const all = await of.lists.jobs.inOrder();
    if (this.#asBefore(all, { period, now }) !== undefined) return 0;
    return listed(all, period).filter((line) => this.#knownOf(line, now) === undefined).length;
  }

  /** Jobs opened in a period, the latest first. @throws whatever `tell` throws; what was worked out stays */
  async jobs(of: Of, { period, now, tell }: When & { readonly tell: Tell }): Promise<readonly JobAudit[]> {
    const all = await of.lists.jobs.inOrder();
    const before = this.#asBefore(all, { period, now });
    if (before !== undefined) return before;
    const within = listed(all, period);
    const audits: JobAudit[] = [];
    for (const line of within) {
      const known = this.#knownOf(line, now);
      if (known === undefined) await tell({ doing: 'reading job', done: audits.length, of: within.length });
      audits.push(known ?? (await this.#audit(of.log, { line, now })));
    }
    this.#keepList({ all, audits, now }, period);
    return audits;
  }

  /** The very list of before where no job has grown since, so that what was worked out from it still stands. */
  #asBefore(all: readonly JobOfValve[], { period, now }: When): readonly JobAudit[] | undefined {
    const before = this.#lists.get(keyOf(period));
    return before?.all === all && isFresh(before.now, now) ? before.audits : undefined;
  }

  #keepList(list: KnownList, period: Period): void {
    this.#lists.delete(keyOf(period));
    this.#lists.set(keyOf(period), list);
    for (const oldest of [...this.#lists.keys()].slice(0, -LISTS_MAX)) this.#lists.delete(oldest);
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
    return line.isClosed || isFresh(known.now, now) ? known.audit : undefined;
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

const isFresh = (then: string, now: string): boolean =>
  Math.abs(Date.parse(now) - Date.parse(then)) < OPEN_STANDS_MS;

const keyOf = ({ from, to }: Period): string => `${from} ${to}`;

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
