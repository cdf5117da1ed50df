/** A store that fails or waits on demand, in front of a real one. */
import { StorageUnavailable } from '../../../server/store/storage-unavailable.ts';
import type { Batch, Store, StoredLine } from '../../../server/store/store.ts';

export interface FailingStore extends Store {
  /** What the next commits do: fail without writing, or write and then fail, as a lost connection would. */
  failNext: ('before writing' | 'after writing')[];
  /** Each commit that was tried. */
  readonly batches: Batch[];
  /** Awaited before each commit. */
  beforeCommit: () => Promise<void>;
  /** Awaited after a stream was read and before it is handed out. */
  afterRead: (stream: string) => Promise<void>;
}

export function failingStore(store: Store): FailingStore {
  const failing: FailingStore = {
    failNext: [],
    batches: [],
    beforeCommit: async () => {},
    afterRead: async () => {},
    async commit(batch) {
      failing.batches.push(batch);
      await failing.beforeCommit();
      const failure = failing.failNext.shift();
      if (failure !== 'before writing') await store.commit(batch);
      if (failure !== undefined) throw new StorageUnavailable(`made to fail ${failure}`);
    },
    async stream(stream): Promise<readonly StoredLine[]> {
      const lines = await store.stream(stream);
      await failing.afterRead(stream);
      return lines;
    },
    isShared: store.isShared,
    alone: (work) => store.alone(() => work((batch) => failing.commit(batch))),
    inTurn: (name, work) => store.inTurn(name, work),
    head: () => store.head(),
    streamHead: (stream) => store.streamHead(stream),
    line: (at) => store.line(at),
    lines: (fromSeq) => store.lines(fromSeq),
    streams: () => store.streams(),
    blob: (hash) => store.blob(hash),
    answered: (requestId) => store.answered(requestId),
    summaries: (kind, page) => store.summaries(kind, page),
    summary: (kind, id) => store.summary(kind, id),
    replaceSummaries: (all) => store.replaceSummaries(all),
    outside: (kind, id) => store.outside(kind, id),
    outsideAll: (kind) => store.outsideAll(kind),
    putOutside: (record) => store.putOutside(record),
    deleteOutside: (kind, id) => store.deleteOutside(kind, id),
    close: () => store.close(),
  };
  return failing;
}
