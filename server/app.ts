import { Hono } from 'hono';
import { Compressor } from './http/compress.ts';
import { dispatch, dispatchUnknown } from './http/dispatch.ts';
import { sendText } from './http/respond.ts';
import type { Route } from './http/route.ts';
import { ownHosts, ownOrigin } from './http/security.ts';
import type { Services } from './services.ts';

export interface AppOptions {
  readonly services: Services;
  readonly routes: readonly Route[];
  /** Holds every answer against the schema that programs are told; for tests. */
  readonly checkAnswers?: boolean;
}

const TLS_FOR_A_YEAR = 'max-age=31536000';

/** What a request handler of the router sees: which of our own addresses was asked. */
type Own = { Variables: { origin: string } };

/**
 * The whole server but its port. `app.request('/')` asks it without any network.
 *
 * @example const app = createApp({ services, routes });
 */
export function createApp(to: AppOptions): Hono<Own> {
  refuseTwins(to.routes);
  const hosts = ownHosts(to.services.settings.origins);
  const compressor = new Compressor();
  const app = new Hono<Own>();
  app.use('*', async (context, next) => {
    const asked = ownOrigin(context.req.raw.headers, hosts);
    if (!('origin' in asked)) return sendText(asked.status, asked.text);
    context.set('origin', asked.origin);
    await next();
    const answer = await compressor.compressed(context.req.raw, context.res);
    // From then on a browser asks this name by TLS alone, whatever is typed or clicked.
    if (asked.origin.startsWith('https:')) answer.headers.set('strict-transport-security', TLS_FOR_A_YEAR);
    // Without this the router gives the answer the length that it had before.
    context.res = undefined;
    context.res = answer;
    return undefined;
  });
  for (const route of to.routes) {
    app.on(route.method, route.path, (context) =>
      dispatch(
        { route, request: context.req.raw, origin: context.var.origin, params: context.req.param() },
        to,
      ),
    );
  }
  app.notFound((context) =>
    dispatchUnknown(
      {
        allowed: methodsAt(app, { path: context.req.path, routes: to.routes }),
        request: context.req.raw,
        origin: context.var.origin,
        params: {},
      },
      to,
    ),
  );
  return app;
}

/** @throws TypeError if two routes share a name, or method and path */
function refuseTwins(routes: readonly Route[]): void {
  const seen = new Set<string>();
  for (const { name, method, path } of routes) {
    for (const mark of [name, `${method} ${path}`]) {
      if (seen.has(mark)) throw new TypeError(`Two routes are called "${mark}".`);
      seen.add(mark);
    }
  }
}

/** By which methods something is served at a path. */
function methodsAt(
  app: Hono<Own>,
  { path, routes }: { readonly path: string; readonly routes: readonly Route[] },
): readonly string[] {
  const paths = new Set<string>(routes.map((route) => route.path));
  return ['GET', 'POST'].filter((method) =>
    app.router.match(method, path)[0].some(([[, found]]) => paths.has(found.path)),
  );
}
