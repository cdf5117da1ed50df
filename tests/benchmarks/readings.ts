/** How many readings a second are kept for good, and how long one takes, beside what this machine does without Yokeside. */
import { join } from 'node:path';
import type { Store } from '../../server/store/store.ts';
import { startServer, type TestServer } from '../browser/harness/server.ts';
import { bareInserts, bareKeeper, holdMs, startBareRoute } from './bare.ts';
import { addGear, jobClients } from './job-site.ts';
import { type Client, type Counted, type Load, underLoad } from './load.ts';
import { atLeast, type Ratio } from './ratio.ts';

/** A job of this procedure has about a hundred lines; a longer one would measure something else. */
const POSTS_EACH = 25;
const CLIENTS = { count: 64, jobsEach: 4 } as const;
const SYNC_MS = 5;
const PER_SECOND = 300;
const P99_TIMES_MAX = 5;
const ROUNDS = 2;

type Asked = Pick<Load, 'lastsS' | 'perSecond'> & { readonly isOutcomeAlone?: boolean };

/** Every write takes so much longer as its disk would be slower; `ms` may be changed while it runs. */
function slowed(store: Store, sync: { ms: number }): Store {
  const held = async <T>(work: Promise<T>): Promise<T> => {
    const done = await work;
    holdMs(sync.ms);
    return done;
  };
  const slow: Pick<Store, 'commit' | 'alone' | 'putOutside' | 'deleteOutside'> = {
    commit: (batch) => held(store.commit(batch)),
    alone: (work) => store.alone((commit) => work((batch) => held(commit(batch)))),
    putOutside: (record) => held(store.putOutside(record)),
    deleteOutside: (kind, id) => held(store.deleteOutside(kind, id)),
  };
  return new Proxy(store, {
    get: (_, name) => {
      const own: unknown = Reflect.get(name in slow ? slow : store, name);
      return typeof own === 'function' ? own.bind(store) : own;
    },
  });
}

async function bareRoute(
  { perSecond, lastsS }: Asked,
  keep?: ReturnType<typeof bareKeeper>,
): Promise<Counted> {
  const server = await startBareRoute(keep);
  const target = { path: '/', first: { place: '1' }, again: {}, carried: { place: 'place' } };
  const clients: readonly Client[] = Array.from({ length: CLIENTS.count }, () => ({
    headers: {},
    targets: [target],
  }));
  try {
    return await underLoad({
      origin: server.origin,
      clients,
      postsEach: POSTS_EACH,
      lastsS,
      ...paced(perSecond),
    });
  } finally {
    await server.close();
  }
}

async function readings(
  server: TestServer,
  { perSecond, lastsS, isOutcomeAlone = true }: Asked,
): Promise<Counted> {
  const clients = await jobClients(server, { ...CLIENTS, isOutcomeAlone });
  return await underLoad({
    origin: server.origin,
    clients,
    postsEach: POSTS_EACH,
    lastsS,
    ...paced(perSecond),
  });
}

function paced(perSecond: number | undefined): Pick<Load, 'perSecond'> {
  return perSecond === undefined ? {} : { perSecond };
}

/** Loopback only. */
export async function measureReadings(folder: string, lastsS: number): Promise<readonly Ratio[]> {
  const sync = { ms: 0 };
  const server = await startServer({ folder: join(folder, 'site'), through: (store) => slowed(store, sync) });
  try {
    await addGear(server.services);
    const ratios: Ratio[] = [];
    for (const ms of [0, SYNC_MS]) {
      for (const isOutcomeAlone of [false, true])
        ratios.push(await againstInserts(server, { folder, lastsS, sync, ms, isOutcomeAlone }));
    }
    return [...ratios, await p99(server, lastsS)];
  } finally {
    await server.close();
  }
}

interface Syncing {
  readonly folder: string;
  readonly lastsS: number;
  readonly sync: { ms: number };
  readonly ms: number;
  readonly isOutcomeAlone: boolean;
}

async function againstInserts(
  server: TestServer,
  { folder, lastsS, sync, ms, isOutcomeAlone }: Syncing,
): Promise<Ratio> {
  const inserts: number[] = [];
  const kept: Counted[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    inserts.push(bareInserts({ folder, lastsS: lastsS / 2, syncMs: ms }));
    sync.ms = ms;
    kept.push(await readings(server, { lastsS, isOutcomeAlone }));
    sync.ms = 0;
  }
  const [insert, reading] = [Math.max(...inserts), Math.max(...kept.map(({ perSecond }) => perSecond))];
  const { perSecond: route } = await bareRoute({ lastsS: lastsS / 2 });
  const { perSecond: keeping } = await bareRoute({ lastsS: lastsS / 2 }, bareKeeper({ folder, syncMs: ms }));
  return {
    what: `readings of ${CLIENTS.count} clients${isOutcomeAlone ? ' that want the outcome alone' : ''} to bare inserts${ms === 0 ? '' : `, each sync ${ms} ms longer`}`,
    ...atLeast(ms === 0 ? 1 : 20, reading / insert),
    from: `${Math.round(reading)} and ${Math.round(insert)} a second; a bare route answers ${Math.round(route)}, and ${Math.round(keeping)} where it keeps each line`,
  };
}

async function p99(server: TestServer, lastsS: number): Promise<Ratio> {
  const asked = { perSecond: PER_SECOND, lastsS: lastsS * 2 };
  const [own, bare]: [number[], number[]] = [[], []];
  for (let round = 0; round < ROUNDS; round += 1) {
    own.push((await readings(server, asked)).slowestMs);
    bare.push((await bareRoute(asked)).slowestMs);
  }
  const [ownMs, bareMs] = [Math.min(...own), Math.min(...bare)];
  return {
    what: `p99 at ${PER_SECOND} readings a second to that of a bare route`,
    measured: (ownMs / bareMs).toFixed(2),
    goal: `<= ${P99_TIMES_MAX}`,
    isReached: ownMs / bareMs <= P99_TIMES_MAX,
    from: `${ownMs.toFixed(1)} ms and ${bareMs.toFixed(1)} ms`,
  };
}
