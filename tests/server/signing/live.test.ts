/** The live channel: what is told, to how many, and that it ends. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { BEAT_MS, LIVE_EACH_MAX, LIVE_MAX, LiveChannel } from '../../../server/signing/live.ts';
import { type AtCard, atCard } from '../jobs/at-card.ts';
import { jsonOf } from './at-hold.ts';

type Reader = ReadableStreamDefaultReader<Uint8Array>;

const stillThere = async () => true;

async function heard(reader: Reader): Promise<string> {
  const { value } = await reader.read();
  return new TextDecoder().decode(value);
}

function listening(
  live: LiveChannel,
  of: { person?: string; wanted?: (stream: string) => boolean } = {},
): Reader {
  const { person = 't1', wanted = () => true } = of;
  const body = live.open({ person, wanted, stillThere });
  if (body === null) throw new Error('there is no room');
  return body.getReader();
}

describe('the live channel', () => {
  test('tells which stream has a new line, and nothing of what is in it', async () => {
    const live = new LiveChannel();
    const reader = listening(live, { wanted: (stream) => stream === 'job:7' });
    expect(await heard(reader)).toBe('event: beat\ndata: \n\n');
    live.tell({ stream: 'job:8', place: 1 });
    live.tell({ stream: 'job:7', place: 12 });
    expect(await heard(reader)).toBe('data: {"stream":"job:7","place":12}\n\n');
    await live.close();
  });

  test('tells a slow screen the newest place, not every one', async () => {
    const live = new LiveChannel();
    const reader = listening(live);
    await heard(reader);
    for (let place = 1; place <= 500; place += 1) live.tell({ stream: 'job:7', place });
    const told: string[] = [];
    while (!told.join('').includes('"place":500')) told.push(await heard(reader));
    expect(told.length).toBeLessThan(5);
    await live.close();
  });

  test('has room for so many screens and no more, and for so many of one person; one that leaves makes room', async () => {
    const live = new LiveChannel();
    const own = Array.from({ length: LIVE_EACH_MAX }, () => listening(live, { person: 't1' }));
    await Promise.all(own.map(heard));
    expect(live.open({ person: 't1', wanted: () => true, stillThere })).toBeNull();
    const others = Array.from({ length: LIVE_MAX - LIVE_EACH_MAX }, (_, at) =>
      listening(live, { person: `p${at}` }),
    );
    await Promise.all(others.map(heard));
    expect(live.count).toBe(LIVE_MAX);
    expect(live.open({ person: 'late', wanted: () => true, stillThere })).toBeNull();
    await own[0]?.cancel();
    expect(live.count).toBe(LIVE_MAX - 1);
    expect(live.open({ person: 'late', wanted: () => true, stillThere })).not.toBeNull();
    await live.close();
    expect(live.count).toBe(0);
  });

  test('holds no room for an answer that nobody reads', () => {
    const live = new LiveChannel();
    for (let asked = 0; asked < 3 * LIVE_MAX; asked += 1)
      live.open({ person: `p${asked}`, wanted: () => true, stillThere });
    expect(live.count).toBe(0);
  });

  test('ends when the server stops, and for whoever is signed in no more', async () => {
    const live = new LiveChannel();
    const reader = listening(live);
    await heard(reader);
    await live.close();
    expect(await reader.read()).toEqual({ done: true, value: undefined });
    expect(live.open({ person: 't1', wanted: () => true, stillThere })).toBeNull();
    const other = new LiveChannel();
    const gone = other.open({ person: 't1', wanted: () => true, stillThere: async () => false })?.getReader();
    let done = false;
    const until = Date.now() + 9 * BEAT_MS;
    while (!done && Date.now() < until) done = (await gone?.read())?.done ?? true;
    expect(done).toBe(true);
    expect(other.count).toBe(0);
  }, 30_000);
});

describe('the address that screens listen at', () => {
  let at: AtCard;
  beforeEach(async () => {
    at = await atCard('rigGauges');
  });
  afterEach(async () => {
    await at.app.services.live.close();
    await at.close();
  });

  test('streams each commit of a job to a browser, never compressed and never kept', async () => {
    const headers = { accept: 'text/event-stream' };
    const answer = await at.app.get(`/live?job=${at.job.id}`, { as: at.technician.browser, headers });
    expect(answer.headers.get('content-type')).toBe('text/event-stream');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    const reader = answer.body?.getReader() as Reader;
    expect(await heard(reader)).toContain('event: beat');
    await at.job.answer({ rigGaugePa: '9.00 psi', rigCheckPa: '9.05 psi' });
    const { place } = await at.job.job();
    expect(await heard(reader)).toBe(`data: {"stream":"job:${at.job.id}","place":${place}}\n\n`);
    await reader.cancel();
    expect(at.app.services.live.count).toBe(0);
  });

  test('tells whoever asks instead of listening the newest place', async () => {
    const { place } = await at.job.job();
    const told = await jsonOf(at.app, { path: `/live?job=${at.job.id}`, as: at.technician.browser });
    expect(told).toEqual({ stream: `job:${at.job.id}`, place });
    const nobody = await at.app.get('/live', { headers: { accept: 'text/event-stream' } });
    expect([nobody.status, nobody.body]).toEqual([303, null]);
  });
});
