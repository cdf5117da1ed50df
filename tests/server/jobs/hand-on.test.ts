import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { rolesAt } from '../../../procedures/test-gear/roles.ts';
import { Refusal } from '../../../safety/refusal.ts';
import { Catalogue } from '../../../server/jobs/catalogue.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { type Opening, openJob } from '../../../server/jobs/open-job.ts';
import { pointKind } from '../../../server/jobs/point-stream.ts';
import { streamOf } from '../../../server/log/stream-kind.ts';
import { valveKind } from '../../../server/valves/valve-stream.ts';
import { gearItem } from '../../builders/gear.ts';
import { HANDS_ON, otherwise, STANDING, served, takingOver } from '../../builders/handing-pair.ts';
import { aSheet } from '../../builders/sheets.ts';
import { openSiteJob, type SiteJob } from '../../builders/site-jobs.ts';
import { type AnApp, anApp, newRequestId } from '../an-app.ts';

const sheet = aSheet();
const catalogue = new Catalogue([served(HANDS_ON), served(takingOver(STANDING))]);
const gear = Object.fromEntries(rolesAt('line').map((role) => [role, gearItem(role).number]));

let app: AnApp;
let first: SiteJob;
beforeEach(async () => {
  app = await anApp({ people: true });
  first = await openSiteJob(app, {
    technician: (await app.signedIn('technician')).person,
    supervisor: (await app.signedIn('supervisor')).person,
    catalogue,
    procedure: 'hands-on',
  });
  await first.playTo('onward');
});
afterEach(() => app.close());

async function goOn(more: Partial<Opening> = {}): Promise<string> {
  const { place, step } = await first.job();
  return openJob({
    services: app.services,
    catalogue,
    requestId: newRequestId(),
    person: (await app.signedIn('technician')).person,
    screen: 'screen 1',
    tag: sheet.tag,
    procedure: 'takes-over',
    place: 'line',
    gear,
    from: { job: first.id, place, step, choice: 'repair', reason: 'The packing is spent.' },
    ...more,
  });
}

const codeOf = (act: Promise<unknown>) =>
  act.then(
    () => 'done',
    (error) => (error instanceof Refusal ? error.text.code : String(error)),
  );

describe('A job that goes on in another procedure', () => {
  test('is not answered away before that one is opened: its gear is chosen first', async () => {
    const answered = first.answer({ choice: 'repair', reason: 'The packing is spent.' });
    expect(await codeOf(answered)).toBe('HND-001');
    expect((await first.job()).step).toBe('onward');
  });

  test('closes with the line that opens the next, and everything stands as it stood', async () => {
    const before = await first.job();
    const next = await app.services.log.state(jobKind, await goOn());
    const closed = await first.job();
    expect([closed.status, closed.closedAs, closed.goesOnAs]).toEqual(['closed', 'handed over', next.id]);
    expect([next.status, next.step, next.goesOnFrom]).toEqual(['open', 'finalCheck', first.id]);
    expect(next.situation).toEqual(before.situation);
    expect(next.locks).toEqual(before.locks);
    expect(next.readings).toEqual(before.readings);
    expect(next.sheet).toEqual(before.sheet);
    expect(next.evidence.processInlet?.readings).toEqual(before.evidence.processInlet?.readings);
    expect(next.holds).toEqual([]);
    const valve = await app.services.log.state(valveKind, sheet.tag);
    expect([valve.openJob, valve.lastJob]).toEqual([next.id, first.id]);
  });

  test('hands its locks on where they hang: the points are relied on without a gap', async () => {
    const next = await goOn();
    for (const tag of [sheet.supplyPoint, sheet.inletPoint, sheet.outletPoint]) {
      const point = await app.services.log.state(pointKind, String(tag));
      expect([point.position, point.locks.map(({ job }) => job)]).toEqual(['shut', [next]]);
    }
  });

  test('leaves no signature to the next, and whoever worked on it does not sign there', async () => {
    const next = await app.services.log.state(jobKind, await goOn());
    expect(next.envelope).toBeNull();
    expect(next.performers).toEqual((await first.job()).performers);
    expect(next.performers).not.toEqual([]);
  });

  test('is borne out by the machines of both', async () => {
    const next = await goOn();
    for (const [id, procedure] of [
      [first.id, 'hands-on'],
      [next, 'takes-over'],
    ] as const) {
      const compiled = catalogue.current(procedure)?.compiled;
      if (compiled === undefined) throw new Error(`${procedure} is not served`);
      const entries = await app.services.log.entriesOf(streamOf('job', id));
      expect(auditJob(entries, compiled)).toEqual([]);
    }
  });

  test('stands as it was where the next cannot be opened', async () => {
    expect(await codeOf(goOn({ gear: {} }))).toBe('OPN-006');
    expect(await codeOf(goOn({ place: 'bench' }))).toBe('OPN-004');
    expect(await codeOf(goOn({ procedure: 'hands-on' }))).toBe('HND-002');
    const { place, step } = await first.job();
    const from = { job: first.id, place, step, choice: 'repair', reason: '' };
    expect(await codeOf(goOn({ from }))).toBe('REA-013');
    expect(await codeOf(goOn({ from: { ...from, reason: 'x', place: place - 1 } }))).toBe('JOB-002');
    expect(await codeOf(goOn({ from: { ...from, job: '99', reason: 'x' } }))).toBe('JOB-000');
    expect((await first.job()).status).toBe('open');
    expect((await app.services.log.state(valveKind, sheet.tag)).openJob).toBe(first.id);
  });

  test('is refused by a later revision that takes the valve over otherwise', async () => {
    const later = takingOver(otherwise(STANDING, { controllerLine: ['connected', 'absent'] }));
    const handing = { catalogue: catalogueWith(later) };
    expect(await codeOf(goOn(handing))).toBe('HND-003');
    expect((await first.job()).status).toBe('open');
  });
});

/** As it would be after a change: the job stands on a revision that is not served any more. */
function catalogueWith(later: ReturnType<typeof takingOver>): Catalogue {
  const other = Object.create(catalogue) as Catalogue;
  const [current] = [catalogue.current('takes-over')];
  if (current === undefined) throw new Error('nothing takes over');
  const compiled = { ...current.compiled, definition: later };
  other.current = (id) => (id === 'takes-over' ? { ...current, compiled } : catalogue.current(id));
  other.of = (job, log) => catalogue.of(job, log);
  return other;
}
