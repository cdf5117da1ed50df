import { SSEStreamingApi } from 'hono/streaming';
import type { Committed } from '../log/site-log.ts';

/** How many screens are told at once; one more asks again by itself every few seconds instead. */
export const LIVE_MAX = 60;
/** And of one person: a browser opens at most six connections to one server. */
export const LIVE_EACH_MAX = 6;
/** A screen that hears nothing for longer than twice this knows that its link is lost. */
export const BEAT_MS = 2000;

interface Listener {
  readonly person: string;
  readonly wanted: (stream: string) => boolean;
  /** Newest place by stream, waiting to be written: a slow screen gets the last word, not every word. */
  readonly waiting: Map<string, number>;
  readonly stream: SSEStreamingApi;
  writing: boolean;
  timer: NodeJS.Timeout | undefined;
}

export interface ListenOptions {
  readonly person: string;
  /** Which streams the screen shows. */
  readonly wanted: (stream: string) => boolean;
  /** Whether whoever is told is still signed in; asked now and then. */
  readonly stillThere: () => Promise<boolean>;
}

/** Beats between two looks at whether somebody is still signed in. */
const LOOK_EVERY = 5;

/**
 * Tells open screens that something was committed: which stream, and its newest place. Nothing else leaves here;
 * each screen fetches what its own person may see.
 */
export class LiveChannel {
  readonly #listeners = new Set<Listener>();
  #closed = false;

  get count(): number {
    return this.#listeners.size;
  }

  /** @returns the body of the answer, or null where there are too many already; it listens once it is read */
  open(options: ListenOptions): ReadableStream | null {
    const own = [...this.#listeners].filter((one) => one.person === options.person).length;
    if (this.#closed || this.#listeners.size >= LIVE_MAX || own >= LIVE_EACH_MAX) return null;
    let reader: ReadableStreamDefaultReader<Uint8Array> | undefined;
    const pull = async (controller: ReadableStreamDefaultController<Uint8Array>): Promise<void> => {
      reader ??= this.#listen(options).getReader();
      const { done, value } = await reader.read();
      if (done) controller.close();
      else controller.enqueue(value);
    };
    return new ReadableStream<Uint8Array>(
      { pull, cancel: async (reason) => await reader?.cancel(reason) },
      { highWaterMark: 0 },
    );
  }

  #listen({ person, wanted, stillThere }: ListenOptions): ReadableStream<Uint8Array> {
    const { readable, writable } = new TransformStream<Uint8Array, Uint8Array>();
    const stream = new SSEStreamingApi(writable, readable);
    const waiting = new Map<string, number>();
    const listener: Listener = { person, wanted, waiting, stream, writing: false, timer: undefined };
    this.#listeners.add(listener);
    stream.onAbort(() => this.#drop(listener));
    this.#beat(listener, { stillThere, beats: 0 });
    return stream.responseReadable;
  }

  tell({ stream, place }: Committed): void {
    for (const listener of this.#listeners) {
      if (!listener.wanted(stream)) continue;
      listener.waiting.set(stream, place);
      void this.#write(listener);
    }
  }

  /** Ends every stream, so that the server can stop. */
  async close(): Promise<void> {
    this.#closed = true;
    await Promise.all([...this.#listeners].map((listener) => this.#end(listener)));
  }

  async #write(listener: Listener): Promise<void> {
    if (listener.writing) return;
    listener.writing = true;
    try {
      for (const [stream, place] of listener.waiting) {
        listener.waiting.delete(stream);
        await listener.stream.writeSSE({ data: JSON.stringify({ stream, place }) });
      }
    } finally {
      listener.writing = false;
    }
  }

  #beat(
    listener: Listener,
    of: { readonly stillThere: ListenOptions['stillThere']; readonly beats: number },
  ): void {
    const { stillThere, beats } = of;
    void this.#sayAlive(listener);
    listener.timer = setTimeout(() => {
      const look = beats > 0 && beats % LOOK_EVERY === 0;
      const going = look ? stillThere() : Promise.resolve(true);
      void going.then(
        (there) => (there ? this.#beat(listener, { stillThere, beats: beats + 1 }) : this.#end(listener)),
        () => this.#end(listener),
      );
    }, BEAT_MS);
    listener.timer.unref();
  }

  async #sayAlive(listener: Listener): Promise<void> {
    if (listener.writing) return;
    listener.writing = true;
    try {
      await listener.stream.writeSSE({ event: 'beat', data: '' });
    } finally {
      listener.writing = false;
    }
    if (listener.waiting.size > 0) await this.#write(listener);
  }

  async #end(listener: Listener): Promise<void> {
    this.#drop(listener);
    listener.stream.abort();
    await listener.stream.close();
  }

  #drop(listener: Listener): void {
    clearTimeout(listener.timer);
    this.#listeners.delete(listener);
  }
}
