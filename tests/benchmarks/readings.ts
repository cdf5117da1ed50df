/**
 * How many readings a second are kept for good, beside what this machine does without Yokeside, in one run.
 * Loopback only; each line takes a few seconds.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { startServer } from '../browser/harness/server.ts';
import { bareInserts, startBareRoute } from './bare.ts';
import { addGear, jobClients } from './job-site.ts';
import { type Client, type Counted, underLoad } from './load.ts';

const LASTS_S = 4;
/** A job of this procedure has about a hundred lines; a longer one would measure something else. */
const POSTS_EACH = 25;
const CLIENTS = [
  { count: 1, jobsEach: 60 },
  { count: 64, jobsEach: 3 },
] as const;

interface Measured {
  readonly clients: number;
  readonly readings: Counted;
  readonly route: Counted;
}

async function measureRoute(count: number): Promise<Counted> {
  const server = await startBareRoute();
  const target = { path: '/', first: { place: '1' }, again: {}, carried: { place: 'place' } };
  const clients: readonly Client[] = Array.from({ length: count }, () => ({
    headers: {},
    targets: [target],
  }));
  try {
    return await underLoad({ origin: server.origin, clients, postsEach: POSTS_EACH, lastsS: LASTS_S });
  } finally {
    await server.close();
  }
}

async function measureReadings(folder: string, of: (typeof CLIENTS)[number]): Promise<Counted> {
  const server = await startServer({ folder });
  try {
    await addGear(server.services);
    const clients = await jobClients(server, of);
    return await underLoad({ origin: server.origin, clients, postsEach: POSTS_EACH, lastsS: LASTS_S });
  } finally {
    await server.close();
  }
}

async function measure(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'yokeside-benchmark-'));
  try {
    const insertsPerSecond = bareInserts({ folder, lastsS: LASTS_S });
    const measured: Measured[] = [];
    for (const of of CLIENTS) {
      const readings = await measureReadings(join(folder, String(of.count)), of);
      measured.push({ clients: of.count, readings, route: await measureRoute(of.count) });
    }
    print(insertsPerSecond, measured);
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
  }
}

function print(insertsPerSecond: number, measured: readonly Measured[]): void {
  console.log(
    `Node ${process.version}, ${cpus().length} processors, ${LASTS_S} s each, load in a second thread`,
  );
  console.log(`bare durable insert loop: ${Math.round(insertsPerSecond)} a second`);
  for (const { clients, readings, route } of measured) {
    console.log(`${clients} ${clients === 1 ? 'client' : 'clients'}`);
    console.log(`  durable readings over HTTP: ${told(readings)}`);
    console.log(`  bare hono route:            ${told(route)}`);
    const ratios = [readings.perSecond / insertsPerSecond, readings.perSecond / route.perSecond];
    const [ofInserts, ofRoute] = ratios.map((ratio) => ratio.toFixed(2));
    console.log(`  readings to inserts ${ofInserts}, readings to route ${ofRoute}`);
  }
}

function told({ perSecond, middleMs, slowestMs }: Counted): string {
  const rate = `${Math.round(perSecond)} a second`.padEnd(15);
  return `${rate} half within ${middleMs.toFixed(2)} ms, 99 % within ${slowestMs.toFixed(2)} ms`;
}

await measure();
