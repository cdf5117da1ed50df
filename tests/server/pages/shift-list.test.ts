import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { ShiftList } from '../../../server/jobs/shift-list.ts';
import type { Person, Role } from '../../../server/people/person.ts';
import { aSheet } from '../../builders/sheets.ts';
import { openSiteJob, type SiteJob } from '../../builders/site-jobs.ts';
import { type AnApp, anApp, type Browser } from '../an-app.ts';
import { textOf } from './texts.ts';

let app: AnApp;
let people: Record<Role, { browser: Browser; person: Person }>;

beforeEach(async () => {
  app = await anApp({ people: true });
  people = {
    technician: await app.signedIn('technician'),
    supervisor: await app.signedIn('supervisor'),
    engineer: await app.signedIn('engineer'),
    'safety-officer': await app.signedIn('safety-officer'),
  };
});
afterEach(() => app.close());

/** Signs in afresh, so that the long work of a job has not ended the session. */
async function listFor(role: Role): Promise<{ list: ShiftList; html: string; text: string }> {
  const { browser } = await app.signedIn(role);
  const json = await app.get('/shift', { as: browser, headers: { accept: 'application/json' } });
  const page = await app.get('/shift', { as: browser });
  expect([json.status, page.status]).toEqual([200, 200]);
  const html = await page.text();
  return { list: (await json.json()) as ShiftList, html, text: textOf(html) };
}

async function aJobAt(step: string, tag = 'FV-214'): Promise<SiteJob> {
  const job = await openSiteJob(app, {
    technician: people.technician.person,
    supervisor: people.supervisor.person,
    sheet: aSheet({ tag, location: 'Unit 3, bay <3>' }),
  });
  await job.playTo(step);
  return job;
}

describe('the shift list', () => {
  test('says that nothing waits, is open, locked or closed on an empty site', async () => {
    const { list, text } = await listFor('supervisor');
    expect([list.waiting, list.open, list.sentBack, list.locked, list.closed]).toEqual([[], [], [], [], []]);
    expect(text).toContain('No hold waits.');
    expect(text).toContain('No lock hangs and no bypass is open by a job.');
  });

  test('is where somebody who is signed in begins', async () => {
    const first = await app.get('/', { as: people.supervisor.browser });
    expect([first.status, first.headers.get('location')]).toEqual([303, '/shift']);
  });

  test('leads a supervisor who did none of the work to the hold, with what it rests on', async () => {
    const { id } = await aJobAt('holdWork');
    app.wait(12 * 60_000);
    const { list, html, text } = await listFor('supervisor');
    const [row] = list.waiting;
    expect(row).toMatchObject({ job: id, tag: 'FV-214', maySign: true, because: null, waitsMinutes: 12 });
    expect(row?.hold).toBe('Hold 1: before plug stem or adjuster is turned');
    expect(list.open[0]).toMatchObject({ waitsFor: 'a signature', waitsMinutes: 12, waits: '12 minutes' });
    // The supply was read at zero seven cards of a minute and a wait of five before the hold came.
    expect(row?.shown).toMatch(
      /^(\d+) of \1 shown, bypass recorded, 7 absent\. Oldest reading 24 minutes\.$/,
    );
    expect(row?.energies.map(({ letter, state }) => `${letter} ${state}`)).toEqual([
      'A locked',
      'B capped',
      'C contained',
      'D locked',
      'E locked',
      'F open',
    ]);
    expect(html).toMatch(new RegExp(`href="/jobs/${id}">Read and sign`));
    expect(text).toContain('1. As of');
  });

  test.each(['technician', 'engineer', 'safety-officer'] as const)(
    'tells a %s why they may not sign, in the place of the act',
    async (role) => {
      await aJobAt('holdWork');
      const { list, html, text } = await listFor(role);
      const because = list.waiting[0]?.because;
      expect(list.waiting[0]?.maySign).toBe(false);
      expect(because?.strong).toBe(
        role === 'technician' ? 'You hung lock 41, 42, 43 on this job.' : 'A supervisor signs this.',
      );
      expect(text).toContain(`${because?.strong} ${because?.text}`);
      expect(html).not.toContain('Read and sign');
      expect(text).toContain('0, and 1 that you may not sign');
    },
  );

  test('tells a supervisor who wrote a line of this work that somebody else signs', async () => {
    const job = await aJobAt('springLook');
    const given = { caseTight: 'yes', exposedThreadM: '0.9 in', adjusterHeightM: '1.2 in' };
    await job.act({ kind: 'answer', given }, people.supervisor.person);
    const { list } = await listFor('supervisor');
    expect(list.waiting[0]?.because).toEqual({
      strong: 'You did or recorded part of this work.',
      text: 'Somebody else signs.',
    });
  });

  test('keeps what was sent back, with the reason, until it is asked for again', async () => {
    const job = await aJobAt('holdWork');
    const reason = 'drain still <dribbles>';
    await job.act({ kind: 'send-back', reason, disposition: 'again' }, people.supervisor.person);
    const { list, html, text } = await listFor('supervisor');
    expect(list.waiting).toEqual([]);
    expect(list.sentBack[0]?.wrote).toBe(`You wrote: ${reason}`);
    expect(text).toContain(`You wrote: ${reason}`);
    expect(html).not.toContain('<dribbles>');
    expect((await listFor('engineer')).list.sentBack[0]?.wrote).toMatch(/^supervisor 1 \(.+\) wrote: drain/);
  });

  test('says that a parked job is parked, and that its proof does not stand', async () => {
    const job = await aJobAt('holdWork');
    await job.act({ kind: 'park', reason: 'end of shift' });
    const { list } = await listFor('supervisor');
    expect(list.waiting).toEqual([]);
    expect(list.open[0]).toMatchObject({
      ...{ status: 'parked', waitsFor: 'whoever takes it up again' },
      locks: ['41', '42', '43'],
    });
    expect(list.locked.filter((row) => row.lock !== 'bypass').map((row) => row.shownBy)).toEqual(
      Array(3).fill('not shown'),
    );
  });

  test('lists each lock and bypass with who hung it, what relies on it and what shows it', async () => {
    const { id } = await aJobAt('holdWork');
    const { list, text } = await listFor('technician');
    expect(list.locked.map(({ lock, point, stands, reliesOn }) => [lock, point, stands, reliesOn])).toEqual([
      ['41', 'HV-214A', 'shut', `job ${id}, FV-214`],
      ['42', 'HV-214B', 'shut', `job ${id}, FV-214`],
      ['43', 'IA-214-1', 'shut', `job ${id}, FV-214`],
      ['bypass', 'HV-214C', 'open', `nothing: a bypass isolates nothing (job ${id}, FV-214)`],
    ]);
    expect(list.locked[0]?.shownBy).toMatch(/^0 psi, G-104, \d\d:\d\d$/);
    expect(text).toContain('3 locks, 1 bypass open');
  });

  test('says every word of its JSON on the page too, escaped', async () => {
    await aJobAt('signReturn');
    await aJobAt('holdWork', 'FV-2<b>');
    const { list, html, text } = await listFor('supervisor');
    expect(html).not.toMatch(/<3>|<b>\s*,/);
    const words = list.waiting.flatMap((row) => [
      row.tag,
      row.place,
      row.hold,
      row.asked,
      row.shown,
      String(row.waitsMinutes),
    ]);
    const open = list.open.flatMap((row) => [row.stands, row.since, row.by, row.place]);
    const locked = list.locked.flatMap((row) => [row.lock, row.point, row.since, row.shownBy]);
    for (const word of [...words, ...open, ...locked]) expect(text).toContain(word);
  });

  test('leads to the record of a job that was closed', async () => {
    const job = await aJobAt('done');
    const { list, html } = await listFor('safety-officer');
    expect(list.open).toEqual([]);
    expect(list.locked).toEqual([]);
    expect(list.closed[0]).toMatchObject({ job: job.id, tag: 'FV-214', closedAs: 'work done' });
    expect(html).toContain(`href="/jobs/${job.id}/record"`);
  });

  test('is not shown to nobody', async () => {
    expect((await app.get('/shift')).status).not.toBe(200);
  });
});
