import pg from 'pg';
import type { Place } from '../../server/store/postgres/connections.ts';
import { sharedCluster, urlOf } from './cluster.ts';

let places = 0;

/** A schema of its own in the shared database, not yet made. */
export async function aPlace(): Promise<Place> {
  places += 1;
  return { url: urlOf(await sharedCluster()), schema: `t${process.pid}_${places}` };
}

/** An empty database of its own: for programs, which choose the schema themselves. @returns its connection string */
export async function aDatabase(): Promise<string> {
  const cluster = await sharedCluster();
  places += 1;
  const name = `d${process.pid}_${places}`;
  await said(urlOf(cluster), `CREATE DATABASE ${name}`);
  return urlOf(cluster, name);
}

/** What the database answers somebody who comes with their own tool. */
export async function said(url: string, sql: string): Promise<readonly Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}
