import { randomUUID } from 'node:crypto';
import { createApp } from '../../../server/app.ts';
import { ownOrigins, readConfig } from '../../../server/config.ts';
import { loadDemoPlant } from '../../../server/demo/demo-plant.ts';
import { readAssets } from '../../../server/http/assets.ts';
import { makeServices } from '../../../server/make-services.ts';
import type { DemoPerson } from '../../../server/pages/set-up.ts';
import { allRoutes } from '../../../server/routes.ts';
import { listen } from '../../../server/serve.ts';
import type { Services } from '../../../server/services.ts';
import { SETTINGS } from '../../../server/settings.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import type { Store } from '../../../server/store/store.ts';
import { ROOT } from '../../root.ts';

export interface TestServerOptions {
  /** An empty data folder, or one of an earlier server. */
  readonly folder: string;
  /** Where the clock stands at the start; without it, it is the machine's and runs. */
  readonly startsAt?: Date;
  /** Cost of a PIN, 2 to this power; the real one takes half a second each time. */
  readonly hashPower?: number;
  /** Puts something between the server and its store. */
  readonly through?: (store: Store) => Store;
}

export interface TestServer {
  readonly origin: string;
  readonly services: Services;
  /** What went wrong inside, from the operations log. */
  faults(): readonly string[];
  /** Moves a clock that was set at the start. */
  wait(ms: number): void;
  /** Loads the demo plant and tells its people with their PINs. */
  loadDemo(): Promise<readonly DemoPerson[]>;
  close(): Promise<void>;
}

/** The whole server as `npm start` runs it, on a free port of this machine, with a clock that tests can move. */
export async function startServer(options: TestServerOptions): Promise<TestServer> {
  const config = readConfig({ YOKESIDE_PORT: '0', YOKESIDE_DATA: options.folder });
  const { through = (store) => store } = options;
  const store = through(openSqliteStore({ folder: options.folder }));
  const assets = readAssets(ROOT);
  const listening = await listen(config);
  const origins = ownOrigins(config, listening.port);
  const origin = origins[0] ?? '';
  const lines: string[] = [];
  let waitedMs = 0;
  const { startsAt, hashPower = 4 } = options;
  const services = makeServices({
    store,
    practiceStore: () => openSqliteStore({ folder: `${options.folder}-practice` }),
    settings: { ...SETTINGS, origins, hashCost: { ...SETTINGS.hashCost, N: 2 ** hashPower } },
    pepper: Buffer.alloc(32, 7),
    project: ROOT,
    codeVersion: 'test',
    asset: assets.address,
    now: () => (startsAt === undefined ? new Date() : new Date(startsAt.getTime() + waitedMs)),
    newId: randomUUID,
    drawSeed: () => 7,
    out: (line) => lines.push(line),
  });
  const routes = allRoutes({ assets, codeVersion: 'test', loadDemo: loadDemoPlant });
  listening.answerWith(createApp({ services, routes }));
  return {
    origin,
    services,
    faults: () => lines.filter((line) => line.includes('"event":"fault"')),
    wait: (ms) => {
      waitedMs += ms;
    },
    loadDemo: () => demoPlant(origin),
    close: async () => {
      await services.live.close();
      await listening.stop();
      await services.practice.close();
      await services.log.close();
    },
  };
}

async function demoPlant(origin: string): Promise<readonly DemoPerson[]> {
  const response = await fetch(`${origin}/set-up/demo`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', accept: 'application/json', origin },
    body: JSON.stringify({ requestId: randomUUID() }),
  });
  if (!response.ok)
    throw new Error(`Loading the demo plant gave ${response.status}: ${await response.text()}`);
  return ((await response.json()) as { people: readonly DemoPerson[] }).people;
}
