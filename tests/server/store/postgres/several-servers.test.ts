import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Committed, SiteLog } from '../../../../server/log/site-log.ts';
import { verifyStore } from '../../../../server/log/verify.ts';
import type { Place } from '../../../../server/store/postgres/connections.ts';
import { openPostgresStore } from '../../../../server/store/postgres/postgres-store.ts';
import type { Store } from '../../../../server/store/store.ts';
import { aPlace, said } from '../../../postgres/places.ts';
import { adding, aLog, register } from '../../log/register.ts';

/** Two servers' logs on one database, each with connections and a memory of its own. */
let place: Place;
let one: SiteLog;
let other: SiteLog;
let store: Store;

beforeEach(async () => {
  place = await aPlace();
  store = await openPostgresStore(place);
  one = aLog(store);
  other = aLog(await openPostgresStore(place));
});
afterEach(async () => {
  await one.close();
  await other.close();
});

const isWhole = async () => await verifyStore(store, []);

describe('several servers on one database', () => {
  test('write one chain without a gap, a double or a fork, however they come together (RL-08, RL-24)', async () => {
    const third = aLog(await openPostgresStore(place));
    const acts = [one, other, third].flatMap((log, server) =>
      Array.from({ length: 40 }, async (_, count) => {
        // Some together in one batch, some apart.
        await pause((count % 4) * 10);
        return await log.act(adding({ id: `${count % 3}`, added: 1, requestId: `${server}/${count}` }));
      }),
    );
    const answers = await Promise.all(acts);
    const { fault, entries, head } = await isWhole();
    expect([fault, entries]).toEqual([null, 120]);
    for (const log of [one, other, third]) expect(await log.head()).toEqual(head);
    // Each act was decided on what the others had written before it: no total comes twice.
    for (const id of [0, 1, 2]) {
      const totals = answers.filter((_, index) => (index % 40) % 3 === id).map(({ total }) => total);
      const sorted = totals.sort((low, high) => low - high);
      expect(sorted).toEqual(Array.from(totals, (_, index) => index + 1));
      expect((await other.state(register, String(id))).total).toBe(totals.length);
    }
    await third.close();
  });

  test('give the same answer to the same request at both, at once or later, and write it once (RL-12)', async () => {
    const sent = () => adding({ id: 'a', added: 5, requestId: 'the same' });
    const answers = await Promise.all([one.act(sent()), other.act(sent()), one.act(sent())]);
    answers.push(await other.act(sent()));
    expect(answers).toEqual(answers.map(() => ({ total: 5, place: 1 })));
    expect((await store.head()).seq).toBe(1);
    const byOther = other.act(adding({ id: 'a', added: 5, requestId: 'the same', person: 't2' }));
    await expect(byOther).rejects.toMatchObject({ text: { code: 'LOG-001' } });
  });

  test('show at each what the other one wrote the moment before', async () => {
    for (let added = 1; added <= 6; added += 1) {
      const [writes, reads] = added % 2 === 0 ? [one, other] : [other, one];
      const { total, place: newest } = await writes.act(adding({ id: 'a', added }));
      expect((await reads.state(register, 'a')).total).toBe(total);
      expect(await reads.place('register:a')).toBe(newest);
    }
  });

  test('tell their listeners of what another one wrote, each entry’s stream once, in order', async () => {
    await one.catchUp();
    await other.catchUp();
    const told: Committed[] = [];
    other.onCommit((committed) => told.push(committed));
    await one.act(adding({ id: 'a', added: 1 }));
    await one.act(adding({ id: 'a', added: 1 }));
    await one.act(adding({ id: 'b', added: 1 }));
    await other.act(adding({ id: 'c', added: 1 }));
    await other.catchUp();
    expect(told).toEqual([
      { stream: 'register:a', place: 2 },
      { stream: 'register:b', place: 1 },
      { stream: 'register:c', place: 1 },
    ]);
  });

  test('take turns that one of them alone has at a time', async () => {
    const otherStore = await openPostgresStore(place);
    let within = 0;
    let counted = 0;
    const count = (each: Store) =>
      each.inTurn('counting', async () => {
        within += 1;
        expect(within).toBe(1);
        const before = counted;
        await pause(5);
        counted = before + 1;
        within -= 1;
      });
    await Promise.all([count(store), count(otherStore), count(store), count(otherStore)]);
    expect(counted).toBe(4);
    await otherStore.close();
  });

  test('stop writing and reading where the database holds no longer what they confirmed', async () => {
    for (let added = 1; added <= 3; added += 1) await one.act(adding({ id: 'a', added }));
    await said(
      place.url,
      `ALTER TABLE ${place.schema}.log DISABLE TRIGGER USER; DELETE FROM ${place.schema}.log WHERE seq = 3;
       ALTER TABLE ${place.schema}.log ENABLE TRIGGER USER`,
    );
    const refusal = { what: expect.stringContaining('no longer holds what this server has confirmed') };
    await expect(one.act(adding({ id: 'b', added: 1 }))).rejects.toMatchObject(refusal);
    await expect(one.state(register, 'a')).rejects.toMatchObject(refusal);
    // One that never confirmed it cannot know; its checkpoints are asked when it starts.
    expect((await other.act(adding({ id: 'b', added: 1 }))).total).toBe(1);
    await expect(one.act(adding({ id: 'b', added: 1 }))).rejects.toMatchObject(refusal);
  });
});
