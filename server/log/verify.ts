/**
 * Proves that a log is whole: every entry's bytes are the ones that were hashed, each follows the one before it in
 * the site's chain and in its own stream, and no number is left out. One pass; the memory needed grows with the
 * number of streams (some 300 bytes each), not with the number of entries.
 *
 * It shows that nothing inside was changed. That the end was not cut off, or the whole written anew, only a check
 * number kept elsewhere can show: compare it with the head's.
 */
import { TELL_NOBODY, type Tell } from '../long/long-work.ts';
import type { Head, Store, StoredLine, StreamHead } from '../store/store.ts';
import type { Auditor, AuditProblem } from './auditor.ts';
import { type BlobFault, blobFaults, mayNameBlobs } from './blobs.ts';
import { EMPTY_HEAD, EMPTY_STREAM, type Link, LogDamaged, linkOf, unseal } from './chain.ts';
import { splitStream } from './stream-kind.ts';

/** The first entry that is not as it was sealed. */
export interface LogFault {
  readonly seq: number;
  /** Null for an entry that is missing. */
  readonly stream: string | null;
  readonly place: number | null;
  readonly what: string;
}

export interface Verdict {
  /** How many entries are good, from the start up to the first bad one. */
  readonly entries: number;
  /** The last good entry. */
  readonly head: Head;
  /** Null for a log that is whole. */
  readonly fault: LogFault | null;
}

export interface StreamProblem {
  readonly stream: string;
  readonly place: number;
  readonly what: string;
}

export interface Report extends Verdict {
  /** What the auditors found; looked for only where the chain is whole. */
  readonly problems: readonly StreamProblem[];
  /** Photos that good entries name and that are missing or changed. */
  readonly photos: readonly BlobFault[];
}

/** What the verifier asks of a store. */
export type LogReads = Pick<Store, 'head' | 'lines' | 'streams' | 'stream' | 'blob'>;

/** So many lines take about a millisecond. */
const TOLD_EACH = 50;

/** Lower than any number that somebody could slip in before the first entry. */
const BEFORE_ALL = Number.MIN_SAFE_INTEGER;

/** Verifies the whole log of a store, then lets the auditors look at each stream of their kind. */
export async function verifyStore(store: LogReads, auditors: readonly Auditor[]): Promise<Report> {
  return await verifyTold(store, { auditors, tell: TELL_NOBODY });
}

/**
 * The same, told every few lines and job by job.
 * @throws Stopped where `tell` says so
 */
export async function verifyTold(
  store: LogReads,
  { auditors, tell }: { readonly auditors: readonly Auditor[]; readonly tell: Tell },
): Promise<Report> {
  const { seq: of } = await store.head();
  const photos: BlobFault[] = [];
  // Few entries name a photo, and nothing is waited for at most others.
  const look = async (line: StoredLine) => {
    if (mayNameBlobs(line)) photos.push(...(await blobFaults(unseal(line), store)));
    // More may have been written since it began.
    await tell({ doing: 'line checked', done: Math.min(line.seq, of), of });
  };
  const verdict = await verifyLines(store.lines(BEFORE_ALL), (line) =>
    line.seq % TOLD_EACH === 0 || mayNameBlobs(line) ? look(line) : undefined,
  );
  const problems: StreamProblem[] = [];
  if (verdict.fault !== null || auditors.length === 0) return { ...verdict, problems, photos };
  const streams: string[] = [];
  for await (const stream of store.streams())
    if (auditors.some(({ kind }) => kind === splitStream(stream).kind)) streams.push(stream);
  for (const [at, stream] of streams.entries()) {
    problems.push(...audited(stream, await audit({ store, stream, auditors })));
    await tell({ doing: 'job worked out again', done: at + 1, of: streams.length });
  }
  return { ...verdict, problems, photos };
}

/** Verifies one stream alone, which needs nothing of the others, and audits it. */
export async function verifyStream(
  store: Store,
  asked: { readonly stream: string; readonly auditors: readonly Auditor[] },
): Promise<Report> {
  const lines = await store.stream(asked.stream);
  const verdict = verifyStreamLines(lines);
  const photos: BlobFault[] = [];
  for (const line of lines.slice(0, verdict.entries).filter(mayNameBlobs))
    photos.push(...(await blobFaults(unseal(line), store)));
  const problems = verdict.fault === null ? await audit({ store, ...asked }) : [];
  return { ...verdict, problems: audited(asked.stream, problems), photos };
}

/**
 * Verifies all lines of a site, from a store or from an export.
 * @param seen told of each good line
 */
export async function verifyLines(
  lines: AsyncIterable<StoredLine>,
  seen: (line: StoredLine) => Promise<unknown> | undefined = () => undefined,
): Promise<Verdict> {
  const streams = new Map<string, StreamHead>();
  let head = EMPTY_HEAD;
  for await (const line of lines) {
    const fault = faultOf(line, { head, streamHead: streams.get(line.stream) ?? EMPTY_STREAM });
    if (fault !== undefined) return { entries: head.seq, head, fault };
    head = { seq: line.seq, hash: line.hash };
    streams.set(line.stream, { place: line.place, hash: line.hash });
    const waits = seen(line);
    if (waits !== undefined) await waits;
  }
  return { entries: head.seq, head, fault: null };
}

/** Verifies the lines of one stream, from a store or from an export of that stream. */
export function verifyStreamLines(lines: Iterable<StoredLine>): Verdict {
  let head = EMPTY_HEAD;
  let streamHead = EMPTY_STREAM;
  for (const line of lines) {
    const fault = faultOf(line, { streamHead });
    if (fault !== undefined) return { entries: streamHead.place, head, fault };
    head = { seq: line.seq, hash: line.hash };
    streamHead = { place: line.place, hash: line.hash };
  }
  return { entries: streamHead.place, head, fault: null };
}

interface Before {
  /** Left out where only one stream is at hand. */
  readonly head?: Head;
  readonly streamHead: StreamHead;
}

function faultOf(line: StoredLine, before: Before): LogFault | undefined {
  const missing = before.head === undefined ? undefined : missingBefore(line, before.head);
  if (missing !== undefined) return missing;
  try {
    const what = misplaced(linkOf(line), before);
    return what === undefined ? undefined : { ...placeOf(line), what };
  } catch (error) {
    if (!(error instanceof LogDamaged)) throw error;
    return { ...placeOf(line), what: error.what };
  }
}

function placeOf({ seq, stream, place }: StoredLine): Omit<LogFault, 'what'> {
  return { seq, stream, place };
}

function missingBefore(line: StoredLine, head: Head): LogFault | undefined {
  if (line.seq <= head.seq + 1) return undefined;
  return {
    seq: head.seq + 1,
    stream: null,
    place: null,
    what: `it is missing; the next one there is ${line.seq}`,
  };
}

function misplaced(entry: Link, { head, streamHead }: Before): string | undefined {
  if (head !== undefined && entry.seq !== head.seq + 1) return `its number comes after ${head.seq}`;
  if (head !== undefined && entry.previousHash !== head.hash) {
    return `it was not written after entry ${head.seq} as that one is now`;
  }
  if (entry.place !== streamHead.place + 1) {
    return `it comes after place ${streamHead.place} of its stream`;
  }
  if (entry.previousInStream !== streamHead.hash) {
    return `it was not written after place ${streamHead.place} of its stream as that one is now`;
  }
  return undefined;
}

async function audit(asked: { store: LogReads; stream: string; auditors: readonly Auditor[] }) {
  const { kind } = splitStream(asked.stream);
  const concerned = asked.auditors.filter((auditor) => auditor.kind === kind);
  if (concerned.length === 0) return [];
  const entries = (await asked.store.stream(asked.stream)).map(unseal);
  const problems: AuditProblem[] = [];
  for (const auditor of concerned) {
    const other = auditor.needs?.(entries);
    const needed = other === undefined ? [] : (await asked.store.stream(other)).map(unseal);
    problems.push(...auditor.audit(asked.stream, entries, needed));
  }
  return problems;
}

function audited(stream: string, problems: readonly { place: number; what: string }[]): StreamProblem[] {
  return problems.map(({ place, what }) => ({ stream, place, what }));
}
