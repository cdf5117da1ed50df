import { networkInterfaces, hostname as systemName } from 'node:os';
import { join } from 'node:path';
import type { BackupPlan } from './backups/keep-backing-up.ts';

/** What the environment says; the names of its variables stand in README.md. */
export interface Config {
  readonly port: number;
  /** Where it listens; beyond this machine only when asked. */
  readonly host: string;
  readonly isLoopback: boolean;
  readonly folder: string;
  /** The connection string of a database; blank for SQLite in the data folder. Never written anywhere. */
  readonly database: string;
  /** The key that PINs are hashed with: in a folder of its own, so that no copy of the data folder holds it. */
  readonly pepperFile: string;
  /** Where the checkpoints go; blank for beside that key. */
  readonly checkpointFile: string;
  /** Addresses given by hand, for a name of the site's network or a proxy with TLS before this server. */
  readonly origins: readonly string[];
  /** The server's own copies of its log; null where it makes none. */
  readonly backups: BackupPlan | null;
  /** Files of the certificate and its key; null for plain HTTP. */
  readonly tls: { readonly certFile: string; readonly keyFile: string } | null;
}

type Environment = Readonly<Record<string, string | undefined>>;

const PORT = 8430;
const LOOPBACK = ['127.0.0.1', '::1', 'localhost'];

/**
 * @throws Error in plain words for a value that cannot be meant
 * @example readConfig({ YOKESIDE_PORT: '8500' }).port // 8500
 */
export function readConfig(environment: Environment): Config {
  const host = environment.YOKESIDE_HOST || '127.0.0.1';
  const isLoopback = LOOPBACK.includes(host);
  const tls = readTls(environment);
  if (!isLoopback && tls === null) requirePlainHttp(environment);
  const folder = environment.YOKESIDE_DATA || 'yokeside-data';
  return {
    port: readPort(environment.YOKESIDE_PORT || String(PORT)),
    host,
    isLoopback,
    folder,
    database: environment.YOKESIDE_DATABASE || '',
    pepperFile: environment.YOKESIDE_PEPPER || pepperBeside(folder),
    checkpointFile: environment.YOKESIDE_CHECKPOINTS || '',
    origins: readOrigins(environment.YOKESIDE_ORIGINS ?? ''),
    backups: readBackups(environment),
    tls,
  };
}

const BACKUP_HOURS = 24;
const BACKUP_KEEP_DAYS = 90;

function readBackups(environment: Environment): BackupPlan | null {
  const to = environment.YOKESIDE_BACKUPS ?? '';
  const everyHours = readCount(environment, {
    name: 'YOKESIDE_BACKUP_HOURS',
    otherwise: BACKUP_HOURS,
    max: 720,
  });
  const keepDays = readCount(environment, {
    name: 'YOKESIDE_BACKUP_KEEP_DAYS',
    otherwise: BACKUP_KEEP_DAYS,
    max: 36_500,
  });
  return to === '' ? null : { to, everyHours, keepDays };
}

function readCount(
  environment: Environment,
  { name, otherwise, max }: { readonly name: string; readonly otherwise: number; readonly max: number },
): number {
  const text = environment[name] || String(otherwise);
  const count = /^\d{1,6}$/.test(text) ? Number(text) : Number.NaN;
  if (count >= 1 && count <= max) return count;
  throw new Error(`${name} is "${text}"; it takes a whole number from 1 to ${max}.`);
}

/** @example pepperBeside('yokeside-data') // 'yokeside-data-key/yokeside.pepper' */
export function pepperBeside(folder: string): string {
  return join(`${folder.replace(/[\\/]+$/, '')}-key`, 'yokeside.pepper');
}

function readTls({ YOKESIDE_TLS_CERT: certFile, YOKESIDE_TLS_KEY: keyFile }: Environment): Config['tls'] {
  if (certFile && keyFile) return { certFile, keyFile };
  if (!certFile && !keyFile) return null;
  throw new Error('TLS wants both: the certificate in YOKESIDE_TLS_CERT and its key in YOKESIDE_TLS_KEY.');
}

/** Unencrypted over a network is somebody's choice, and not what happens when one line is forgotten. */
function requirePlainHttp({ YOKESIDE_PLAIN_HTTP: plain }: Environment): void {
  if (plain === 'yes') return;
  throw new Error(
    'Beyond this machine PINs travel over the network. Name a certificate in YOKESIDE_TLS_CERT and its key in ' +
      'YOKESIDE_TLS_KEY, or set YOKESIDE_PLAIN_HTTP=yes to do without encryption; every page then says so.',
  );
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
 * Somebody else may reach an empty site first: it listens beyond this machine, or a proxy before it does. The set-up
 * then asks for a token that only the console has.
 */
export function isReachedFromOutside({ isLoopback, origins }: Config): boolean {
  return !isLoopback || origins.length > 0;
}

/**
 * Every address by which the server can be meant: those given by hand, and those of the machine that it listens on.
 * The first is the one that is printed.
 */
export function ownOrigins(config: Config, port: number): readonly string[] {
  const { host, isLoopback, origins, tls } = config;
  const scheme = tls === null ? 'http' : 'https';
  const at = (name: string): string => originOf(name, { scheme, port });
  if (isLoopback) return [...origins, ...LOOPBACK.map(at)];
  const addresses = Object.values(networkInterfaces()).flatMap((each) =>
    (each ?? []).map(({ address }) => address),
  );
  const isAny = host === '0.0.0.0' || host === '::';
  const names = isAny ? [systemName().toLowerCase(), ...addresses] : [host, systemName().toLowerCase()];
  return [...new Set([...origins, ...[...names, ...LOOPBACK].map(at)])];
}

function originOf(name: string, { scheme, port }: { scheme: string; port: number }): string {
  const [bare = ''] = name.split('%');
  return new URL(`${scheme}://${bare.includes(':') ? `[${bare}]` : bare}:${port}`).origin;
}
