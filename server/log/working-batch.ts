/** One tick's acts, decided one after the other in memory; nothing of it counts until the store has committed it. */
import type { Json } from '../../procedures/json.ts';
import { Refusal } from '../../safety/refusal.ts';
import type { Answered, Batch, Head, SealedEntry, StoredBlob, Summary } from '../store/store.ts';
import type { Act, Decision, EntryDraft, Read } from './act.ts';
import { blobsOf } from './blobs.ts';
import { canonical } from './canonical.ts';
import { seal } from './chain.ts';
import { type Folded, foldOne } from './fold.ts';
import { type StreamKind, type StreamKinds, splitStream } from './stream-kind.ts';

export interface BatchStart {
  readonly kinds: StreamKinds;
  readonly head: Head;
  /** The streams that the acts name, as they stand; or why one could not be read. */
  readonly streams: ReadonlyMap<string, Folded | Error>;
  readonly codeVersion: string;
  now(): Date;
}

type Line = ReturnType<StreamKind<unknown>['summarise']>;

export class WorkingBatch {
  readonly #start: BatchStart;
  readonly #streams: Map<string, Folded | Error>;
  readonly #entries: SealedEntry[] = [];
  readonly #answers = new Map<string, Answered>();
  readonly #lines = new Map<string, Line>();
  readonly #blobs = new Map<string, StoredBlob>();
  #head: Head;

  constructor(start: BatchStart) {
    this.#start = start;
    this.#streams = new Map(start.streams);
    this.#head = start.head;
  }

  /** Decides one act on top of those before it. @throws Refusal, or a fault; then nothing of the act stays. */
  decide<Answer extends Json>(act: Act<Answer>): Answer {
    const earlier = act.requestId === null ? undefined : this.#answers.get(act.requestId);
    if (earlier !== undefined) return sameAnswer<Answer>(act, earlier);
    for (const stream of act.streams) this.#folded(stream);
    const now = this.#start.now().toISOString();
    const decision = act.decide(this.#readFor(act, now));
    const answer: Answer = JSON.parse(canonical(decision.answer));
    this.#append(act, { decision, now });
    if (act.requestId !== null) {
      const { requestId, person, fingerprint } = act;
      this.#answers.set(requestId, { requestId, person, fingerprint, answer });
    }
    return answer;
  }

  get isEmpty(): boolean {
    return this.#entries.length === 0 && this.#answers.size === 0;
  }

  get entries(): readonly SealedEntry[] {
    return this.#entries;
  }

  get head(): Head {
    return this.#head;
  }

  /** The streams as they stand after all the acts. */
  *folds(): Iterable<readonly [stream: string, folded: Folded]> {
    for (const [stream, folded] of this.#streams) {
      if (!(folded instanceof Error)) yield [stream, folded];
    }
  }

  toStore(): Batch {
    const summaries: Summary[] = [];
    const withdrawn: Pick<Summary, 'kind' | 'id'>[] = [];
    for (const [stream, line] of this.#lines) {
      const { kind, id } = splitStream(stream);
      if (line === null) withdrawn.push({ kind, id });
      else summaries.push({ kind, id, sort: line.sort, body: line.body });
    }
    return {
      entries: this.#entries,
      summaries,
      withdrawn,
      answers: [...this.#answers.values()],
      blobs: [...this.#blobs.values()],
    };
  }

  #readFor(act: Act, now: string): Read {
    const named = new Set(act.streams);
    const folded = (kind: Parameters<Read['place']>[0], id?: string): Folded => {
      const stream = this.#start.kinds.streamOf(kind, id);
      refuseUndeclared(named, stream);
      return this.#folded(stream);
    };
    return {
      now,
      // What the kind's own `evolve` made, and no other kind of that name can be registered: so it is its State.
      state: <State>(kind: Parameters<Read['place']>[0], id?: string) => folded(kind, id).state as State,
      place: (kind, id) => folded(kind, id).head.place,
    };
  }

  /** All entries of the act or none: only when the last was sealed, folded and summarised does any of it count. */
  #append(act: Act, decided: { decision: Decision; now: string }): void {
    const entries: SealedEntry[] = [];
    const named = new Set(act.streams);
    const streams = new Map<string, Folded>();
    let head = this.#head;
    const { blobs = [] } = decided.decision;
    for (const draft of decided.decision.entries) {
      refuseWithoutBlob(draft, blobs);
      refuseUndeclared(named, draft.stream);
      const before = streams.get(draft.stream) ?? this.#folded(draft.stream);
      const sealed = seal(this.#unsealed(act, { draft, now: decided.now }), {
        head,
        streamHead: before.head,
      });
      streams.set(draft.stream, foldOne(this.#start.kinds.of(draft.stream), before, sealed.entry));
      entries.push(sealed);
      head = { seq: sealed.entry.seq, hash: sealed.entry.hash };
    }
    const lines = Array.from(streams, ([stream, folded]) => [stream, this.#lineOf(stream, folded)] as const);
    this.#entries.push(...entries);
    for (const blob of blobs) this.#blobs.set(blob.hash, blob);
    for (const [stream, folded] of streams) this.#streams.set(stream, folded);
    for (const [stream, line] of lines) this.#lines.set(stream, line);
    this.#head = head;
  }

  #lineOf(stream: string, folded: Folded): Line {
    return this.#start.kinds.of(stream).summarise(folded.state, splitStream(stream).id);
  }

  #unsealed(act: Act, { draft, now }: { draft: EntryDraft; now: string }) {
    return {
      stream: draft.stream,
      at: now,
      person: act.person,
      screen: act.screen,
      kind: draft.kind,
      inputs: draft.inputs,
      outcome: draft.outcome,
      effects: draft.effects,
      codeVersion: this.#start.codeVersion,
      requestId: act.requestId,
    };
  }

  #folded(stream: string): Folded {
    const folded = this.#streams.get(stream);
    if (folded === undefined) throw new TypeError(`The stream "${stream}" was not loaded.`);
    if (folded instanceof Error) throw folded;
    return folded;
  }
}

function refuseUndeclared(named: ReadonlySet<string>, stream: string): void {
  if (named.has(stream)) return;
  throw new TypeError(`The act reads or writes "${stream}" but names only ${[...named].join(', ')}.`);
}

/** No entry may name a photo that is not kept with it. */
function refuseWithoutBlob(draft: EntryDraft, blobs: readonly StoredBlob[]): void {
  const missing = blobsOf(draft).find((hash) => blobs.every((blob) => blob.hash !== hash));
  if (missing !== undefined)
    throw new TypeError(`An entry names the photo ${missing}, which came without it.`);
}

/**
 * The answer that the request got before.
 *
 * @throws Refusal LOG-001 if it was another person's request, or asked for something else
 */
export function sameAnswer<Answer extends Json>(act: Act<Answer>, earlier: Answered): Answer {
  if (earlier.person === act.person && earlier.fingerprint === act.fingerprint) {
    // The answer of this very request, kept as JSON.
    return earlier.answer as Answer;
  }
  throw new Refusal({
    kind: 'conflict',
    code: 'LOG-001',
    what: 'This page was already sent, by somebody else or with other content.',
    kept: 'What was sent first stands; nothing of this was recorded.',
    next: 'Load the page again and enter it there.',
  });
}
