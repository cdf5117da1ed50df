import { spawnSync } from 'node:child_process';
import { renameSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { pepperBeside } from '../../../server/config.ts';
import { verifyStore } from '../../../server/log/verify.ts';
import { readPepper } from '../../../server/people/pepper.ts';
import { SitePeople } from '../../../server/people/site-people.ts';
import { compiled } from '../../compiled.ts';
import { aFolder } from '../../folders.ts';
import { type AnApp, anApp, newRequestId } from '../an-app.ts';

const PIN = '738159';
let letIn = '';
let folder = '';
let app: AnApp | undefined;

beforeAll(async () => {
  letIn = await compiled('server/commands/let-in.ts');
});

/** A site with one engineer and nobody else. */
beforeEach(async () => {
  folder = join(aFolder(), 'data');
  await withSite(async (people) => {
    const first = { plant: 'P', name: 'Engineer 1', newPin: PIN };
    await people.setUp(first, { requestId: newRequestId(), person: null, screen: 'screen 1' });
  });
});
afterEach(() => app?.close());

function aSite(): Promise<AnApp> {
  return anApp({ folder, routes: [] });
}

/** The people of the folder, by the key that lies beside it, at what the command takes for the cost of a PIN. */
async function withSite(work: (people: SitePeople) => Promise<void>): Promise<void> {
  const { services, close } = await aSite();
  const { log, store, settings } = services;
  const pepper = readPepper({ file: pepperBeside(folder), dataFolder: folder, isInUse: false });
  await work(new SitePeople({ log, store, settings, pepper, now: () => new Date() }));
  await close();
}

function run(...parameters: readonly string[]): { readonly status: number | null; readonly said: string } {
  const env = { ...process.env, YOKESIDE_DATA: folder };
  const { status, stdout, stderr } = spawnSync(process.execPath, [letIn, ...parameters], {
    encoding: 'utf8',
    env,
  });
  return { status, said: stdout + stderr };
}

const codeIn = (said: string) => /: (\d{8})$/m.exec(said)?.[1] ?? '';
const by = () => ({ requestId: newRequestId(), person: null, screen: 'screen 1' });

test('a sole engineer who forgot the PIN is let in from the console, chooses another, and everybody reads of it', {
  timeout: 120_000,
}, async () => {
  const { status, said } = run('Engineer 1');
  expect([status, said]).toEqual([0, expect.stringContaining('One-time code for Engineer 1 (e1): ')]);
  const newPin = '517394';
  await withSite(async (people) => {
    await expect(people.verify({ who: 'e1', pin: PIN, screen: 'screen 1' })).rejects.toThrow('PPL-001');
    await people.setFirstPin({ who: 'e1', code: codeIn(said), newPin }, by());
    expect(await people.verify({ who: 'e1', pin: newPin, screen: 'screen 1' })).toMatchObject({ id: 'e1' });
    await people.addWithPin({ name: 'Technician 1', role: 'technician', pin: '482915' }, by());
  });
  app = await anApp({ folder, routes: [] });
  const entries = await app.services.log.entriesOf('site');
  expect(entries.find(({ kind }) => kind === 'let-in')).toMatchObject({
    screen: 'server console',
    person: null,
    inputs: { person: 'e1', newKey: false },
  });
  expect((await verifyStore(app.services.store, [])).fault).toBeNull();
});

test('a run of wrong PINs that holds the account is over with it', async () => {
  await withSite(async (people) => {
    for (let time = 0; time < 6; time += 1)
      await people.verify({ who: 'e1', pin: '1', screen: 'screen 1' }).catch(() => undefined);
  });
  const { said } = run('e1');
  await withSite(async (people) => {
    await people.setFirstPin({ who: 'e1', code: codeIn(said), newPin: '517394' }, by());
  });
});

test('where the key is lost, nothing is let in until it is said, and then every PIN is void', {
  timeout: 120_000,
}, async () => {
  const file = pepperBeside(folder);
  renameSync(file, `${file}.lost`);
  expect(run('Engineer 1')).toEqual({
    status: 1,
    said: expect.stringContaining('without it nobody can sign in'),
  });
  const { status, said } = run('--new-key', 'Engineer 1');
  expect([status, codeIn(said)]).toEqual([0, expect.stringMatching(/^\d{8}$/)]);
  await withSite(async (people) => {
    await expect(people.verify({ who: 'e1', pin: PIN, screen: 'screen 1' })).rejects.toThrow('PPL-001');
    await people.setFirstPin({ who: 'e1', code: codeIn(said), newPin: '517394' }, by());
  });
  expect(run('--new-key', 'Engineer 1').said).toContain('so it is not lost');
});

test.each([
  [[], 'Name one person'],
  [['Engineer', '1'], 'Name one person'],
  [['Nobody 7'], 'Nobody with the id Nobody 7 works here.'],
])('%j is answered in a line', (parameters, told) => {
  const { status, said } = run(...parameters);
  expect([status, said]).toEqual([1, expect.stringContaining(told)]);
  expect(said).not.toContain('    at ');
});

test('a folder without a log, or one that a server is using, is said to be so', async () => {
  app = await aSite();
  expect(run('Engineer 1').said).toContain('Another Yokeside server is using the folder');
  const before = folder;
  folder = join(before, 'nowhere');
  expect(run('Engineer 1').said).toContain('There is no log in the folder');
  folder = before;
});
