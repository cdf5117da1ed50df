/** What the page of a job keeps in view for whoever works, looks on, or comes later. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { COMMISSIONING } from '../../../procedures/commissioning/procedures.ts';
import { Catalogue, hashOf } from '../../../server/jobs/catalogue.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { COMPILED } from '../../builders/jobs.ts';
import { newRequestId } from '../an-app.ts';
import { type AtCard, atCard } from '../jobs/at-card.ts';
import { jsonOf, signing } from '../signing/at-hold.ts';
import { textOf } from './texts.ts';

let at: AtCard;
afterEach(() => at.close());

const html = async (as = at.technician.browser) => (await at.app.get(`/jobs/${at.job.id}`, { as })).text();
const record = async () =>
  textOf(await (await at.app.get(`/jobs/${at.job.id}/record`, { as: at.technician.browser })).text());

describe('the page of a job', () => {
  beforeEach(async () => {
    at = await atCard('holdWork');
  });

  test('shows how each hold stands, and so does the print: not reached, open, sent back, passed (HP-11)', async () => {
    const states = async () => {
      const { points } = await jsonOf<{ points: { state: string }[] }>(at.app, {
        path: `/jobs/${at.job.id}`,
        as: at.technician.browser,
      });
      return points.map(({ state }) => state);
    };
    expect(await states()).toEqual(['open', 'not reached']);
    await at.sendJson(await signing(at, { act: 'send-back', reason: 'drain drips', disposition: 'again' }));
    expect(await states()).toEqual(['sent back', 'not reached']);
    expect(textOf(await html())).toMatch(
      /Before plug stem or adjuster is turned sent back , S1 \d\d:\d\d UTC: drain drips/,
    );
    expect(await record()).toMatch(
      /Before plug stem or adjuster is turned sent back , S1 \d\d:\d\d UTC: drain drips/,
    );
    await at.job.answer({ choice: 'goOn' });
    await at.job.playTo('connectAir');
    expect(await states()).toEqual(['passed', 'not reached']);
  });

  test('stands at the same card on any screen, with what was done told in words (HP-37)', async () => {
    const [one, other] = [await html(), await html(at.supervisor.browser)];
    for (const page of [one, other]) {
      expect(page).toMatch(/<h2 id="card-heading"[^>]*>Before plug stem or adjuster is turned</);
      expect(textOf(page)).toMatch(/step \d+ of \d+/);
      expect(textOf(page)).toMatch(/Vent the supply line and read zero 0 psi shown T1 \d\d:\d\d/);
    }
  });

  test('keeps each earlier reading in sight with who read it and when (HP-39)', async () => {
    expect(textOf(await html())).toMatch(
      /Read both gauges of the rig on one pressure 9\.00 psi, 9\.05 psi agree T1 \d\d:\d\d/,
    );
  });

  test('lets all cards be read ahead and back, each with how it stands, and does nothing by it (HP-40)', async () => {
    const before = await at.length();
    interface Steps {
      readonly phases: readonly {
        readonly steps: readonly { readonly step: string; readonly state: string }[];
      }[];
    }
    const as = at.supervisor.browser;
    const { phases } = await jsonOf<Steps>(at.app, { path: `/jobs/${at.job.id}/steps`, as });
    const states = new Map(phases.flatMap(({ steps }) => steps).map(({ step, state }) => [step, state]));
    const asked = ['ventSupply', 'holdWork', 'turnStem', 'benchRecord'].map((step) => states.get(step));
    expect(asked).toEqual(['done', 'open', 'not reached', 'not for this valve']);
    const page = textOf(await (await at.app.get(`/jobs/${at.job.id}/steps`, { as })).text());
    expect(page).toContain('WARNING: The connector is between your hands and the spring.');
    expect(await at.length()).toBe(before);
  });

  test('marks of each answered card the way that was taken, and those that were not (HP-38)', async () => {
    interface Steps {
      readonly phases: readonly {
        readonly steps: readonly { readonly step: string; readonly ways: readonly object[] }[];
      }[];
    }
    const as = at.technician.browser;
    const { phases } = await jsonOf<Steps>(at.app, { path: `/jobs/${at.job.id}/steps`, as });
    const ways = (id: string) => phases.flatMap(({ steps }) => steps).find(({ step }) => step === id)?.ways;
    expect(ways('rigHold')).toEqual([
      { way: 'steady', leads: expect.stringContaining('Set the regulator back'), state: 'taken' },
      { way: 'falls', leads: expect.any(String), state: 'not taken' },
    ]);
    // Nothing was answered there yet, and an instruction has one way only.
    expect([ways('turnStem'), ways('needs')]).toEqual([[], []]);
    await at.sendJson(await signing(at, { act: 'send-back', reason: 'drain drips', disposition: 'again' }));
    const page = textOf(await (await at.app.get(`/jobs/${at.job.id}/steps`, { as })).text());
    expect(page).toMatch(
      /not taken signed ?: Connect one regulator .* taken sent back ?: Stopped: locks stay on/,
    );
  });

  test('says that nobody has tried this revision on a real job, until somebody has (HP-34)', async () => {
    const said = /Revision [A-Z] has not been tried on a real job yet by somebody who did not write it\./;
    expect(textOf(await html())).toMatch(said);
    expect(await record()).toMatch(said);
  });

  test('keeps in every line who, what, when by the server’s clock, and where, without a gap (SA-09, SA-24, SA-28, SA-50)', async () => {
    const entries = await at.app.services.log.entriesOf(`job:${at.job.id}`);
    expect(entries.map(({ place }) => place)).toEqual(entries.map((_, index) => index + 1));
    const numbers: number[] = [];
    for await (const { seq } of at.app.services.store.lines(1)) numbers.push(seq);
    expect(numbers).toEqual(numbers.map((_, index) => index + 1));
    expect(numbers.at(-1)).toBe((await at.app.services.store.head()).seq);
    for (const { person, at: when, screen, kind } of entries) {
      expect(person).toMatch(/^[ts]\d$/);
      expect(when).toMatch(/^2024-01-1\dT\d\d:\d\d:\d\d\.\d{3}Z$/);
      expect([screen, kind]).toEqual([expect.stringMatching(/^screen \d+$/), expect.stringMatching(/./)]);
    }
    const times = entries.map(({ at: when }) => when);
    expect(times).toEqual([...times].sort());
  });

  test('keeps what must stay exact as text: times, hashes, readings as typed with their unit; no bare number is beyond 2^53 - 1 (SA-34)', async () => {
    const entries = await at.app.services.log.entriesOf(`job:${at.job.id}`);
    const readings = entries.flatMap(({ inputs }) => (inputs as { readings?: object[] }).readings ?? []);
    expect(readings.length).toBeGreaterThan(10);
    for (const one of readings)
      expect(one).toEqual(expect.objectContaining({ typed: expect.any(String), unit: expect.any(String) }));
    const bare: number[] = [];
    JSON.parse(JSON.stringify(entries), (_name, value) => {
      if (typeof value === 'number') bare.push(Math.abs(value));
      return value;
    });
    expect(bare.length).toBeGreaterThan(100);
    expect(Math.max(...bare)).toBeLessThanOrEqual(Number.MAX_SAFE_INTEGER);
  });

  test('has no way to take a line away (SA-06)', () => {
    const names = at.app.routes.map(({ method, path, name }) => `${method} ${path} ${name}`);
    expect(names.filter((one) => /delete|purge|erase|DELETE/i.test(one))).toEqual([]);
  });

  test('keeps a signature with the person who gave it: the same name later is somebody else (SA-13)', async () => {
    await at.sendJson(await signing(at));
    const { people } = at.app.services;
    const by = () => ({ requestId: newRequestId(), person: 'e1', screen: 'test' });
    await people.retire('s1', by());
    const again = await people.addWithPin({ name: 'supervisor 1', role: 'supervisor', pin: '274916' }, by());
    expect(again.id).not.toBe('s1');
    expect((await at.job.job()).holds).toMatchObject([{ person: 's1', name: 'supervisor 1' }]);
    expect(await record()).toContain('Signed: supervisor 1 (S1), supervisor');
  });
});

test('The caution stands on the card before what it guards (HP-24)', async () => {
  at = await atCard('turnStem');
  const page = await html();
  const [signal, lines] = [page.indexOf('class="signal '), page.indexOf('<ol class="do">')];
  expect(signal).toBeGreaterThan(0);
  expect(lines).toBeGreaterThan(signal);
});

test('No card answers itself: a wait that is long over stands open until somebody says so (HP-42)', async () => {
  at = await atCard('rigShutIn');
  at.app.wait(20 * 60_000);
  await html();
  expect((await at.job.job()).step).toBe('rigShutIn');
});

test('A procedure that is changed leaves an open job on its own revision, with its kinds of hold (HP-04, HP-48)', async () => {
  at = await atCard('rigGauges');
  const changed = {
    ...COMPILED.definition,
    title: 'Changed',
    revisions: [{ letter: 'Z', date: '2026-11-25', change: 'x' }],
  };
  const [stroke] = COMMISSIONING;
  if (stroke === undefined) throw new Error('nothing is served');
  const served = new Catalogue([{ ...stroke, definition: changed }]);
  const job = await at.app.services.log.state(jobKind, at.job.id);
  expect(hashOf(changed)).not.toBe(job.definitionHash);
  const compiled = await served.of(job, at.app.services.log);
  // Choices stand on its cards in the order in which they were written: the log itself sorts names.
  expect(JSON.stringify(compiled.definition)).toBe(JSON.stringify(COMPILED.definition));
  const hold = compiled.definition.steps.holdWork;
  expect(hold?.kind === 'hold' && hold.point).toBe('hold');
});
