/**
 * How long somebody who looks for a fault waits for the card that names the next check, on the program as it is built, over HTTP and as the
 * script of the page asks; beside a reading of a job that asks no engine.
 */
import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CheckId } from '../../procedures/troubleshooting/checks.ts';
import { modelOfValve } from '../../procedures/troubleshooting/engine/model-of-valve.ts';
import { findTheFault } from '../../procedures/troubleshooting/find-the-fault.ts';
import { OPENING_IDS } from '../../procedures/troubleshooting/openings.ts';
import { type Chosen, readChoice } from '../../procedures/troubleshooting/steps/hub-choices.ts';
import { valveFactsOf } from '../../procedures/troubleshooting/valve-facts.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { streamOf } from '../../server/log/stream-kind.ts';
import { startServer } from '../browser/harness/server.ts';
import { gearFor } from '../builders/gear.ts';
import { RunningServer } from '../faults/running-server.ts';
import { furtherKinds, valveKinds } from '../procedures/practice/demo-sheets.ts';
import { hiddenValve, type Said } from '../procedures/troubleshooting/hidden-valve.ts';
import { drawHypothesis, random } from '../procedures/troubleshooting/simulate.ts';
import { addGear, jobClients, save } from './job-site.ts';
import type { Client, Fields } from './load.ts';
import { atMostMs, type Ratio } from './ratio.ts';

/** Of each of the nine kinds of valve. */
const SEARCHES_EACH = 5;
/** A search that asks for more cards is left. */
const ACTS_MAX = 60;
const GOAL_MS = 50;
/** Gear that reaches whatever is read on any of these valves. */
const WIDE_GEAR = Object.fromEntries(
  Object.entries(gearFor('line')).map(([role, item]) => [
    role,
    { ...item, number: `W-${item.number}`, rangeHighSi: 10 * item.rangeHighSi },
  ]),
);
/** Kinds of cards at which a search is left. */
const ENDS: readonly string[] = ['hold', 'wait'];
/** Jobs that readings are given to, and how many each gets: as many lines as a search has. */
const READINGS = { jobs: 9, each: 40 } as const;

interface Told {
  readonly step: string;
  readonly place: number;
  readonly card: Card | null;
}

interface Card {
  readonly kind: string;
  readonly fields: readonly Field[];
  readonly choices: readonly { readonly value: string }[];
}

interface Field {
  readonly name: string;
  readonly type: string;
  readonly unit: string;
  readonly optional: boolean;
  readonly options: readonly { readonly value: string }[];
}

/** A valve of the site with a fault that only this client knows. */
interface Hidden {
  readonly tag: string;
  readonly bypassPoint: string;
  readonly complaint: string;
  answer(check: CheckId): Said;
}

interface Took {
  readonly wallMs: number;
  /** Of the server's processor time, which does not count what others of the machine take. */
  readonly cpuMs: number;
}

/** Somebody at a screen. */
class Screen {
  readonly #server: RunningServer;
  readonly #origin: string;
  readonly #headers: Fields;

  constructor(server: RunningServer, { headers }: Client) {
    this.#server = server;
    this.#origin = server.address;
    this.#headers = { cookie: headers.cookie ?? '', origin: server.address };
  }

  async told(job: string): Promise<Told> {
    const headers = { ...this.#headers, accept: 'application/json' };
    return (await (await fetch(`${this.#origin}/jobs/${job}`, { headers })).json()) as Told;
  }

  async open(tag: string): Promise<string> {
    const numbers = Object.entries(WIDE_GEAR).map(([role, { number }]) => [role, number]);
    const fields = { tag, procedure: findTheFault.id, place: 'line', ...Object.fromEntries(numbers) };
    const answer = await this.#post('/jobs', fields, { accept: 'application/json' });
    return ((await answer.json()) as { readonly job: string }).job;
  }

  /** As the script of the page posts. @returns from the post to the last byte of what comes into the page */
  async act(job: string, fields: Fields): Promise<Took> {
    const { pid } = this.#server;
    const before = cpuMsOf(pid);
    const begunMs = performance.now();
    const answer = await this.#post(`/jobs/${job}/acts`, fields, {
      accept: 'text/html',
      'hx-request': 'true',
    });
    await answer.arrayBuffer();
    const wallMs = performance.now() - begunMs;
    return { wallMs, cpuMs: cpuMsOf(pid) - before };
  }

  async #post(path: string, fields: Fields, headers: Fields): Promise<Response> {
    const answer = await fetch(this.#origin + path, {
      method: 'POST',
      headers: { ...this.#headers, ...headers },
      body: new URLSearchParams({ ...fields, requestId: randomUUID() }),
    });
    if (!answer.ok)
      throw new Error(
        `${path} ${JSON.stringify(fields)} answered ${answer.status}: ${(await answer.text()).slice(0, 300)}`,
      );
    return answer;
  }
}

/** Of all threads of a process, as the scheduler counts it. NaN where the system does not tell. */
function cpuMsOf(pid: number | undefined): number {
  const folder = `/proc/${pid}/task`;
  if (!existsSync(folder)) return Number.NaN;
  const ofThread = (id: string) => Number(readFileSync(join(folder, id, 'schedstat'), 'utf8').split(' ')[0]);
  return readdirSync(folder).reduce((sum, id) => sum + ofThread(id), 0) / 1e6;
}

/** @param main the built program */
export async function measureSearch(folder: string, main: string): Promise<readonly Ratio[]> {
  const data = join(folder, 'search');
  const { clients, valves } = await prepare(data);
  const [client] = clients;
  if (client === undefined) throw new Error('Nobody is signed in.');
  const server = new RunningServer({ script: main, folder: data });
  await server.start();
  try {
    const screen = new Screen(server, client);
    const [checks, readings]: [Took[], Took[]] = [[], []];
    for (const [at, valve] of valves.entries()) {
      checks.push(...(await searchFor(valve, screen)));
      // Between the searches, so that whatever else the machine does meets both.
      if (at % SEARCHES_EACH === 0)
        readings.push(...(await readingsOf(client, { screen, job: at / SEARCHES_EACH })));
    }
    return [ratioOf({ checks, readings, searches: valves.length })];
  } finally {
    await server.stop();
  }
}

/** Sheets, gear and a technician who is signed in, in a folder that the built program is then started on. */
async function prepare(
  data: string,
): Promise<{ readonly clients: readonly Client[]; readonly valves: readonly Hidden[] }> {
  mkdirSync(`${data}-key`, { mode: 0o700 });
  // That of the server which makes the site.
  writeFileSync(join(`${data}-key`, 'k'), Buffer.alloc(32, 7).toString('hex'), { mode: 0o600 });
  const server = await startServer({ folder: data });
  try {
    await addGear(server.services);
    await addGear(server.services, WIDE_GEAR);
    const clients = await jobClients(server, { count: 1, jobsEach: READINGS.jobs });
    const kinds = Object.values({ ...valveKinds(), ...furtherKinds() });
    const sheets = kinds.flatMap((sheet, kind) =>
      Array.from({ length: SEARCHES_EACH }, (_, at) => ({ ...sheet, tag: `S-${kind}${at}` })),
    );
    for (const sheet of sheets) {
      const inputs = { sheet, typed: {} };
      await save(server.services, {
        stream: streamOf('valve', sheet.tag),
        kind: 'valve-sheet-saved',
        inputs,
      });
    }
    return { clients, valves: sheets.map(hiddenIn) };
  } finally {
    await server.close();
  }
}

function hiddenIn(sheet: ValveSheet, at: number): Hidden {
  const model = modelOfValve(valveFactsOf(sheet));
  const chance = random(9_500 + at);
  const truth = drawHypothesis({ from: model.hypotheses, chance });
  const complaint = OPENING_IDS[at % OPENING_IDS.length] ?? '';
  return {
    tag: sheet.tag,
    bypassPoint: sheet.bypassPoint ?? '',
    complaint,
    answer: hiddenValve(model, { truth, chance, inWords: true }),
  };
}

/** @returns of each answered check how long the card with the next one took */
async function searchFor(
  { tag, bypassPoint, complaint, answer }: Hidden,
  screen: Screen,
): Promise<readonly Took[]> {
  const took: Took[] = [];
  const job = await screen.open(tag);
  let check: CheckId | null = null;
  for (let acts = 0; acts < ACTS_MAX; acts += 1) {
    const { step, place, card } = await screen.told(job);
    const first = card?.fields[0];
    const chosen = first?.name === 'hubChoice' ? readChoice(first.options[0]?.value ?? '') : null;
    // A cause is named, something is mended, somebody else is to sign, or minutes are waited.
    if (card === null || ENDS.includes(card.kind) || chosen?.kind === 'mend' || isNaming(chosen)) break;
    const given =
      check === null
        ? { ...plain(card, bypassPoint), ...(step === 'complaint' ? { symptom: complaint } : {}) }
        : found(card, answer(check));
    const one = await screen.act(job, { act: 'answer', step, place: String(place), ...given });
    if (check !== null) took.push(one);
    check = chosen?.kind === 'check' ? chosen.check : null;
  }
  return took;
}

function isNaming(chosen: Chosen | null): boolean {
  return chosen?.kind === 'way' && chosen.way === 'name';
}

/** What a card wants at least, its first choice where it has some. */
function plain({ kind, fields, choices }: Card, bypassPoint: string): Fields {
  if (kind === 'question') return { choice: choices[0]?.value ?? '' };
  const text = ({ name, type, unit, optional, options }: Field) => {
    if (optional) return '';
    if (type === 'quantity') return `50 ${unit}`;
    return options[0]?.value ?? (name === 'bypassTag' ? bypassPoint : 'as said');
  };
  return Object.fromEntries(fields.map((field) => [field.name, text(field)]));
}

/** A word of the check; a card that asks for a table alone is skipped. */
function found({ fields }: Card, { outcome }: Said): Fields {
  const options = fields.find(({ name }) => name === 'found')?.options ?? [];
  return { found: options.some(({ value }) => value === outcome) ? (outcome ?? 'skip') : 'skip' };
}

/** @returns of each reading that was given once more how long its card took */
async function readingsOf(
  { targets }: Client,
  { screen, job }: { readonly screen: Screen; readonly job: number },
): Promise<readonly Took[]> {
  const target = targets[job];
  const id = /jobs\/(\w+)/.exec(target?.path ?? '')?.[1];
  if (target === undefined || id === undefined) throw new Error(`There is no job ${job} to read at.`);
  const took: Took[] = [];
  await screen.act(id, target.first);
  for (let reading = 0; reading < READINGS.each; reading += 1) {
    const place = String((await screen.told(id)).place);
    took.push(await screen.act(id, { ...target.again, place, corrects: place }));
  }
  return took;
}

interface Measured {
  readonly checks: readonly Took[];
  readonly readings: readonly Took[];
  readonly searches: number;
}

function ratioOf({ checks, readings, searches }: Measured): Ratio {
  const wallMs = ({ wallMs: ms }: Took) => ms;
  const cpuMs = ({ cpuMs: ms }: Took) => ms;
  const shares = (all: readonly number[]) =>
    `half within ${share(all, 0.5).toFixed(1)} ms, 95 % within ${share(all, 0.95).toFixed(1)} ms, all within ${Math.max(...all).toFixed(0)} ms`;
  const both = (all: readonly Took[]) =>
    `${shares(all.map(wallMs))}, of the processor ${shares(all.map(cpuMs))}`;
  return {
    what: 'the card with the next check, 95 % of all',
    ...atMostMs(GOAL_MS, share(checks.map(wallMs), 0.95)),
    from: `${checks.length} checks answered in ${searches} searches: ${both(checks)}; ${readings.length} readings of jobs without the engine: ${both(readings)}`,
  };
}

function share(all: readonly number[], part: number): number {
  const sorted = all.toSorted((one, other) => one - other);
  return sorted[Math.ceil(sorted.length * part) - 1] ?? Number.NaN;
}
