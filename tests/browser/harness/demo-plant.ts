import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect } from 'vitest';
import type { DemoPerson } from '../../../server/pages/set-up.ts';
import { aFolder } from '../../folders.ts';
import { oncePerRun } from '../../once-per-run.ts';
import { startServer, type TestServer } from './server.ts';

export interface DemoPlant {
  readonly server: TestServer;
  readonly people: readonly DemoPerson[];
}

/**
 * The demo plant on a server of its own for one chapter of tests; to be read from inside a test. The chapter fails
 * where the server had a fault of its own meanwhile.
 *
 * @example
 * const plant = demoPlant();
 * test('…', async () => signIn(page, inRole(plant.people, 'engineer')));
 */
export function demoPlant({ startsAt }: { readonly startsAt?: Date } = {}): DemoPlant {
  const plant: { server?: TestServer; people?: readonly DemoPerson[] } = {};
  beforeAll(async () => {
    Object.assign(plant, await loadedPlant(startsAt));
  }, 120_000);
  afterAll(async () => {
    await plant.server?.close();
    expect(plant.server?.faults()).toEqual([]);
  });
  return {
    get server() {
      return loaded(plant.server);
    },
    get people() {
      return loaded(plant.people);
    },
  };
}

const PEOPLE = 'people.json';

/** A server of its own with the demo plant, as it stood when it was loaded. */
export async function loadedPlant(startsAt?: Date): Promise<DemoPlant> {
  const from = await oncePerRun(`demo-plant-${startsAt?.getTime() ?? 'now'}`, (folder) =>
    load(folder, startsAt),
  );
  const folder = aFolder();
  cpSync(join(from, 'data'), folder, { recursive: true });
  const people = JSON.parse(readFileSync(join(from, PEOPLE), 'utf8')) as readonly DemoPerson[];
  return { server: await startServer({ folder, ...(startsAt && { startsAt }) }), people };
}

/** Loading takes seconds, a copy of what was loaded takes none. */
async function load(folder: string, startsAt: Date | undefined): Promise<void> {
  const server = await startServer({ folder: join(folder, 'data'), ...(startsAt && { startsAt }) });
  try {
    writeFileSync(join(folder, PEOPLE), JSON.stringify(await server.loadDemo()));
  } finally {
    await server.close();
  }
}

function loaded<T>(part: T | undefined): T {
  if (part === undefined) throw new Error('The demo plant is not loaded yet.');
  return part;
}
