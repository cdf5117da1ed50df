import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Refusal } from '../../../safety/refusal.ts';
import type { SiteLog } from '../../../server/log/site-log.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import { aFolder } from '../../folders.ts';
import { adding, aLog, register, site } from './register.ts';

describe('the site log', () => {
  let folder: string;
  let log: SiteLog;

  beforeEach(() => {
    folder = aFolder();
    log = aLog(openSqliteStore({ folder }));
  });
  afterEach(() => log.close());

  test('an act is answered with what was decided, and its entry is in its stream', async () => {
    expect(await log.act(adding({ id: 'a', added: 5 }))).toEqual({ total: 5, place: 1 });
    expect(await log.act(adding({ id: 'a', added: 7 }))).toEqual({ total: 12, place: 2 });
    const entries = await log.entriesOf('register:a');
    expect(
      entries.map(({ seq, place, person, screen, at, codeVersion }) => [
        seq,
        place,
        person,
        screen,
        at,
        codeVersion,
      ]),
    ).toEqual([
      [1, 1, 't1', 'bench 1', '2024-01-15T08:00:01.000Z', 'test'],
      [2, 2, 't1', 'bench 1', '2024-01-15T08:00:02.000Z', 'test'],
    ]);
    expect(entries[1]?.previousHash).toBe(entries[0]?.hash);
    expect(await log.state(register, 'a')).toEqual({ total: 12, numbers: [5, 7] });
  });

  test('64 acts at once are one commit in the order in which they came, each seeing those before it', async () => {
    const answers = await Promise.all(
      Array.from({ length: 64 }, (_, index) => log.act(adding({ id: 'a', added: index }))),
    );
    expect(answers.map(({ place }) => place)).toEqual(Array.from({ length: 64 }, (_, index) => index + 1));
    expect((await log.state(register, 'a')).numbers).toEqual(Array.from({ length: 64 }, (_, index) => index));
    expect((await log.head()).seq).toBe(64);
  });

  test('the same request sent again gets the same answer and no second entry, also at once and after a restart', async () => {
    const act = adding({ id: 'a', added: 5 });
    const [first, second] = await Promise.all([log.act(act), log.act(act)]);
    const third = await log.act(act);
    await log.close();
    log = aLog(openSqliteStore({ folder }));
    const fourth = await log.act(act);
    expect([second, third, fourth]).toEqual([first, first, first]);
    expect((await log.head()).seq).toBe(1);
  });

  test('a request id used by another person, or for something else, is refused', async () => {
    await log.act(adding({ id: 'a', added: 5, requestId: 'r' }));
    for (const other of [
      adding({ id: 'a', added: 5, requestId: 'r', person: 't2' }),
      adding({ id: 'a', added: 6, requestId: 'r' }),
    ]) {
      await expect(log.act(other)).rejects.toMatchObject({ text: { code: 'LOG-001' }, status: 409 });
    }
    expect((await log.head()).seq).toBe(1);
  });

  test('a refused act writes nothing, and the acts beside it are done', async () => {
    const refusal = new Refusal({
      kind: 'unsafe',
      code: 'X-1',
      what: 'No.',
      kept: 'Nothing.',
      next: 'Stop.',
    });
    const refused = adding({
      id: 'a',
      added: 5,
      decide: () => {
        throw refusal;
      },
    });
    const outcomes = await Promise.allSettled([
      log.act(adding({ id: 'a', added: 1 })),
      log.act(refused),
      log.act(adding({ id: 'a', added: 2 })),
    ]);
    expect(outcomes[1]).toEqual({ status: 'rejected', reason: refusal });
    expect((await log.state(register, 'a')).numbers).toEqual([1, 2]);
  });

  test('a decision that looks at a stream which the act did not name is a fault, and nothing is written', async () => {
    const act = adding({ id: 'a', added: 1, decide: (read) => void read.state(site) });
    await expect(log.act(act)).rejects.toThrow('names only register:a');
    expect((await log.head()).seq).toBe(0);
  });
});
