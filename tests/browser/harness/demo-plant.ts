import { afterAll, beforeAll, expect } from 'vitest';
import type { DemoPerson } from '../../../server/pages/set-up.ts';
import { aFolder } from '../../folders.ts';
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
    plant.server = await startServer({ folder: aFolder(), ...(startsAt && { startsAt }) });
    plant.people = await plant.server.loadDemo();
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

function loaded<T>(part: T | undefined): T {
  if (part === undefined) throw new Error('The demo plant is not loaded yet.');
  return part;
}
