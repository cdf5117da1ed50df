/** A site with many valves, each with a job whose first reading is open, and people at their screens. */
import { randomUUID } from 'node:crypto';
import type { Json } from '../../procedures/json.ts';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import { actOnJob } from '../../server/jobs/acts.ts';
import { Catalogue } from '../../server/jobs/catalogue.ts';
import { jobKind } from '../../server/jobs/job-stream.ts';
import { openJob } from '../../server/jobs/open-job.ts';
import { fingerprintOf } from '../../server/log/chain.ts';
import { streamOf } from '../../server/log/stream-kind.ts';
import type { Person } from '../../server/people/person.ts';
import type { Services } from '../../server/services.ts';
import type { TestServer } from '../browser/harness/server.ts';
import { gearFor } from '../builders/gear.ts';
import { sheetFor, strokeScript, textsAt } from '../builders/stroke-script.ts';
import type { Client, Target } from './load.ts';

const PIN = '482915';
const SCREEN = 'benchmark';
/** The first card of the procedure that takes readings: two gauges against each other. */
const READING = 'rigGauges';
const ACTS_MAX = 10;

const catalogue = new Catalogue();
const sheet = sheetFor({ plugCloses: 'down', airMovesStem: 'up' });
const script = strokeScript(sheet);

/**
 * Clients, each a technician with jobs of their own. Each post is a reading of two gauges: given once, then given again as a correction,
 * so that every one is read, judged, chained, kept for good and answered.
 */
export async function jobClients(
  server: TestServer,
  {
    count,
    jobsEach,
    isOutcomeAlone = false,
  }: {
    readonly count: number;
    readonly jobsEach: number;
    /** Asks for no more than what came of each reading, as a program does that has many. */
    readonly isOutcomeAlone?: boolean;
  },
): Promise<readonly Client[]> {
  const asks = {
    origin: server.origin,
    accept: 'application/json',
    ...(isOutcomeAlone ? { prefer: 'return=minimal' } : {}),
  };
  const { services } = server;
  const id = randomUUID().slice(0, 8);
  const clients: Client[] = [];
  for (let client = 0; client < count; client += 1) {
    const person = await services.people.addWithPin(
      { name: `Technician ${id} ${client}`, role: 'technician', pin: PIN },
      { requestId: randomUUID(), person: null, screen: SCREEN },
    );
    const cookie = await session(server, person);
    const targets: Target[] = [];
    // One after the other: two that open at one moment want the same number, and the second is asked to send again.
    for (let job = 0; job < jobsEach; job += 1) {
      targets.push(await target(services, { tag: `FV-${id}-${client}-${job}`, person }));
    }
    clients.push({ headers: { cookie, ...asks }, targets });
  }
  return clients;
}

/** The gear that jobs name; that of a job in the line where nothing else is said. */
export async function addGear(
  services: Services,
  gear: Readonly<Record<string, GearItem>> = gearFor('line'),
): Promise<void> {
  for (const item of Object.values(gear)) {
    await save(services, { stream: streamOf('gear', item.number), kind: 'gear-saved', inputs: { item } });
  }
}

async function session({ origin }: TestServer, person: Person): Promise<string> {
  const answer = await fetch(`${origin}/sign-in`, {
    method: 'POST',
    headers: { origin, accept: 'application/json', 'content-type': 'application/json' },
    body: JSON.stringify({ who: person.id, pin: PIN, next: '', requestId: randomUUID() }),
  });
  if (!answer.ok) throw new Error(`Signing in gave ${answer.status}: ${await answer.text()}`);
  return answer.headers
    .getSetCookie()
    .map((line) => line.split(';')[0])
    .join('; ');
}

async function target(
  services: Services,
  { tag, person }: { readonly tag: string; readonly person: Person },
): Promise<Target> {
  const stream = streamOf('valve', tag);
  await save(services, {
    stream,
    kind: 'valve-sheet-saved',
    inputs: { sheet: { ...sheet, tag }, typed: {} },
  });
  const gear = Object.fromEntries(
    Object.entries(gearFor('line')).map(([role, { number }]) => [role, number]),
  );
  const by = { services, catalogue, person, screen: SCREEN };
  const procedure = 'stroke-check';
  const job = await openJob({ ...by, requestId: randomUUID(), tag, procedure, place: 'line', gear });
  const place = await playTo(READING, { by, job });
  const given = { ...textsAt(script, { step: READING, row: 0 }) };
  return {
    path: `/jobs/${job}/acts`,
    first: { act: 'answer', step: READING, place: String(place), ...given },
    again: { act: 'correct', reason: 'read again', ...given },
    carried: { place: 'place', corrects: 'place' },
  };
}

async function playTo(
  step: string,
  {
    by,
    job,
  }: {
    readonly by: Omit<Parameters<typeof actOnJob>[0], 'requestId' | 'job' | 'action'>;
    readonly job: string;
  },
): Promise<number> {
  for (let acts = 0; acts < ACTS_MAX; acts += 1) {
    const now = await by.services.log.state(jobKind, job);
    if (now.step === step) return now.place;
    const given = textsAt(script, { step: now.step, row: 0 });
    const action = { kind: 'answer', place: now.place, step: now.step, given } as const;
    await actOnJob({ ...by, requestId: randomUUID(), job, action });
  }
  throw new Error(`${step} did not open within ${ACTS_MAX} acts.`);
}

/** What is kept as it is given: a sheet, a piece of gear. */
export async function save(
  { log }: Services,
  { stream, kind, inputs }: { readonly stream: string; readonly kind: string; readonly inputs: object },
): Promise<void> {
  // Sheets and gear are plain data.
  const json = inputs as unknown as Json;
  await log.act({
    requestId: randomUUID(),
    fingerprint: fingerprintOf({ stream, inputs: json }),
    person: null,
    screen: SCREEN,
    streams: [stream],
    decide: () => ({ entries: [{ stream, kind, inputs: json, outcome: {}, effects: {} }], answer: {} }),
  });
}
