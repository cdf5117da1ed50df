import { spawn } from 'node:child_process';
import { beforeAll, describe, expect, test } from 'vitest';
import { blobsOf } from '../../server/log/blobs.ts';
import { verifyStore } from '../../server/log/verify.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { compiled } from '../compiled.ts';
import { aFolder } from '../folders.ts';
import { adding, aLog } from '../server/log/register.ts';
import { photoOf } from './photo-of.ts';

/** In a full run: YOKESIDE_KILLS=200. */
const ROUNDS = Number(process.env.YOKESIDE_KILLS ?? 15);
const LASTS_MS_MAX = Math.max(300_000, ROUNDS * 12_000);

let writer: string;
beforeAll(async () => {
  writer = await compiled('tests/faults/writer.ts');
});

interface Run {
  readonly sent: string[];
  readonly acknowledged: Map<string, number>;
}

/** Lets the writer work for `lifeMs` after its first answer, then kills it without warning. */
async function killedAfter(run: {
  folder: string;
  round: number;
  atOnce: number;
  lifeMs: number;
}): Promise<Run> {
  const child = spawn(process.execPath, [writer, run.folder, String(run.round), String(run.atOnce)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let output = '';
  let dying = false;
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    output += text;
    if (dying || !output.includes('ack ')) return;
    dying = true;
    setTimeout(() => child.kill('SIGKILL'), run.lifeMs);
  });
  const signal = await new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (_code, by) => resolve(by));
  });
  expect(signal).toBe('SIGKILL');
  return readEvents(output.slice(0, output.lastIndexOf('\n')).split('\n'));
}

function readEvents(lines: readonly string[]): Run {
  const sent: string[] = [];
  const acknowledged = new Map<string, number>();
  for (const line of lines) {
    const [event, requestId = '', total] = line.split(' ');
    if (event === 'send') sent.push(requestId);
    else acknowledged.set(requestId, Number(total));
  }
  return { sent, acknowledged };
}

describe('a server that is killed at any moment', () => {
  test(
    `${ROUNDS} times over loses nothing that it confirmed, and records nothing twice that is sent again (RL-12, R-01)`,
    async () => {
      const folder = aFolder();
      let before = 0;
      let acknowledged = 0;
      for (let round = 1; round <= ROUNDS; round += 1) {
        const atOnce = round % 2 === 0 ? 1 : 8;
        const lifeMs = Math.random() * 150;
        const run = await killedAfter({ folder, round, atOnce, lifeMs });
        acknowledged += run.acknowledged.size;

        const store = openSqliteStore({ folder });
        const { entries, fault, photos } = await verifyStore(store, []);
        expect([fault, photos]).toEqual([null, []]);
        // Each client has one request on its way, so at most that one may be recorded without an answer.
        expect(entries - before).toBeGreaterThanOrEqual(run.acknowledged.size);
        expect(entries - before).toBeLessThanOrEqual(run.acknowledged.size + atOnce);

        before = await sendAgain(store, run);
        await store.close();
      }
      expect(acknowledged).toBeGreaterThan(ROUNDS);
    },
    LASTS_MS_MAX,
  );
});

/** Sends every unanswered request again, and the answered ones too. @returns how many entries there are then */
async function sendAgain(
  store: ReturnType<typeof openSqliteStore>,
  { sent, acknowledged }: Run,
): Promise<number> {
  const log = aLog(store);
  for (const requestId of sent) {
    const id = String(Number(requestId.split('/')[1]) % 3);
    const { total } = await log.act(adding({ id, added: 1, requestId, ...photoOf(requestId) }));
    const answered = acknowledged.get(requestId);
    if (answered !== undefined) expect(total).toBe(answered);
  }
  const recorded: (string | null)[] = [];
  let photos = 0;
  for (const id of ['0', '1', '2']) {
    for (const entry of await log.entriesOf(`register:${id}`)) {
      recorded.push(entry.requestId);
      photos += blobsOf(entry).length;
    }
  }
  expect(new Set(recorded).size).toBe(recorded.length);
  for (const requestId of sent) expect(recorded).toContain(requestId);
  expect(photos).toBeGreaterThan(0);
  return recorded.length;
}
