/**
 * Checkpoints: how far the log had come, signed, in a file outside the database. At a start the last of them shows
 * that the end was cut off, that an older backup was put back, or that the log was written anew.
 */
import { createPrivateKey, createPublicKey, generateKeyPairSync, type KeyObject, sign } from 'node:crypto';
import {
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { shownTime } from '../shown-time.ts';
import type { Head, Store } from '../store/store.ts';
import { CHECKPOINT_SCHEMA, type Checkpoint, keyNumber, readCheckpoints } from '../verifier/verify-export.ts';
import { canonical } from './canonical.ts';
import { checkNumber } from './check-number.ts';

/** A start looks at the newest only; the verifier of an export looks at all. */
const LOOKED_AT = 200;

/** Why the log is not believed, in words for the banner. */
export interface Distrust {
  readonly what: string;
  /** The checkpoint that the log does not fit; null where that is what is missing or spoilt. */
  readonly checkpoint: Pick<Checkpoint, 'seq' | 'hash' | 'at'> | null;
  /** The log as it was found. */
  readonly found: Head;
}

export interface CheckpointPlace {
  /** The folder of the key, outside the data folder: beside the key of the PINs. */
  readonly keyFile: string;
  /** The file with the checkpoints; on another disk it is worth more. */
  readonly file: string;
}

/** Beside the key of the PINs, unless another file is named. */
export function checkpointPlace(pepperFile: string, file = ''): CheckpointPlace {
  const folder = dirname(pepperFile);
  return {
    keyFile: join(folder, 'yokeside.checkpoint-key'),
    file: file || join(folder, 'yokeside.checkpoints.jsonl'),
  };
}

export class Checkpoints {
  readonly #place: CheckpointPlace;
  readonly #key: KeyObject;
  /** The public key, as checkpoints carry it. */
  readonly key: string;
  #latest: Checkpoint | null = null;
  #distrust: Distrust | null = null;
  #failing = false;

  /** @throws Error in plain words for a key that cannot be read */
  constructor(place: CheckpointPlace) {
    this.#place = place;
    this.#key = existsSync(place.keyFile) ? readKey(place.keyFile) : makeKey(place);
    this.key = String(createPublicKey(this.#key).export({ format: 'jwk' }).x);
  }

  /** Null while the log fits its last checkpoint; else nothing of the work is written. */
  get distrust(): Distrust | null {
    return this.#distrust;
  }

  get latest(): Checkpoint | null {
    return this.#latest;
  }

  /** The last one could not be written: the log goes on without its anchor until one can. */
  get failing(): boolean {
    return this.#failing;
  }

  /** The number of the key, for paper. */
  get keyNumber(): string {
    return keyNumber(this.key);
  }

  /** The file as it is. */
  text(): string {
    return existsSync(this.#place.file) ? readFileSync(this.#place.file, 'utf8') : '';
  }

  /** Compares the log with the last checkpoint. To be asked once, before anything is written. */
  async compare(store: Store): Promise<Distrust | null> {
    const found = await store.head();
    this.#distrust = await this.#compared(store, found);
    return this.#distrust;
  }

  async #compared(store: Store, found: Head): Promise<Distrust | null> {
    mendTornEnd(this.#place.file);
    const newest = this.text().trimEnd().split('\n').slice(-LOOKED_AT);
    const { checkpoints, wrong } = readCheckpoints(newest.join('\n'), this.keyNumber);
    const checkpoint = checkpoints.at(-1) ?? null;
    this.#latest = checkpoint;
    if (wrong.length > 0) return { what: `Its checkpoints were changed: ${wrong[0]}.`, checkpoint, found };
    if (checkpoint === null) return null;
    const { seq, at } = checkpoint;
    if (found.seq < seq) {
      const what = `It is shorter than it was: ${found.seq} entries, and ${seq} at ${shownTime(at)}.`;
      return { what, checkpoint, found };
    }
    if ((await hashAt(store, seq)) === checkpoint.hash) return null;
    return { what: `Its entry ${seq} is not the one of ${shownTime(at)}.`, checkpoint, found };
  }

  /**
   * Signs how far the log has come, and appends it. A head that has a checkpoint gets no other, and one whose time is before
   * the last gets none, for heads must have rising times.
   *
   * @returns whether there is a new one
   */
  mark(head: Head, now: Date): 'marked' | 'nothing new' | 'clock set back' {
    if (this.#distrust !== null || head.seq === 0 || head.seq === this.#latest?.seq) return 'nothing new';
    return this.#append(head, now);
  }

  /** After two people have taken the log as it is: from now on it is compared with this. */
  accept(head: Head, now: Date): void {
    const last = this.#latest?.at;
    // A clock that was set back must not keep a restored log shut.
    const at = last !== undefined && now.toISOString() <= last ? new Date(Date.parse(last) + 1) : now;
    this.#append(head, at, true);
    this.#distrust = null;
  }

  #append(head: Head, now: Date, restored = false): 'marked' | 'clock set back' {
    const at = now.toISOString();
    if (this.#latest !== null && at < this.#latest.at) return 'clock set back';
    const { seq, hash } = head;
    const signed = {
      schema: CHECKPOINT_SCHEMA,
      at,
      seq,
      hash,
      check: checkNumber(hash),
      key: this.key,
      restored,
    };
    const signature = sign(null, Buffer.from(canonical(signed)), this.#key).toString('base64url');
    const point = { ...signed, signature };
    this.#failing = true;
    append(this.#place.file, `${canonical(point)}\n`);
    this.#failing = false;
    this.#latest = point;
    return 'marked';
  }
}

function append(file: string, line: string): void {
  const opened = openSync(file, 'a', 0o600);
  try {
    writeSync(opened, line);
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}

/** A power cut may leave half a line at the end: it was no checkpoint yet. */
function mendTornEnd(file: string): void {
  if (!existsSync(file)) return;
  const text = readFileSync(file, 'utf8');
  if (text !== '' && !text.endsWith('\n')) writeFileSync(file, text.slice(0, text.lastIndexOf('\n') + 1));
}

async function hashAt(store: Store, seq: number): Promise<string | undefined> {
  for await (const line of store.lines(seq)) return line.seq === seq ? line.hash : undefined;
  return undefined;
}

function readKey(file: string): KeyObject {
  try {
    return createPrivateKey(readFileSync(file, 'utf8'));
  } catch (cause) {
    throw new Error(`The file ${file} is no key of checkpoints any more. Put the backup of it back.`, {
      cause,
    });
  }
}

/** @throws Error if there are checkpoints already: with another key they would all look forged */
function makeKey({ keyFile, file }: CheckpointPlace): KeyObject {
  if (existsSync(file) && readFileSync(file, 'utf8').trim() !== '') {
    throw new Error(`The key of the checkpoints is not at ${keyFile}. Put its backup there.`);
  }
  mkdirSync(dirname(keyFile), { recursive: true, mode: 0o700 });
  const { privateKey } = generateKeyPairSync('ed25519');
  writeFileSync(keyFile, privateKey.export({ format: 'pem', type: 'pkcs8' }), { mode: 0o600, flag: 'wx' });
  chmodSync(keyFile, 0o600);
  return privateKey;
}
