import type { AddressInfo } from 'node:net';
import { type ServerType, serve } from '@hono/node-server';

export interface Listening {
  /** `http://127.0.0.1:40123` */
  readonly origin: string;
  close(): Promise<void>;
}

type Fetch = (request: Request) => Response | Promise<Response>;

/**
 * Serves on a free port of this machine. What is served may want to know its own address first, so it is made when
 * the port is known.
 */
export function listen(make: (origin: string) => Fetch | Promise<Fetch>): Promise<Listening> {
  return new Promise((resolve, reject) => {
    let fetch: Fetch | undefined;
    const ask: Fetch = (request) => fetch?.(request) ?? new Response('not yet', { status: 503 });
    const server: ServerType = serve({ fetch: ask, hostname: '127.0.0.1', port: 0 });
    server.once('error', reject);
    server.once('listening', async () => {
      const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
      try {
        fetch = await make(origin);
        resolve({ origin, close: () => closed(server) });
      } catch (error) {
        server.close();
        reject(error);
      }
    });
  });
}

function closed(server: ServerType): Promise<void> {
  return new Promise((resolve, reject) => {
    server.close((error) => (error ? reject(error) : resolve()));
    // A browser keeps its connections open, and closing waits for them.
    if ('closeAllConnections' in server) server.closeAllConnections();
  });
}
