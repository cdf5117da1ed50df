import type { LogEntry, StoredLine, StreamHead } from '../store/store.ts';
import { EMPTY_STREAM, LogDamaged, unseal } from './chain.ts';
import type { StreamKind } from './stream-kind.ts';

/** A stream's state and where its last entry stands. */
export interface Folded {
  readonly head: StreamHead;
  readonly state: unknown;
}

export function emptyFold(kind: StreamKind<unknown>): Folded {
  return { head: EMPTY_STREAM, state: kind.initial };
}

export function foldOne(kind: StreamKind<unknown>, before: Folded, entry: LogEntry): Folded {
  return { head: { place: entry.place, hash: entry.hash }, state: kind.evolve(before.state, entry) };
}

/**
 * The state of a stream from its stored lines. Nothing that was changed in the database gets into a state.
 *
 * @throws LogDamaged naming the first line that is not what was sealed, or does not follow the one before
 */
export function fold(kind: StreamKind<unknown>, lines: readonly StoredLine[]): Folded {
  let folded = emptyFold(kind);
  for (const line of lines) {
    const entry = unseal(line);
    refuseGap(line, entry, folded.head);
    folded = foldOne(kind, folded, entry);
  }
  return folded;
}

function refuseGap(line: StoredLine, entry: LogEntry, before: StreamHead): void {
  if (entry.place !== before.place + 1) {
    throw new LogDamaged(line, `the entry before it in its stream has place ${before.place}`);
  }
  if (entry.previousInStream !== before.hash) {
    throw new LogDamaged(line, 'it does not follow the entry before it in its stream');
  }
}
