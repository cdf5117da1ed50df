/**
 * `npm run crowd`: 200 technicians who enter readings as fast as they are answered, 20 screens that listen, and one export of the whole
 * log at the same time. Nothing may be lost or be there twice, and nobody may wait while others are served.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { verifyStore } from '../../server/log/verify.ts';
import { startServer, type TestServer } from '../browser/harness/server.ts';
import { addGear, jobClients } from './job-site.ts';
import { type Client, type Counted, type OfClient, underLoad } from './load.ts';

/** Each group asks from an address of its own, as screens of a plant do. */
const GROUPS = 4;
const LISTEN_EACH = 5;

/** Two that come at almost the same moment may change places. */
const OVERTAKEN_MAX = 2;

interface Heard {
  count: number;
  stop(): void;
}

/** A screen that shows the shift list and hears of every job. */
async function listen(server: TestServer, client: Client): Promise<Heard> {
  const stopping = new AbortController();
  const answer = await fetch(`${server.origin}/live`, {
    headers: { ...client.headers, accept: 'text/event-stream' },
    signal: stopping.signal,
  });
  const heard: Heard = { count: 0, stop: () => stopping.abort() };
  const hear = async (): Promise<void> => {
    for await (const bytes of answer.body ?? [])
      heard.count += Buffer.from(bytes).toString().split('data:').length - 1;
  };
  hear().catch((error: unknown) => {
    if (!stopping.signal.aborted) throw error;
  });
  return heard;
}

/** @returns how many bytes, and how long it took */
async function exported(
  server: TestServer,
  cookie: string,
): Promise<{ readonly bytes: number; readonly tookMs: number }> {
  const begunMs = performance.now();
  const answer = await fetch(`${server.origin}/audit/export.tar`, { headers: { cookie, accept: '*/*' } });
  if (!answer.ok) throw new Error(`The export gave ${answer.status}.`);
  const { byteLength } = await answer.arrayBuffer();
  return { bytes: byteLength, tookMs: performance.now() - begunMs };
}

async function officerCookie(server: TestServer): Promise<string> {
  const by = { requestId: crypto.randomUUID(), person: null, screen: 'crowd' };
  const { id } = await server.services.people.addWithPin(
    { name: 'Safety officer', role: 'safety-officer', pin: '375218' },
    by,
  );
  const answer = await fetch(`${server.origin}/sign-in`, {
    method: 'POST',
    headers: { origin: server.origin, accept: 'application/json', 'content-type': 'application/json' },
    body: JSON.stringify({ who: id, pin: '375218', next: '' }),
  });
  return answer.headers
    .getSetCookie()
    .map((line) => line.split(';')[0])
    .join('; ');
}

const jobIn = (client: Client): string => /jobs\/(\w+)/.exec(client.targets[0]?.path ?? '')?.[1] ?? '';

/** Of each technician: lines of their job beyond those before, less the answers that they got. */
async function differences(
  server: TestServer,
  of: { readonly clients: readonly Client[]; readonly before: readonly number[]; readonly counted: Counted },
): Promise<readonly number[]> {
  return await Promise.all(
    of.clients.map(async (client, at) => {
      const lines = await server.services.log.place(`job:${jobIn(client)}`);
      return lines - (of.before[at] ?? 0) - (of.counted.ofEach[at]?.answers ?? 0);
    }),
  );
}

const { values } = parseArgs({
  options: { technicians: { type: 'string', default: '200' }, seconds: { type: 'string', default: '20' } },
});
const each = Math.ceil(Number(values.technicians) / GROUPS);
const folder = mkdtempSync(join(tmpdir(), 'yokeside-crowd-'));
const server = await startServer({ folder: join(folder, 'data') });
try {
  await addGear(server.services);
  const groups: (readonly Client[])[] = [];
  for (let group = 0; group < GROUPS; group += 1)
    groups.push(await jobClients(server, { count: each, jobsEach: 1 }));
  // Each group at an address of its own, as screens of a plant are (Linux has all of 127.0.0.0/8).
  const isLinux = process.platform === 'linux';
  const clients = groups.flatMap((group, at) =>
    group.map((client) => (isLinux ? { ...client, from: `127.0.0.${at + 2}` } : client)),
  );
  const screens = await Promise.all(
    groups.flatMap((group) => group.slice(0, LISTEN_EACH).map((client) => listen(server, client))),
  );
  const cookie = await officerCookie(server);
  const before = await Promise.all(
    clients.map((client) => server.services.log.place(`job:${jobIn(client)}`)),
  );
  const [counted, copy] = await Promise.all([
    underLoad({ origin: server.origin, clients, postsEach: 1_000_000, lastsS: Number(values.seconds) }),
    exported(server, cookie),
  ]);
  await new Promise((resolve) => setTimeout(resolve, 1000));
  const lost = await differences(server, { clients, before, counted });
  const spread = (of: (one: OfClient) => number): string => {
    const sorted = counted.ofEach.map(of).sort((one, other) => one - other);
    return [0, 0.5, 1]
      .map((share) => sorted[Math.round(share * (sorted.length - 1))]?.toFixed(0))
      .join(' / ');
  };
  const answers = counted.ofEach.map((one) => one.answers);
  const overtaken = Math.max(...counted.ofEach.map((one) => one.overtaken));
  const report = await verifyStore(server.services.store, []);
  console.log(
    `${clients.length} technicians, ${screens.length} screens that listen, one export, ${values.seconds} s`,
  );
  console.log(
    `  readings ${answers.reduce((sum, one) => sum + one, 0)}, ${counted.perSecond.toFixed(0)} a second; half within ${counted.middleMs.toFixed(0)} ms, 99 % within ${counted.slowestMs.toFixed(0)} ms`,
  );
  console.log(`  readings of a technician, least / middle / most: ${spread((one) => one.answers)}`);
  console.log(`  longest wait of a technician, ms: ${spread((one) => one.longestMs)}`);
  console.log(
    `  while one waited for an answer, another was served from beginning to end ${overtaken} times at most`,
  );
  console.log(
    `  lost ${lost.filter((one) => one < 0).length}, double ${lost.filter((one) => one > 0).length}; log ${report.fault === null ? 'whole' : 'NOT WHOLE'}, ${report.entries} entries`,
  );
  console.log(
    `  each screen heard between ${Math.min(...screens.map(({ count }) => count))} and ${Math.max(...screens.map(({ count }) => count))} times`,
  );
  console.log(
    `  export ${(copy.bytes / 2 ** 20).toFixed(1)} MiB in ${(copy.tookMs / 1000).toFixed(1)} s; faults ${server.faults().length}`,
  );
  for (const screen of screens) screen.stop();
  const isFair = overtaken <= OVERTAKEN_MAX && Math.min(...answers) * 2 >= Math.max(...answers);
  if (lost.some((one) => one !== 0) || report.fault !== null || !isFair || server.faults().length > 0)
    process.exitCode = 1;
} finally {
  await server.close();
  rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
}
