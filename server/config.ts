import { networkInterfaces, hostname as systemName } from 'node:os';

/** What the environment says: `YOKESIDE_PORT`, `YOKESIDE_HOST`, `YOKESIDE_DATA`, `YOKESIDE_ORIGINS`. */
export interface Config {
  readonly port: number;
  /** Where it listens; beyond this machine only when asked. */
  readonly host: string;
  readonly isLoopback: boolean;
  readonly folder: string;
  /** Addresses given by hand, for a name of the site's network or a proxy with TLS before this server. */
  readonly origins: readonly string[];
}

const PORT = 8430;
const LOOPBACK = ['127.0.0.1', '::1', 'localhost'];

/**
 * @throws Error in plain words for a value that cannot be meant
 * @example readConfig({ YOKESIDE_PORT: '8500' }).port // 8500
 */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const host = environment.YOKESIDE_HOST || '127.0.0.1';
  return {
    port: readPort(environment.YOKESIDE_PORT || String(PORT)),
    host,
    isLoopback: LOOPBACK.includes(host),
    folder: environment.YOKESIDE_DATA || 'yokeside-data',
    origins: readOrigins(environment.YOKESIDE_ORIGINS ?? ''),
  };
}

function readPort(text: string): number {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  if (port >= 0 && port <= 65_535) return port;
  throw new Error(
    `YOKESIDE_PORT is "${text}"; it takes a number from 0 to 65535, where 0 takes any free one.`,
  );
}

function readOrigins(text: string): readonly string[] {
  return text
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => {
      if (/^https?:\/\/[^/?#]+\/?$/.test(part) && URL.canParse(part)) return new URL(part).origin;
      throw new Error(
        `YOKESIDE_ORIGINS holds "${part}"; it takes addresses as https://valves.example, with commas between.`,
      );
    });
}

/**
 * Every address by which the server can be meant: those given by hand, and those of the machine that it listens on.
 * The first is the one that is printed.
 */
export function ownOrigins({ host, isLoopback, origins }: Config, port: number): readonly string[] {
  if (isLoopback) return [...origins, ...LOOPBACK.map((name) => originOf(name, port))];
  const addresses = Object.values(networkInterfaces()).flatMap((each) =>
    (each ?? []).map(({ address }) => address),
  );
  const isAny = host === '0.0.0.0' || host === '::';
  const names = isAny ? [systemName().toLowerCase(), ...addresses] : [host, systemName().toLowerCase()];
  return [...new Set([...origins, ...[...names, ...LOOPBACK].flatMap((name) => originOf(name, port))])];
}

function originOf(name: string, port: number): string {
  const [bare = ''] = name.split('%');
  return new URL(`http://${bare.includes(':') ? `[${bare}]` : bare}:${port}`).origin;
}
