/** The list of what waits for a signature, and who may sign where no supervisor can come. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { NO_JOB } from '../../../procedures/evolve.ts';
import { signingEntries } from '../../../server/signing/signing-stream.ts';
import { newRequestId, PINS } from '../an-app.ts';
import { type AtCard, atCard } from '../jobs/at-card.ts';
import { textOf } from '../pages/texts.ts';
import { jsonOf, signing } from './at-hold.ts';

let at: AtCard;
beforeEach(async () => {
  at = await atCard('holdWork');
});
afterEach(() => at.close());

interface ToSign {
  readonly waiting: readonly {
    job: string;
    place: number;
    step: string;
    maySign: boolean;
    shownDigest: string;
    nonce: string;
    waitsMinutes: number;
    departures: readonly string[];
  }[];
  readonly competent: readonly { person: string; how: string }[];
  readonly counts: readonly { what: string; count: number }[];
}

const list = () => jsonOf<ToSign>(at.app, { path: '/to-sign', as: at.supervisor.browser });
const page = async () => textOf(await (await at.app.get('/to-sign', { as: at.supervisor.browser })).text());

async function fromList(of: Readonly<Record<string, string>>) {
  const [row] = (await list()).waiting;
  const { place = 0, step = '', shownDigest = '', nonce = '' } = row ?? {};
  const fields = { requestId: newRequestId(), act: 'sign', place: String(place), step, shownDigest, nonce };
  const by = { signer: 's1', pin: PINS.supervisor };
  return at.app.post(`/to-sign/${at.job.id}`, { ...fields, ...by, ...of }, { as: at.supervisor.browser });
}

describe('the list of what waits for a signature', () => {
  test('shows the age, each reading against its limit, and what departed since the last hold (HP-20) (UI-16)', async () => {
    const place = (await at.job.job()).evidence.residue?.place ?? 0;
    await at.job.act({ kind: 'park', reason: 'end of shift' });
    await at.job.act({ kind: 'take-up' });
    expect(place).toBeGreaterThan(0);
    at.app.wait(7 * 60_000);
    const [row] = (await list()).waiting;
    expect(row).toMatchObject({ job: at.job.id, maySign: true });
    expect(row?.departures.join()).toMatch(/Parked at: Before plug stem .* end of shift/);
    const text = await page();
    expect(text).toMatch(/To know before signing Line \d+, T1 \d\d:\d\d: Parked at/);
    expect(text).toMatch(/waits \d+ minutes/);
    expect(text).toContain('Not shown safe: Supply air');
  });

  test('shows each reading with its uncertainty, the most that counts as nothing, who read it and when (HP-20)', async () => {
    expect(await page()).toMatch(/19 to 0 psi ± 0\.\d+ at most 3\.00 psi T1 \d\d:\d\d G-/);
  });

  test('is signed from, by the own name and PIN, and sent back from', async () => {
    expect((await fromList({ pin: '000000' })).status).toBe(403);
    expect((await at.job.job()).holds).toEqual([]);
    const refused = await fromList({ act: 'send-back' });
    expect(refused.status).toBe(422);
    expect(textOf(await refused.text())).toContain('What goes back says what is missing');
    const done = await fromList({});
    expect([done.status, done.headers.get('location')]).toEqual([303, '/to-sign']);
    expect((await at.job.job()).holds).toMatchObject([{ person: 's1', way: 'own screen' }]);
    expect((await list()).waiting).toEqual([]);
    expect(await page()).toContain('No hold waits for a signature.');
  });

  test('says to whoever may not sign why, and gives them no form', async () => {
    const engineer = (await at.app.signedIn('engineer')).browser;
    const html = await (await at.app.get('/to-sign', { as: engineer })).text();
    expect(textOf(html)).toContain('A supervisor signs this. You may read it.');
    expect(html).not.toContain('name="pin"');
  });
});

describe('where no supervisor can come', () => {
  const name = (person: string, how = 'two years of overhauls under supervision') =>
    at.app.postJson('/competent', { requestId: newRequestId(), person, how }, { as: at.supervisor.browser });

  test('a person whom a supervisor has named signs what they had no hand in, with the reason, and it is counted', async () => {
    const second = { signer: 'e1', pin: PINS.engineer, way: 'second person', why: 'night shift' };
    expect((await at.sendJson(await signing(at, second))).problem.code).toBe('HLD-001');
    expect((await name('e1')).status).toBe(200);
    const form = await (await at.app.get(`/jobs/${at.job.id}`, { as: at.technician.browser })).text();
    expect(textOf(form)).toContain('A second competent person signs');
    expect((await at.sendJson(await signing(at, { ...second, why: '' }))).problem.code).toBe('HLD-008');
    expect((await at.sendJson(await signing(at, second))).status).toBe(200);
    expect((await at.job.job()).holds).toMatchObject([
      { person: 'e1', way: 'second person', why: 'night shift' },
    ]);
    const { counts } = await list();
    expect(counts.find(({ what }) => what === 'signed by a second person')?.count).toBe(1);
  });

  test('nobody is named by themselves, in a role that cannot have it, or without how it was seen', async () => {
    expect((await name('s1')).status).toBe(403);
    expect((await name('o1')).status).toBe(403);
    expect((await name('x9')).status).toBe(403);
    expect((await name('t1', ' ')).status).toBe(422);
    expect((await list()).competent).toEqual([]);
  });

  test('it is taken back, and the next signature is refused', async () => {
    await name('e1');
    expect((await list()).competent).toMatchObject([{ person: 'e1' }]);
    const withdraw = { requestId: newRequestId(), person: 'e1' };
    await at.app.postJson('/competent/withdraw', withdraw, { as: at.supervisor.browser });
    expect((await list()).competent).toEqual([]);
    const second = { signer: 'e1', pin: PINS.engineer, way: 'second person', why: 'night shift' };
    expect((await at.sendJson(await signing(at, second))).problem.code).toBe('HLD-001');
  });
});

test('What is meant to be seldom is counted: a waiver, a witness who did not come, what was sent back (HP-12)', () => {
  const counted = (kind: string) =>
    signingEntries(NO_JOB, {
      kind,
      inputs: { step: 'point' },
      outcome: { name: '', figures: {} },
      effects: { to: 'next' },
    }).map((entry) => [entry.kind, (entry.inputs as { what: string }).what]);
  expect(counted('hold-waived')).toEqual([['counted', 'waived']]);
  expect(counted('not-witnessed')).toEqual([['counted', 'notWitnessed']]);
  expect(counted('hold-sent-back')).toEqual([['counted', 'sentBack']]);
  expect(counted('review-sent-back')).toEqual([['counted', 'sentBack']]);
  expect(counted('witnessed')).toEqual([]);
});
