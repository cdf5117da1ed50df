/**
 * `npm run big-site`: a plant of 20,000 valves and a million entries is made, its log is verified, the program is started on it, and every page
 * is asked for beside the same page of the demo plant. `-- --valves 2000 --entries 100000` for a smaller one.
 */
import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { loadDemoPlant } from '../../server/demo/demo-plant.ts';
import type { Route } from '../../server/http/route.ts';
import { sha256 } from '../../server/log/chain.ts';
import { verifyTold } from '../../server/log/verify.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { type AnApp, anApp, Browser } from '../server/an-app.ts';
import { fillSite } from './big-site.ts';

const TIMES = 20;
const RATIO_MAX = 1.5;
/** Below this a page is as quick as anybody notices, and its ratio is noise. */
const NOTICED_MS = 5;
/** Whole logs and exports, and what never ends: their time is in the amount that they give. */
const LEFT_OUT =
  /^(?:practise)?(?:listenLive|exportLog|exportValves|exportNoted|exportPlans|exportGear|exportAudit|servesAsset|showAsset|calculate)/i;

interface Site {
  readonly app: AnApp;
  readonly browser: Browser;
  readonly names: Readonly<Record<string, string>>;
}

async function openSite(folder: string, names: Site['names']): Promise<Site> {
  const app = await anApp({ folder });
  const by = { requestId: `benchmark-${process.pid}`, person: null, screen: 'benchmark' };
  const person = await app.services.people.addWithPin(
    { name: 'Engineer of the benchmark', role: 'engineer', pin: '826491' },
    by,
  );
  const browser = new Browser();
  await app.post('/sign-in', { who: person.id, pin: '826491' }, { as: browser });
  return { app, browser, names };
}

function pathOf({ path }: Route, { names }: Site): string {
  const kind = path.split('/')[1] ?? '';
  return path.replace(/:\w+(\{[^}]*\})?/g, encodeURIComponent(names[kind] ?? 'x'));
}

/** 95 of a hundred take at most so long; null for what is not there. */
async function slowMs(
  site: Site,
  route: Route,
): Promise<{ readonly ms: number; readonly firstMs: number } | null> {
  const tookMs: number[] = [];
  for (let time = 0; time < TIMES; time += 1) {
    const begunMs = performance.now();
    const response = await site.app.get(pathOf(route, site), { as: site.browser });
    await response.arrayBuffer();
    if (response.status >= 400) return null;
    tookMs.push(performance.now() - begunMs);
  }
  const [firstMs = 0, ...rest] = tookMs;
  rest.sort((one, other) => one - other);
  return { firstMs, ms: rest[Math.floor(rest.length * 0.95)] ?? firstMs };
}

async function comparePages(small: Site, big: Site): Promise<void> {
  let [pages, slower] = [0, 0];
  for (const route of big.app.routes) {
    if (route.method !== 'GET' || LEFT_OUT.test(route.name)) continue;
    const [one, other] = [await slowMs(small, route), await slowMs(big, route)];
    if (one === null || other === null) continue;
    pages += 1;
    const ratio = other.ms / one.ms;
    if (ratio <= RATIO_MAX || other.ms <= NOTICED_MS) continue;
    slower += 1;
    // At once: a run that is cut short has told what it knew.
    console.log(
      `  ${route.name.padEnd(24)} ${one.ms.toFixed(1)} -> ${other.ms.toFixed(1)} ms (${ratio.toFixed(1)}), first ${other.firstMs.toFixed(0)} ms`,
    );
  }
  console.log(`${pages} pages, 95 % of ${TIMES}: ${slower} slower than ${RATIO_MAX} times the small site`);
}

async function verifyBig(folder: string): Promise<void> {
  const store = openSqliteStore({ folder, readOnly: true });
  let hashMs = 0;
  let bytesCount = 0;
  let begunMs = performance.now();
  for await (const { bytes } of store.lines(1)) {
    sha256(bytes);
    bytesCount += bytes.length;
  }
  hashMs = performance.now() - begunMs;
  begunMs = performance.now();
  let most = 0;
  const tell = async ({ done }: { readonly done: number }): Promise<void> => {
    if (done % 5000 === 0) most = Math.max(most, process.memoryUsage().heapUsed);
  };
  const { entries, fault } = await verifyTold(store, { auditors: [], tell });
  const tookMs = performance.now() - begunMs;
  await store.close();
  console.log(
    `verified ${entries} entries, ${(bytesCount / 2 ** 20).toFixed(0)} MiB in ${(tookMs / 1000).toFixed(1)} s, heap at most ${(most / 2 ** 20).toFixed(0)} MiB; reading and hashing alone takes ${(hashMs / tookMs).toFixed(2)} of that${fault === null ? '' : `; NOT WHOLE at ${fault.seq}: ${fault.what}`}`,
  );
}

function startMs(script: string, folder: string): Promise<number> {
  const begunMs = performance.now();
  const child = spawn(process.execPath, [script], {
    env: {
      ...process.env,
      YOKESIDE_DATA: folder,
      YOKESIDE_PORT: '0',
      YOKESIDE_PEPPER: join(folder, '..', 'key', 'k'),
    },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  return new Promise((resolve, reject) => {
    let said = '';
    child.stderr.setEncoding('utf8').on('data', async (text: string) => {
      said += text;
      const address = /Yokeside is at (\S+)/.exec(said)?.[1];
      if (address === undefined) return;
      child.stderr.removeAllListeners('data').resume();
      await (await fetch(`${address}/`)).text();
      const tookMs = performance.now() - begunMs;
      child.once('exit', () => resolve(tookMs));
      child.kill('SIGTERM');
    });
    child.once('error', reject);
  });
}

const { values } = parseArgs({
  options: {
    valves: { type: 'string', default: '20000' },
    entries: { type: 'string', default: '1000000' },
    main: { type: 'string', default: 'dist/server/main.js' },
  },
});
const folder = mkdtempSync(join(tmpdir(), 'yokeside-big-'));
try {
  const [smallFolder, bigFolder] = [join(folder, 'small'), join(folder, 'big')];
  const demo = await anApp({ folder: smallFolder });
  await loadDemoPlant(demo.services);
  await demo.close();
  cpSync(smallFolder, bigFolder, { recursive: true });
  const store = openSqliteStore({ folder: bigFolder });
  const begunMs = performance.now();
  const entries = await fillSite(store, { valves: Number(values.valves), entries: Number(values.entries) });
  await store.close();
  console.log(`${entries} entries made in ${((performance.now() - begunMs) / 1000).toFixed(0)} s`);
  await verifyBig(bigFolder);
  const small = await openSite(smallFolder, {
    valves: 'FV-214',
    jobs: '1',
    gear: 'G-101',
    people: 'e1',
    procedures: 'stroke-check',
    audit: '1',
    points: 'FV-214',
    plans: 'P-1',
  });
  const big = await openSite(bigFolder, {
    ...small.names,
    valves: 'FV-100007',
    jobs: '100003',
    audit: '100003',
  });
  await comparePages(small, big);
  for (const { app } of [small, big]) await app.close();
  const [ofSmall, ofBig] = [await startMs(values.main, smallFolder), await startMs(values.main, bigFolder)];
  console.log(
    `start to first page: ${ofSmall.toFixed(0)} ms on the small site, ${ofBig.toFixed(0)} ms on the big one`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
}
