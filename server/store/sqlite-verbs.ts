/**
 * The store's verbs in SQLite. With its statements and migrations this is the only place that speaks SQL.
 *
 * Write-ahead log with synchronous=FULL: a commit that returned survives a power cut. One connection writes.
 * When Node 20 is dropped, `node:sqlite` takes the package's place by one import.
 */
import { statSync } from 'node:fs';
import type { DatabaseSyncInstance } from '@photostructure/sqlite';
import type { Json } from '../../procedures/json.ts';
import { canonical } from '../log/canonical.ts';
import { EMPTY_HEAD, EMPTY_STREAM } from '../log/chain.ts';
import type { FolderLock } from './folder-lock.ts';
import { mayGoOn, reasonOf } from './sqlite-error.ts';
import { prepareStatements, type Statements } from './sqlite-statements.ts';
import { StorageUnavailable } from './storage-unavailable.ts';
import type {
  Answered,
  Batch,
  Head,
  Outside,
  Store,
  StoredLine,
  StreamHead,
  Summary,
  SummaryPage,
} from './store.ts';
import { Turns } from './turns.ts';

/** How many rows are read at once: an open statement would keep the write-ahead log from being emptied. */
const PAGE_ROWS = 500;

export class SqliteStore implements Store {
  readonly #database: DatabaseSyncInstance;
  readonly #lock: FolderLock | undefined;
  readonly #path: string;
  readonly #inode: bigint | undefined;
  readonly #sql: Statements;
  readonly #turns = new Turns();
  #broken: StorageUnavailable | undefined;
  /** The lock on the folder keeps other servers off. */
  readonly isShared = false;

  constructor(opened: {
    database: DatabaseSyncInstance;
    path: string;
    lock: FolderLock | undefined;
    /** False for a copy from before photos, which is only read. */
    hasBlobs: boolean;
  }) {
    this.#database = opened.database;
    this.#lock = opened.lock;
    this.#path = opened.path;
    this.#inode = inodeOf(opened.path);
    this.#sql = prepareStatements(opened.database, opened);
  }

  async alone<T>(work: (commit: Store['commit']) => Promise<T>): Promise<T> {
    return await work((batch) => this.commit(batch));
  }

  async inTurn<T>(name: string, work: () => Promise<T>): Promise<T> {
    return await this.#turns.take(name, work);
  }

  async head(): Promise<Head> {
    return this.#sql.head.get() ?? EMPTY_HEAD;
  }

  async streamHead(stream: string): Promise<StreamHead> {
    return this.#sql.streamHead.get(stream) ?? EMPTY_STREAM;
  }

  async commit(batch: Batch): Promise<void> {
    // Written out first: what cannot be written as JSON is a fault of the caller, not of the disk.
    const summaries = batch.summaries.map((summary) => ({ ...summary, body: canonical(summary.body) }));
    const answers = batch.answers.map((answered) => ({ ...answered, answer: canonical(answered.answer) }));
    this.#write(() => {
      for (const { hash, bytes } of batch.blobs ?? []) this.#sql.putBlob?.run(hash, bytes);
      for (const { entry, bytes } of batch.entries) {
        this.#sql.append.run(entry.seq, entry.stream, entry.place, entry.hash, bytes);
      }
      for (const { kind, id, sort, body } of summaries) this.#sql.putSummary.run(kind, id, sort, body);
      for (const { kind, id } of batch.withdrawn) this.#sql.deleteSummary.run(kind, id);
      for (const { requestId, person, fingerprint, answer } of answers) {
        this.#sql.answer.run(requestId, person, fingerprint, answer);
      }
    });
  }

  async stream(stream: string): Promise<readonly StoredLine[]> {
    return this.#sql.stream.all(stream);
  }

  async line(at: { readonly stream: string; readonly place: number }): Promise<StoredLine | undefined> {
    return this.#sql.line.get(at.stream, at.place);
  }

  async *lines(fromSeq: number): AsyncIterable<StoredLine> {
    for (let from = fromSeq; ; ) {
      const page: StoredLine[] = this.#sql.lines.all(from, PAGE_ROWS);
      yield* page;
      const last = page.at(-1);
      if (last === undefined || page.length < PAGE_ROWS) return;
      from = last.seq + 1;
    }
  }

  async *streams(): AsyncIterable<string> {
    let next: { stream: string } | undefined = this.#sql.firstStream.get();
    while (next !== undefined) {
      yield next.stream;
      next = this.#sql.nextStream.get(next.stream);
    }
  }

  async blob(hash: string): Promise<Uint8Array | undefined> {
    return this.#sql.blob?.get(hash)?.bytes;
  }

  async answered(requestId: string): Promise<Answered | undefined> {
    const row = this.#sql.answered.get(requestId);
    return row === undefined ? undefined : { ...row, answer: JSON.parse(row.answer) };
  }

  async summaries(kind: string, page: SummaryPage = {}): Promise<readonly Summary[]> {
    const order = this.#sql.summaries[page.order ?? 'up'];
    const limit = page.limit ?? -1;
    const rows =
      page.after === undefined
        ? order.first.all(kind, limit)
        : order.after.all(kind, page.after.sort, page.after.id, limit);
    return rows.map(withBody);
  }

  async summary(kind: string, id: string): Promise<Summary | undefined> {
    const row = this.#sql.summary.get(kind, id);
    return row === undefined ? undefined : withBody(row);
  }

  async replaceSummaries(all: AsyncIterable<Summary>): Promise<void> {
    this.#write(() => this.#sql.clearNext.run());
    // Collected beside the old ones: a transaction held open while waiting would take in what others write.
    for await (const { kind, id, sort, body } of all) {
      const text = canonical(body);
      this.#write(() => this.#sql.putNext.run(kind, id, sort, text));
    }
    this.#write(() => {
      this.#sql.clearSummaries.run();
      this.#sql.takeNext.run();
      this.#sql.clearNext.run();
    });
  }

  async outside(kind: string, id: string): Promise<Json | undefined> {
    const row = this.#sql.outside.get(kind, id);
    return row === undefined ? undefined : JSON.parse(row.body);
  }

  async outsideAll(kind: string): Promise<readonly Outside[]> {
    return this.#sql.outsideAll.all(kind).map(withBody);
  }

  async putOutside(record: Outside): Promise<void> {
    const body = canonical(record.body);
    this.#write(() => this.#sql.putOutside.run(record.kind, record.id, body));
  }

  async deleteOutside(kind: string, id: string): Promise<void> {
    this.#write(() => this.#sql.deleteOutside.run(kind, id));
  }

  async close(): Promise<void> {
    if (this.#database.isOpen) {
      if (this.#lock !== undefined && this.#broken === undefined) this.#emptyWriteAheadLog();
      this.#database.close();
    }
    this.#lock?.release();
  }

  /**
   * So that the one database file is complete when the server has stopped. Closing would do it too, but the package
   * leaves the files open until its prepared statements are collected (`node:sqlite` does not).
   */
  #emptyWriteAheadLog(): void {
    try {
      this.#database.exec('PRAGMA wal_checkpoint(TRUNCATE)');
    } catch (error) {
      // Nothing is lost: what was not moved stays in the write-ahead log, which the next start reads.
      console.error(`The write-ahead log stays beside the database: ${reasonOf(error)}.`);
    }
  }

  /** Runs `statements` as one durable transaction, or leaves everything as it was and says why. */
  #write(statements: () => void): void {
    if (this.#broken !== undefined) throw this.#broken;
    try {
      this.#refuseReplacedFile();
      this.#database.exec('BEGIN IMMEDIATE');
      statements();
      this.#database.exec('COMMIT');
    } catch (error) {
      throw this.#failed(error);
    }
  }

  #failed(error: unknown): StorageUnavailable {
    let goesOn = mayGoOn(error);
    try {
      // After some failures SQLite has rolled back by itself, after others the transaction is still open.
      if (this.#database.isOpen && this.#database.isTransaction) this.#database.exec('ROLLBACK');
    } catch {
      goesOn = false;
    }
    if (goesOn) return new StorageUnavailable(reasonOf(error), { cause: error });
    this.#broken = new StorageUnavailable(
      `${reasonOf(error)}; nothing more is written until the server is started again`,
      { cause: error },
    );
    return this.#broken;
  }

  /** Another file under our name (a backup copied over it) would take no entry that we write and lose them all. */
  #refuseReplacedFile(): void {
    if (inodeOf(this.#path) !== this.#inode) {
      throw new Error('the database file was moved, deleted or replaced while the server was running');
    }
  }
}

function inodeOf(path: string): bigint | undefined {
  return statSync(path, { bigint: true, throwIfNoEntry: false })?.ino;
}

function withBody<Row extends { readonly body: string }>(row: Row): Omit<Row, 'body'> & { body: Json } {
  return { ...row, body: JSON.parse(row.body) };
}
