import type { Assets } from './http/assets.ts';
import { openApiRoute } from './http/openapi.ts';
import type { Route } from './http/route.ts';
import { Catalogue } from './jobs/catalogue.ts';
import { jobRoutes } from './pages/jobs.ts';
import { peopleRoutes } from './pages/people.ts';
import { plainRoutes } from './pages/plain.ts';
import { type SetUpOptions, setUpRoutes } from './pages/set-up.ts';
import { signInRoutes } from './pages/sign-in.ts';

export interface RoutesOptions extends Pick<SetUpOptions, 'loadDemo'> {
  readonly assets: Assets;
  readonly codeVersion: string;
}

/** Everything that the server serves. A part adds its routes here, and nowhere else. */
export function allRoutes(options: RoutesOptions): readonly Route[] {
  const { assets, codeVersion } = options;
  const catalogue = new Catalogue();
  const routes: Route[] = [
    ...setUpRoutes({ ...options, routes: () => routes }),
    ...signInRoutes,
    ...peopleRoutes,
    ...jobRoutes(catalogue),
    ...plainRoutes,
    assets.route,
  ];
  routes.push(openApiRoute(routes, codeVersion));
  return routes;
}
