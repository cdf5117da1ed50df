import { beforeAll } from 'vitest';
import { openPostgresStore } from '../../../../server/store/postgres/postgres-store.ts';
import { sharedCluster, urlOf } from '../../../postgres/cluster.ts';
import { storeConformance } from '../conformance.ts';

let url: string;
let schemas = 0;

beforeAll(async () => {
  url = urlOf(await sharedCluster());
});

storeConformance('PostgreSQL', () => {
  schemas += 1;
  const schema = `conformance_${process.pid}_${schemas}`;
  return { open: async () => await openPostgresStore({ url, schema }) };
});
