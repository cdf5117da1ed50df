/** What the jobs of each valve of a plant say, worked out once and kept: a plant may have twenty thousand valves. */
import { linesOfJobs } from '../jobs/lines-of-jobs.ts';
import type { KeptList } from '../log/kept-list.ts';
import type { SiteLog } from '../log/site-log.ts';
import { splitStream } from '../log/stream-kind.ts';
import type { Tell } from '../long/long-work.ts';
import type { SavedValve } from '../pages/valve-parts.ts';
import { type ReadValve, readValve } from './plant-history.ts';

interface Of {
  readonly log: SiteLog;
  readonly valves: KeptList<{ readonly tag: string }>;
  readonly jobs: KeptList<{ readonly id: string; readonly tag: string }>;
  /** Ids of the jobs of a valve. */
  readonly jobsByTag: () => Promise<{ of(tag: string): Iterable<string> }>;
}

/**
 * Each commit marks the valves that it touched, and only those are read again. A reading that was stopped goes on later
 * from where it was.
 */
export class PlantReadings {
  readonly #of: Of;
  readonly #valves = new Map<string, ReadValve>();
  /** Tags of valves that are to be read. */
  readonly #wanted = new Set<string>();
  /** Those that somebody is reading at this moment. */
  readonly #going = new Set<Promise<void>>();
  readonly #grownJobs = new Set<string>();
  #inUse: readonly ReadValve[] | undefined;
  #began = false;

  constructor(of: Of) {
    this.#of = of;
    of.log.onCommit(({ stream }) => {
      const { kind, id } = splitStream(stream);
      if (kind === 'valve') this.#wanted.add(id);
      if (kind === 'job') this.#grownJobs.add(id);
    });
  }

  /** How many valves are to be read before the plant can be told. */
  async wanting(): Promise<number> {
    const { valves, jobs: listed } = this.#of;
    if (!this.#began) for (const tag of (await valves.byId()).keys()) this.#wanted.add(tag);
    this.#began = true;
    const jobs = await listed.byId();
    for (const id of [...this.#grownJobs]) {
      this.#grownJobs.delete(id);
      const tag = jobs.get(id)?.tag;
      if (tag !== undefined) this.#wanted.add(tag);
    }
    return this.#wanted.size;
  }

  /** Those in use. @throws whatever `tell` throws; what was read stays */
  async valves(tell: Tell): Promise<readonly ReadValve[]> {
    const all = await this.wanting();
    let done = 0;
    for (const tag of this.#wanted) {
      await tell({ doing: 'reading valve', done, of: Math.max(all, done + this.#wanted.size) });
      await this.#read(tag);
      done += 1;
    }
    await Promise.all(this.#going);
    this.#inUse ??= [...this.#valves.values()];
    return this.#inUse;
  }

  async #read(tag: string): Promise<void> {
    // Taken off before it is read: what is committed meanwhile marks it again.
    this.#wanted.delete(tag);
    const reading = this.#readNow(tag);
    this.#going.add(reading);
    try {
      await reading;
    } catch (error) {
      this.#wanted.add(tag);
      throw error;
    } finally {
      this.#going.delete(reading);
    }
  }

  async #readNow(tag: string): Promise<void> {
    const { log, jobsByTag } = this.#of;
    const valve = (await log.summary('valve', tag))?.body as unknown as SavedValve | undefined;
    const lines = await linesOfJobs(log, (await jobsByTag()).of(tag));
    if (valve === undefined || valve.retired) this.#valves.delete(tag);
    else this.#valves.set(tag, readValve(valve.sheet, lines));
    this.#inUse = undefined;
  }
}
