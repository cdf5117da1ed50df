/**
 * `npm run big-site`: a plant of 20,000 valves and a million entries is made, its log is verified, the program is started on it, and every page
 * is asked for beside the same page of a plant of 150 valves. `-- --valves 2000 --entries 100000` for a smaller one;
 * `--keep FOLDER` leaves both sites for the next run, `--only listValves` looks at some pages alone.
 */
import { spawn } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { loadDemoPlant } from '../../server/demo/demo-plant.ts';
import { sha256 } from '../../server/log/chain.ts';
import { verifyTold } from '../../server/log/verify.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { anApp } from '../server/an-app.ts';
import { fillSite, type Size } from './big-site.ts';
import { comparePages, openSite } from './compare-pages.ts';

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
  // Each its own: checkpoints lie beside it. The same as the sites were made with.
  const pepper = join(`${folder}-key`, 'k');
  mkdirSync(`${folder}-key`, { recursive: true, mode: 0o700 });
  writeFileSync(pepper, Buffer.alloc(32, 7).toString('hex'), { mode: 0o600 });
  const begunMs = performance.now();
  const child = spawn(process.execPath, [script], {
    env: {
      ...process.env,
      YOKESIDE_DATA: folder,
      YOKESIDE_PORT: '0',
      YOKESIDE_PEPPER: pepper,
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
      child.removeAllListeners('exit').once('exit', () => resolve(tookMs));
      child.kill('SIGTERM');
    });
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`It ended with ${code}: ${said}`)));
  });
}

/** As many entries for each valve as on the big site, and enough valves that each list fills its page. */
const SMALL = { valves: 150, entries: 7500 } as const;

/** The demo plant grown to two sizes, unless a run before has left them. */
async function makeSites({ demo, small, big }: typeof folders): Promise<void> {
  if (!existsSync(demo)) {
    const app = await anApp({ folder: demo });
    await loadDemoPlant(app.services);
    await app.close();
  }
  if (!existsSync(small)) await grow(demo, { to: small, size: SMALL });
  const size = { valves: Number(values.valves), entries: Number(values.entries) };
  if (!existsSync(big)) await grow(demo, { to: big, size });
}

async function grow(from: string, { to, size }: { readonly to: string; readonly size: Size }): Promise<void> {
  cpSync(from, to, { recursive: true });
  const store = openSqliteStore({ folder: to });
  const begunMs = performance.now();
  const entries = await fillSite(store, size);
  await store.close();
  console.log(`${entries} entries made in ${((performance.now() - begunMs) / 1000).toFixed(0)} s`);
}

/** Of both sites, each the same copy of the same valve and job. */
const NAMES = {
  valves: 'FV-100007',
  jobs: '100003',
  gear: 'G-101',
  people: 'e1',
  procedures: 'stroke-check',
  audit: '100003',
  points: 'FV-214',
  plans: 'P-1',
} as const;

async function pagesOf({ small: smallFolder, big: bigFolder }: typeof folders): Promise<void> {
  const small = await openSite(smallFolder, NAMES);
  const big = await openSite(bigFolder, NAMES);
  const only = new RegExp(values.only);
  const slower = await comparePages({ small, big, times: Number(values.times), only });
  for (const { app } of [small, big]) await app.close();
  if (slower.byCpu > 0) process.exitCode = 1;
}

const { values } = parseArgs({
  options: {
    valves: { type: 'string', default: '20000' },
    entries: { type: 'string', default: '1000000' },
    main: { type: 'string', default: 'dist/server/main.js' },
    /** A folder that keeps both sites for the next run; without it they go. */
    keep: { type: 'string' },
    /** Names of routes; then neither the log is verified nor the program started. */
    only: { type: 'string', default: '' },
    times: { type: 'string', default: '40' },
  },
});
const folder = values.keep ?? mkdtempSync(join(tmpdir(), 'yokeside-big-'));
const folders = { demo: join(folder, 'demo'), small: join(folder, 'small'), big: join(folder, 'big') };
try {
  await makeSites(folders);
  if (values.only === '') await verifyBig(folders.big);
  await pagesOf(folders);
  if (values.only === '') {
    for (const [name, of] of [
      ['small', folders.small],
      ['big', folders.big],
    ] as const) {
      // A site made here has the lists of no release: its first start makes them anew.
      const first = await startMs(values.main, of);
      const next = await startMs(values.main, of);
      console.log(
        `start to first page, ${name} site: ${next.toFixed(0)} ms; with all lists made anew ${first.toFixed(0)} ms`,
      );
    }
  }
} finally {
  if (values.keep === undefined) rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
}
