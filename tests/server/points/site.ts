/** A site with two technicians and a job that stands locked, for tests of points and people. */
import type { Person } from '../../../server/people/person.ts';
import { aSheet } from '../../builders/sheets.ts';
import { openSiteJob, type SiteJob } from '../../builders/site-jobs.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../an-app.ts';

export const SECOND_PIN = '736158';

export interface PointSite {
  readonly app: AnApp;
  readonly job: SiteJob;
  readonly first: Person;
  readonly second: Person;
  readonly supervisor: Person;
  readonly browsers: Readonly<Record<'technician' | 'supervisor' | 'safety-officer' | 'engineer', Browser>>;
  /** Labels and lock numbers of a person, as typed into a form. */
  locks(letter: string): Record<string, string>;
  crew(): Promise<CrewData>;
  close(): Promise<void>;
}

export interface CrewData {
  readonly people: readonly {
    readonly person: string;
    readonly how: string;
    readonly exposed: boolean;
    readonly locks: readonly { readonly point: string; readonly lock: string }[];
  }[];
  readonly shown: readonly { readonly energy: string; readonly shown: string; readonly by: string }[];
}

const sheet = aSheet();

/** @param step where the job stands */
export async function pointSite(step: string): Promise<PointSite> {
  const app = await anApp({ people: true });
  const by = { requestId: newRequestId(), person: null, screen: 'test bench' };
  const second = await app.services.people.addWithPin(
    { name: 'Technician 2', role: 'technician', pin: SECOND_PIN },
    by,
  );
  const job = await openSiteJob(app, {
    technician: (await app.signedIn('technician')).person,
    supervisor: (await app.signedIn('supervisor')).person,
  });
  await job.playTo(step);
  // The job takes longer than a session that nobody touches.
  const technician = await app.signedIn('technician');
  const supervisor = await app.signedIn('supervisor');
  return {
    app,
    job,
    first: technician.person,
    second,
    supervisor: supervisor.person,
    browsers: {
      technician: technician.browser,
      supervisor: supervisor.browser,
      'safety-officer': (await app.signedIn('safety-officer')).browser,
      engineer: (await app.signedIn('engineer')).browser,
    },
    locks: (letter) => ({
      supplyLockTag: sheet.supplyPoint ?? '',
      supplyLockNumber: `${letter}-1`,
      inletLockTag: sheet.inletPoint ?? '',
      inletLockNumber: `${letter}-2`,
      outletLockTag: sheet.outletPoint ?? '',
      outletLockNumber: `${letter}-3`,
    }),
    crew: async () => {
      const path = `/jobs/${job.id}/people`;
      const answer = await app.get(path, { as: technician.browser, headers: { accept: 'application/json' } });
      return (await answer.json()) as CrewData;
    },
    close: () => app.close(),
  };
}

/** One post of a form as JSON, and what came of it. */
export async function post(
  { app, job, browsers }: PointSite,
  {
    to,
    fields,
    as = 'technician',
  }: {
    readonly to: string;
    readonly fields: Readonly<Record<string, string>>;
    readonly as?: keyof PointSite['browsers'];
  },
): Promise<{
  readonly status: number;
  readonly code: string;
  readonly body: Readonly<Record<string, unknown>>;
}> {
  const path = to.startsWith('/') ? to : `/jobs/${job.id}/people/${to}`;
  const sent = { ...fields, requestId: newRequestId() };
  const response = await app.postJson(path, sent, { as: browsers[as] });
  const body = (await response.json()) as Record<string, unknown>;
  return { status: response.status, code: typeof body.code === 'string' ? body.code : '', body };
}

export const joining = (site: PointSite, more: Readonly<Record<string, string>> = {}) =>
  post(site, {
    to: 'join',
    fields: {
      ...site.locks('B'),
      who: site.second.id,
      pin: SECOND_PIN,
      verified: 'relied-on-primary',
      ...more,
    },
  });

export const away = {
  foundOut: 'asked at the gate',
  attempts: 'rang twice, no answer',
  toldBy: 'supervisor 1, at the gate',
  reason: 'the line is wanted',
} as const;
