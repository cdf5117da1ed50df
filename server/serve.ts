/** The port: from a request on the wire to the app, and back. */
import { readFileSync } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { createServer as createTlsServer, type ServerOptions } from 'node:https';
import type { AddressInfo, Socket } from 'node:net';
import { getRequestListener } from '@hono/node-server';
import type { Hono } from 'hono';
import { sendText } from './http/respond.ts';

/** What one caller may take, so that nobody keeps the others out with slow requests or many connections. */
export interface Limits {
  /** A whole request must have come within this time. */
  readonly requestMs: number;
  readonly headersMs: number;
  readonly headersBytes: number;
  readonly connections: number;
  /** Of one address; a proxy before this server has one as well. */
  readonly connectionsOfOne: number;
}

export const LIMITS: Limits = {
  requestMs: 30_000,
  headersMs: 10_000,
  headersBytes: 16 * 1024,
  connections: 1000,
  connectionsOfOne: 200,
};

export interface ListenOptions {
  readonly port: number;
  readonly host: string;
  /** Files of certificate and key, PEM; without them it speaks plain HTTP. */
  readonly tls?: { readonly certFile: string; readonly keyFile: string } | null;
  readonly limits?: Limits;
}

const UNREADABLE = 'The request cannot be read.\n';

export interface Listening {
  readonly port: number;
  /** From now on this answers; until then callers are asked to come again. */
  answerWith(app: Pick<Hono, 'fetch'>): void;
  /** Lets requests that are under way finish, for a moment. */
  stop(): Promise<void>;
}

type Answer = (incoming: IncomingMessage, outgoing: ServerResponse) => Promise<void>;

/** Takes the port first and the app afterwards, because the app wants to know its own address. */
export async function listen(options: ListenOptions): Promise<Listening> {
  let answer: Answer | undefined;
  const server = makeServer(options, (incoming, outgoing) => {
    if (!isPlain(incoming)) refuse(outgoing, 400);
    else if (answer === undefined) refuse(outgoing, 503);
    else void answer(incoming, outgoing);
  });
  await bound(server, options);
  return {
    // A server that listens on a host and a port has an address of this form.
    port: (server.address() as AddressInfo).port,
    answerWith: ({ fetch }) => {
      // Its own `Response` takes the place of Node's, which makes a stream of every text and reads it back.
      answer = getRequestListener((request) => fetch(request), {
        errorHandler: () => sendText(400, UNREADABLE),
      });
    },
    stop: () => stopped(server),
  };
}

function makeServer(
  { tls, limits = LIMITS }: ListenOptions,
  take: (incoming: IncomingMessage, outgoing: ServerResponse) => void,
): Server {
  const common = {
    requestTimeout: limits.requestMs,
    headersTimeout: limits.headersMs,
    maxHeaderSize: limits.headersBytes,
    // Node looks for late ones at this pace; by itself only each half minute.
    connectionsCheckingInterval: Math.min(5000, limits.headersMs / 2),
  };
  const server = tls
    ? makeTlsServer({ ...common, ...tls, handshakeTimeout: limits.headersMs }, take)
    : createServer(common, take);
  server.maxConnections = limits.connections;
  boundEach(server, limits.connectionsOfOne);
  return server;
}

/** @throws Error in plain words if the files are not a certificate and its key */
function makeTlsServer(
  { certFile, keyFile, ...options }: ServerOptions & { readonly certFile: string; readonly keyFile: string },
  take: (incoming: IncomingMessage, outgoing: ServerResponse) => void,
): Server {
  try {
    const [cert, key] = [readFileSync(certFile), readFileSync(keyFile)];
    return createTlsServer({ ...options, cert, key, minVersion: 'TLSv1.2' }, take);
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(`YOKESIDE_TLS_CERT and YOKESIDE_TLS_KEY are no certificate with its key: ${why}`, {
      cause,
    });
  }
}

/** Of one address no more than so many connections at once: the next is closed. */
function boundEach(server: Server, connectionsMax: number): void {
  const open = new Map<string, number>();
  server.on('connection', (socket: Socket) => {
    const from = socket.remoteAddress ?? '';
    const count = open.get(from) ?? 0;
    if (count >= connectionsMax) {
      socket.destroy();
      return;
    }
    open.set(from, count + 1);
    socket.once('close', () => {
      const left = (open.get(from) ?? 1) - 1;
      if (left === 0) open.delete(from);
      else open.set(from, left);
    });
  });
}

/** One host, and an address on this server: what is sent to a proxy, or names two hosts, is not for us. */
function isPlain(incoming: IncomingMessage): boolean {
  const hosts = incoming.rawHeaders.filter((name, index) => index % 2 === 0 && name.toLowerCase() === 'host');
  return hosts.length === 1 && (incoming.url ?? '').startsWith('/');
}

function refuse(outgoing: ServerResponse, status: 400 | 503): void {
  const { headers } = sendText(status, UNREADABLE);
  headers.delete('content-length');
  outgoing.writeHead(status, { ...Object.fromEntries(headers), connection: 'close' });
  outgoing.end(status === 400 ? UNREADABLE : 'The server is starting. Try again in a moment.\n');
}

function bound(server: Server, { port, host }: ListenOptions): Promise<void> {
  return new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException): void => reject(whyNot(error, { port, host }));
    server.once('error', failed);
    server.listen(port, host, () => {
      server.off('error', failed);
      resolve();
    });
  });
}

function whyNot(error: NodeJS.ErrnoException, { port, host }: ListenOptions): Error {
  const { code, message } = error;
  const words: Readonly<Record<string, string>> = {
    EADDRINUSE: `Port ${port} is taken. Stop what uses it, or name another one in YOKESIDE_PORT.`,
    EACCES: `Port ${port} may not be used by this user. Name one above 1023 in YOKESIDE_PORT.`,
  };
  const text = words[code ?? ''] ?? `Cannot listen at "${host}": ${message}. Look at YOKESIDE_HOST.`;
  return new Error(text, { cause: error });
}

const STOP_MS_MAX = 3000;

function stopped(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const late = setTimeout(() => server.closeAllConnections(), STOP_MS_MAX);
    server.close(() => {
      clearTimeout(late);
      resolve();
    });
    server.closeIdleConnections();
  });
}
