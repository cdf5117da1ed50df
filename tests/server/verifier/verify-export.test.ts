import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { exportFiles } from '../../../server/audit/export-files.ts';
import { type TarFile, tarOf } from '../../../server/audit/tar.ts';
import { blobHash } from '../../../server/log/blobs.ts';
import { canonical } from '../../../server/log/canonical.ts';
import { sha256 } from '../../../server/log/chain.ts';
import { checkNumber } from '../../../server/log/check-number.ts';
import { Checkpoints, checkpointPlace } from '../../../server/log/checkpoints.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import {
  type Anchors,
  checkOf,
  linesOf,
  readCheckpoints,
  type Verdict,
  verifyExport,
} from '../../../server/verifier/verify-export.ts';
import { compiled } from '../../compiled.ts';
import { aFolder } from '../../folders.ts';
import { adding, aLog } from '../log/register.ts';

const ENTRIES = 40;
/** Where the site stood when somebody wrote its check number down, and when it was marked. */
const MARKED = 30;

let log: Buffer;
let files: readonly TarFile[];
let checkpoints: Checkpoints;
let paper = '';
let verifier = '';

beforeAll(async () => {
  const store = openSqliteStore({ folder: aFolder() });
  checkpoints = new Checkpoints(checkpointPlace(join(aFolder(), 'yokeside.pepper')));
  const site = aLog(store);
  for (let added = 1; added <= ENTRIES; added += 1) {
    await site.act(
      adding({ id: 'abc'.charAt(added % 3), added, person: added % 9 === 0 ? 'é\u2028"\ufffd' : 't1' }),
    );
    if (added === 10 || added === MARKED) checkpoints.mark(await site.head(), new Date(added * 60_000));
    if (added === MARKED) paper = checkNumber((await site.head()).hash);
  }
  verifier = readFileSync(await compiled('server/verifier/verify.ts'), 'utf8');
  const made = { store, checkpoints, at: new Date(0), codeVersion: 'test', verifier };
  files = await exportFiles(made);
  files = await Promise.all(files.map(async (file) => held(file)));
  log = await bytesOf(fileCalled('log.jsonl'));
  await site.close();
});

async function bytesOf(file: TarFile): Promise<Buffer> {
  const pieces: Uint8Array[] = [];
  for await (const piece of file.content()) pieces.push(piece);
  return Buffer.concat(pieces);
}

/** Read while the store is open. */
async function held(file: TarFile): Promise<TarFile> {
  const bytes = await bytesOf(file);
  return {
    ...file,
    async *content() {
      yield bytes;
    },
  };
}

function fileCalled(name: string): TarFile {
  const file = files.find((one) => one.name === name);
  if (file === undefined) throw new Error(`no ${name}`);
  return file;
}

const NO_ANCHORS: Anchors = { checks: [], checkpoints: [] };
const anchors = (): readonly (readonly [string, Anchors])[] => [
  ['signed checkpoints', { checks: [], checkpoints: readCheckpoints(checkpoints.text()).checkpoints }],
  ['a check number from paper', { checks: [paper], checkpoints: [] }],
];

function split(bytes: Buffer): Buffer[] {
  const lines: Buffer[] = [];
  let from = 0;
  for (let end = bytes.indexOf(10); end >= 0; end = bytes.indexOf(10, from)) {
    lines.push(bytes.subarray(from, end));
    from = end + 1;
  }
  if (from < bytes.length) lines.push(bytes.subarray(from));
  return lines;
}

const verified = (lines: Iterable<Buffer>, held: Anchors = NO_ANCHORS, of = 'site'): Verdict =>
  verifyExport(lines, { of, anchors: held });

/** The same entries with other content, sealed anew from the first to the last: what a forger with the code can do. */
function writtenAnew(lines: readonly Buffer[], from: number): Buffer[] {
  const heads = new Map<string, string>();
  let previousHash = '0'.repeat(64);
  return lines.map((line, at) => {
    const { hash: _, ...entry } = JSON.parse(line.toString()) as {
      hash: string;
      seq: number;
      stream: string;
      person: string;
    };
    const bytes = canonical({
      ...entry,
      person: at >= from ? 'somebody else' : entry.person,
      previousHash,
      previousInStream: heads.get(entry.stream) ?? '0'.repeat(64),
    });
    previousHash = sha256(bytes);
    heads.set(entry.stream, previousHash);
    return Buffer.from(`${bytes.slice(0, -1)},"hash":"${previousHash}"}`);
  });
}

describe('an export verified alone', () => {
  test('is whole, fits its anchors, and says so', () => {
    expect(verified(split(log))).toMatchObject({ entries: ENTRIES, fault: null, against: [], fitting: 0 });
    for (const [, held] of anchors()) {
      const { fault, against, fitting } = verified(split(log), held);
      expect([fault, against]).toEqual([null, []]);
      expect(fitting).toBeGreaterThan(0);
    }
  });

  test('shows each of 2,000 single changed bytes, spread over all of it, at the entry where it is (SA-01)', () => {
    const CHANGES = 2000;
    const lines = split(log);
    const starts: number[] = [];
    let start = 0;
    for (const line of lines) {
      starts.push(start);
      start += line.length + 1;
    }
    const missed: number[] = [];
    for (let change = 0; change < CHANGES; change += 1) {
      const at = Math.floor((change * log.length) / CHANGES);
      const changed = Buffer.from(log);
      changed.writeUInt8(changed.readUInt8(at) ^ (1 << (change % 8)), at);
      const { fault } = verified(split(changed));
      const line = starts.findLastIndex((one) => one <= at) + 1;
      // A changed line feed spoils the line before it, or the one that it joins; the last one of all ends nothing.
      if (fault?.entry !== line && !(at === log.length - 1 && fault?.entry === ENTRIES)) missed.push(at);
    }
    expect(missed).toEqual([]);
  });

  test.each<[string, (lines: Buffer[]) => Buffer[], number]>([
    ['deleted', (lines) => lines.toSpliced(12, 1), 13],
    ['inserted', (lines) => lines.toSpliced(12, 0, lines[11] ?? Buffer.alloc(0)), 13],
    [
      'swapped with another',
      (lines) => lines.with(12, lines[20] ?? Buffer.alloc(0)).with(20, lines[12] ?? Buffer.alloc(0)),
      13,
    ],
    ['emptied', (lines) => lines.with(12, Buffer.alloc(0)), 13],
    ['sealed anew by itself', (lines) => lines.with(12, writtenAnew(lines, 12)[12] ?? Buffer.alloc(0)), 14],
  ])('names the first bad entry where one was %s', (_what, change, entry) => {
    expect(verified(change(split(log))).fault?.entry).toBe(entry);
  });

  test('finds a cut tail, an older backup and a whole rewrite by an anchor, and by nothing else (SA-44, SA-46)', () => {
    const lines = split(log);
    const beforeMark = lines.slice(0, MARKED - 1);
    const attacks: readonly (readonly [string, readonly Buffer[]])[] = [
      ['a cut tail', lines.slice(0, MARKED - 3)],
      [
        'an older backup with other work on it since',
        [...lines.slice(0, 25), ...writtenAnew(lines, 25).slice(25)],
      ],
      ['a whole rewrite', writtenAnew(lines, 0)],
      ['a tail of one entry', beforeMark],
    ];
    for (const [what, attacked] of attacks) {
      expect(verified(attacked), what).toMatchObject({ fault: null, against: [], entries: attacked.length });
      for (const [anchor, held] of anchors()) {
        expect(verified(attacked, held).against.length, `${what} by ${anchor}`).toBeGreaterThan(0);
      }
    }
  });

  test('of one stream needs nothing of the others, and takes no entry of another', () => {
    const own = split(log).filter((line) => line.includes('"stream":"register:b"'));
    expect(verified(own, NO_ANCHORS, 'register:b')).toMatchObject({ entries: own.length, fault: null });
    expect(verified(own.toSpliced(2, 1), NO_ANCHORS, 'register:b').fault).not.toBeNull();
    expect(verified(own, NO_ANCHORS, 'register:c').fault?.what).toContain('not the entries of register:c');
    const check = checkOf(verified(own, NO_ANCHORS, 'register:b').head.hash);
    expect(verified(own, { checks: [check], checkpoints: [] }, 'register:b').fitting).toBe(1);
    const cut = verified(own.slice(0, -1), { checks: [check], checkpoints: [] }, 'register:b');
    expect([cut.fault, cut.against.length]).toEqual([null, 1]);
  });
});

describe('signed checkpoints', () => {
  test('by another key, changed, or out of their order are refused (SA-41, SA-45)', () => {
    const lines = checkpoints.text().trimEnd().split('\n');
    expect(readCheckpoints(checkpoints.text(), checkpoints.keyNumber)).toMatchObject({ wrong: [] });
    const other = new Checkpoints(checkpointPlace(join(aFolder(), 'yokeside.pepper')));
    other.mark({ seq: 9, hash: 'a'.repeat(64) }, new Date(0));
    expect(readCheckpoints(other.text(), checkpoints.keyNumber).wrong).toHaveLength(1);
    expect(readCheckpoints(`${other.text()}${checkpoints.text()}`).wrong.length).toBeGreaterThan(0);
    expect(readCheckpoints(checkpoints.text().replace('"seq":30', '"seq":20')).wrong).toHaveLength(1);
    expect(readCheckpoints(lines.toReversed().join('\n')).wrong[0]).toContain('older than the one before');
  });
});

describe('the files of an export', () => {
  /** Put into an empty folder, as somebody elsewhere unpacks them. */
  async function unpacked(change: Readonly<Record<string, (text: string) => string>> = {}): Promise<string> {
    const folder = aFolder();
    for (const file of files) {
      const bytes = await bytesOf(file);
      const spoil = change[file.name];
      writeFileSync(join(folder, file.name), spoil === undefined ? bytes : spoil(bytes.toString()));
    }
    return folder;
  }

  function run(folder: string, ...parameters: string[]): { status: number | null; said: string } {
    const env = { PATH: process.env.PATH ?? '' };
    const { status, stdout, stderr } = spawnSync(process.execPath, ['verify.mjs', ...parameters], {
      cwd: folder,
      encoding: 'utf8',
      env,
    });
    return { status, said: stdout + stderr };
  }

  test('verify in an empty folder with nothing but Node, and with a number from paper (SA-02, SA-43)', async () => {
    const folder = await unpacked();
    const plain = run(folder);
    expect([plain.status, plain.said]).toEqual([
      0,
      expect.stringContaining(`Whole: ${ENTRIES} entries of site`),
    ]);
    expect(plain.said).toContain('against anyone who cannot also change the anchors');
    const { said } = run(folder, '--check', paper.toLowerCase(), '--key', checkpoints.keyNumber);
    expect(said).toContain('It fits 3 anchors.');
  });

  test('name the first bad entry, and say what an anchor does not fit', async () => {
    const spoilt = await unpacked({ 'log.jsonl': (text) => text.replace('"added":7', '"added":8') });
    expect(run(spoilt)).toMatchObject({ status: 1, said: expect.stringContaining('First bad entry: 7:') });
    const cut = (text: string) => text.split('\n').slice(0, 20).join('\n').concat('\n');
    const shorter = await unpacked({ 'log.jsonl': cut, 'checkpoints.jsonl': () => '' });
    expect(run(shorter).said).toContain('DOES NOT FIT: the manifest');
    const older = await unpacked({ 'log.jsonl': cut });
    expect(run(older, '--check', paper)).toMatchObject({
      status: 1,
      said: expect.stringContaining('the end was cut off'),
    });
  });

  test('come in one archive that any system unpacks', async () => {
    const folder = aFolder();
    const pieces: Uint8Array[] = [];
    for await (const piece of tarOf(files, new Date(0))) pieces.push(piece);
    writeFileSync(join(folder, 'export.tar'), Buffer.concat(pieces));
    expect(spawnSync('tar', ['-xf', 'export.tar'], { cwd: folder }).status).toBe(0);
    expect([...linesOf(join(folder, 'log.jsonl'))]).toHaveLength(ENTRIES);
    expect(run(folder).status).toBe(0);
  });
});

test('photos lie beside the entries under their hash, and one that is missing or changed is named', async () => {
  const store = openSqliteStore({ folder: aFolder() });
  const site = aLog(store);
  const photos = [Buffer.from('as good as a picture'), Buffer.from('another one')];
  for (const photo of [...photos, ...photos]) await site.act(adding({ id: 'a', added: 1, photo }));
  const made = { store, checkpoints: null, at: new Date(0), codeVersion: 'test', verifier };
  const folder = aFolder();
  for (const file of await exportFiles(made)) writeFileSync(join(folder, file.name), await bytesOf(file));
  await site.close();
  const verify = () => {
    writeFileSync(join(folder, 'verify.mjs'), verifier);
    const { status, stderr } = spawnSync(process.execPath, [join(folder, 'verify.mjs')], {
      encoding: 'utf8',
    });
    return { status, stderr };
  };
  const [first = '', second = ''] = photos.map((photo) => join(folder, `photo-${blobHash(photo)}.bin`));
  expect(readFileSync(first)).toEqual(photos[0]);
  expect(verify()).toEqual({ status: 0, stderr: '' });
  rmSync(first);
  writeFileSync(second, 'another two');
  const { status, stderr } = verify();
  expect(status).toBe(1);
  for (const entry of [1, 3]) expect(stderr).toContain(`of entry ${entry} is missing`);
  for (const entry of [2, 4]) expect(stderr).toContain(`of entry ${entry} was changed`);
});
