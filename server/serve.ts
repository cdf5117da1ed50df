/** The port: from a request on the wire to the app, and back. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { getRequestListener } from '@hono/node-server';
import type { Hono } from 'hono';
import { sendText } from './http/respond.ts';

export interface ListenOptions {
  readonly port: number;
  readonly host: string;
}

/** A whole request must have come within this time: nobody holds a connection open with a slow one. */
const REQUEST_MS_MAX = 30_000;
const HEADERS_MS_MAX = 10_000;
const HEADERS_BYTES_MAX = 16 * 1024;
const CONNECTIONS_MAX = 500;

const UNREADABLE = 'The request cannot be read.\n';

export interface Listening {
  readonly port: number;
  /** From now on this answers; until then callers are asked to come again. */
  answerWith(app: Pick<Hono, 'fetch'>): void;
  /** Lets requests that are under way finish, for a moment. */
  stop(): Promise<void>;
}

/** Takes the port first and the app afterwards, because the app wants to know its own address. */
export async function listen(options: ListenOptions): Promise<Listening> {
  let answer: ((incoming: IncomingMessage, outgoing: ServerResponse) => Promise<void>) | undefined;
  const server = createServer(
    {
      requestTimeout: REQUEST_MS_MAX,
      headersTimeout: HEADERS_MS_MAX,
      maxHeaderSize: HEADERS_BYTES_MAX,
    },
    (incoming, outgoing) => {
      if (!isPlain(incoming)) refuse(outgoing, 400);
      else if (answer === undefined) refuse(outgoing, 503);
      else void answer(incoming, outgoing);
    },
  );
  server.maxConnections = CONNECTIONS_MAX;
  await bound(server, options);
  return {
    // A server that listens on a host and a port has an address of this form.
    port: (server.address() as AddressInfo).port,
    answerWith: ({ fetch }) => {
      answer = getRequestListener((request) => fetch(request), {
        overrideGlobalObjects: false,
        errorHandler: () => sendText(400, UNREADABLE),
      });
    },
    stop: () => stopped(server),
  };
}

/** One host, and an address on this server: what is sent to a proxy, or names two hosts, is not for us. */
function isPlain(incoming: IncomingMessage): boolean {
  const hosts = incoming.rawHeaders.filter((name, index) => index % 2 === 0 && name.toLowerCase() === 'host');
  return hosts.length === 1 && (incoming.url ?? '').startsWith('/');
}

function refuse(outgoing: ServerResponse, status: 400 | 503): void {
  const { headers } = sendText(status, '');
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
