import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type LongStep, LongWorks, Stopped, TELL_NOBODY } from '../../../server/long/long-work.ts';
import { lookAt, saveShown } from '../../../server/tables/table-import.ts';
import { valveKind } from '../../../server/valves/valve-stream.ts';
import { valveTable } from '../../../server/valves/valve-table.ts';
import { FV_214 } from '../../builders/sheets.ts';
import { readHtml } from '../../views/html.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../an-app.ts';
import { textOf } from '../pages/texts.ts';

let app: AnApp;
let engineer: { readonly browser: Browser; readonly person: { readonly id: string } };

beforeAll(async () => {
  app = await anApp({ people: true });
  engineer = await app.signedIn('engineer');
});
afterAll(() => app.close());

const step = (done: number): LongStep => ({ doing: 'row read', done, of: 4 });
const BEGUN = { title: 'Counting to four', person: 'e1', back: '/valves', shows: () => '/valves' };

const settled = () => new Promise((resolve) => setTimeout(resolve, 1));

/** A work that goes on by one step whenever it is told to. */
function byHand(works: LongWorks, person = 'e1') {
  let next: () => void = () => {};
  const id = works.start({ ...BEGUN, person }, async (tell) => {
    for (let done = 1; done <= 4; done += 1) {
      await tell(step(done));
      await new Promise<void>((resolve) => {
        next = resolve;
      });
    }
    return 'counted';
  });
  const goOn = async () => {
    await settled();
    next();
    await settled();
  };
  return { id, goOn };
}

const someWorks = () => {
  const reported: unknown[] = [];
  let ids = 0;
  const newId = () => {
    ids += 1;
    return `w${ids}`;
  };
  return { reported, works: new LongWorks({ newId, report: (error) => reported.push(error) }) };
};

describe('long work', () => {
  test('says how far it is and ends with its result', async () => {
    const { works } = someWorks();
    const { id, goOn } = byHand(works);
    expect(works.at(id, 'e1')).toMatchObject({ step: { done: 1, of: 4 }, outcome: { state: 'going' } });
    for (let times = 0; times < 4; times += 1) await goOn();
    expect((await works.wait(id, Number.POSITIVE_INFINITY))?.outcome).toEqual({
      state: 'done',
      result: 'counted',
    });
  });

  test('stops at its next step, and what failed is told with its reason', async () => {
    const { works, reported } = someWorks();
    const { id, goOn } = byHand(works);
    works.stop(id, 'e1');
    await goOn();
    expect((await works.wait(id, 1000))?.outcome).toEqual({ state: 'stopped' });
    const broken = works.start(BEGUN, async () => {
      throw new Error('no disk');
    });
    expect((await works.wait(broken, 1000))?.outcome).toMatchObject({ state: 'failed' });
    expect(reported.map(String)).toEqual(['Error: no disk']);
  });

  test('is joined by whoever began it and asks again, never by somebody else, and begun anew once it has ended', async () => {
    const { works } = someWorks();
    let end = (): void => {};
    const run = () =>
      new Promise<void>((resolve) => {
        end = resolve;
      });
    const begun = { ...BEGUN, shows: '/history' };
    const id = works.startOrJoin(begun, run);
    expect(works.startOrJoin(begun, run)).toBe(id);
    end();
    expect((await works.wait(id, 1000))?.outcome.state).toBe('done');
    const anew = works.startOrJoin(begun, run);
    expect(anew).not.toBe(id);
    expect(works.startOrJoin({ ...begun, person: 'e2' }, run)).not.toBe(anew);
  });

  test('is not stopped any more once it is being written', async () => {
    const { works } = someWorks();
    let written: () => void = () => {};
    const id = works.start(BEGUN, async (tell, writing) => {
      await tell(step(1));
      writing();
      await new Promise<void>((resolve) => {
        written = resolve;
      });
      return 'written';
    });
    await settled();
    works.stop(id, 'e1');
    written();
    expect((await works.wait(id, 1000))?.outcome).toMatchObject({ state: 'done' });
  });

  test('is only for whoever began it, and only four go on at once', () => {
    const { works } = someWorks();
    const all = [1, 2, 3, 4].map(() => byHand(works).id);
    expect(() => works.at(all[0] ?? '', 't1')).toThrow('LNG-002');
    expect(() => byHand(works)).toThrow('LNG-001');
  });

  test('lets others in between, however long its steps are', async () => {
    const { works } = someWorks();
    let letIn = 0;
    const turns = setInterval(() => {
      letIn += 1;
    }, 1);
    const id = works.start(BEGUN, async (tell) => {
      const began = performance.now();
      // A work that lets nobody in goes on to the end of this time.
      for (let done = 0; letIn < 2 && performance.now() - began < 10_000; done += 1) await tell(step(done));
    });
    await works.wait(id, Number.POSITIVE_INFINITY);
    clearInterval(turns);
    expect(letIn).toBeGreaterThan(1);
  });
});

describe('the page of a long work', () => {
  test('refreshes itself without a script, is fetched anew with one, and stops by a plain form', async () => {
    const { id, goOn } = byHand(app.services.long, engineer.person.id);
    const page = async () => app.get(`/long-work/${id}`, { as: engineer.browser });
    const html = await (await page()).text();
    // To a reader with scripts, as this one, what stands in it is text.
    expect(readHtml(html.replace(/<noscript>.*?<\/noscript>/, '')).faults).toEqual([]);
    expect(html).toContain('<noscript><meta http-equiv="refresh" content="2"></noscript>');
    expect(html).toMatch(/hx-get="\/long-work\/[^"]+" hx-trigger="every 1s"/);
    expect(textOf(html)).toContain('1 of 4 , 25 %.');
    const other = await app.signedIn('technician');
    expect((await app.get(`/long-work/${id}`, { as: other.browser })).status).toBe(404);
    await app.post(`/long-work/${id}/stop`, { requestId: newRequestId() }, { as: engineer.browser });
    await goOn();
    const stopped = await (await page()).text();
    expect([
      stopped.includes('http-equiv'),
      textOf(stopped).includes('Stopped. Nothing was changed.'),
    ]).toEqual([false, true]);
  });

  test('goes on to the result once it is done, in a page and in a piece', async () => {
    const { id, goOn } = byHand(app.services.long, engineer.person.id);
    for (let times = 0; times < 4; times += 1) await goOn();
    const page = await app.get(`/long-work/${id}`, { as: engineer.browser });
    expect([page.status, page.headers.get('location')]).toEqual([303, '/valves']);
    const piece = await app.get(`/long-work/${id}`, {
      as: engineer.browser,
      headers: { 'hx-request': 'true' },
    });
    expect([piece.status, piece.headers.get('hx-redirect')]).toEqual([204, '/valves']);
  });
});

describe('a table that is stopped', () => {
  const text = JSON.stringify({
    valveSheets: Array.from({ length: 6 }, (_, at) => ({ ...FV_214, tag: `ST-${at}` })),
  });
  const today = '2024-01-15';

  test('at any step while it is looked at or saved leaves nothing', async () => {
    const { services } = app;
    const person = engineer.person.id;
    await services.store.putOutside({ kind: valveTable.keptAs, id: person, body: { text } });
    const by = () => ({ requestId: newRequestId(), person, screen: 'screen 1' });
    const { plan } = await lookAt(valveTable, { log: services.log, text, today });
    const digest = plan?.digest ?? '';
    const before = await services.log.head();
    let told = 0;
    await lookAt(valveTable, {
      log: services.log,
      text,
      today,
      tell: async () => {
        told += 1;
      },
    });
    // Six rows read, looked up and compared.
    expect(told).toBe(18);
    for (let stopAt = 1; stopAt <= 6; stopAt += 1) {
      let steps = 0;
      const tell = async () => {
        steps += 1;
        if (steps === stopAt) throw new Stopped();
      };
      await expect(lookAt(valveTable, { log: services.log, text, today, tell })).rejects.toThrow(Stopped);
      steps = 0;
      await expect(saveShown(valveTable, { services, by: by(), digest, today, tell })).rejects.toThrow(
        Stopped,
      );
    }
    const writing = () => {
      throw new Stopped();
    };
    const saving = { services, by: by(), digest, today, tell: TELL_NOBODY, writing };
    await expect(saveShown(valveTable, saving)).rejects.toThrow(Stopped);
    expect(await services.log.head()).toEqual(before);
    expect(await saveShown(valveTable, { services, by: by(), digest, today })).toEqual({ saved: 6 });
    expect((await services.log.state(valveKind, 'ST-5')).revision).toBe(1);
  });
});
