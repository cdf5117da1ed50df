/** The one place where answers are made, so that every one of them carries the same headers. */
import { COMPRESSIBLE } from './compress.ts';
import type { Problem } from './errors.ts';
import type { Again, BareCall, PageView, Reply, Route, View } from './route.ts';
import { SECURITY_HEADERS } from './security.ts';
import { type MenuLine, menuFor, shellParams } from './shell.ts';
import type { Wants } from './wants.ts';

export interface Answering {
  readonly call: BareCall;
  readonly wants: Wants;
  readonly routes: readonly Route[];
}

interface Sent {
  readonly status: number;
  readonly type?: string;
  readonly body?: string | Uint8Array<ArrayBuffer> | ReadableStream | null;
  readonly headers?: Readonly<Record<string, string>>;
  readonly cookies?: readonly string[];
}

/** An answer with the headers that each carries. Nothing is kept by a browser or on the way, unless it says otherwise. */
export function send({ status, type, body = null, headers = {}, cookies = [] }: Sent): Response {
  const all = new Headers({ ...SECURITY_HEADERS, 'cache-control': 'no-store', ...headers });
  if (type !== undefined) all.set('content-type', type);
  if (type !== undefined && COMPRESSIBLE.test(type)) all.append('vary', 'Accept-Encoding');
  // A known length says that the answer is whole: only such a one is compressed.
  const length =
    typeof body === 'string' ? Buffer.byteLength(body) : body instanceof Uint8Array ? body.length : null;
  if (length !== null) all.set('content-length', String(length));
  for (const cookie of cookies) all.append('set-cookie', cookie);
  return new Response(body, { status, headers: all });
}

export function sendText(status: number, text: string): Response {
  return send({ status, type: 'text/plain; charset=utf-8', body: text });
}

const VARY = { vary: 'Accept, Accept-Language, HX-Request' };

/** RFC 7240, 3. */
const OUTCOME = { vary: `${VARY.vary}, Prefer`, 'preference-applied': 'return=minimal' };

/** The answer of a route, as the request wants it. */
export function sendReply(reply: Reply, answering: Answering): Response {
  const status = reply.status ?? 200;
  const cookies = reply.cookies ?? [];
  // JSON that is written out already is the same data.
  const isWritten = reply.raw?.contentType.startsWith('application/json') ?? false;
  if (answering.wants === 'json' && !isWritten) {
    const headers = reply.isOutcome ? OUTCOME : VARY;
    return send({ status, ...json(reply.data), headers, cookies });
  }
  if (reply.raw !== undefined) return sendRaw({ ...reply, raw: reply.raw });
  if (answering.wants === 'piece') return sendPiece(reply, answering);
  if (reply.seeOther !== undefined) return sendElsewhere(reply.seeOther, { wants: 'page', cookies });
  if (reply.page === undefined) return send({ status, ...json(reply.data), headers: VARY, cookies });
  return send({ status, ...html(draw(reply.page, answering)), headers: VARY, cookies });
}

/** Of its own address nothing else is ever served; opened by itself it runs and loads nothing. */
const PICTURE = {
  'cache-control': 'private, max-age=86400, immutable',
  'content-security-policy': "default-src 'none'; frame-ancestors 'none'; sandbox",
} as const;

function sendRaw({ raw, status = 200, cookies = [] }: Reply & { raw: NonNullable<Reply['raw']> }): Response {
  const { contentType, body, fileName, immutable, immutablePicture } = raw;
  const headers = {
    ...(fileName === undefined ? {} : { 'content-disposition': attachment(fileName) }),
    ...(immutablePicture ? PICTURE : {}),
    ...(immutable ? { 'cache-control': 'public, max-age=31536000, immutable' } : {}),
  };
  return send({ status, type: contentType, body, headers, cookies });
}

/** RFC 6266: a plain name for old browsers, the true one beside it. */
function attachment(fileName: string): string {
  const plain = fileName.replace(/[^\w.-]/g, '_');
  return `attachment; filename="${plain}"; filename*=UTF-8''${encodeURIComponent(fileName)}`;
}

function sendPiece(reply: Reply, answering: Answering): Response {
  const cookies = reply.cookies ?? [];
  const view = reply.fragment ?? (reply.seeOther === undefined ? reply.page : undefined);
  if (view !== undefined) {
    return send({ status: reply.status ?? 200, ...html(draw(view, answering)), headers: VARY, cookies });
  }
  // A script follows a 303 unseen and would put a whole page into the piece.
  if (reply.seeOther !== undefined) {
    return sendElsewhere(reply.seeOther, { wants: 'piece', cookies });
  }
  return send({ status: reply.status ?? 200, ...json(reply.data), headers: VARY, cookies });
}

function sendElsewhere(
  address: string,
  { wants, cookies = [] }: { readonly wants: Wants; readonly cookies?: readonly string[] },
): Response {
  return wants === 'piece'
    ? send({ status: 204, headers: { 'hx-redirect': address, ...VARY }, cookies })
    : send({ status: 303, headers: { location: address }, cookies });
}

export interface ProblemAnswering extends Answering {
  /** The form with what was typed. */
  readonly again?: Again;
  readonly headers?: Readonly<Record<string, string>>;
}

/** A refusal or fault, as the request wants it. */
export function sendProblem(problem: Problem, answering: ProblemAnswering): Response {
  const { fault, ...told } = problem;
  const { status } = told;
  const wait = status === 503 || status === 429 ? { 'retry-after': '5' } : {};
  const headers = { ...VARY, ...wait, ...answering.headers };
  if (answering.wants === 'json') return send({ status, ...json(told), headers });
  const elsewhere = answering.again?.seeOther;
  if (elsewhere !== undefined) return sendElsewhere(elsewhere, answering);
  if (answering.wants === 'piece') return sendProblemPiece(problem, { ...answering, headers });
  const page = answering.again?.page ?? {
    title: 'Not done',
    template: 'pages/refusal.njk',
    params: { fault },
  };
  return send({ status, ...html(draw(page, { ...answering, problem })), headers });
}

function sendProblemPiece(problem: Problem, answering: ProblemAnswering): Response {
  const { status } = problem;
  const { again, headers = VARY } = answering;
  // Of a whole page, the form picks its own piece.
  const fragment = again?.fragment ?? again?.page;
  if (fragment !== undefined)
    return send({ status, ...html(draw(fragment, { ...answering, problem })), headers });
  // Above what is on the screen, so that nothing typed is swapped away.
  const place = { 'hx-retarget': '#main', 'hx-reswap': 'afterbegin' };
  const view = { template: 'parts/refusal.njk', params: {} };
  return send({ status, ...html(draw(view, { ...answering, problem })), headers: { ...headers, ...place } });
}

function draw(view: PageView | View, answering: Answering & { readonly problem?: Problem }): string {
  const { call, routes, problem = null } = answering;
  const menu: readonly MenuLine[] = 'title' in view ? menuFor(routes, call) : [];
  return call.services.views.render(view.template, shellParams(view, { call, menu, problem }), call.language);
}

function json(data: unknown): { type: string; body: string } {
  return { type: 'application/json; charset=utf-8', body: JSON.stringify(data) };
}

function html(text: string): { type: string; body: string } {
  return { type: 'text/html; charset=utf-8', body: text };
}
