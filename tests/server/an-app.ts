/** A whole server without its port, for tests: a moved clock, cheap hashing, and people who can sign in. */
import type { Hono } from 'hono';
import { createApp } from '../../server/app.ts';
import type { BackupPlan } from '../../server/backups/keep-backing-up.ts';
import { readAssets } from '../../server/http/assets.ts';
import type { Route } from '../../server/http/route.ts';
import type { Checkpoints } from '../../server/log/checkpoints.ts';
import { makeServices } from '../../server/make-services.ts';
import type { LoadDemo } from '../../server/pages/set-up.ts';
import type { Person, Role } from '../../server/people/person.ts';
import { projectFolder } from '../../server/project-folder.ts';
import { allRoutes, routesWith } from '../../server/routes.ts';
import type { Services } from '../../server/services.ts';
import { SETTINGS, type Settings } from '../../server/settings.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import type { Store } from '../../server/store/store.ts';
import { aFolder } from '../folders.ts';

export const ORIGIN = 'http://127.0.0.1:8430';
export const project = projectFolder();

/** PINs of the people that `anApp` adds, by role. */
export const PINS: Readonly<Record<Role, string>> = {
  technician: '482915',
  supervisor: '619374',
  'safety-officer': '375218',
  engineer: '826491',
};

export interface AnAppOptions {
  readonly folder?: string;
  readonly store?: Store;
  readonly settings?: Partial<Settings>;
  /** Routes in the place of those of the work: the site's own are always there. */
  readonly routes?: readonly Route[];
  readonly loadDemo?: LoadDemo;
  /** Without them nothing is marked or compared. */
  readonly checkpoints?: Checkpoints;
  /** What is asked of the server's own backups; nothing here makes them. */
  readonly backups?: BackupPlan;
}

export interface Sent {
  readonly as?: Browser;
  readonly headers?: Readonly<Record<string, string>>;
}

/** The cookies of one browser. */
export class Browser {
  readonly cookies = new Map<string, string>();

  take(response: Response): void {
    for (const line of response.headers.getSetCookie()) {
      const [pair = ''] = line.split(';');
      const equals = pair.indexOf('=');
      const [name, value] = [pair.slice(0, equals), pair.slice(equals + 1)];
      if (value === '') this.cookies.delete(name);
      else this.cookies.set(name, value);
    }
  }

  get header(): string {
    return [...this.cookies].map(([name, value]) => `${name}=${value}`).join('; ');
  }
}

export interface AnApp {
  // biome-ignore lint/suspicious/noExplicitAny: what hono keeps beside a request is no concern of the tests
  readonly app: Hono<any>;
  readonly services: Services;
  readonly routes: readonly Route[];
  /** Lines of the operations log, but for refusals. */
  readonly lines: string[];
  /** What the operations log has of refusals. */
  readonly refusals: string[];
  readonly folder: string;
  /** Moves the clock on. */
  wait(ms: number): void;
  get(path: string, sent?: Sent): Promise<Response>;
  /** A form, as a browser sends it. */
  post(path: string, fields?: Fields, sent?: Sent): Promise<Response>;
  /** The same as JSON. */
  postJson(path: string, body: unknown, sent?: Sent): Promise<Response>;
  /** Any request, with nothing but its host added. */
  send(path: string, init: RequestInit): Promise<Response>;
  /** Somebody in a role, signed in at a browser of their own. */
  signedIn(role: Role): Promise<{ readonly browser: Browser; readonly person: Person }>;
  close(): Promise<void>;
}

export type Fields = Readonly<Record<string, string | readonly string[]>>;

let requests = 0;

export function newRequestId(): string {
  requests += 1;
  return `request-${String(requests).padStart(6, '0')}`;
}

export function form(fields: Fields): string {
  const pairs = Object.entries(fields).flatMap(([name, value]) =>
    (typeof value === 'string' ? [value] : value).map((each) => [name, each]),
  );
  return new URLSearchParams(pairs).toString();
}

/** A set-up site if `people` is given: one person in each role, with the PIN of `PINS`. */
export async function anApp(options: AnAppOptions & { readonly people?: boolean } = {}): Promise<AnApp> {
  const folder = options.folder ?? aFolder();
  const store = options.store ?? openSqliteStore({ folder });
  let now = Date.UTC(2024, 0, 15, 8);
  const [lines, refusals]: [string[], string[]] = [[], []];
  const assets = readAssets(project);
  const services = makeServices({
    store,
    practiceStore: () => openSqliteStore({ folder: `${folder}-practice` }),
    settings: { ...SETTINGS, origins: [ORIGIN], hashCost: { N: 256, r: 8, p: 1 }, ...options.settings },
    machine: { folder, backups: options.backups ?? null },
    pepper: Buffer.alloc(32, 7),
    checkpoints: options.checkpoints ?? null,
    project,
    codeVersion: 'test',
    asset: assets.address,
    now: () => new Date(now),
    newId: newRequestId,
    // The same valves on the bench in every run.
    drawSeed: () => 7,
    out: (line) => (line.includes('"event":"refused"') ? refusals : lines).push(line),
  });
  const { loadDemo } = options;
  // The true one is made by the build; what it does is tested by itself.
  const verifier = () => '// as built\n';
  const of = { assets, codeVersion: 'test', verifier, ...(loadDemo === undefined ? {} : { loadDemo }) };
  const routes = options.routes === undefined ? allRoutes(of) : routesWith(options.routes, of);
  const app = createApp({ services, routes, checkAnswers: true });
  const asks = asking(app);
  const people = options.people ? await addPeople(services) : new Map<Role, Person>();
  return {
    ...asks,
    app,
    services,
    routes,
    lines,
    refusals,
    folder,
    wait: (ms) => {
      now += ms;
    },
    signedIn: async (role) => {
      const person = people.get(role);
      if (person === undefined) throw new Error('This app was made without people.');
      const browser = new Browser();
      const response = await asks.post('/sign-in', { who: person.id, pin: PINS[role] }, { as: browser });
      if (response.status !== 303) throw new Error(`Signing in as ${role} gave ${response.status}.`);
      return { browser, person };
    },
    close: async () => {
      await services.practice.close();
      await services.log.close();
    },
  };
}

async function addPeople(services: Services): Promise<Map<Role, Person>> {
  const by = () => ({ requestId: newRequestId(), person: null, screen: 'test bench' });
  const people = new Map<Role, Person>();
  const engineer = { plant: 'Test plant', name: 'Engineer 1', newPin: PINS.engineer };
  people.set('engineer', await services.people.setUp(engineer, by()));
  for (const role of ['technician', 'supervisor', 'safety-officer'] as const) {
    const name = `${role.replace('-', ' ')} 1`;
    people.set(role, await services.people.addWithPin({ name, role, pin: PINS[role] }, by()));
  }
  return people;
}

function asking(app: AnApp['app']): Pick<AnApp, 'get' | 'post' | 'postJson' | 'send'> {
  const send = async (path: string, init: RequestInit, as?: Browser): Promise<Response> => {
    const headers = new Headers(init.headers);
    if (!headers.has('host')) headers.set('host', '127.0.0.1:8430');
    if (as !== undefined && as.cookies.size > 0) headers.set('cookie', as.header);
    const response = await app.request(`${ORIGIN}${path}`, { ...init, headers });
    as?.take(response);
    return response;
  };
  const html = { accept: 'text/html' };
  const own = { origin: ORIGIN };
  return {
    send: (path, init) => send(path, init),
    get: (path, { as, headers } = {}) => send(path, { headers: { ...html, ...headers } }, as),
    post: (path, fields = {}, { as, headers } = {}) => {
      const type = { 'content-type': 'application/x-www-form-urlencoded' };
      const init = { method: 'POST', headers: { ...html, ...own, ...type, ...headers }, body: form(fields) };
      return send(path, init, as);
    },
    postJson: (path, body, { as, headers } = {}) => {
      const type = { 'content-type': 'application/json', accept: 'application/json' };
      return send(
        path,
        { method: 'POST', headers: { ...own, ...type, ...headers }, body: JSON.stringify(body) },
        as,
      );
    },
  };
}
