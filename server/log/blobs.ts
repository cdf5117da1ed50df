/** Photos stand beside the log, each under the SHA-256 of its bytes; the entry that names it makes the chain cover it. */
import { createHash } from 'node:crypto';
import type { LogEntry, Store, StoredLine } from '../store/store.ts';
import { LogDamaged } from './chain.ts';

/** Photos that an entry names, in `blobs` of its inputs. */
export function blobsOf({ inputs }: Pick<LogEntry, 'inputs'>): readonly string[] {
  if (typeof inputs !== 'object' || inputs === null || Array.isArray(inputs)) return [];
  const { blobs } = inputs as { readonly blobs?: unknown };
  return Array.isArray(blobs) ? blobs.filter((one) => typeof one === 'string') : [];
}

/**
 * Whether a line may name photos, by its text: canonical JSON writes that name in one way alone. Sought without the quote before it,
 * of which a line has a hundred, it takes a third of the time.
 */
export function mayNameBlobs({ bytes }: Pick<StoredLine, 'bytes'>): boolean {
  return bytes.includes('blobs"');
}

export function blobHash(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** A photo that an entry names and that is not there, or is another. */
export interface BlobFault {
  readonly seq: number;
  readonly stream: string;
  readonly place: number;
  readonly hash: string;
  readonly what: 'is missing' | 'was changed';
}

/** What is wrong with the photos that an entry names. */
export async function blobFaults(
  entry: Pick<LogEntry, 'seq' | 'stream' | 'place' | 'inputs'>,
  store: Pick<Store, 'blob'>,
): Promise<readonly BlobFault[]> {
  const { seq, stream, place } = entry;
  const faults: BlobFault[] = [];
  for (const hash of blobsOf(entry)) {
    const bytes = await store.blob(hash);
    if (bytes === undefined) faults.push({ seq, stream, place, hash, what: 'is missing' });
    else if (blobHash(bytes) !== hash) faults.push({ seq, stream, place, hash, what: 'was changed' });
  }
  return faults;
}

/**
 * A photo that an entry names, held against its hash.
 * @throws LogDamaged where it is not what was put in
 */
export async function wholeBlob(
  { hash, ...at }: Pick<StoredLine, 'seq' | 'stream' | 'place' | 'hash'>,
  store: Pick<Store, 'blob'>,
): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = await store.blob(hash);
  const line = { ...at, hash, bytes: '' };
  if (bytes === undefined) throw new LogDamaged(line, `its photo ${hash} is missing`);
  if (blobHash(bytes) !== hash) throw new LogDamaged(line, `its photo ${hash} was changed`);
  return new Uint8Array(bytes);
}
