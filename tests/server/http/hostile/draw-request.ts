/** Requests that somebody might send to do harm: close to what a form sends, or nothing like it. */
import type { Route } from '../../../../server/http/route.ts';
import { ROLES, type Role } from '../../../../server/people/person.ts';
import type { FoundForm, Harvest } from './harvest.ts';

export interface HostileRequest {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | undefined;
  /** Whose session it carries; null for nobody's. */
  readonly role: Role | null;
  /** The route that it is meant for, or the page that it was found on. */
  readonly aim: string;
}

export interface Drawing {
  readonly chance: () => number;
  readonly routes: readonly Route[];
  readonly harvest: Harvest;
  /** What costs as much as a hundred others is asked for in one of so many of its turns. */
  readonly sparedEach: number;
}

/** What breaks programs: empty, huge, half a character, another language’s syntax, another line of a header. */
const NASTY = [
  '',
  ' ',
  '0',
  '-0',
  '-1',
  'NaN',
  'Infinity',
  '1e309',
  '9007199254740993',
  '0x10',
  '1,5',
  '1.2.3',
  '9 psi 9 psi 9 psi',
  'null',
  'undefined',
  '[]',
  '{}',
  '__proto__',
  'constructor',
  'toString',
  "'; DROP TABLE entries; --",
  '" OR 1=1',
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  '{{ 7 * 7 }}',
  '{% include "layout.njk" %}',
  '#{7*7}',
  '=cmd|0',
  '../../etc/passwd',
  '/practice/../people',
  'a\u0000b',
  'a\r\nSet-Cookie: x=y',
  '\u202egnp.exe',
  '\ufeff',
  '\ufffd',
  'Z\u0351\u036b'.repeat(50),
  '9'.repeat(400),
  'x'.repeat(5000),
  '1-'.repeat(500),
  ' \t\n'.repeat(300),
  '1970-01-01T00:00:00.000Z',
  '0000-00-00',
  '275760-09-13',
  '2024-02-30',
];
/** Rarely, for each byte of it costs time. */
const HUGE = ['x'.repeat(100_000), '9 psi '.repeat(20_000), '(((((('.repeat(15_000), 'a@'.repeat(50_000)];
const PLAUSIBLE = [
  '1',
  '9 psi',
  '50 %',
  '0.5 bar',
  '12 mm',
  '4.0 mA',
  'yes',
  'no',
  'on',
  'bench',
  'line',
  'technician',
  'supervisor',
  'stroke-check',
  'FV-214',
  '2024-01-15',
  '08:30',
  'psi',
  'works with me',
];
const NAMES = ['actor', 'ts', 'hash', 'person', '__proto__', 'constructor', 'act', 'place', 'step', 'pin'];
const TYPES = [
  '',
  'text/plain',
  'application/xml',
  'application/json; charset=utf-16',
  'multipart/form-data',
  'multipart/form-data; boundary=x',
];
const GARBAGE = [
  '',
  'null',
  '[]',
  '"text"',
  '{"a":1,"a":2}',
  '{"a":{"b":{}}}',
  '{"a":',
  '['.repeat(20_000),
  '{"a":'.repeat(5000),
  '%',
  '%ff=%fe',
  'a=%ed%a0%80',
  '&&&&==',
  'a=1&'.repeat(3000),
  '--x\r\nContent-Disposition: form-data; name="a"\r\n\r\n1\r\n--x--\r\n',
  '--x\r\nContent-Disposition: form-data; name="photo"; filename="../a.png"\r\n\r\n\u0089PNG\r\n--x--\r\n',
  '--x\r\nbroken',
];

/** What reads the whole log or draws a long document. */
const COSTLY = ['verifyLog', 'exportLog', 'exportAuditPdf', 'exportRecordPdf', 'showStyle', 'describeApi'];

type Chance = () => number;
const oneOf = <T>(all: readonly T[], chance: Chance): T => all[Math.floor(chance() * all.length)] as T;

/** Of three requests one is a form of the site with something changed, one fills a route’s own fields, one is anything. */
export function drawRequest(drawing: Drawing, at: number): HostileRequest {
  const { chance, harvest } = drawing;
  const role = chance() < 0.1 ? null : oneOf(ROLES, chance);
  if (at % 3 === 0 && harvest.forms.length > 0) {
    const form = oneOf(harvest.forms, chance);
    // Its numbers of one use are good for whoever it was made for.
    return formRequest(form, { chance, role: chance() < 0.8 ? form.role : role });
  }
  const route = routeAt(Math.floor(at / 3), drawing);
  const may =
    Array.isArray(route.roles) && chance() < 0.8 ? oneOf(route.roles as readonly Role[], chance) : role;
  const path = pathOf(route, drawing) + (chance() < 0.5 ? queryOf(route, drawing) : '');
  const aim = route.name;
  if (route.method === 'GET')
    return { method: 'GET', path, headers: wanted(chance), body: undefined, role: may, aim };
  const fields = at % 3 === 1 ? ownFields(route, drawing) : anyFields(chance);
  return { method: 'POST', path, role: may, aim, ...encoded(fields, chance) };
}

/** Each in its turn. */
function routeAt(turn: number, { routes, sparedEach }: Drawing): Route {
  const [round, place] = [Math.floor(turn / routes.length), turn % routes.length];
  const route = routes[place] as Route;
  const isSpared = COSTLY.includes(route.name) && (round + place) % sparedEach !== 0;
  return isSpared ? (routes[(place * 7 + round) % routes.length] as Route) : route;
}

function formRequest(
  { action, method, fields, from }: FoundForm,
  { chance, role }: { readonly chance: Chance; readonly role: Role | null },
): HostileRequest {
  const changed = mutated(fields, chance);
  const aim = `form on ${from}`;
  if (method === 'GET') {
    const path = `${action.split('?')[0]}?${new URLSearchParams(changed.map(([a, b]) => [a, b]))}`;
    return { method, path, headers: wanted(chance), body: undefined, role, aim };
  }
  return { method, path: action, role, aim, ...encoded(changed, chance) };
}

type Pairs = readonly (readonly [string, string])[];

/** Blank fields get what somebody might mean; then one field is spoilt, left out, doubled or added, or none. */
function mutated(fields: Pairs, chance: Chance): Pairs {
  const filled = fields.map(
    ([name, value]) => [name, value === '' ? oneOf(PLAUSIBLE, chance) : value] as const,
  );
  const at = Math.floor(chance() * Math.max(1, filled.length));
  const how = chance();
  const [name = 'x'] = filled[at] ?? [];
  if (how < 0.45) return filled.map((pair, index) => (index === at ? [name, value(chance)] : pair));
  if (how < 0.55) return filled.filter((_, index) => index !== at);
  if (how < 0.65) return [...filled, [name, value(chance)]];
  if (how < 0.75) return [...filled, [oneOf(NAMES, chance), value(chance)]];
  return filled;
}

function value(chance: Chance): string {
  const how = chance();
  if (how < 0.005) return oneOf(HUGE, chance);
  if (how < 0.6) return oneOf(NASTY, chance);
  if (how < 0.75) return oneOf(PLAUSIBLE, chance);
  return Array.from({ length: Math.floor(chance() * 40) }, () =>
    String.fromCharCode(Math.floor(chance() * (chance() < 0.8 ? 0x7f : 0xffff))),
  ).join('');
}

function ownFields(route: Route, { chance, harvest }: Drawing): Pairs {
  return Object.entries(route.body?.shape ?? {}).flatMap(([name, schema]) => {
    const how = chance();
    if (how < 0.1) return [];
    const options = 'options' in schema && Array.isArray(schema.options) ? (schema.options as unknown[]) : [];
    if (options.length > 0 && how < 0.8) return [[name, String(oneOf(options, chance))] as const];
    return [[name, how < 0.4 ? oneOf([...PLAUSIBLE, ...harvest.ids], chance) : value(chance)] as const];
  });
}

function anyFields(chance: Chance): Pairs {
  return Array.from({ length: Math.floor(chance() * 6) }, () => [
    chance() < 0.5 ? oneOf(NAMES, chance) : value(chance).slice(0, 20),
    value(chance),
  ]);
}

function pathOf(route: Route, { chance, harvest }: Drawing): string {
  return route.path.replace(/:\w+(\{[^}]*\})?/g, () =>
    encodeURIComponent(whole(chance() < 0.75 ? oneOf(harvest.ids, chance) : value(chance).slice(0, 300))),
  );
}

function queryOf(route: Route, drawing: Drawing): string {
  const { chance } = drawing;
  const names = [...Object.keys(route.query?.shape ?? {}), oneOf(NAMES, chance)];
  const pairs = names.map((name) => [
    name,
    chance() < 0.5 ? oneOf(drawing.harvest.ids, chance) : value(chance).slice(0, 400),
  ]);
  return `?${new URLSearchParams(pairs)}`;
}

/** An address is made of whole characters. */
const whole = (text: string): string => text.replace(/\p{Surrogate}/gu, 'x') || 'x';

const LANGUAGES = ['en', 'es', '*', 'x'.repeat(300), 'es;q=abc, ,;'];

function wanted(chance: Chance): Record<string, string> {
  const how = chance();
  return {
    accept: oneOf(['text/html', 'application/json', '*/*', 'image/png', 'text/event-stream', 'x'], chance),
    ...(how < 0.2 ? { 'hx-request': 'true' } : {}),
    ...(how > 0.9 ? { 'accept-language': oneOf(LANGUAGES, chance) } : {}),
    ...(how > 0.95 ? { 'accept-encoding': oneOf(['gzip', 'br;q=1', 'gzip;q=x', '*'], chance) } : {}),
  };
}

function encoded(fields: Pairs, chance: Chance): Pick<HostileRequest, 'headers' | 'body'> {
  const how = chance();
  const head = wanted(chance);
  if (how < 0.12)
    return {
      headers: { ...head, 'content-type': oneOf([...TYPES, 'application/json'], chance) },
      body: oneOf(GARBAGE, chance),
    };
  if (how < 0.4) {
    const record = Object.fromEntries(fields.map(([name, text]) => [name, jsonValue(text, chance)]));
    return { headers: { ...head, 'content-type': 'application/json' }, body: JSON.stringify(record) };
  }
  const body = new URLSearchParams(fields.map(([name, text]) => [name, text])).toString();
  return { headers: { ...head, 'content-type': 'application/x-www-form-urlencoded' }, body };
}

function jsonValue(text: string, chance: Chance): unknown {
  if (chance() < 0.9) return text;
  return oneOf([null, true, -1, 1e308, [], [text], [[text]], { a: text }, [1, null]], chance);
}
