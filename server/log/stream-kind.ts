import type { LogEntry, Summary } from '../store/store.ts';

/**
 * How the entries of one kind of stream become a state, and that state a line of a list. Pure: no clock, no disk,
 * and never a change to the state given, for it is shared.
 *
 * @example
 * const gear: StreamKind<Gear> = {
 *   kind: 'gear',
 *   initial: { name: '', retired: false },
 *   evolve: (state, entry) => (entry.kind === 'gear-retired' ? { ...state, retired: true } : state),
 *   summarise: (state) => (state.retired ? null : { sort: state.name, body: { name: state.name } }),
 * };
 */
export interface StreamKind<State> {
  /** The part of the stream's name before the colon. */
  readonly kind: string;
  readonly initial: State;
  evolve(state: State, entry: LogEntry): State;
  /** What `evolve` makes of all entries from the initial state, where that can be had faster at once. */
  evolveAll?(entries: readonly LogEntry[]): State;
  /** The stream's line in the list of its kind; null for none. */
  summarise(state: State, id: string): Pick<Summary, 'sort' | 'body'> | null;
}

const KIND = /^[a-z][a-z0-9-]*$/;
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is kept out
const ID = /^[^\u0000-\u001f\u007f\p{Surrogate}]{1,200}$/u;

/**
 * The name of a stream. A kind of which there is only one, as `site`, has no id.
 *
 * @throws TypeError for an id that is too long or holds control characters
 * @example streamOf('job', '137') // 'job:137'
 * @example streamOf('site') // 'site'
 */
export function streamOf(kind: string, id = ''): string {
  if (!KIND.test(kind)) throw new TypeError(`"${kind}" is no kind of stream.`);
  if (id === '') return kind;
  if (!ID.test(id)) throw new TypeError(`"${id}" cannot be the id of a ${kind}.`);
  return `${kind}:${id}`;
}

/** @example splitStream('valve:FV-214') // { kind: 'valve', id: 'FV-214' } */
export function splitStream(stream: string): { readonly kind: string; readonly id: string } {
  const colon = stream.indexOf(':');
  return colon < 0 ? { kind: stream, id: '' } : { kind: stream.slice(0, colon), id: stream.slice(colon + 1) };
}

/** The kinds that a log knows, by the name of the stream. */
export class StreamKinds {
  readonly #byKind = new Map<string, StreamKind<unknown>>();

  constructor(kinds: readonly StreamKind<unknown>[]) {
    for (const kind of kinds) {
      if (this.#byKind.has(kind.kind)) throw new TypeError(`Two kinds of stream are called "${kind.kind}".`);
      streamOf(kind.kind);
      this.#byKind.set(kind.kind, kind);
    }
  }

  /** @throws TypeError if nobody registered the kind */
  of(stream: string): StreamKind<unknown> {
    const { kind, id } = splitStream(stream);
    const found = this.#byKind.get(kind);
    if (found === undefined) throw new TypeError(`No kind of stream is registered for "${stream}".`);
    streamOf(kind, id);
    return found;
  }

  /** @throws TypeError if `kind` is not the very one that was registered */
  streamOf(kind: StreamKind<unknown>, id?: string): string {
    const stream = streamOf(kind.kind, id);
    if (this.of(stream) !== kind) throw new TypeError(`Another kind is registered as "${kind.kind}".`);
    return stream;
  }
}
