/** How one request travels: from our own page? who is it? may they? what did they send? then the route, the answer. */
import { isDeepStrictEqual } from 'node:util';
import { Refusal, type RefusalKind } from '../../safety/refusal.ts';
import { LANGUAGE_COOKIE, languageOf } from '../../views/language/language.ts';
import { faultDetails } from '../operations-log.ts';
import { ownLanguage } from '../people/own-language.ts';
import type { Services } from '../services.ts';
import { bannersFor } from './banners.ts';
import { ourCookie, readCookies } from './cookies.ts';
import { type Body, readBody } from './decode.ts';
import { notFound, type Problem, problemOf } from './errors.ts';
import type { Fields } from './fields.ts';
import { type Answering, send, sendProblem, sendReply } from './respond.ts';
import { type Again, type BareCall, mayAsk, type Route } from './route.ts';
import { requireOwnPage } from './security.ts';
import { prefersMinimal, wants } from './wants.ts';

export interface Dispatching {
  readonly services: Services;
  readonly routes: readonly Route[];
  /** Holds every answer against its schema. */
  readonly checkAnswers?: boolean;
}

export interface Incoming {
  readonly request: Request;
  /** Which of the server's own addresses was asked. */
  readonly origin: string;
  readonly params: Readonly<Record<string, string>>;
}

/** What is known of a request so far; it grows, so that a refusal is answered with what there is. */
interface SoFar {
  call: BareCall;
  body: Body;
  /** They may ask for it: from now on a refusal may show the form again, with what only they may see. */
  admitted: boolean;
}

/** Answers a request to a route. Never rejects. */
export async function dispatch(
  incoming: Incoming & { readonly route: Route },
  to: Dispatching,
): Promise<Response> {
  const { route } = incoming;
  const { request } = incoming;
  const soFar = startOf(incoming, to);
  const answering = (): Answering => answeringOf(soFar, { incoming, to });
  try {
    if (route.isPractice) soFar.call = { ...soFar.call, services: to.services.practice.site() };
    const posted = route.method === 'POST';
    if (posted) requireOwnPage(request.headers, incoming.origin);
    const background = (route.background ?? false) || request.headers.has('by-itself');
    const hasBanners = !(route.background ?? false) && wants(request.headers) === 'page';
    soFar.call = await withPerson(soFar.call, { incoming, background, hasBanners, to });
    const { person } = soFar.call;
    if (!mayAsk(route.roles, person?.role ?? null)) {
      const kept =
        person === null &&
        posted &&
        route.fileField === undefined &&
        (await keepTyped({ ...incoming, route }, soFar.call));
      return sendNotAllowed({ ...incoming, route, kept }, answering());
    }
    refuseOddParams(incoming.params);
    soFar.admitted = true;
    if (posted) await takeBody(soFar, { request, route });
    soFar.call = { ...soFar.call, ...wishes(answering().wants, { route, request }) };
    const reply = await route.run(soFar.call, {
      body: soFar.body.fields,
      file: soFar.body.file,
      query: queryOf(request),
    });
    if (to.checkAnswers) requireAsDescribed(route, reply.data);
    return sendReply(reply, answering());
  } catch (error) {
    return await sendRefused(error, { route, soFar, query: queryOf(request), answering: answering() });
  }
}

/** Only a program can be told the outcome alone: whoever looks wants the next card. */
function wishes(
  wanted: Answering['wants'],
  { route, request }: { readonly route: Route; readonly request: Request },
): Pick<BareCall, 'wantsPage' | 'wantsOutcome'> {
  const isProgram = wanted === 'json';
  const mayTell = isProgram && (route.mayTellOutcome ?? false);
  return { wantsPage: !isProgram, wantsOutcome: mayTell && prefersMinimal(request.headers) };
}

/** Nothing missing, and nothing told that is not described. */
function requireAsDescribed({ answer, name }: Route, data: unknown): void {
  const told: unknown = JSON.parse(JSON.stringify(data));
  if (isDeepStrictEqual(answer.parse(told), told)) return;
  throw new TypeError(`${name} answers more than its schema says.`);
}

/** The answer to an address where nothing is, or not by this method. Never rejects. */
export async function dispatchUnknown(
  incoming: Incoming & { readonly allowed: readonly string[] },
  to: Dispatching,
): Promise<Response> {
  const { allowed } = incoming;
  const soFar = startOf(incoming, to);
  try {
    soFar.call = await withPerson(soFar.call, {
      incoming,
      background: true,
      hasBanners: true,
      to,
    });
    const problem = problemOf(notFound(), soFar.call.requestId);
    if (allowed.length === 0) return sendProblem(problem, answeringOf(soFar, { incoming, to }));
    return sendProblem(notByThatMethod(problem, allowed), {
      ...answeringOf(soFar, { incoming, to }),
      headers: { allow: allowed.join(', ') },
    });
  } catch (error) {
    return report(error, answeringOf(soFar, { incoming, to }));
  }
}

function notByThatMethod(problem: Problem, allowed: readonly string[]): Problem {
  const what = `This address takes only ${allowed.join(' and ')}.`;
  return { ...problem, status: 405, code: 'REQ-007', what, next: 'Start again from the first page.' };
}

function startOf(incoming: Incoming, { services }: Dispatching): SoFar {
  return {
    call: nobodysCall(incoming, services),
    body: { fields: {}, format: 'none', file: null },
    admitted: false,
  };
}

function answeringOf(soFar: SoFar, { incoming, to }: { incoming: Incoming; to: Dispatching }): Answering {
  const { headers } = incoming.request;
  return { call: soFar.call, routes: to.routes, wants: wants(headers, soFar.body.format) };
}

function nobodysCall({ request, origin, params }: Incoming, services: Services): BareCall {
  const cookies = readCookies(request.headers.get('cookie'));
  return {
    services,
    origin,
    referer: request.headers.get('referer') ?? '',
    banners: [],
    wantsPage: false,
    wantsOutcome: false,
    person: null,
    screen: 'unnumbered screen',
    requestId: services.newId(),
    params,
    now: services.now(),
    cookies: { all: cookies, secure: origin.startsWith('https:') },
    language: languageOf({
      own: null,
      screen: cookies[LANGUAGE_COOKIE],
      accept: request.headers.get('accept-language'),
    }),
  };
}

async function withPerson(
  call: BareCall,
  {
    incoming,
    background,
    hasBanners,
    to,
  }: { incoming: Incoming; background: boolean; hasBanners: boolean; to: Dispatching },
): Promise<BareCall> {
  const found = await call.services.people.atScreen({
    session: ourCookie(call.cookies, 'yokeside-session'),
    screen: ourCookie(call.cookies, 'yokeside-screen'),
    background,
  });
  const banners = hasBanners ? await bannersFor({ ...call, ...found }) : [];
  // The plant keeps what its people chose, also for the practice bench.
  const own = found.person === null ? null : await ownLanguage(to.services.log, found.person.id);
  return { ...call, ...found, banners, params: incoming.params, language: own ?? call.language };
}

async function takeBody(soFar: SoFar, { request, route }: { request: Request; route: Route }): Promise<void> {
  const { bodyBytesMax: bytesMax, fileField, takesTextFiles } = route;
  const body = await readBody(request, { bytesMax, fileField, takesTextFiles });
  const { requestId, ...fields } = body.fields;
  soFar.body = { ...body, fields };
  if (requestId === undefined) return;
  if (typeof requestId !== 'string' || !REQUEST_ID.test(requestId)) throw oddRequestId();
  soFar.call = { ...soFar.call, requestId };
}

const REQUEST_ID = /^[\w-]{8,100}$/;

function oddRequestId(): Refusal {
  return new Refusal({
    kind: 'malformed',
    code: 'REQ-006',
    what: 'The request id is not 8 to 100 letters, digits, "-" or "_".',
    kept: 'Nothing was recorded.',
    next: 'Load the page again and enter it there.',
  });
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is kept out
const ODD = /[\u0000-\u001f\u007f]|\p{Surrogate}|\ufffd/u;
const PARAM_MAX = 200;

/** No name of ours is so long or so odd: there is nothing at that address. */
function refuseOddParams(params: Readonly<Record<string, string>>): void {
  const isOdd = (value: string): boolean =>
    value.trim() === '' || value.length > PARAM_MAX || ODD.test(value);
  if (Object.values(params).some(isOdd)) throw notFound();
}

const NO_QUERY: Fields = Object.freeze(Object.create(null));

function queryOf(request: Request): Fields {
  if (!request.url.includes('?')) return NO_QUERY;
  const query: Record<string, string | string[]> = Object.create(null);
  for (const [name, value] of new URL(request.url).searchParams) {
    const before = query[name];
    if (before === undefined) query[name] = value;
    else query[name] = typeof before === 'string' ? [before, value] : [...before, value];
  }
  return query;
}

/** A form that came after its session had ended: what was typed is kept for the one whose session it was. */
async function keepTyped(
  { request, route }: Incoming & { readonly route: Route },
  call: BareCall,
): Promise<boolean> {
  const session = ourCookie(call.cookies, 'yokeside-session');
  const owner = session === undefined ? undefined : await call.services.people.endedOwner(session);
  // A script leaves the form on the screen as it is, and a program has what it sent.
  if (owner === undefined || wants(request.headers, 'form') !== 'page') return false;
  const { fields: all } = await readBody(request, { takesTextFiles: route.takesTextFiles });
  const { requestId, ...fields } = all;
  if (typeof requestId !== 'string' || !REQUEST_ID.test(requestId)) return false;
  const { pathname: action } = new URL(request.url);
  const kept = Object.fromEntries(
    Object.entries(fields).map(([name, value]) => [name, typeof value === 'string' ? value : [...value]]),
  );
  return await call.services.drafts.keep({ person: owner.id, action, requestId, fields: kept });
}

/** Nobody there: a browser that wanted a page is sent to sign in, and back. Somebody: they are told who may. */
function sendNotAllowed(
  { request, route, kept }: Incoming & { readonly route: Route; readonly kept: boolean },
  answering: Answering,
): Response {
  const { person, requestId } = answering.call;
  if (person === null && route.method === 'GET' && answering.wants === 'page') {
    const { pathname, search } = new URL(request.url);
    return send({
      status: 303,
      headers: { location: `/sign-in?next=${encodeURIComponent(pathname + search)}` },
    });
  }
  const refusal = person === null ? notSignedIn(kept) : notYourRole(route, person.role);
  noteRefusal(refusal, { route, answering });
  return sendProblem(problemOf(refusal, requestId), answering);
}

function notSignedIn(kept: boolean): Refusal {
  const told = { kind: 'not-signed-in', code: 'PPL-010' } as const;
  if (kept) {
    return new Refusal({
      ...told,
      what: 'Your sign-in at this screen has ended.',
      kept: 'What you typed is kept for you alone. Nothing was recorded.',
      next: 'Sign in. The page then offers you what you typed.',
    });
  }
  return new Refusal({
    ...told,
    what: 'Nobody is signed in at this screen.',
    kept: 'Nothing was recorded. What you typed stands in the form.',
    next: 'Sign in, in another tab if need be, and send it again.',
  });
}

function notYourRole({ roles }: Route, role: string): Refusal {
  const allowed = typeof roles === 'string' ? 'nobody' : roles.join(' or ').replaceAll('-', ' ');
  return new Refusal({
    kind: 'not-allowed',
    code: 'PPL-011',
    what: `This is for the ${allowed}; you are signed in as ${role.replaceAll('-', ' ')}.`,
    kept: 'Nothing was recorded.',
    next: `Ask the ${allowed} to do it.`,
  });
}

interface Refusing {
  readonly route: Route;
  readonly soFar: SoFar;
  readonly query: Fields;
  readonly answering: Answering;
}

async function sendRefused(error: unknown, refusing: Refusing): Promise<Response> {
  const { answering } = refusing;
  if (!(error instanceof Refusal)) return report(error, answering);
  noteRefusal(error, refusing);
  const problem = problemOf(error, answering.call.requestId);
  if (answering.wants === 'json') return sendProblem(problem, answering);
  try {
    return sendProblem(problem, { ...answering, again: await drawnAgain(error, refusing) });
  } catch (fault) {
    return report(fault, answering);
  }
}

async function drawnAgain(error: Refusal, { route, soFar, query }: Refusing): Promise<Again> {
  if (route.refused === undefined || !soFar.admitted) return {};
  // Also where it was refused before it was known who wants what: JSON is never drawn.
  const call = { ...soFar.call, wantsPage: true };
  return await route.refused({ ...call, typed: soFar.body.fields, query, refusal: error.text });
}

/** What a form of ours cannot send, or a person may not do: somebody tries a way round. A wrong reading is none. */
const TRIES: readonly RefusalKind[] = ['malformed', 'not-signed-in', 'not-allowed', 'throttled'];

function noteRefusal(
  { text: { kind, code } }: Refusal,
  { route, answering }: Pick<Refusing, 'route' | 'answering'>,
): void {
  const { person, screen, services, requestId } = answering.call;
  if (!TRIES.includes(kind)) return;
  services.operations.write('refused', {
    code,
    route: route.name,
    person: person?.id ?? null,
    screen,
    requestId,
  });
}

/** Something else than a refusal: the person is told plainly, and a fault is written down once. */
function report(error: unknown, answering: Answering): Response {
  const { requestId, services } = answering.call;
  const problem = problemOf(error, requestId);
  if (problem.fault) services.operations.write('fault', { requestId, ...faultDetails(error) });
  return sendProblem(problem, answering);
}
