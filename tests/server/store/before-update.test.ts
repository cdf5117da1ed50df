import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from '@photostructure/sqlite';
import { beforeEach, expect, test, vi } from 'vitest';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { rebuildSummaries } from '../../../server/log/rebuild.ts';
import { SiteLog } from '../../../server/log/site-log.ts';
import { verifyStore } from '../../../server/log/verify.ts';
import { log001 } from '../../../server/store/migrations/001-log.ts';
import { FORM } from '../../../server/store/migrations/migrate.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { auditors, streamKinds } from '../../../server/streams.ts';
import { aFolder } from '../../folders.ts';
import { tamper } from '../log/tamper.ts';

/** The whole log of a site with a closed job, as an earlier release wrote it. */
const EXPORTED = new URL('../verifier/fixtures/export-1-job/log.jsonl', import.meta.url);
const HASH = /,"hash":"(\w{64})"\}$/;
const COPIES = 'yokeside-before-update';

let folder: string;

/** The database of the first release: its one migration, and entries of its time. */
function firstRelease(): string {
  const at = aFolder();
  const database = new DatabaseSync(join(at, 'yokeside.sqlite'));
  database.exec(`${log001}; PRAGMA application_id = 0x596f6b65; PRAGMA user_version = 1;`);
  const append = database.prepare('INSERT INTO log (seq, stream, place, hash, bytes) VALUES (?, ?, ?, ?, ?)');
  for (const line of readFileSync(EXPORTED, 'utf8').trim().split('\n')) {
    const { seq, stream, place, hash } = JSON.parse(line);
    append.run(seq, stream, place, hash, line.replace(HASH, '}'));
  }
  database.close();
  return at;
}

const formOf = (at: string): number => {
  const database = new DatabaseSync(join(at, 'yokeside.sqlite'), { readOnly: true });
  const { user_version } = database.prepare('PRAGMA user_version').get();
  database.close();
  return user_version;
};

beforeEach(() => {
  folder = firstRelease();
  vi.spyOn(console, 'error').mockImplementation(() => {});
});

test('a log of the first release is copied whole before it is brought up to date, verifies, and its job stands where it stood (RL-38)', async () => {
  const store = await openStore({ folder, database: '' });
  const report = await verifyStore(store, auditors);
  expect([report.fault, report.problems, report.entries]).toEqual([null, [], 72]);
  await rebuildSummaries(store, streamKinds);
  const log = new SiteLog({ store, kinds: streamKinds, now: () => new Date(), codeVersion: 'test' });
  const [job] = await log.summaries('job');
  expect((await log.state(jobKind, job?.id ?? '')).status).toBe('closed');
  await log.close();
  expect(formOf(folder)).toBe(FORM);
  const [copy = ''] = readdirSync(join(folder, COPIES));
  expect(formOf(join(folder, COPIES, copy))).toBe(1);
  expect(vi.mocked(console.error).mock.calls.join()).toContain(copy);
  // Once is enough: the next start finds nothing to do.
  await (await openStore({ folder, database: '' })).close();
  expect(readdirSync(join(folder, COPIES))).toEqual([copy]);
});

test('where no whole copy can be made nothing is changed, and it is said why (RL-38)', async () => {
  writeFileSync(join(folder, COPIES), 'a file where the copies should be');
  await expect(openStore({ folder, database: '' })).rejects.toThrow(
    /form 1 and this release wants 2.*EEXIST/s,
  );
  expect(formOf(folder)).toBe(1);
  const damaged = firstRelease();
  tamper(damaged, ({ sql }) => sql(`UPDATE log SET bytes = replace(bytes, 'Test plant', 'Best plant')`));
  await expect(openStore({ folder: damaged, database: '' })).rejects.toThrow('the first bad entry is 1');
  expect(formOf(damaged)).toBe(1);
});

test('a new folder, and one of this release, are opened as they are', async () => {
  const fresh = aFolder();
  await openSqliteStore({ folder: fresh }).close();
  await (await openStore({ folder: fresh, database: '' })).close();
  expect(readdirSync(fresh)).not.toContain(COPIES);
});
