/**
 * The log, or one job of it, as plain files that verify alone: the entries as stored, a manifest, the checkpoints, the
 * verifier, and how to use it.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { blobsOf } from '../log/blobs.ts';
import { checkNumber } from '../log/check-number.ts';
import type { Checkpoints } from '../log/checkpoints.ts';
import { exportLine } from '../log/export.ts';
import { TELL_NOBODY, type Tell } from '../long/long-work.ts';
import { fileEndOf } from '../photos/kind.ts';
import { builtFolder, projectFolder, VERIFIER } from '../project-folder.ts';
import type { Head, LogEntry, Store, StoredBlob, StoredLine } from '../store/store.ts';
import { EXPORT_SCHEMA, type Manifest } from '../verifier/verify-export.ts';
import type { TarFile } from './tar.ts';

export interface ExportOf {
  readonly store: Store;
  readonly checkpoints: Pick<Checkpoints, 'key' | 'text'> | null;
  /** One stream; without it the whole site. */
  readonly stream?: string;
  readonly at: Date;
  readonly codeVersion: string;
  /** The verifier as plain JavaScript. */
  readonly verifier: string;
  /** Told of each line; may stop it. */
  readonly tell?: Tell;
}

const ENTRIES = 'log.jsonl';

/** The verifier as the build made it: of this program, or where it runs as it was written, of the last build. */
export function builtVerifier(): string {
  return readFileSync(join(builtFolder() ?? join(projectFolder(), 'dist'), VERIFIER), 'utf8');
}

/** The files of an export. The log may grow meanwhile: what comes after its head of now is left out. */
export async function exportFiles(of: ExportOf): Promise<readonly TarFile[]> {
  const upTo = (await of.store.head()).seq;
  const lines = (): AsyncIterable<Uint8Array> => encoded(of, upTo);
  const { head, entries, bytes, sha256, photos } = await measured(of, upTo);
  const manifest: Manifest = {
    schema: EXPORT_SCHEMA,
    of: of.stream ?? 'site',
    madeAt: of.at.toISOString(),
    codeVersion: of.codeVersion,
    entries,
    head: { ...head, check: checkNumber(head.hash) },
    file: { name: ENTRIES, bytes, sha256 },
    key: of.checkpoints?.key ?? null,
  };
  return [
    textFile('READ-ME.txt', readMe(manifest)),
    textFile('manifest.json', `${JSON.stringify(manifest, null, 2)}\n`),
    textFile('checkpoints.jsonl', of.checkpoints?.text() ?? ''),
    textFile('verify.mjs', of.verifier),
    { name: ENTRIES, bytes, content: lines },
    ...photos,
  ];
}

/** Only what entries name is read; whether a line is as it was sealed is for the verifier to say. */
function asWritten({ bytes }: StoredLine): Pick<LogEntry, 'inputs'> {
  if (!bytes.includes('"blobs":')) return { inputs: null };
  try {
    return JSON.parse(bytes);
  } catch {
    // Spoilt in the database: the verifier names it, and no photo can be told from it.
    return { inputs: null };
  }
}

/** As it is stored, and read once more when its turn comes: photos do not stand in memory together. */
function photoFile(store: Store, { hash, bytes }: StoredBlob): TarFile {
  return {
    name: `photo-${hash}.${fileEndOf(bytes)}`,
    bytes: bytes.length,
    async *content() {
      yield (await store.blob(hash)) ?? new Uint8Array();
    },
  };
}

function textFile(name: string, text: string): TarFile {
  const bytes = Buffer.from(text);
  return {
    name,
    bytes: bytes.length,
    async *content() {
      yield bytes;
    },
  };
}

async function* linesUpTo({ store, stream }: ExportOf, upTo: number): AsyncIterable<StoredLine> {
  if (stream !== undefined) yield* await store.stream(stream);
  else
    for await (const line of store.lines(Number.MIN_SAFE_INTEGER)) {
      if (line.seq > upTo) return;
      yield line;
    }
}

async function* encoded(of: ExportOf, upTo: number): AsyncIterable<Uint8Array> {
  for await (const line of linesUpTo(of, upTo))
    if (line.seq <= upTo) yield Buffer.from(`${exportLine(line)}\n`);
}

async function measured(of: ExportOf, upTo: number) {
  const hash = createHash('sha256');
  let [entries, bytes] = [0, 0];
  const { tell = TELL_NOBODY } = of;
  let head: Head = { seq: 0, hash: '0'.repeat(64) };
  const photos = new Map<string, TarFile>();
  for await (const line of linesUpTo(of, upTo)) {
    if (line.seq > upTo) continue;
    const text = Buffer.from(`${exportLine(line)}\n`);
    hash.update(text);
    entries += 1;
    bytes += text.length;
    head = { seq: line.seq, hash: line.hash };
    for (const hash of blobsOf(asWritten(line))) {
      const bytes = await of.store.blob(hash);
      if (bytes !== undefined) photos.set(hash, photoFile(of.store, { hash, bytes }));
    }
    await tell({ doing: 'line measured', done: line.seq, of: upTo });
  }
  return { head, entries, bytes, sha256: hash.digest('hex'), photos: [...photos.values()] };
}

function readMe({ of, entries, head }: Manifest): string {
  return [
    `Yokeside, export of ${of}: ${entries} entries. The last one is ${head.seq}, its check number ${head.check}.`,
    '',
    'log.jsonl         one entry a line, as stored, with its hash last',
    'manifest.json     what is in it',
    'checkpoints.jsonl how far the log had come, signed by its server',
    'photo-…           each photo that an entry names, under the SHA-256 of its bytes',
    'verify.mjs        checks all of it; it needs Node 20 or newer and nothing else',
    '',
    'In this folder:   node verify.mjs',
    'With a check number from a printed record:   node verify.mjs --check XXXX-XXXX-XXXX',
    'With checkpoints that were kept elsewhere, and the number of their key from paper:',
    '                  node verify.mjs --checkpoints FILE --key XXXX-XXXX-XXXX',
    '',
    'It is tamper-evident against anyone who cannot also change the anchors: check numbers on paper, and',
    'checkpoints kept where whoever has the log cannot write. Without one of them a cut end, an older copy and a log',
    'written anew do not show.',
    '',
  ].join('\n');
}
