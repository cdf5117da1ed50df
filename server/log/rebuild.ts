import { TELL_NOBODY, type Tell } from '../long/long-work.ts';
import type { Store, Summary } from '../store/store.ts';
import { fold } from './fold.ts';
import { type StreamKind, StreamKinds, splitStream } from './stream-kind.ts';

/**
 * Makes every list anew from the log, one stream in memory at a time. For when a release makes its lists otherwise,
 * or somebody doubts them.
 *
 * @param kindList  every kind of stream
 * @returns how many streams were read
 * @throws LogDamaged if the log itself is not whole; then the lists stay as they were
 */
export async function rebuildSummaries(
  store: Store,
  kindList: readonly StreamKind<unknown>[],
): Promise<number> {
  return await rebuildTold(store, { kinds: kindList, tell: TELL_NOBODY });
}

/**
 * The same, told stream by stream.
 * @throws Stopped where `tell` says so; then the lists stay as they were
 */
export async function rebuildTold(
  store: Store,
  { kinds: kindList, tell }: { readonly kinds: readonly StreamKind<unknown>[]; readonly tell: Tell },
): Promise<number> {
  let of = 0;
  for await (const _ of store.streams()) of += 1;
  const kinds = new StreamKinds(kindList);
  let streams = 0;
  async function* summaries(): AsyncIterable<Summary> {
    for await (const stream of store.streams()) {
      streams += 1;
      const kind = kinds.of(stream);
      const { id } = splitStream(stream);
      const line = kind.summarise(fold(kind, await store.stream(stream)).state, id);
      if (line !== null) yield { kind: kind.kind, id, sort: line.sort, body: line.body };
      await tell({ doing: 'stream read', done: streams, of });
    }
  }
  await store.replaceSummaries(summaries());
  return streams;
}
