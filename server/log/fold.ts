import type { LogEntry, StoredLine, StreamHead } from '../store/store.ts';
import { EMPTY_STREAM, LogDamaged, unseal } from './chain.ts';
import type { StreamKind } from './stream-kind.ts';

/** A stream's state and where its last entry stands. */
export interface Folded {
  readonly head: StreamHead;
  readonly state: unknown;
}

export function foldOne(kind: StreamKind<unknown>, before: Folded, entry: LogEntry): Folded {
  return { head: { place: entry.place, hash: entry.hash }, state: kind.evolve(before.state, entry) };
}

/** The state after all entries of a stream, that were read and found whole before. */
export function stateAfter<State>(kind: StreamKind<State>, entries: readonly LogEntry[]): State {
  return (
    kind.evolveAll?.(entries) ?? entries.reduce((state, entry) => kind.evolve(state, entry), kind.initial)
  );
}

/**
 * The state of a stream from its stored lines. Nothing that was changed in the database gets into a state.
 *
 * @throws LogDamaged naming the first line that is not what was sealed, or does not follow the one before
 */
export function fold(kind: StreamKind<unknown>, lines: readonly StoredLine[]): Folded {
  let head = EMPTY_STREAM;
  const entries: LogEntry[] = [];
  for (const line of lines) {
    const entry = unseal(line);
    refuseGap(line, entry, head);
    head = { place: entry.place, hash: entry.hash };
    entries.push(entry);
  }
  return { head, state: stateAfter(kind, entries) };
}

function refuseGap(line: StoredLine, entry: LogEntry, before: StreamHead): void {
  if (entry.place !== before.place + 1) {
    throw new LogDamaged(line, `the entry before it in its stream has place ${before.place}`);
  }
  if (entry.previousInStream !== before.hash) {
    throw new LogDamaged(line, 'it does not follow the entry before it in its stream');
  }
}
