/**
 * The way into the log. Everything that happens is an act: it is decided in memory on the state of the log, and
 * answered once the store has made it durable. All acts that wait at one moment share one commit.
 */
import { setImmediate as nextTick } from 'node:timers/promises';
import type { Json } from '../../procedures/json.ts';
import { StorageUnavailable } from '../store/storage-unavailable.ts';
import type { Answered, Head, LogEntry, Store, Summary, SummaryPage } from '../store/store.ts';
import type { Act, EntryDraft } from './act.ts';
import { unseal } from './chain.ts';
import { type Folded, fold } from './fold.ts';
import { FoldCache } from './fold-cache.ts';
import { Shared, writtenSince } from './others.ts';
import { asError, asUnavailable, decided, type Outcome, settle, type Waiting } from './outcome.ts';
import { type StreamKind, StreamKinds } from './stream-kind.ts';
import { WorkingBatch } from './working-batch.ts';

export interface SiteLogOptions {
  readonly store: Store;
  readonly kinds: readonly StreamKind<unknown>[];
  now(): Date;
  /** Release of the program, written into every entry. */
  readonly codeVersion: string;
  /** How many streams' states are kept in memory. */
  readonly cachedStreamsMax?: number;
  /** Looks at what an act would write, and throws to have nothing of it written. */
  gate?(entries: readonly EntryDraft[]): void;
  /** Told of what a listener throws; without it, the console is. */
  report?(error: unknown): void;
}

/** What a live screen is told; it fetches its own view. */
export interface Committed {
  readonly stream: string;
  readonly place: number;
}

type Listener = (committed: Committed) => void;

/** So that the first of a crowd does not wait for the last. */
const BATCH_MAX = 256;

/**
 * @example
 * const log = new SiteLog({ store, kinds: streamKinds, now: () => new Date(), codeVersion: '0.1.0' });
 * const answer = await log.act({
 *   requestId: form.requestId,
 *   fingerprint: fingerprintOf({ gear: 'G-07', act: 'retire' }),
 *   person: 't1',
 *   screen: 'bench 2',
 *   streams: [streamOf('gear', 'G-07')],
 *   decide: (read) => {
 *     if (read.state(gear, 'G-07').retired) throw new Refusal({ kind: 'conflict', ... });
 *     return {
 *       entries: [{ stream: 'gear:G-07', kind: 'gear-retired', inputs: {}, outcome: {}, effects: {} }],
 *       answer: { retired: true },
 *     };
 *   },
 * });
 */
export class SiteLog {
  readonly #options: SiteLogOptions;
  readonly #store: Store;
  readonly #kinds: StreamKinds;
  readonly #cache: FoldCache;
  readonly #listeners = new Set<Listener>();
  readonly #lookAtOthers = new Shared(() => this.#catchUpOnce());
  #head: Head | undefined;
  #waiting: Waiting[] = [];
  #running: Promise<void> | undefined;
  /** Counts commits, failed ones too, so that a state read while one went through is not taken for the newest. */
  #commits = 0;
  #closed = false;

  constructor(options: SiteLogOptions) {
    this.#options = options;
    this.#store = options.store;
    this.#kinds = new StreamKinds(options.kinds);
    this.#cache = new FoldCache(options.cachedStreamsMax ?? 1000);
  }

  /**
   * Does one act, and resolves with its answer when it is on the disk. The same request sent again gets the same
   * answer and writes nothing.
   *
   * @throws Refusal from `decide`; or LOG-001 for a request id used by another person or for something else
   * @throws StorageUnavailable if it could not be made durable
   * @throws LogDamaged if one of the act's streams was changed in the database
   */
  act<Answer extends Json>(act: Act<Answer>): Promise<Answer> {
    return new Promise((resolve, reject) => {
      if (this.#closed) throw new StorageUnavailable('the server is stopping');
      // The batch answers each act with what its own `decide` returned.
      this.#waiting.push({ act: this.#gated(act), resolve: (answer) => resolve(answer as Answer), reject });
      this.#running ??= this.#run();
    });
  }

  #gated(act: Act): Act {
    const { gate } = this.#options;
    if (gate === undefined) return act;
    const decide: Act['decide'] = (read) => {
      const decision = act.decide(read);
      gate(decision.entries);
      return decision;
    };
    return { ...act, decide };
  }

  /** The state of a stream as last committed. */
  async state<State>(kind: StreamKind<State>, id?: string): Promise<State> {
    const stream = this.#kinds.streamOf(kind, id);
    await this.catchUp();
    // Made by this kind's own `evolve`.
    return (await this.#load(stream)).state as State;
  }

  /** How many entries a stream has. */
  async place(stream: string): Promise<number> {
    await this.catchUp();
    const cached = this.#cache.get(stream);
    if (cached !== undefined) return cached.head.place;
    // A stream that is not in memory is not worked out for a number that the store has.
    this.#kinds.of(stream);
    return (await this.#store.streamHead(stream)).place;
  }

  /** @throws LogDamaged if one was changed in the database */
  async entriesOf(stream: string): Promise<readonly LogEntry[]> {
    return (await this.#store.stream(stream)).map(unseal);
  }

  summaries(kind: string, page?: SummaryPage): Promise<readonly Summary[]> {
    return this.#store.summaries(kind, page);
  }

  summary(kind: string, id: string): Promise<Summary | undefined> {
    return this.#store.summary(kind, id);
  }

  head(): Promise<Head> {
    return this.#store.head();
  }

  /**
   * Learns what other servers have written until now, and tells the listeners of it; nothing where there are none.
   * @throws StorageUnavailable where the log no longer holds what was confirmed here
   */
  async catchUp(): Promise<void> {
    if (this.#store.isShared) await this.#lookAtOthers.done();
  }

  /** One after the other for each name, on all servers of the site. */
  inTurn<T>(name: string, work: () => Promise<T>): Promise<T> {
    return this.#store.inTurn(name, work);
  }

  /** Calls `listener` for each entry once it is durable, whichever server wrote it. @returns what stops it */
  onCommit(listener: Listener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  get isClosed(): boolean {
    return this.#closed;
  }

  /** Lets the acts that wait finish, then closes the store. */
  async close(): Promise<void> {
    this.#closed = true;
    await this.#running;
    await this.#store.close();
  }

  async #run(): Promise<void> {
    while (this.#waiting.length > 0) {
      await this.#gather();
      const batch = this.#waiting.splice(0, BATCH_MAX);
      await this.#runBatch(batch);
    }
    this.#running = undefined;
  }

  /**
   * Requests that have arrived meanwhile are read in these turns of the loop, and join the batch. One turn would do for
   * them; but a turn lets in one new connection only (libuv, pull request 3696), and who comes late to a crowd would wait
   * until all the others had been answered.
   */
  async #gather(): Promise<void> {
    for (let before = 0; before < this.#waiting.length && before < BATCH_MAX; ) {
      before = this.#waiting.length;
      await nextTick();
    }
  }

  async #runBatch(waiting: readonly Waiting[]): Promise<void> {
    let outcomes: readonly Outcome[] = [];
    try {
      const working = await this.#store.alone(async (commit) => {
        await this.catchUp();
        const earlier = await this.#earlierAnswers(waiting);
        const started = await this.#startBatch(waiting);
        outcomes = waiting.map(({ act }, index) => decided(act, { answered: earlier[index], in: started }));
        await this.#commit(started, commit);
        return started;
      });
      for (const [index, each] of waiting.entries()) settle(each, outcomes[index]);
      for (const { entry } of working.entries) this.#tell({ stream: entry.stream, place: entry.place });
    } catch (error) {
      this.#forget();
      const failed = { durable: true, error: asUnavailable(error) };
      // Refusals too: what they were refused for may be an act that was not recorded.
      for (const [index, each] of waiting.entries()) {
        settle(each, outcomes[index]?.durable ? outcomes[index] : failed);
      }
    }
  }

  #earlierAnswers(waiting: readonly Waiting[]): Promise<readonly (Answered | undefined)[]> {
    return Promise.all(
      waiting.map(async ({ act }) =>
        act.requestId === null ? undefined : await this.#store.answered(act.requestId),
      ),
    );
  }

  async #startBatch(waiting: readonly Waiting[]): Promise<WorkingBatch> {
    const streams = new Map<string, Folded | Error>();
    const names = new Set(waiting.flatMap(({ act }) => act.streams));
    await Promise.all(
      Array.from(names, async (stream) => {
        // A stream that cannot be read stops only the acts that need it.
        streams.set(stream, await this.#load(stream).catch(asError));
      }),
    );
    this.#head ??= await this.#store.head();
    const { now, codeVersion } = this.#options;
    return new WorkingBatch({ kinds: this.#kinds, head: this.#head, streams, now, codeVersion });
  }

  async #commit(working: WorkingBatch, commit: Store['commit']): Promise<void> {
    if (working.isEmpty) return;
    await commit(working.toStore());
    this.#commits += 1;
    this.#head = working.head;
    for (const [stream, folded] of working.folds()) this.#cache.put(stream, folded);
  }

  #tell(committed: Committed): void {
    for (const listener of this.#listeners) {
      try {
        listener(committed);
      } catch (error) {
        // The entry is durable; a screen that cannot be told must not make it look otherwise.
        (this.#options.report ?? console.error)(error);
      }
    }
  }

  async #load(stream: string): Promise<Folded> {
    const cached = this.#cache.get(stream);
    if (cached !== undefined) return cached;
    const kind = this.#kinds.of(stream);
    const commits = this.#commits;
    const folded = fold(kind, await this.#store.stream(stream));
    if (commits === this.#commits) this.#cache.put(stream, folded);
    return folded;
  }

  /** From the head that is known on: what is found beyond it is news, whoever wrote it. */
  async #catchUpOnce(): Promise<void> {
    const known = this.#head;
    if (known === undefined) {
      const head = await this.#store.head();
      this.#head ??= head;
      return;
    }
    const written = await writtenSince(this.#store, known);
    // A batch of our own went through meanwhile: it had caught up before, and this look is older.
    if (this.#head !== known || written.head === known) return;
    this.#commits += 1;
    this.#head = written.head;
    for (const stream of written.streams.keys()) this.#cache.delete(stream);
    for (const [stream, place] of written.streams) this.#tell({ stream, place });
  }

  #forget(): void {
    this.#commits += 1;
    // Where others write too, the next look goes on from here, and finds what was written after all.
    if (!this.#store.isShared) this.#head = undefined;
    this.#cache.clear();
  }
}
