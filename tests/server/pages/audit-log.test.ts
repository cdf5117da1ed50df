import { spawnSync } from 'node:child_process';
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { checkNumber } from '../../../server/log/check-number.ts';
import { Checkpoints, checkpointPlace } from '../../../server/log/checkpoints.ts';
import { keepMarking } from '../../../server/log/mark-checkpoints.ts';
import { verifyTold } from '../../../server/log/verify.ts';
import { Stopped, type Tell } from '../../../server/long/long-work.ts';
import { auditLogRoutes } from '../../../server/pages/audit-log.ts';
import { pointRoutes } from '../../../server/pages/points.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { type Manifest, verifyExport } from '../../../server/verifier/verify-export.ts';
import { aFolder } from '../../folders.ts';
import { type AnApp, anApp, Browser, newRequestId, PINS } from '../an-app.ts';
import { tamper } from '../log/tamper.ts';
import { textOf } from './texts.ts';

let keys = '';
let app: AnApp;
let officer: Browser;

/** What the log needs, and something to write: points. */
const routes = [...auditLogRoutes(() => '// as built\n'), ...pointRoutes];

const theCheckpoints = () => new Checkpoints(checkpointPlace(join(keys, 'yokeside.pepper')));

beforeEach(async () => {
  keys = aFolder();
  const checkpoints = theCheckpoints();
  app = await anApp({ people: true, checkpoints, routes });
  ({ browser: officer } = await app.signedIn('safety-officer'));
});
afterEach(() => app.close());

const page = async (path: string, as: Browser) => textOf(await (await app.get(path, { as })).text());
const addPoint = (tag: string, as: Browser) =>
  app.post(
    `/points/${tag}`,
    { requestId: newRequestId(), kind: 'cock', place: 'rack 2', lockable: 'yes' },
    { as },
  );

/** Marks, stops, lets somebody at the folder, and starts again on it as the server does. */
async function again(change: () => void): Promise<void> {
  const { checkpoints, log, now } = app.services;
  if (checkpoints === null) throw new Error('no checkpoints');
  await keepMarking({ log, checkpoints, now, report: (error) => expect(error).toBeUndefined() })();
  await app.close();
  change();
  await restarted();
}

async function restarted(): Promise<void> {
  const { folder } = app;
  const store = openSqliteStore({ folder });
  const checkpoints = theCheckpoints();
  await checkpoints.compare(store);
  app = await anApp({ store, folder, checkpoints, routes });
}

const backup = () => copyFileSync(join(app.folder, 'yokeside.sqlite'), join(keys, 'backup'));
const putBack = () => copyFileSync(join(keys, 'backup'), join(app.folder, 'yokeside.sqlite'));

/** An older backup put back under newer checkpoints. */
async function withOlderBackup(): Promise<void> {
  await again(backup);
  const supervisor = await signIn('s1', PINS.supervisor);
  expect((await addPoint('IA-1', supervisor)).status).toBe(303);
  app.wait(60_000);
  await again(putBack);
}

async function signIn(who: string, pin: string): Promise<Browser> {
  const browser = new Browser();
  const response = await app.post('/sign-in', { who, pin }, { as: browser });
  expect(response.status).toBe(303);
  return browser;
}

describe('a start', () => {
  test('on the log that was left serves as before', async () => {
    await again(() => {});
    expect(app.services.checkpoints?.distrust).toBeNull();
    const supervisor = await signIn('s1', PINS.supervisor);
    expect((await addPoint('IA-1', supervisor)).status).toBe(303);
  });

  test('on an older backup serves read-only, says so above every page, and why (SA-47)', async () => {
    await withOlderBackup();
    const supervisor = await signIn('s1', PINS.supervisor);
    const told = await page('/points', supervisor);
    expect(told).toContain(
      'Read-only: the log is not the one that was here before. It is shorter than it was',
    );
    expect(await page('/sign-in', new Browser())).toContain('Read-only:');
    const { seq } = await app.services.store.head();
    const refused = await addPoint('IA-2', supervisor);
    expect([refused.status, textOf(await refused.text())]).toEqual([409, expect.stringContaining('LOG-003')]);
    expect((await app.services.store.head()).seq).toBe(seq);
  });

  test('on a log whose last entries were written anew, or on changed checkpoints, serves read-only', async () => {
    await again(() =>
      tamper(app.folder, ({ sql }) =>
        sql('UPDATE log SET hash = ? WHERE seq = (SELECT max(seq) FROM log)', 'a'.repeat(64)),
      ),
    );
    expect(app.services.checkpoints?.distrust?.what).toContain('is not the one of');
    await app.close();
    const file = join(keys, 'yokeside.checkpoints.jsonl');
    writeFileSync(file, readFileSync(file, 'utf8').replace('"seq":', '"seq":1'));
    await restarted();
    expect(app.services.checkpoints?.distrust?.what).toContain('checkpoints were changed');
  });

  test('after half a checkpoint was written by a power cut goes on', async () => {
    const file = join(keys, 'yokeside.checkpoints.jsonl');
    await again(() => writeFileSync(file, `${readFileSync(file, 'utf8')}{"at":"20`));
    expect(app.services.checkpoints?.distrust).toBeNull();
    expect(readFileSync(file, 'utf8').endsWith('}\n')).toBe(true);
  });

  test('without the key of its checkpoints does not make another one', async () => {
    await again(() => {});
    const place = checkpointPlace(
      join(aFolder(), 'yokeside.pepper'),
      join(keys, 'yokeside.checkpoints.jsonl'),
    );
    expect(() => new Checkpoints(place)).toThrow('Put its backup there');
  });
});

describe('a restored log', () => {
  const take = (as: Browser, fields: Record<string, string>) =>
    app.post(
      '/audit/restore',
      { requestId: newRequestId(), why: 'The disk broke; an hour is lost.', ...fields },
      { as },
    );

  test('is taken by two people, as an entry with both heads, and work goes on (SA-26, SA-48)', async () => {
    await withOlderBackup();
    officer = await signIn('o1', PINS['safety-officer']);
    const distrust = app.services.checkpoints?.distrust;
    expect(await page('/audit/log', officer)).toContain('We both take this log as it is');
    const own = { pin: PINS['safety-officer'] };
    const alone = await take(officer, { ...own, other: 'o1', otherPin: PINS['safety-officer'] });
    expect([alone.status, textOf(await alone.text())]).toEqual([
      422,
      expect.stringContaining('another person'),
    ]);
    expect((await take(officer, { ...own, other: 't1', otherPin: PINS.technician })).status).toBe(422);
    expect(app.services.checkpoints?.distrust).not.toBeNull();
    expect((await take(officer, { ...own, other: 's1', otherPin: PINS.supervisor })).status).toBe(303);
    const entry = (await app.services.log.entriesOf('site')).at(-1);
    expect(entry).toMatchObject({
      kind: 'log-restored',
      inputs: {
        before: { seq: distrust?.checkpoint?.seq, hash: distrust?.checkpoint?.hash },
        found: { seq: distrust?.found.seq, hash: distrust?.found.hash },
        people: [{ id: 'o1' }, { id: 's1' }],
      },
    });
    expect((await addPoint('IA-3', await signIn('s1', PINS.supervisor))).status).toBe(303);
    app.wait(24 * 3_600_000);
    await again(() => {});
    expect(app.services.checkpoints?.distrust).toBeNull();
  });

  test('is not offered where nothing is wrong', async () => {
    const response = await take(officer, {
      pin: PINS['safety-officer'],
      other: 's1',
      otherPin: PINS.supervisor,
    });
    expect([response.status, textOf(await response.text())]).toEqual([
      409,
      expect.stringContaining('AUD-001'),
    ]);
  });
});

describe('a clock that is set back', () => {
  test('gets an entry, and no checkpoint with an older time (SA-41, RL-22)', async () => {
    await again(() => {});
    const { checkpoints, log } = app.services;
    if (checkpoints === null) throw new Error('no checkpoints');
    const before = checkpoints.latest;
    await addPoint('IA-1', await signIn('s1', PINS.supervisor));
    await keepMarking({
      log,
      checkpoints,
      now: () => new Date(0),
      report: (error) => expect(error).toBeUndefined(),
    })();
    expect(checkpoints.latest).toEqual(before);
    expect((await log.entriesOf('site')).at(-1)?.kind).toBe('clock-set-back');
  });
});

describe('a checkpoint that cannot be written', () => {
  test('is said above every page until one can be (SA-46)', async () => {
    await app.close();
    const checkpoints = new Checkpoints(
      checkpointPlace(join(keys, 'yokeside.pepper'), join(keys, 'no', 'such', 'folder')),
    );
    app = await anApp({ people: true, checkpoints, routes });
    const errors: unknown[] = [];
    const { log, now } = app.services;
    await keepMarking({ log, checkpoints, now, report: (error) => errors.push(error) })();
    expect(errors.length).toBeGreaterThan(0);
    expect(await page('/help', (await app.signedIn('technician')).browser)).toContain('could not be written');
  });
});

describe('the page of the log', () => {
  test('says of a number from paper that it fits, is of another log, or newer than this one (SA-42)', async () => {
    const { seq, hash } = await app.services.store.head();
    const asked = async (line: number, check: string) =>
      page(`/audit/log?line=${line}&check=${encodeURIComponent(check)}`, officer);
    const check = checkNumber(hash);
    await addPoint('IA-1', (await app.signedIn('supervisor')).browser);
    expect(await asked(seq, check.toLowerCase().replaceAll('-', ' '))).toContain(
      'It fits. 2 lines were written since',
    );
    expect(await asked(seq - 1, check)).toContain('another log, or it was written anew');
    expect(await asked(seq + 99, check)).toContain('cut off, or an older backup is served');
  });

  test('is checked here, whole or with its first bad line, and says so on the page', async () => {
    const sent = () => ({ requestId: newRequestId() });
    const asked = await app.post('/audit/verify', sent(), { as: officer });
    const { seq, hash } = await app.services.store.head();
    expect([asked.status, await page(asked.headers.get('location') ?? '', officer)]).toEqual([
      303,
      expect.stringContaining(`Whole: ${seq} lines. Check number of the last: ${checkNumber(hash)}.`),
    ]);
    tamper(app.folder, ({ sql }) =>
      sql(`UPDATE log SET bytes = replace(bytes, 'Test', 'Best') WHERE seq = 1`),
    );
    const told = await (await app.postJson('/audit/verify', sent(), { as: officer })).json();
    expect(told).toMatchObject({ whole: false, entries: 0, faults: [expect.stringMatching(/^Line 1 /)] });
    const stops = (tell: Tell) => verifyTold(app.services.store, { auditors: [], tell });
    await expect(
      stops(async () => {
        throw new Stopped();
      }),
    ).resolves.toMatchObject({ fault: { seq: 1 } });
  });

  test('is made into an export that is then saved as it was measured, whatever is written meanwhile', async () => {
    const made = await app.post('/audit/export', { requestId: newRequestId(), job: '' }, { as: officer });
    const ready = await app.get(made.headers.get('location') ?? '', { as: officer });
    const [, href = ''] = /href="(\/audit\/export\.tar\?work=[^"]+)"/.exec(await ready.text()) ?? [];
    const before = await app.services.store.head();
    await addPoint('IA-9', await signIn('s1', PINS.supervisor));
    const saved = await app.get(href, { as: officer });
    const tar = Buffer.from(await saved.arrayBuffer()).toString();
    expect([saved.status, tar.includes(`"entries": ${before.seq}`), tar.includes('IA-9')]).toEqual([
      200,
      true,
      false,
    ]);
    const none = await app.post('/audit/export', { requestId: newRequestId(), job: '99' }, { as: officer });
    expect(none.status).toBe(404);
  });

  test('saves an export whose entries verify and end with the head of the log (SA-02)', async () => {
    const response = await app.get('/audit/export.tar', { as: officer });
    expect(response.headers.get('content-disposition')).toContain('yokeside-site-2024-01-15.tar');
    const folder = aFolder();
    writeFileSync(join(folder, 'export.tar'), Buffer.from(await response.arrayBuffer()));
    expect(spawnSync('tar', ['-xf', 'export.tar'], { cwd: folder }).status).toBe(0);
    const manifest = JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8')) as Manifest;
    const lines = readFileSync(join(folder, 'log.jsonl'))
      .toString()
      .trimEnd()
      .split('\n')
      .map((line) => Buffer.from(line));
    const verdict = verifyExport(lines, {
      of: manifest.of,
      anchors: { checks: [manifest.head.check], checkpoints: [] },
    });
    expect(verdict).toMatchObject({
      fault: null,
      entries: manifest.entries,
      fitting: 1,
      head: await app.services.store.head(),
    });
    expect((await app.get('/audit/export.tar?job=9999', { as: officer })).status).toBe(404);
  });
});
