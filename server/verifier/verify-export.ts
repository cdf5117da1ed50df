/**
 * Verifies an export of the log by itself: nothing but Node, no other file of the program, no network. That is why it is one
 * long file, and says again in few lines what `server/log` knows. `verify.ts` is the program of it.
 */
import { createHash, createPublicKey, verify } from 'node:crypto';
import { closeSync, openSync, readdirSync, readFileSync, readSync } from 'node:fs';
import { join } from 'node:path';

export const EXPORT_SCHEMA = 'yokeside-export/1';
export const CHECKPOINT_SCHEMA = 'yokeside-checkpoint/1';

/** What stands for the hash before the first entry. */
const NO_HASH = '0'.repeat(64);
/** The hash is the last member of a line; the bytes that were hashed are the line without it. */
const TAIL = /^,"hash":"([0-9a-f]{64})"\}$/;
const TAIL_BYTES = ',"hash":""}'.length + 64;
const LINE_FEED = 10;
const READ_BYTES = 1 << 20;

export interface Manifest {
  readonly schema: string;
  /** `site`, or one stream as `job:12`. */
  readonly of: string;
  readonly madeAt: string;
  readonly codeVersion: string;
  readonly entries: number;
  /** The newest entry in the export. */
  readonly head: { readonly seq: number; readonly hash: string; readonly check: string };
  /** Of the file with the entries. */
  readonly file: { readonly name: string; readonly bytes: number; readonly sha256: string };
  /** The public key of the checkpoints; null where the site keeps none. */
  readonly key: string | null;
}

export interface Checkpoint {
  readonly schema: string;
  readonly at: string;
  readonly seq: number;
  readonly hash: string;
  readonly check: string;
  /** Ed25519, the 32 bytes of the public key as base64url. */
  readonly key: string;
  /** Two people took a restored log as it was: checkpoints before this one are of the log before. */
  readonly restored: boolean;
  /** Over all else, as canonical JSON. */
  readonly signature: string;
}

export interface Fault {
  /** The first bad entry: its number in the log, or of its line where it says none. */
  readonly entry: number;
  readonly what: string;
}

export interface Anchors {
  /** Check numbers as typed in from paper. */
  readonly checks: readonly string[];
  readonly checkpoints: readonly Checkpoint[];
}

export interface Verdict {
  readonly entries: number;
  readonly head: { readonly seq: number; readonly hash: string };
  readonly fault: Fault | null;
  /** Anchors that the entries do not fit. */
  readonly against: readonly string[];
  /** How many anchors they do fit. */
  readonly fitting: number;
  /** Anchors that an export of one stream cannot be held against. */
  readonly aside: number;
  readonly photos: readonly { readonly entry: number; readonly hash: string }[];
}

const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** The first 60 bits of a hash in twelve characters, as the program prints it. */
export function checkOf(hash: string): string {
  const bits = BigInt(`0x${hash.slice(0, 15)}`);
  const letter = (at: number) => ALPHABET[Number((bits >> BigInt(55 - 5 * at)) & 31n)];
  const text = Array.from({ length: 12 }, (_, at) => letter(at)).join('');
  return `${text.slice(0, 4)}-${text.slice(4, 8)}-${text.slice(8)}`;
}

/** The number of a key, short enough to be written on paper. */
export function keyNumber(key: string): string {
  return checkOf(sha256(Buffer.from(key, 'base64url')));
}

function plain(typed: string): string {
  return typed.toUpperCase().replace(/[\s-]/g, '').replaceAll('O', '0').replace(/[IL]/g, '1');
}

function sha256(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** Canonical JSON (RFC 8785), of what `JSON.parse` has read. */
export function canonicalText(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalText).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return `{${members.map(([name, member]) => `${JSON.stringify(name)}:${canonicalText(member)}`).join(',')}}`;
}

interface Entry {
  readonly seq: number;
  readonly stream: string;
  readonly place: number;
  readonly previousHash: string;
  readonly previousInStream: string;
  readonly hash: string;
  readonly inputs?: { readonly blobs?: unknown } | null;
}

/** One line, by itself. @returns what is wrong with it, or the entry */
function readLine(line: Buffer): Entry | string {
  const hash = TAIL.exec(line.subarray(-TAIL_BYTES).toString('latin1'))?.[1];
  if (hash === undefined) return 'its line does not end with a hash';
  const bytes = Buffer.concat([line.subarray(0, line.length - TAIL_BYTES), Buffer.from('}')]);
  if (sha256(bytes) !== hash) return 'its content does not give its hash';
  const text = bytes.toString('utf8');
  try {
    const read = JSON.parse(text) as Omit<Entry, 'hash'>;
    if (canonicalText(read) !== text) return 'its content is not in canonical form';
    return { ...read, hash };
  } catch {
    return 'its content is not JSON';
  }
}

interface Before {
  seq: number;
  hash: string;
  readonly streams: Map<string, { readonly place: number; readonly hash: string }>;
}

function misplaced(entry: Entry, before: Before, isSite: boolean): string | undefined {
  const own = before.streams.get(entry.stream) ?? { place: 0, hash: NO_HASH };
  if (isSite && entry.seq !== before.seq + 1) return `its number is ${entry.seq}, after ${before.seq}`;
  if (isSite && entry.previousHash !== before.hash)
    return `it was not written after entry ${before.seq} as that one is now`;
  if (!isSite && before.streams.size > 0 && !before.streams.has(entry.stream))
    return `it belongs to ${entry.stream}`;
  if (entry.place !== own.place + 1) return `it comes after place ${own.place} of its stream`;
  if (entry.previousInStream !== own.hash)
    return `it was not written after place ${own.place} of its stream as that one is now`;
  return undefined;
}

/**
 * Walks the lines of an export, of the whole site or of one stream, and holds the anchors against them.
 *
 * @param lines without their line feeds
 * @param of as the manifest says: `site`, or the name of a stream
 */
export function verifyExport(
  lines: Iterable<Buffer>,
  { of, anchors }: { readonly of: string; readonly anchors: Anchors },
): Verdict {
  const isSite = of === 'site';
  const before: Before = { seq: 0, hash: NO_HASH, streams: new Map() };
  const held = new Held(anchors, isSite);
  const photos: { entry: number; hash: string }[] = [];
  let entries = 0;
  let fault: Fault | null = null;
  for (const line of lines) {
    const entry = readLine(line);
    const what = typeof entry === 'string' ? entry : misplaced(entry, before, isSite);
    if (what !== undefined || typeof entry === 'string') {
      const nameable = isSite ? before.seq + 1 : typeof entry === 'string' ? entries + 1 : entry.seq;
      fault = { entry: nameable, what: what ?? '' };
      break;
    }
    entries += 1;
    before.seq = entry.seq;
    before.hash = entry.hash;
    before.streams.set(entry.stream, { place: entry.place, hash: entry.hash });
    held.see(entry);
    const { blobs } = entry.inputs ?? {};
    if (Array.isArray(blobs)) photos.push(...blobs.map((hash) => ({ entry: entry.seq, hash: `${hash}` })));
  }
  if (fault === null && !isSite && entries > 0 && !before.streams.has(of))
    fault = { entry: before.seq, what: `these are not the entries of ${of}` };
  return { entries, head: { seq: before.seq, hash: before.hash }, fault, photos, ...held.end(before.seq) };
}

/** The anchors, as the entries go by. */
class Held {
  readonly #isSite: boolean;
  readonly #checks: Map<string, string>;
  readonly #points: Map<number, Checkpoint[]>;
  readonly #against: string[] = [];
  #fitting = 0;

  constructor({ checks, checkpoints }: Anchors, isSite: boolean) {
    this.#isSite = isSite;
    this.#checks = new Map(checks.map((typed) => [plain(typed), typed]));
    this.#points = grouped(checkpoints);
  }

  see({ seq, hash }: Entry): void {
    if (this.#checks.size > 0 && this.#checks.delete(plain(checkOf(hash)))) this.#fitting += 1;
    for (const point of this.#points.get(seq) ?? []) {
      if (point.hash === hash) this.#fitting += 1;
      else
        this.#against.push(
          `the checkpoint of ${point.at} has another entry ${seq}: another log, or one written anew`,
        );
    }
    this.#points.delete(seq);
  }

  end(last: number): Pick<Verdict, 'against' | 'fitting' | 'aside'> {
    const typed = [...this.#checks.values()].map(
      (one) =>
        `no entry has the check number ${one}: the end was cut off, this is an older copy, or it was written anew`,
    );
    const left = [...this.#points.values()].flat();
    const beyond = this.#isSite ? left.filter(({ seq }) => seq > last) : [];
    const cut = beyond.map(
      ({ seq, at }) =>
        `the checkpoint of ${at} is of entry ${seq}, the last one here is ${last}: the end was cut off, or this is an older copy`,
    );
    return {
      against: [...this.#against, ...typed, ...cut],
      fitting: this.#fitting,
      aside: left.length - beyond.length,
    };
  }
}

function grouped(checkpoints: readonly Checkpoint[]): Map<number, Checkpoint[]> {
  const groups = new Map<number, Checkpoint[]>();
  for (const point of checkpoints) groups.set(point.seq, [...(groups.get(point.seq) ?? []), point]);
  return groups;
}

export interface CheckpointFile {
  readonly checkpoints: readonly Checkpoint[];
  /** What is wrong with the others. */
  readonly wrong: readonly string[];
  /** Those of the log before it was restored: nothing is held against them any more. */
  readonly beforeRestore: number;
}

/**
 * The checkpoints of a file, each held against its own signature.
 *
 * @param key the number of the key, as typed in from paper; without it all must be by the key of the first
 */
export function readCheckpoints(text: string, key?: string): CheckpointFile {
  let checkpoints: Checkpoint[] = [];
  const wrong: string[] = [];
  let latest = '';
  let beforeRestore = 0;
  let first: string | undefined;
  for (const [at, line] of text.split('\n').entries()) {
    if (line === '') continue;
    const point = readCheckpoint(line);
    const wanted = key === undefined ? plain(keyNumber(first ?? point?.key ?? '')) : plain(key);
    if (point === null) wrong.push(`line ${at + 1} of the checkpoints is not what was signed`);
    else if (plain(keyNumber(point.key)) !== wanted)
      wrong.push(`line ${at + 1} of the checkpoints is signed with another key`);
    else if (point.at < latest)
      wrong.push(`line ${at + 1} of the checkpoints is older than the one before it`);
    else {
      first ??= point.key;
      if (point.restored) beforeRestore += checkpoints.length;
      if (point.restored) checkpoints = [];
      checkpoints.push(point);
    }
    if (point !== null && point.at > latest) latest = point.at;
  }
  return { checkpoints, wrong, beforeRestore };
}

/** @returns null for a line that its signature does not fit */
function readCheckpoint(line: string): Checkpoint | null {
  try {
    const { signature, ...signed } = JSON.parse(line) as Checkpoint;
    const key = createPublicKey({ key: { kty: 'OKP', crv: 'Ed25519', x: signed.key }, format: 'jwk' });
    const holds =
      signed.schema === CHECKPOINT_SCHEMA &&
      verify(null, Buffer.from(canonicalText(signed)), key, Buffer.from(signature, 'base64url'));
    return holds ? { ...signed, signature } : null;
  } catch {
    // Not JSON, or no key: nothing that was signed.
    return null;
  }
}

/** The lines of a file, a piece at a time. A line feed alone ends a line: JSON has the others inside its texts. */
export function* linesOf(path: string): Iterable<Buffer> {
  const file = openSync(path, 'r');
  try {
    let rest = Buffer.alloc(0);
    for (;;) {
      const piece = Buffer.alloc(READ_BYTES);
      const count = readSync(file, piece);
      if (count === 0) break;
      rest = Buffer.concat([rest, piece.subarray(0, count)]);
      let from = 0;
      for (let end = rest.indexOf(LINE_FEED); end >= 0; end = rest.indexOf(LINE_FEED, from)) {
        yield rest.subarray(from, end);
        from = end + 1;
      }
      rest = rest.subarray(from);
    }
    if (rest.length > 0) yield rest;
  } finally {
    closeSync(file);
  }
}

/** What of the files is not as the manifest says. */
export function fileFaults(
  folder: string,
  { file, schema, head, entries }: Manifest,
  verdict: Verdict,
): string[] {
  const hash = createHash('sha256');
  for (const line of linesOf(join(folder, file.name))) hash.update(line).update('\n');
  return [
    ...(schema === EXPORT_SCHEMA
      ? []
      : [`the manifest is of ${schema}, this verifier reads ${EXPORT_SCHEMA}`]),
    ...(hash.digest('hex') === file.sha256 ? [] : ['the manifest has another digest of the entries']),
    ...(verdict.fault !== null || (verdict.entries === entries && verdict.head.hash === head.hash)
      ? []
      : [`the manifest says ${entries} entries up to ${head.check}`]),
    ...photoFaults(folder, verdict),
  ];
}

/** Each photo that an entry names lies beside the entries, under the SHA-256 of its bytes. */
function photoFaults(folder: string, { photos }: Pick<Verdict, 'photos'>): readonly string[] {
  const names = readdirSync(folder);
  return photos.flatMap(({ entry, hash }) => {
    const name = names.find((one) => one.startsWith(`photo-${hash}.`));
    if (name === undefined) return [`the photo ${hash} of entry ${entry} is missing`];
    const isWhole = sha256(readFileSync(join(folder, name))) === hash;
    return isWhole ? [] : [`the photo ${hash} of entry ${entry} was changed`];
  });
}
