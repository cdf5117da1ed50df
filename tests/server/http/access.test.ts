import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Route } from '../../../server/http/route.ts';
import { ROLES, type Role } from '../../../server/people/person.ts';
import { type AnApp, anApp, type Browser } from '../an-app.ts';

/**
 * Who may ask for what, written out once more by hand: a route that is opened to more people, or a new one, has to
 * be written here too.
 */
const TABLE: Readonly<Record<string, 'anyone' | 'signed-in' | readonly Role[]>> = {
  showFirstPage: 'anyone',
  setUp: 'anyone',
  setUpDemo: 'anyone',
  showSignIn: 'anyone',
  signIn: 'anyone',
  signOut: 'signed-in',
  showSignedIn: 'anyone',
  staySignedIn: 'signed-in',
  showFirstPin: 'anyone',
  setFirstPin: 'anyone',
  showPin: 'signed-in',
  changePin: 'signed-in',
  listPeople: 'signed-in',
  addPerson: ['supervisor', 'engineer'],
  showPerson: ['supervisor', 'engineer'],
  renamePerson: ['supervisor', 'engineer'],
  changeRole: ['supervisor', 'engineer'],
  giveCode: ['supervisor', 'engineer'],
  endSessions: ['supervisor', 'engineer'],
  retirePerson: ['supervisor', 'engineer'],
  showReview: ['safety-officer', 'supervisor', 'engineer'],
  reviewAccounts: ['safety-officer', 'supervisor', 'engineer'],
  lookIntoAlarms: ['safety-officer', 'supervisor', 'engineer'],
  listScreens: ['supervisor', 'engineer'],
  setScreenName: ['supervisor', 'engineer'],
  chooseLanguage: 'anyone',
  showQuickGuide: 'anyone',
  showTour: 'signed-in',
  leaveTour: 'signed-in',
  listDrafts: 'signed-in',
  discardDraft: 'signed-in',
  showShiftList: 'signed-in',
  showNewJob: ['technician', 'supervisor', 'engineer'],
  openJob: ['technician', 'supervisor', 'engineer'],
  showJob: 'signed-in',
  showSteps: 'signed-in',
  showLines: 'signed-in',
  listProcedures: 'signed-in',
  showProcedure: 'signed-in',
  showPaperForm: 'signed-in',
  showReadAgain: ['technician', 'supervisor', 'engineer'],
  showRadio: ['technician', 'supervisor', 'engineer'],
  listToSign: ['supervisor', 'engineer', 'safety-officer'],
  signFromList: ['supervisor', 'engineer'],
  nameCompetent: ['supervisor'],
  withdrawCompetent: ['supervisor'],
  listenLive: 'signed-in',
  showSent: 'signed-in',
  actOnJob: ['technician', 'supervisor', 'engineer'],
  replyToJob: ['technician', 'supervisor', 'engineer'],
  enterTogether: ['technician', 'supervisor', 'engineer'],
  showNotes: 'signed-in',
  noteOnJob: ['technician', 'supervisor', 'engineer'],
  showPhoto: 'signed-in',
  takePhoto: ['technician', 'supervisor', 'engineer'],
  showCrew: 'signed-in',
  joinJob: ['technician', 'supervisor', 'engineer'],
  leaveJob: ['technician', 'supervisor', 'engineer'],
  handOverJob: ['technician', 'supervisor', 'engineer'],
  showAway: ['supervisor'],
  removeLocksInAbsence: ['supervisor'],
  listPoints: 'signed-in',
  showPointTables: ['supervisor', 'engineer'],
  importPoints: ['supervisor', 'engineer'],
  showPoint: 'signed-in',
  describePoint: ['supervisor', 'engineer'],
  allowTagAlone: ['supervisor'],
  showRemovals: 'signed-in',
  knowRemoval: 'signed-in',
  showLine: ['technician', 'supervisor', 'engineer'],
  showGearTables: ['supervisor', 'engineer'],
  lookAtGearTable: ['supervisor', 'engineer'],
  confirmGearTable: ['supervisor', 'engineer'],
  exportGearCsv: 'signed-in',
  exportGearJson: 'signed-in',
  showLongWork: 'signed-in',
  stopLongWork: 'signed-in',
  listPlans: 'signed-in',
  showNewPlan: ['supervisor', 'engineer'],
  addPlan: ['supervisor', 'engineer'],
  showPlan: 'signed-in',
  savePlan: ['supervisor', 'engineer'],
  withdrawPlan: ['supervisor', 'engineer'],
  showPlanTables: ['supervisor', 'engineer'],
  lookAtPlanTable: ['supervisor', 'engineer'],
  confirmPlanTable: ['supervisor', 'engineer'],
  exportPlansCsv: 'signed-in',
  exportPlansJson: 'signed-in',
  listGear: 'signed-in',
  showNewGear: ['supervisor', 'engineer'],
  addGear: ['supervisor', 'engineer'],
  showGear: 'signed-in',
  saveGear: ['supervisor', 'engineer'],
  retireGear: ['supervisor', 'engineer'],
  showReadingsOnGear: 'signed-in',
  exportReadingsOnGear: 'signed-in',
  tellGearFoundWrong: ['engineer'],
  showRecord: 'signed-in',
  exportRecordPdf: 'signed-in',
  listCalculations: 'signed-in',
  listValves: 'signed-in',
  showValve: 'signed-in',
  showValveHistory: 'signed-in',
  showPlantHistory: 'signed-in',
  exportNoted: 'signed-in',
  showNewValve: ['engineer'],
  addValve: ['engineer'],
  showValveForm: ['engineer'],
  saveValve: ['engineer'],
  retireValve: ['engineer'],
  showValveTables: ['engineer'],
  lookAtValveTable: ['engineer'],
  confirmValveTable: ['engineer'],
  exportValvesCsv: 'signed-in',
  exportValvesJson: 'signed-in',
  listAudit: ['safety-officer', 'supervisor', 'engineer'],
  exportAuditRows: ['safety-officer', 'supervisor', 'engineer'],
  exportAuditPdf: ['safety-officer', 'supervisor', 'engineer'],
  exportJobLogPdf: ['safety-officer', 'supervisor', 'engineer'],
  showJobAudit: ['safety-officer', 'supervisor', 'engineer'],
  auditJob: ['safety-officer', 'supervisor', 'engineer'],
  showStatus: ['engineer', 'safety-officer'],
  showLog: ['safety-officer', 'supervisor', 'engineer'],
  verifyLog: ['safety-officer', 'supervisor', 'engineer'],
  makeExport: ['safety-officer', 'supervisor', 'engineer'],
  restoreLog: ['safety-officer', 'supervisor', 'engineer'],
  exportLog: ['safety-officer', 'supervisor', 'engineer'],
  showHelp: 'anyone',
  showPracticeBench: 'signed-in',
  setExercise: ['technician', 'supervisor', 'engineer'],
  exportBenchLoop: 'signed-in',
  showBenchGauges: 'signed-in',
  signOnBench: ['technician', 'supervisor', 'engineer'],
  giveUpExercise: ['technician', 'supervisor', 'engineer'],
  showExerciseResult: 'signed-in',
  practiseShowNewJob: ['technician', 'supervisor', 'engineer'],
  practiseOpenJob: ['technician', 'supervisor', 'engineer'],
  practiseShowJob: 'signed-in',
  practiseActOnJob: ['technician', 'supervisor', 'engineer'],
  practiseShowLine: ['technician', 'supervisor', 'engineer'],
  practiseReplyToJob: ['technician', 'supervisor', 'engineer'],
  practiseEnterTogether: ['technician', 'supervisor', 'engineer'],
  practiseShowSteps: 'signed-in',
  practiseShowLines: 'signed-in',
  practiseShowRecord: 'signed-in',
  practiseListenLive: 'signed-in',
  practiseShowSent: 'signed-in',
  chooseScreen: 'anyone',
  showStyle: 'anyone',
  isAlive: 'anyone',
  getAsset: 'anyone',
  describeApi: 'anyone',
};

/** One route a calculation, made of the registry; whoever is signed in may ask for any of them. */
const isCalculation = (name: string): boolean => /^calculate[A-Z0-9]/.test(name);
const tabled = (name: string) => TABLE[name] ?? (isCalculation(name) ? 'signed-in' : undefined);

let app: AnApp;
const browsers = new Map<Role | 'nobody', Browser | undefined>([['nobody', undefined]]);

beforeAll(async () => {
  app = await anApp({ people: true });
  for (const role of ROLES) browsers.set(role, (await app.signedIn(role)).browser);
});
afterAll(() => app.close());

/** By the table alone, and not by what the server thinks of it. One that is not written down fails a test of its own. */
function isLetIn(roles: Route['roles'] | undefined, role: Role | 'nobody'): boolean {
  if (roles === undefined || roles === 'anyone') return true;
  return role !== 'nobody' && (roles === 'signed-in' || roles.includes(role));
}

/** Asked with a field that no form has, so that what is let through still does nothing. */
async function ask(
  route: Route,
  role: Role | 'nobody',
): Promise<{ status: number; code: string | undefined }> {
  const path = route.path.replace(/:\w+(\{[^}]*\})?/g, 'x');
  const as = browsers.get(role);
  const sent = { headers: { accept: 'application/json' }, ...(as === undefined ? {} : { as }) };
  const response =
    route.method === 'GET' ? await app.get(path, sent) : await app.postJson(path, { noSuchField: 'x' }, sent);
  const body: unknown = await response.json();
  const code = typeof body === 'object' && body !== null && 'code' in body ? String(body.code) : undefined;
  return { status: response.status, code };
}

describe('who may ask', () => {
  test('is written down for every route there is', () => {
    const registered = Object.fromEntries(app.routes.map(({ name, roles }) => [name, roles]));
    expect(Object.keys(registered).filter((name) => tabled(name) === undefined)).toEqual([]);
    for (const [name, roles] of Object.entries(registered)) expect(roles, name).toEqual(tabled(name));
  });

  test('is what happens: every route, by every role and by nobody (SA-04)', {
    timeout: 120_000,
  }, async () => {
    for (const route of app.routes) {
      for (const role of [...ROLES, 'nobody'] as const) {
        const { status, code } = await ask(route, role);
        const allowed = isLetIn(tabled(route.name), role);
        const where = `${route.name} by ${role}: ${status} ${code}`;
        if (allowed) {
          expect(['PPL-010', 'PPL-011'], where).not.toContain(code);
          // A form that takes any field looks at the object of its address instead.
          if (route.method === 'POST') expect(['FRM-001', 'FRM-002', 'JOB-001'], where).toContain(code);
        } else expect([status, code], where).toEqual(role === 'nobody' ? [401, 'PPL-010'] : [403, 'PPL-011']);
      }
    }
  });

  test('sends a browser that wants a page to sign in, and from there back', async () => {
    const response = await app.get('/people?from=list');
    expect([response.status, response.headers.get('location')]).toEqual([
      303,
      '/sign-in?next=%2Fpeople%3Ffrom%3Dlist',
    ]);
    const form = await (await app.get('/sign-in?next=%2Fpeople')).text();
    expect(form).toContain('name="next" value="/people"');
  });

  test('keeps what was typed on the screen when the session has ended: the piece says so, above it', async () => {
    const response = await app.post(
      '/people',
      { name: 'A', role: 'technician' },
      { headers: { 'hx-request': 'true' } },
    );
    expect(response.status).toBe(401);
    expect(response.headers.get('hx-retarget')).toBe('#main');
    expect(response.headers.get('hx-reswap')).toBe('afterbegin');
    expect(await response.text()).toContain('Nobody is signed in at this screen.');
  });

  test('shows nothing of a page to those who may not see it, whatever they send', async () => {
    for (const headers of [{}, { origin: 'http://evil.example' }, { 'content-type': 'text/plain' }]) {
      const response = await app.post('/people', { name: '', role: '' }, { headers });
      expect([401, 403]).toContain(response.status);
      expect(await response.text()).not.toContain('Engineer 1');
    }
  });

  test('names those who may to those who may not', async () => {
    const as = browsers.get('technician');
    const response = await app.post('/people', { name: 'A', role: 'technician' }, as ? { as } : {});
    expect(response.status).toBe(403);
    expect(await response.text()).toContain(
      'This is for the supervisor or engineer; you are signed in as technician.',
    );
  });
});
