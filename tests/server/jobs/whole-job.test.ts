import { afterEach, describe, expect, test } from 'vitest';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { verifyStore } from '../../../server/log/verify.ts';
import { auditors } from '../../../server/streams.ts';
import { GEOMETRIES, sheetFor } from '../../builders/stroke-script.ts';
import { type AnApp, anApp, type Browser, newRequestId, PINS } from '../an-app.ts';
import { gearNumbers, SIGNED_STEPS, strokeScript, textsAt, WAITED_STEPS, withValve } from './site.ts';

const open: AnApp[] = [];
afterEach(async () => {
  for (const app of open.splice(0)) await app.close();
});

type Ask = 'form' | 'json';
interface Told {
  readonly step: string;
  readonly place: number;
  readonly status: string;
  readonly card: { readonly shownDigest: string | null } | null;
}

/** Somebody at a screen who sends every act as a form or as JSON, and reads back the job as JSON. */
class Client {
  readonly app: AnApp;
  readonly technician: Browser;
  readonly ask: Ask;

  constructor(app: AnApp, technician: Browser, ask: Ask) {
    this.app = app;
    this.technician = technician;
    this.ask = ask;
  }

  async post(path: string, fields: Record<string, string>): Promise<Response> {
    const body = { requestId: newRequestId(), ...fields };
    return this.ask === 'json'
      ? this.app.postJson(path, body, { as: this.technician })
      : this.app.post(path, body, { as: this.technician });
  }

  async job(id: string): Promise<Told> {
    const response = await this.app.get(`/jobs/${id}`, {
      as: this.technician,
      headers: { accept: 'application/json' },
    });
    return (await response.json()) as Told;
  }
}

const done = { json: [200, 201], form: [303] } as const;

async function doWholeJob(
  ask: Ask,
  { sheet, place }: { readonly sheet: ValveSheet; readonly place: 'bench' | 'line' },
): Promise<AnApp> {
  const app = await anApp({ people: true });
  open.push(app);
  await withValve(app, sheet);
  const { browser } = await app.signedIn('technician');
  const client = new Client(app, browser, ask);
  const opened = await client.post('/jobs', {
    tag: sheet.tag,
    procedure: 'stroke-check',
    place,
    ...gearNumbers(place),
  });
  expect(done[ask]).toContain(opened.status);
  const script = strokeScript(sheet);
  for (let acts = 0; acts < 120; acts += 1) {
    const told = await client.job('1');
    if (told.status === 'closed') return app;
    app.wait((WAITED_STEPS[told.step] ?? 5) * 1000);
    const state = await app.services.log.state(jobKind, '1');
    const row = (state.tables[told.step] ?? []).length;
    const fields = SIGNED_STEPS.includes(told.step)
      ? { act: 'sign', signer: 's1', pin: PINS.supervisor, shownDigest: told.card?.shownDigest ?? '' }
      : { act: 'answer', ...textsAt(script, { step: told.step, row }) };
    const response = await client.post('/jobs/1/acts', {
      ...fields,
      place: String(told.place),
      step: told.step,
    });
    if (!(done[ask] as readonly number[]).includes(response.status)) {
      throw new Error(`${told.step}: ${response.status} ${(await response.text()).slice(0, 600)}`);
    }
  }
  throw new Error('the job did not end within 120 acts');
}

/** The log without times, ids and what is hashed over them. */
async function logOf(app: AnApp): Promise<readonly unknown[]> {
  const entries = await app.services.log.entriesOf('job:1');
  return entries.map(({ kind, place, person, inputs, outcome, effects }) => ({
    kind,
    place,
    person,
    inputs,
    outcome,
    effects: { ...(effects as object), envelope: undefined },
  }));
}

describe('a whole stroke check over HTTP', () => {
  for (const geometry of GEOMETRIES) {
    const name = `plug closes ${geometry.plugCloses}, air moves the stem ${geometry.airMovesStem}`;
    test(`${name}: forms without script and JSON leave the same log but for times and ids`, async () => {
      const sheet = sheetFor(geometry);
      const byForm = await doWholeJob('form', { sheet, place: 'line' });
      const byJson = await doWholeJob('json', { sheet, place: 'line' });
      expect(await logOf(byForm)).toEqual(await logOf(byJson));
      const report = await verifyStore(byForm.services.store, auditors);
      expect(report.fault).toBeNull();
      expect(report.problems).toEqual([]);
    });
  }

  test('on the bench nothing is locked, and the record is signed before the valve leaves', async () => {
    const app = await doWholeJob('json', {
      sheet: sheetFor({ plugCloses: 'down', airMovesStem: 'up' }),
      place: 'bench',
    });
    const job = await app.services.log.state(jobKind, '1');
    expect(job.closedAs).toBe('done');
    expect(job.holds.map((hold) => hold.step)).toEqual(['holdWork', 'signBench']);
    expect(await app.services.log.summaries('point')).toEqual([]);
  });

  test('leaves for whoever opens the next job what they will want to know', async () => {
    const sheet = sheetFor({ plugCloses: 'down', airMovesStem: 'up' });
    const app = await doWholeJob('json', { sheet, place: 'bench' });
    const { browser } = await app.signedIn('technician');
    const choosing = await app.get(`/jobs/new?tag=${sheet.tag}`, { as: browser });
    expect(await choosing.text()).toContain('Left for you by job 1');
    const client = new Client(app, browser, 'json');
    const gear = gearNumbers('bench');
    await client.post('/jobs', { tag: sheet.tag, procedure: 'stroke-check', place: 'bench', ...gear });
    const first = await app.services.log.state(jobKind, '1');
    const { left } = (await client.job('2')) as Told & { readonly left: readonly object[] };
    expect(left).toContainEqual({ label: 'notes of this job', value: first.words.nextNotes });
    expect(left).toContainEqual(expect.objectContaining({ label: 'adjuster height' }));
  });

  test('in the line every lock is off the site again when the job is done', async () => {
    const app = await doWholeJob('json', {
      sheet: sheetFor({ plugCloses: 'up', airMovesStem: 'up' }),
      place: 'line',
    });
    expect(await app.services.log.summaries('point')).toEqual([]);
    const job = await app.services.log.state(jobKind, '1');
    expect(job.situation.states.bypass).toBe('shut');
    expect(job.situation.states.loop).toBe('automatic');
  });
});
