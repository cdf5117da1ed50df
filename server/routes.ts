import type { Assets } from './http/assets.ts';
import { openApiRoute } from './http/openapi.ts';
import type { Route } from './http/route.ts';
import { Catalogue } from './jobs/catalogue.ts';
import { auditRoutes } from './pages/audit.ts';
import { auditJobRoutes } from './pages/audit-job.ts';
import { auditLogRoutes } from './pages/audit-log.ts';
import { calculationRoutes } from './pages/calculations.ts';
import { crewRoutes } from './pages/crew.ts';
import { draftRoutes } from './pages/drafts.ts';
import { foundWrongRoutes } from './pages/found-wrong.ts';
import { gearRoutes } from './pages/gear.ts';
import { gearTableRoutes } from './pages/gear-tables.ts';
import { jobNoteRoutes } from './pages/job-notes.ts';
import { photoRoutes } from './pages/job-photos.ts';
import { jobRoutes } from './pages/jobs.ts';
import { languageRoute } from './pages/language.ts';
import { liveRoute } from './pages/live.ts';
import { longWorkRoutes } from './pages/long-work.ts';
import { peopleRoutes } from './pages/people.ts';
import { plainRoutes } from './pages/plain.ts';
import { planTableRoutes } from './pages/plan-tables.ts';
import { planRoutes } from './pages/plans.ts';
import { pointRoutes } from './pages/points.ts';
import { benchRoutes } from './pages/practice.ts';
import { practiceListRoutes } from './pages/practice-list.ts';
import { procedureRoutes } from './pages/procedures.ts';
import { recordRoutes } from './pages/record.ts';
import { removalRoutes } from './pages/removals.ts';
import { replyRoutes } from './pages/reply.ts';
import { reviewRoutes } from './pages/review.ts';
import { screenRoutes } from './pages/screens.ts';
import { secondLookRoutes } from './pages/second-look.ts';
import { sentRoute } from './pages/sent.ts';
import { type SetUpOptions, setUpRoutes } from './pages/set-up.ts';
import { shiftListRoutes } from './pages/shift-list.ts';
import { signInRoutes } from './pages/sign-in.ts';
import { signOffRoutes } from './pages/sign-offs.ts';
import { signedInRoutes } from './pages/signed-in.ts';
import { statusRoute } from './pages/status.ts';
import { tourRoutes } from './pages/tour.ts';
import { valveFormRoutes } from './pages/valve-form.ts';
import { valveHistoryRoutes } from './pages/valve-history.ts';
import { valveTableRoutes } from './pages/valve-tables.ts';
import { valveRoutes } from './pages/valves.ts';
import { onBench } from './practice/on-bench.ts';

export interface RoutesOptions extends Pick<SetUpOptions, 'loadDemo'> {
  readonly assets: Assets;
  readonly codeVersion: string;
  /** The verifier that goes with an export; the built one unless given. */
  readonly verifier?: () => string;
}

/** Everything that the server serves. A part adds its routes here, and nowhere else. */
export function allRoutes(options: RoutesOptions): readonly Route[] {
  const catalogue = new Catalogue();
  return routesWith(
    [
      ...shiftListRoutes(catalogue),
      ...recordRoutes(catalogue),
      ...jobRoutes(catalogue),
      ...jobNoteRoutes(catalogue),
      ...photoRoutes(catalogue),
      ...replyRoutes(catalogue),
      ...secondLookRoutes(catalogue),
      ...signOffRoutes(catalogue),
      ...procedureRoutes(catalogue),
      liveRoute,
      sentRoute,
      ...valveTableRoutes,
      ...valveFormRoutes,
      ...valveRoutes,
      ...valveHistoryRoutes(catalogue),
      ...crewRoutes(catalogue),
      ...pointRoutes,
      ...removalRoutes,
      ...planTableRoutes,
      ...planRoutes,
      ...gearTableRoutes,
      ...gearRoutes,
      ...foundWrongRoutes(catalogue),
      ...auditRoutes(catalogue),
      ...auditJobRoutes(catalogue),
      ...auditLogRoutes(options.verifier),
      statusRoute,
      ...calculationRoutes,
      ...practiceListRoutes(catalogue),
      ...benchRoutes(catalogue),
      ...practised(catalogue),
    ],
    options,
  );
}

/** Routes of a job that the practice bench serves as well. Nothing of people, PINs, points or the audit is among them. */
const ON_BENCH: readonly string[] = [
  'showNewJob',
  'openJob',
  'showJob',
  'actOnJob',
  'showLine',
  'showLines',
  'replyToJob',
  'enterTogether',
  'showSteps',
  'showRecord',
  'listenLive',
  'showSent',
];

function practised(catalogue: Catalogue): readonly Route[] {
  const all = [
    ...jobRoutes(catalogue),
    ...replyRoutes(catalogue),
    ...secondLookRoutes(catalogue),
    ...recordRoutes(catalogue),
    liveRoute,
    sentRoute,
  ];
  return all.filter(({ name }) => ON_BENCH.includes(name)).map(onBench);
}

/** What any site needs, with the routes of the work between. */
export function routesWith(work: readonly Route[], options: RoutesOptions): readonly Route[] {
  const { assets, codeVersion } = options;
  const routes: Route[] = [
    ...setUpRoutes({ ...options, routes: () => routes }),
    ...signInRoutes,
    ...signedInRoutes,
    ...reviewRoutes,
    ...peopleRoutes,
    ...screenRoutes,
    ...draftRoutes,
    ...work,
    ...longWorkRoutes,
    ...plainRoutes,
    languageRoute,
    ...tourRoutes,
    assets.route,
  ];
  routes.push(openApiRoute(routes, codeVersion));
  return routes;
}
