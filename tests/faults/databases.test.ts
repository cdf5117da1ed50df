import { type ChildProcess, spawn } from 'node:child_process';
import { beforeAll, describe, expect, test } from 'vitest';
import { verifyStore } from '../../server/log/verify.ts';
import { openStore } from '../../server/store/open-store.ts';
import { compiled } from '../compiled.ts';
import {
  type Cluster,
  killCluster,
  PASSWORD,
  runCluster,
  sharedCluster,
  startCluster,
  urlOf,
} from '../postgres/cluster.ts';
import { anApp } from '../server/an-app.ts';
import { adding, aLog } from '../server/log/register.ts';
import { photoOf } from './photo-of.ts';

/** In the long run more of them. */
const KILLS = process.env.YOKESIDE_LONG === '1' ? 20 : 1;
const AT_ONCE = 4;

let writer: string;
let cluster: Cluster;
let url: string;
beforeAll(async () => {
  writer = await compiled('tests/faults/writer.ts');
  // One that may be killed.
  cluster = await startCluster({ bin: (await sharedCluster()).bin });
  url = urlOf(cluster);
});

interface Writing {
  readonly child: ChildProcess;
  /** Resolves when so many answers have come. */
  answered(count: number): Promise<void>;
  readonly ended: Promise<string>;
}

/** A server's log in a process of its own. */
function write(name: string): Writing {
  const child = spawn(process.execPath, [writer, url, name, String(AT_ONCE)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let output = '';
  const waiting: { readonly count: number; readonly resolve: () => void }[] = [];
  const count = () => output.split('\n').filter((line) => line.startsWith('ack ')).length;
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    output += text;
    for (const { count: wanted, resolve } of waiting) if (count() >= wanted) resolve();
  });
  return {
    child,
    answered: (wanted) =>
      new Promise((resolve) => {
        if (count() >= wanted) resolve();
        else waiting.push({ count: wanted, resolve });
      }),
    ended: new Promise((resolve) => child.on('close', () => resolve(output))),
  };
}

/** By request: what was sent, and with which total it was answered. */
function eventsOf(output: string): { sent: string[]; answers: Map<string, number> } {
  const lines = output.slice(0, output.lastIndexOf('\n')).split('\n');
  const of = (event: string) =>
    lines.filter((line) => line.startsWith(`${event} `)).map((line) => line.split(' '));
  return {
    sent: of('send').map(([, id = '']) => id),
    answers: new Map(of('ack').map(([, id = '', total]) => [id, Number(total)])),
  };
}

/** All that was answered is there, the chain is whole, and what is sent again is recorded once. */
async function expectKept(outputs: readonly string[]): Promise<void> {
  const store = await openStore({ folder: '', database: url });
  const log = aLog(store);
  const recorded = new Set<string | null>();
  for (const id of ['0', '1', '2'])
    for (const { requestId } of await log.entriesOf(`register:${id}`)) {
      expect(recorded.has(requestId)).toBe(false);
      recorded.add(requestId);
    }
  for (const { sent, answers } of outputs.map(eventsOf)) {
    for (const requestId of answers.keys()) expect(recorded).toContain(requestId);
    const unanswered = sent.filter((id) => !answers.has(id));
    expect(unanswered.length).toBeLessThanOrEqual(AT_ONCE);
    for (const requestId of [...unanswered, ...[...answers.keys()].slice(-3)]) {
      const id = String(Number(requestId.split('/')[1]) % 3);
      const { total } = await log.act(adding({ id, added: 1, requestId, ...photoOf(requestId) }));
      expect(total).toBe(answers.get(requestId) ?? total);
      recorded.add(requestId);
    }
  }
  const { fault, entries, photos } = await verifyStore(store, []);
  expect([fault, entries, photos]).toEqual([null, recorded.size, []]);
  await log.close();
}

describe('of several servers on one database', () => {
  test('one that is killed takes nothing with it, and the other goes on', async () => {
    const [one, other] = [write('one'), write('other')];
    await Promise.all([one.answered(8), other.answered(8)]);
    one.child.kill('SIGKILL');
    const ofOne = await one.ended;
    // So many more, while nobody gives the lock of the killed one back but the database.
    await other.answered(25);
    other.child.kill('SIGKILL');
    await expectKept([ofOne, await other.ended]);
  });

  test('none loses what it confirmed when the database is killed; all say why they stop (RL-13)', async () => {
    const outputs: string[] = [];
    for (let kill = 1; kill <= KILLS; kill += 1) {
      const writers = [write(`before-${kill}-a`), write(`before-${kill}-b`)];
      await Promise.all(writers.map(({ answered }) => answered(6)));
      killCluster(cluster);
      const ended = await Promise.all(writers.map((each) => each.ended));
      for (const output of ended)
        expect(output).toMatch(/failed STO-001: The log cannot be (written|read): /);
      outputs.push(...ended);
      await runCluster(cluster);
    }
    await expectKept(outputs);
  });

  test('each tells people that the log cannot be read while the database is away, and works again when it is back', async () => {
    const app = await anApp({ people: true, store: await openStore({ folder: '', database: url }) });
    const { browser } = await app.signedIn('technician');
    expect((await app.get('/valves', { as: browser })).status).toBe(200);
    killCluster(cluster);
    const away = await app.get('/valves', { as: browser });
    const page = await away.text();
    expect([away.status, page]).toEqual([503, expect.stringContaining('The log cannot be read: ')]);
    const act = await app.post('/sign-out', {}, { as: browser });
    expect(act.status).toBe(503);
    expect([page, await act.text(), ...app.lines].join()).not.toContain(PASSWORD);
    await runCluster(cluster);
    expect((await app.get('/valves', { as: browser })).status).toBe(200);
    await app.close();
  });
});
