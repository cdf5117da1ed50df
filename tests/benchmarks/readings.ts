/**
 * How many readings a second are kept for good, beside what this machine does without Yokeside, in one run.
 * Loopback only; each line takes a few seconds.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bareInserts, startBareRoute } from './bare.ts';
import { type Client, type Counted, underLoad } from './load.ts';

const LASTS_S = 4;
const CLIENTS = [1, 64] as const;

const folder = mkdtempSync(join(tmpdir(), 'yokeside-benchmark-'));
try {
  const insertsPerSecond = bareInserts({ folder, lastsS: LASTS_S });
  say(`bare durable insert loop           ${whole(insertsPerSecond)} commits/s`);
  const route = await startBareRoute();
  for (const clients of CLIENTS) {
    const load = {
      origin: route.origin,
      clients: many(clients, { path: '/', headers: {}, fields: { place: '1' } }),
    };
    sayCounted(`bare hono route, ${clients} clients`, await underLoad({ ...load, lastsS: LASTS_S }));
  }
  await route.close();
} finally {
  rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
}

function many(count: number, client: Client): readonly Client[] {
  return Array.from({ length: count }, () => client);
}

function sayCounted(what: string, { perSecond, middleMs, slowestMs }: Counted): void {
  say(
    `${what.padEnd(34)} ${whole(perSecond)} /s, half within ${middleMs.toFixed(2)} ms, 99 % within ${slowestMs.toFixed(2)} ms`,
  );
}

function whole(value: number): string {
  return Math.round(value).toString().padStart(6);
}

function say(line: string): void {
  console.log(line);
}
