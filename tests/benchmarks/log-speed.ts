/** Reading the log: verifying it beside hashing it, and working out the state of a job. */
import { join } from 'node:path';
import { loadDemoPlant } from '../../server/demo/demo-plant.ts';
import { jobKind } from '../../server/jobs/job-stream.ts';
import { sha256, unseal } from '../../server/log/chain.ts';
import { fold, stateAfter } from '../../server/log/fold.ts';
import { verifyStore } from '../../server/log/verify.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import type { LogEntry, Store, StoredLine } from '../../server/store/store.ts';
import { anApp } from '../server/an-app.ts';
import { fillSite } from './big-site.ts';
import { atLeast, atMostMs, best, type Ratio, told } from './ratio.ts';

const ENTRIES = 20_000;
const FOLDED = 500;
const ROUNDS = 5;

/** The demo plant, grown. */
export async function measureLog(folder: string): Promise<readonly Ratio[]> {
  const at = join(folder, 'log');
  const app = await anApp({ folder: at });
  await loadDemoPlant(app.services);
  await app.close();
  const store = openSqliteStore({ folder: at });
  try {
    const folded = await folding(store);
    await fillSite(store, { valves: 400, entries: ENTRIES });
    return [await verifying(store), folded];
  } finally {
    await store.close();
  }
}

async function verifying(store: Store): Promise<Ratio> {
  const hash = async () => {
    for await (const { bytes } of store.lines(1)) sha256(bytes);
  };
  const verify = async () => {
    const { fault } = await verifyStore(store, []);
    if (fault !== null) throw new Error(`The log is not whole: ${fault.what}`);
  };
  // In turn, so that a busy moment meets both.
  const hashed = await best(ROUNDS, hash);
  const verified = await best(ROUNDS, verify);
  return {
    what: `verification to reading and SHA-256 alone of ${ENTRIES} entries`,
    ...atLeast(0.5, hashed.cpuMs / verified.cpuMs),
    from: `verified in ${told(verified)}; hashed in ${told(hashed)}`,
  };
}

/** Real jobs of about a hundred lines, one after the other, to so many lines in all. */
async function folding(store: Store): Promise<Ratio> {
  const streams: { readonly lines: readonly StoredLine[]; readonly entries: readonly LogEntry[] }[] = [];
  let count = 0;
  for await (const stream of store.streams()) {
    if (!stream.startsWith('job:') || count >= FOLDED) continue;
    const lines = (await store.stream(stream)).slice(0, FOLDED - count);
    streams.push({ lines, entries: lines.map(unseal) });
    count += lines.length;
  }
  const evolve = () => {
    for (const { entries } of streams) stateAfter(jobKind, entries);
  };
  const folded = await best(ROUNDS * 20, evolve);
  const checked = await best(ROUNDS * 4, () => {
    for (const { lines } of streams) fold(jobKind, lines);
  });
  return {
    what: `fold of ${count} entries`,
    ...atMostMs(1, folded.cpuMs),
    from: `${told(folded)}; with each line read and its hash checked ${told(checked)}`,
  };
}
