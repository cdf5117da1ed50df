import type { Store, Summary } from '../store/store.ts';
import { fold } from './fold.ts';
import { type StreamKind, StreamKinds, splitStream } from './stream-kind.ts';

/**
 * Makes every list anew from the log, one stream in memory at a time. For when a release makes its lists otherwise,
 * or somebody doubts them.
 *
 * @returns how many streams were read
 * @throws LogDamaged if the log itself is not whole; then the lists stay as they were
 */
export async function rebuildSummaries(
  store: Store,
  kindList: readonly StreamKind<unknown>[],
): Promise<number> {
  const kinds = new StreamKinds(kindList);
  let streams = 0;
  async function* summaries(): AsyncIterable<Summary> {
    for await (const stream of store.streams()) {
      streams += 1;
      const kind = kinds.of(stream);
      const { id } = splitStream(stream);
      const line = kind.summarise(fold(kind, await store.stream(stream)).state, id);
      if (line !== null) yield { kind: kind.kind, id, sort: line.sort, body: line.body };
    }
  }
  await store.replaceSummaries(summaries());
  return streams;
}
