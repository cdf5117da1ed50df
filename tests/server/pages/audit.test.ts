import { extractText, getDocumentProxy } from 'unpdf';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Json } from '../../../procedures/json.ts';
import { csvOf } from '../../../server/audit/csv.ts';
import { RULES } from '../../../server/audit/exceptions/exception.ts';
import { Catalogue } from '../../../server/jobs/catalogue.ts';
import { fingerprintOf } from '../../../server/log/chain.ts';
import { checkNumber } from '../../../server/log/check-number.ts';
import { auditRoutes } from '../../../server/pages/audit.ts';
import { auditJobRoutes } from '../../../server/pages/audit-job.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../an-app.ts';
import { decidedJob } from '../audit/simulated-jobs.ts';
import { textOf } from './texts.ts';

const catalogue = new Catalogue();
let app: AnApp;
let officer: Browser;

beforeEach(async () => {
  app = await anApp({ people: true, routes: [...auditRoutes(catalogue), ...auditJobRoutes(catalogue)] });
  await storeJob('41', 'FV-214');
  app.wait(24 * 3_600_000);
  await storeJob('42', '=FV-9');
  ({ browser: officer } = await app.signedIn('safety-officer'));
});
afterEach(() => app.close());

/** A job that the machine decided, stored line by line as its technician and supervisor would have written it. */
async function storeJob(id: string, tag: string): Promise<void> {
  const { lines } = decidedJob();
  const signature = {
    person: 's1',
    name: 'supervisor 1',
    role: 'supervisor',
    meaning: 'signed',
    way: 'walk-up',
    why: '',
    nonce: 'n',
    radio: null,
  };
  await storeOpened(id, tag);
  for (const { kind, inputs, outcome, effects } of lines) {
    const isHold = kind === 'hold-signed';
    await store(
      id,
      { kind, inputs: isHold ? { ...inputs, signature } : inputs, outcome, effects },
      isHold ? 's1' : 't1',
    );
  }
}

async function storeOpened(id: string, tag: string): Promise<void> {
  const definitionHash = catalogue.current('stroke-check')?.hash ?? '';
  const inputs = { ...decidedJob().opened, id, tag, definitionHash };
  const draft = { kind: 'job-opened', inputs, outcome: {}, effects: { to: 'needs', sets: {} } };
  await store(id, draft, 't1');
}

async function store(
  id: string,
  draft: { kind: string; inputs: object; outcome: object; effects: object },
  person: string,
): Promise<void> {
  app.wait(60_000);
  const plain = (value: object) => JSON.parse(JSON.stringify(value)) as Json;
  const stream = `job:${id}`;
  const { kind, inputs, outcome, effects } = draft;
  const entry = { stream, kind, inputs: plain(inputs), outcome: plain(outcome), effects: plain(effects) };
  await app.services.log.act({
    requestId: newRequestId(),
    fingerprint: fingerprintOf(entry.inputs),
    person,
    screen: person === 's1' ? 'screen 2' : 'screen 1',
    streams: [stream],
    decide: () => ({ entries: [entry], answer: {} }),
  });
}

interface Told {
  readonly count: number;
  readonly jobs: number;
  readonly rows: readonly {
    readonly kind: string;
    readonly job: string;
    readonly proof: string;
    readonly about: string;
    readonly tag: string;
    readonly what: string;
    readonly name: string;
  }[];
  readonly exceptions: readonly {
    readonly rule: string;
    readonly says: string;
    readonly what: string;
    readonly jobs: number;
    readonly of: number;
  }[];
}

const json = { accept: 'application/json' };
async function asked(query: string): Promise<Told> {
  const response = await app.get(`/audit?${query}`, { as: officer, headers: json });
  return (await response.json()) as Told;
}

describe('the audit', () => {
  test('finds sign-offs and isolations by person, energy, valve, kind and date (HP-15)', async () => {
    const all = await asked('');
    expect(all.jobs).toBe(2);
    expect((await asked('person=s1')).rows.map(({ kind }) => kind)).toEqual(Array(4).fill('sign-off'));
    const supply = await asked('energy=supplyAir&valve=fv-214');
    expect(supply.rows).toEqual([
      expect.objectContaining({
        job: '41',
        kind: 'isolation',
        proof: expect.stringContaining('0 psi on G-103'),
      }),
    ]);
    expect((await asked('kind=lock')).rows.every(({ kind }) => kind === 'lock')).toBe(true);
    expect((await asked('from=2024-01-16')).jobs).toBe(1);
    expect((await asked('to=2024-01-15')).rows.every(({ job }) => job === '41')).toBe(true);
    expect((await asked('procedure=none')).count).toBe(0);
  });

  test('shows so many lines a page, and the others on the next', async () => {
    const first = await asked('page=1');
    const second = await asked('page=2');
    expect(first.rows).toHaveLength(Math.min(25, first.count));
    expect(second.rows).toHaveLength(Math.min(25, Math.max(0, first.count - 25)));
  });

  test('says of each exception in how many jobs its rule shows', async () => {
    const { exceptions } = await asked('');
    expect(exceptions.length).toBeGreaterThan(0);
    for (const one of exceptions) expect([one.of, one.jobs <= one.of]).toEqual([2, true]);
    const page = textOf(await (await app.get('/audit', { as: officer })).text());
    expect(page).toContain('None of it is an offence');
    expect(page).toMatch(/lines, page 1 of \d/);
    for (const { says, how } of Object.values(RULES))
      expect([says, how].every((text) => page.includes(text))).toBe(true);
  });

  test('saves the same rows as a table that no spreadsheet takes for formulas', async () => {
    const table = await (await app.get('/audit/rows.csv?valve=%3DFV-9', { as: officer })).text();
    expect(table).toContain('"\'=FV-9"');
    expect(table.trimEnd().split('\r\n')).toHaveLength((await asked('valve=%3DFV-9')).count + 1);
    expect(csvOf([['=1', '+1', '-1', '@a', 'a "b"', 'plain']])).toBe(
      '"\'=1","\'+1","\'-1","\'@a","a ""b""","plain"\r\n',
    );
  });
});

/** Every letter of a document, read by a reader that shares nothing with its writer. */
async function paperOf(path: string): Promise<string> {
  const response = await app.get(path, { as: officer });
  expect([response.status, response.headers.get('content-type')]).toEqual([200, 'application/pdf']);
  const document = await getDocumentProxy(new Uint8Array(await response.arrayBuffer()));
  return (await extractText(document, { mergePages: true })).text.replaceAll(/\s+/g, '');
}

/** Of these texts, those that the document lacks. */
const missing = (paper: string, texts: readonly string[]) =>
  texts.filter((text) => !paper.includes(text.replaceAll(/\s+/g, '')));

describe('for paper', () => {
  test('the audit has every row that was asked for, each exception with its rule, and the newest line of the log as an anchor (SA-44)', async () => {
    const { rows, exceptions } = await asked('valve=FV-214');
    const paper = await paperOf('/audit/report.pdf?valve=FV-214&paper=letter');
    const { seq, hash } = await app.services.store.head();
    const shown = rows.flatMap(({ what, proof, name }) => [what, proof, name]);
    expect(missing(paper, [...shown, ...exceptions.flatMap(({ says, what }) => [says, what])])).toEqual([]);
    expect(missing(paper, [`newest line of the log ${seq}, check number ${checkNumber(hash)}`])).toEqual([]);
    expect(
      missing(
        paper,
        Object.values(RULES).map(({ how }) => how),
      ),
    ).toEqual([]);
  });

  test('the audit is printed and saved as well where more jobs have to be read than a page reads at once', async () => {
    const opened = Array.from({ length: 60 }, (_, at) => String(100 + at));
    for (const id of opened) await storeOpened(id, 'FV-700');
    // An hour went by, and with it the session.
    ({ browser: officer } = await app.signedIn('safety-officer'));
    for (const path of ['/audit/report.pdf', '/audit/rows.csv', '/audit'])
      await expect.poll(async () => (await app.get(path, { as: officer })).status).toBe(200);
    expect(await paperOf('/audit/report.pdf')).toContain('62jobsopenedfrom');
  });

  test('the log of a job has every line with its check number', async () => {
    const response = await app.get('/audit/jobs/41', { as: officer, headers: json });
    const { lines } = (await response.json()) as {
      lines: Record<'what' | 'name' | 'step' | 'check', string>[];
    };
    const paper = await paperOf('/audit/jobs/41/log.pdf');
    expect(lines.length).toBeGreaterThan(60);
    expect(
      missing(
        paper,
        lines.flatMap(({ what, step, check }) => [what, step, check]),
      ),
    ).toEqual([]);
  });
});

describe('the audit of one job', () => {
  test('shows every line in its order, each number with its gauge', async () => {
    const response = await app.get('/audit/jobs/41', { as: officer, headers: json });
    const { lines } = (await response.json()) as {
      lines: { line: number; step: string; what: string }[];
    };
    expect(lines.map(({ line }) => line)).toEqual(lines.map((_, at) => at + 1));
    expect(lines.find(({ what }) => what.includes('88 psi on G-104'))).toBeDefined();
    // In the words of the card, not by the names of its fields.
    expect(lines.find(({ step }) => step === 'Look for everything else that can hurt')?.what).toContain(
      'How it was cleared, with gas test and time: ',
    );
    expect((await app.get('/audit/jobs/999', { as: officer })).status).toBe(404);
  });

  test('is marked as reviewed up to a line by somebody with no part in it, and by nobody else (HP-16, SA-23)', async () => {
    const mark = (as: Browser) =>
      app.post(
        '/audit/jobs/41',
        { requestId: newRequestId(), upTo: '70', note: 'Asked about line 24.' },
        { as },
      );
    const { browser: supervisor } = await app.signedIn('supervisor');
    const refused = await mark(supervisor);
    expect([refused.status, textOf(await refused.text())]).toEqual([
      403,
      expect.stringContaining('You had a part in this job'),
    ]);
    expect((await mark(officer)).status).toBe(303);
    const { marks, unreviewed, lines } = (await (
      await app.get('/audit/jobs/41', { as: officer, headers: json })
    ).json()) as {
      marks: object[];
      unreviewed: number;
      lines: object[];
    };
    expect(marks).toEqual([expect.objectContaining({ upTo: 70, note: 'Asked about line 24.' })]);
    expect(unreviewed).toBe(lines.length - 70);
  });
});
