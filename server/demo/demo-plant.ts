import type { Json } from '../../procedures/json.ts';
import { readPlan } from '../../procedures/plans/read-plan.ts';
import { readGear } from '../../procedures/test-gear/read-gear.ts';
import { readSheet } from '../../procedures/valve-sheet/read-sheet.ts';
import { gearKind } from '../gear/gear-stream.ts';
import { pointKind } from '../jobs/point-stream.ts';
import type { EntryDraft } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import { type StreamKind, streamOf } from '../log/stream-kind.ts';
import type { DemoPerson } from '../pages/set-up.ts';
import { planKind } from '../plans/plan-stream.ts';
import type { Services } from '../services.ts';
import { valveKind } from '../valves/valve-stream.ts';
import { demoGear } from './demo-gear.ts';
import { addDemoPeople, DEMO_SCREEN } from './demo-people.ts';
import { demoPlans } from './demo-plans.ts';
import { demoPoints } from './demo-points.ts';
import { DEMO_VALVES, type SheetText } from './demo-valves.ts';
import { type DemoWorkers, doEarlierJobs, type SetBack } from './earlier-jobs.ts';

interface Saved {
  readonly kind: StreamKind<unknown>;
  readonly id: string;
  readonly entry: string;
  readonly inputs: Json;
}

/**
 * Fills an empty site with the invented plant: people, valves and test gear, each read as a form is, and jobs done.
 *
 * @param setBack sets the clock of the log back while the invented year is written; without it all carries the true time
 * @returns the people with their PINs, told once
 * @throws Error if a sheet or a piece of gear of the demo plant is not in order
 * @example const people = await loadDemoPlant(services); // six people, t1 to e1
 */
export async function loadDemoPlant(
  services: Services,
  setBack: SetBack = () => {},
): Promise<readonly DemoPerson[]> {
  const today = services.now();
  try {
    setBack(SITE_AGE_MS);
    const people = await addDemoPeople(services);
    const engineer = people.find(({ role }) => role === 'engineer');
    const saves = [...DEMO_VALVES.map(savedSheet), ...savedPoints(), ...savedGear(today)];
    await Promise.all(saves.map((saved) => save(services, { saved, person: engineer?.id ?? null })));
    await doEarlierJobs(services, {
      workers: [await pair(services, '1'), await pair(services, '2')],
      setBack,
    });
    await Promise.all(
      savedPlans(today).map((saved) => save(services, { saved, person: engineer?.id ?? null })),
    );
    return people;
  } finally {
    setBack(0);
  }
}

/** The invented plant is a little older than its first job. */
const SITE_AGE_MS = 1425 * 24 * 3600 * 1000;

/** Technician and supervisor of one number, as they were just added. */
async function pair({ people }: Services, number: string): Promise<DemoWorkers> {
  const [technician, signer] = [await people.find(`t${number}`), await people.find(`s${number}`)];
  if (technician === undefined || signer === undefined)
    throw new Error(`The demo plant has no technician and supervisor ${number}.`);
  return { technician, signer };
}

/** All that wait at one moment share one commit. */
async function save(
  { log, newId }: Services,
  { saved, person }: { readonly saved: Saved; readonly person: string | null },
): Promise<void> {
  const { kind, id, entry, inputs } = saved;
  const stream = streamOf(kind.kind, id);
  const draft: EntryDraft = { stream, kind: entry, inputs, outcome: {}, effects: {} };
  await log.act({
    requestId: newId(),
    fingerprint: fingerprintOf({ demo: stream, inputs }),
    person,
    screen: DEMO_SCREEN,
    streams: [stream],
    decide: () => ({ entries: [draft], answer: {} }),
  });
}

function savedSheet(typed: SheetText): Saved {
  const read = readSheet({ texts: typed });
  if (!read.ok)
    throw new Error(`The demo valve ${typed.tag} is not in order: ${JSON.stringify(read.faults)}`);
  const inputs = { sheet: read.sheet, typed } as unknown as Json;
  return { kind: valveKind, id: read.sheet.tag, entry: 'valve-sheet-saved', inputs };
}

function savedPoints(): readonly Saved[] {
  return demoPoints(DEMO_VALVES).map(({ tag, ...inputs }) => ({
    kind: pointKind,
    id: tag,
    entry: 'point-described',
    inputs,
  }));
}

function savedPlans(now: Date): readonly Saved[] {
  return demoPlans(now).map((texts) => {
    const read = readPlan(texts);
    if (!read.ok)
      throw new Error(`Demo plan ${texts.number} is not in order: ${JSON.stringify(read.faults)}`);
    const inputs = { plan: read.plan } as unknown as Json;
    return { kind: planKind, id: read.plan.number, entry: 'plan-saved', inputs };
  });
}

function savedGear(now: Date): readonly Saved[] {
  const today = now.toISOString().slice(0, 10);
  return demoGear(now).map((texts) => {
    const read = readGear({ texts, today });
    if (!read.ok)
      throw new Error(`Demo gear ${texts.number} is not in order: ${JSON.stringify(read.faults)}`);
    const inputs = { item: read.item } as unknown as Json;
    return { kind: gearKind, id: read.item.number, entry: 'gear-saved', inputs };
  });
}
