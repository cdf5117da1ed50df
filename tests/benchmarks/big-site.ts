/**
 * Fills a site to the size of a large plant: valves with their sheets and isolation points, and closed jobs, each a copy of what the
 * demo plant has under another number. Written into the store itself, line by line, with the chain that the log would have
 * made, so that verifier and pages meet nothing that they would not meet in a plant.
 */
import { sha256 } from '../../server/log/chain.ts';
import { splitStream } from '../../server/log/stream-kind.ts';
import type { Head, LogEntry, Store, StoredLine, StreamHead, Summary } from '../../server/store/store.ts';

export interface Size {
  readonly valves: number;
  readonly entries: number;
}

/** Lines of the demo plant that belong together, to be written again for another valve. */
interface Template {
  /** `214` of `FV-214`. */
  readonly number: string;
  /** Blank for what belongs to the valve alone. */
  readonly job: string;
  readonly lines: readonly Pieces[];
  readonly summaries: readonly Summary[];
}

interface Pieces {
  readonly stream: string;
  /** Text and marks in turn. */
  readonly parts: readonly string[];
}

const MARKS = {
  previousHash: '\u0001',
  previousInStream: '\u0002',
  seq: '\u0003',
  place: '\u0004',
  number: '\u0005',
  job: '\u0006',
  request: '\u0007',
} as const;
// biome-ignore lint/suspicious/noControlCharactersInRegex: the marks are characters that no line has
const MARKED = /([\u0001-\u0007])/;
const COMMIT_LINES = 4000;
/** Numbers of valves and jobs that the demo plant does not have. */
const NUMBERS_FROM = 100_000;

/** @returns how many lines the log then has */
export async function fillSite(store: Store, size: Size): Promise<number> {
  const { valves, jobs } = await templatesOf(store);
  const writer = new Writer(store, await store.head());
  await writer.knowStreams();
  for (let at = 0; at < size.valves; at += 1)
    await writer.write(pick(valves, at), { number: String(NUMBERS_FROM + at), job: '' });
  for (let at = 0; writer.head.seq < size.entries; at += 1) {
    const template = pick(jobs, at);
    // Every valve of its kind in turn: which valves were made from which of the demo's is counted as above.
    const kin = valves.findIndex(({ number }) => number === template.number);
    const turn = Math.floor(at / jobs.length) % Math.max(1, Math.floor(size.valves / valves.length));
    const number = String(NUMBERS_FROM + turn * valves.length + kin);
    await writer.write(template, { number, job: String(NUMBERS_FROM + at) });
  }
  await writer.flush();
  return writer.head.seq;
}

function pick<T>(all: readonly T[], at: number): T {
  const one = all[at % all.length];
  if (one === undefined) throw new Error('The demo plant has nothing to copy.');
  return one;
}

async function templatesOf(
  store: Store,
): Promise<{ valves: readonly Template[]; jobs: readonly Template[] }> {
  const lines: StoredLine[] = [];
  for await (const line of store.lines(1)) lines.push(line);
  const entries = new Map(lines.map((line) => [line, JSON.parse(line.bytes) as LogEntry]));
  const numbers = lines.flatMap(({ stream }) => /^valve:[A-Z]+-(\d+)$/.exec(stream)?.[1] ?? []);
  const closed = new Set(
    (await store.summaries('job'))
      .filter(({ body }) => (body as { closedAs?: unknown }).closedAs !== null)
      .map(({ id }) => id),
  );
  const [valves, jobs]: [Template[], Template[]] = [[], []];
  for (const number of new Set(numbers)) {
    // A valve that is worked on would lend its locks to all its copies.
    if (await isWorkedOn(store, number)) continue;
    const own = lines.filter(({ stream }) => belongsTo(stream, number));
    const first = own.filter((line) => /sheet-saved|point-described/.test(entries.get(line)?.kind ?? ''));
    valves.push(await templateOf(store, { number, job: '', lines: first }));
    for (const job of closed) {
      const [begin, end] = [
        lines.find(({ stream }) => stream === `job:${job}`),
        lines.findLast(({ stream }) => stream === `job:${job}`),
      ];
      if (begin === undefined || end === undefined || !begin.bytes.includes(`-${number}"`)) continue;
      // What the same acts wrote beside the job, at its valve and its points.
      const requests = new Set(
        lines.filter(({ stream }) => stream === `job:${job}`).map((line) => entries.get(line)?.requestId),
      );
      const cluster = lines.filter(
        (line) =>
          requests.has(entries.get(line)?.requestId ?? '') &&
          (line.stream === `job:${job}` || belongsTo(line.stream, number)),
      );
      jobs.push(await templateOf(store, { number, job, lines: cluster }));
    }
  }
  return { valves, jobs };
}

async function isWorkedOn(store: Store, number: string): Promise<boolean> {
  const lists = [await store.summaries('valve'), await store.summaries('point')].flat();
  return lists
    .filter(({ kind, id }) => belongsTo(`${kind}:${id}`, number))
    .map(({ body }) => body as { readonly openJob?: unknown; readonly locks?: readonly unknown[] })
    .some(({ openJob, locks = [] }) => (openJob ?? null) !== null || locks.length > 0);
}

function belongsTo(stream: string, number: string): boolean {
  return new RegExp(`^(valve|point):[A-Z]+-${number}(?!\\d)`).test(stream);
}

async function templateOf(
  store: Store,
  {
    number,
    job,
    lines,
  }: { readonly number: string; readonly job: string; readonly lines: readonly StoredLine[] },
): Promise<Template> {
  const summaries: Summary[] = [];
  for (const stream of new Set(lines.map((line) => line.stream))) {
    const { kind, id } = splitStream(stream);
    const summary = await store.summary(kind, id);
    if (summary !== undefined) summaries.push(summary);
  }
  const marked = (text: string) => markNames(text, { number, job });
  return {
    number,
    job,
    lines: lines.map(({ stream, bytes }) => ({
      stream: marked(stream),
      parts: markPlaces(marked(bytes)).split(MARKED),
    })),
    summaries: summaries.map(
      (summary) =>
        JSON.parse(
          marked(JSON.stringify(summary)).replaceAll('\u0005', '\\u0005').replaceAll('\u0006', '\\u0006'),
        ) as Summary,
    ),
  };
}

function markNames(text: string, { number, job }: { readonly number: string; readonly job: string }): string {
  const tags = text.replace(new RegExp(`([A-Z])-${number}(?![\\d.])`, 'g'), `$1-${MARKS.number}`);
  if (job === '') return tags;
  return tags
    .replace(new RegExp(`"(job|id|jobs)":"${job}"`, 'g'), `"$1":"${MARKS.job}"`)
    .replace(new RegExp(`\\bjob:${job}(?!\\d)`, 'g'), `job:${MARKS.job}`);
}

/** The last of each, for the text of an entry may speak of places as well, and comes before. */
function markPlaces(bytes: string): string {
  return bytes
    .replace(/"previousHash":"\w+"/, `"previousHash":"${MARKS.previousHash}"`)
    .replace(/"previousInStream":"\w+"/, `"previousInStream":"${MARKS.previousInStream}"`)
    .replace(/"place":\d+,"previousHash"/, `"place":${MARKS.place},"previousHash"`)
    .replace(/"requestId":"([^"]+)","screen"/, `"requestId":"$1-${MARKS.request}","screen"`)
    .replace(/"seq":\d+,"stream"/, `"seq":${MARKS.seq},"stream"`);
}

interface Names {
  readonly number: string;
  readonly job: string;
}

class Writer {
  readonly #store: Store;
  readonly #streams = new Map<string, StreamHead>();
  #lines: { entry: LogEntry; bytes: string }[] = [];
  #summaries = new Map<string, Summary>();
  head: Head;

  constructor(store: Store, head: Head) {
    this.#store = store;
    this.head = head;
  }

  async knowStreams(): Promise<void> {
    for await (const stream of this.#store.streams())
      this.#streams.set(stream, await this.#store.streamHead(stream));
  }

  async write({ lines, summaries }: Template, names: Names): Promise<void> {
    for (const { stream, parts } of lines) this.#append(named(stream, names), { parts, names });
    for (const summary of summaries) {
      const text = named(
        JSON.stringify(summary).replaceAll('\\u0005', '\u0005').replaceAll('\\u0006', '\u0006'),
        names,
      );
      const one = JSON.parse(text) as Summary;
      this.#summaries.set(`${one.kind}:${one.id}`, one);
    }
    if (this.#lines.length >= COMMIT_LINES) await this.flush();
  }

  #append(
    stream: string,
    { parts, names }: { readonly parts: readonly string[]; readonly names: Names },
  ): void {
    const before = this.#streams.get(stream) ?? { place: 0, hash: '0'.repeat(64) };
    const [seq, place] = [this.head.seq + 1, before.place + 1];
    const marks: Readonly<Record<string, string>> = {
      [MARKS.previousHash]: this.head.hash,
      [MARKS.previousInStream]: before.hash,
      [MARKS.seq]: String(seq),
      [MARKS.place]: String(place),
      [MARKS.number]: names.number,
      [MARKS.job]: names.job,
      [MARKS.request]: `${names.number}-${names.job}`,
    };
    const bytes = parts.map((part) => marks[part] ?? part).join('');
    const hash = sha256(bytes);
    // The store asks for these alone.
    const entry = { seq, stream, place, hash } as LogEntry;
    this.#lines.push({ entry, bytes });
    this.head = { seq, hash };
    this.#streams.set(stream, { place, hash });
  }

  async flush(): Promise<void> {
    await this.#store.commit({
      entries: this.#lines,
      summaries: [...this.#summaries.values()],
      withdrawn: [],
      answers: [],
    });
    this.#lines = [];
    this.#summaries = new Map();
  }
}

function named(text: string, { number, job }: Names): string {
  return text.replaceAll(MARKS.number, number).replaceAll(MARKS.job, job);
}
