import { type ChildProcess, spawn } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { connect, createServer } from 'node:net';
import { basename, join } from 'node:path';
import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import { compiled } from '../compiled.ts';
import { aFolder } from '../folders.ts';

let script = '';
const running = new Set<ChildProcess>();

beforeAll(async () => {
  script = await compiled('server/main.ts');
});
afterEach(() => {
  for (const child of running) child.kill('SIGKILL');
  running.clear();
});

interface Started {
  readonly child: ChildProcess;
  readonly ended: Promise<number | null>;
  out(): string;
  err(): string;
  /** The address that it printed. */
  address(): Promise<string>;
}

function start(environment: Readonly<Record<string, string>>): Started {
  // The key lies beside the data folder by itself; here both go when the test is over.
  const data = environment.YOKESIDE_DATA;
  const pepper =
    data === undefined ? {} : { YOKESIDE_PEPPER: join(data, '..', `${basename(data)}-key`, 'k') };
  const child = spawn(process.execPath, [script], {
    env: { ...process.env, YOKESIDE_PORT: '0', ...pepper, ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  running.add(child);
  let [out, err] = ['', ''];
  child.stdout.on('data', (bytes) => {
    out += bytes;
  });
  child.stderr.on('data', (bytes) => {
    err += bytes;
  });
  // Not as it exits: what it said last may still be on its way then.
  const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
  return { child, ended, out: () => out, err: () => err, address: () => addressIn(() => err, ended) };
}

async function addressIn(err: () => string, ended: Promise<number | null>): Promise<string> {
  let isOver = false;
  void ended.then(() => {
    isOver = true;
  });
  for (let tries = 0; tries < 800 && !isOver; tries += 1) {
    const address = /Yokeside is at (\S+)/.exec(err())?.[1];
    if (address !== undefined) return address;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`It did not start: ${err()}`);
}

describe('npm start', () => {
  test('makes the folder that nobody else reads, prints the address, serves, backs itself up, and stops cleanly (WS-05)', async () => {
    const folder = join(aFolder(), 'deep', 'data');
    const copies = join(aFolder(), 'copies');
    const server = start({ YOKESIDE_DATA: folder, YOKESIDE_BACKUPS: copies });
    const address = await server.address();
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
    const page = await fetch(`${address}/`);
    expect([page.status, await page.text()]).toEqual([200, expect.stringContaining('Set up this site')]);
    expect(readdirSync(folder)).toContain('yokeside.sqlite');
    expect(readdirSync(folder)).not.toContain('yokeside.pepper');
    const isAdministrator = process.getuid?.() === 0;
    expect(server.err().includes('as the administrator')).toBe(isAdministrator);
    if (process.platform !== 'win32') {
      for (const file of readdirSync(folder))
        expect(statSync(join(folder, file)).mode & 0o777, file).toBe(0o600);
      expect(statSync(folder).mode & 0o777).toBe(0o700);
      // Its own first backup, a few seconds after its start.
      await expect.poll(() => server.out()).toContain('"event":"backed-up"');
      expect(readdirSync(copies)).toHaveLength(1);
      // Somebody who is still sending keeps it for a moment, in which the signal comes once more.
      const { port, host } = new URL(address);
      const sending = connect(Number(port), '127.0.0.1').on('error', () => undefined);
      sending.write(
        `POST /sign-in HTTP/1.1\r\nHost: ${host}\r\nOrigin: ${address}\r\nContent-Length: 9\r\n\r\n{`,
      );
      await fetch(`${address}/alive`);
      server.child.kill('SIGTERM');
      await expect.poll(() => server.out()).toContain('"event":"stopping"');
      server.child.kill('SIGTERM');
      expect(await server.ended).toBe(0);
      sending.destroy();
      const events = server
        .out()
        .trim()
        .split('\n')
        .map((line) => (JSON.parse(line) as { event: string }).event);
      expect(events).toEqual(['started', 'backed-up', 'stopping', 'stopped']);
    }
  });

  test('knows its people again after a start, and a set-up that was done is not offered again', async () => {
    const folder = aFolder();
    const first = start({ YOKESIDE_DATA: folder });
    const address = await first.address();
    const response = await fetch(`${address}/set-up`, {
      method: 'POST',
      headers: { origin: address, 'content-type': 'application/json' },
      body: JSON.stringify({
        plant: 'P',
        name: 'E',
        newPin: '738159',
        newPinAgain: '738159',
        rule: 'accepted',
      }),
    });
    expect(response.status).toBe(200);
    first.child.kill('SIGKILL');
    await first.ended;
    const second = start({ YOKESIDE_DATA: folder });
    const again = await second.address();
    const signIn = await fetch(`${again}/sign-in`, {
      method: 'POST',
      headers: { origin: again, 'content-type': 'application/json' },
      body: JSON.stringify({ who: 'E', pin: '738159' }),
    });
    expect(await signIn.json()).toMatchObject({ person: { id: 'e1' } });
    expect(second.out()).not.toContain('738159');
    expect(second.err()).not.toContain('738159');
  });

  test('asks for a token, printed once at the console and not in the operations log, when it listens beyond this machine', async () => {
    const server = start({ YOKESIDE_DATA: aFolder(), YOKESIDE_HOST: '0.0.0.0', YOKESIDE_PLAIN_HTTP: 'yes' });
    await server.address();
    const port = /:(\d+)$/.exec(await server.address())?.[1];
    const page = await (await fetch(`http://127.0.0.1:${port}/`)).text();
    expect(page).toContain('Set-up token');
    const token = /Set-up token: (\S+)/.exec(server.err())?.[1] ?? '';
    expect(token).toHaveLength(12);
    expect(server.out()).not.toContain(token);
    expect(server.err()).toContain('without encryption');
  });

  test.each([
    ['a port that is none', { YOKESIDE_PORT: 'eighty' }, 'YOKESIDE_PORT is "eighty"'],
    [
      'a host that is none',
      { YOKESIDE_HOST: 'no.such.host.invalid', YOKESIDE_PLAIN_HTTP: 'yes' },
      'YOKESIDE_HOST',
    ],
  ])('says in a line what is wrong with %s', async (_, environment, message) => {
    const server = start({ YOKESIDE_DATA: join(aFolder(), 'data'), ...environment });
    expect(await server.ended).toBe(1);
    expect(server.err()).toContain(message);
    expect(server.err()).not.toContain('    at ');
  });

  test('says in a line that the port is taken, or the folder', async () => {
    const taken = createServer();
    const port = await new Promise<number>((resolve) => {
      taken.listen(0, '127.0.0.1', () => resolve((taken.address() as { port: number }).port));
    });
    const folder = aFolder();
    const server = start({ YOKESIDE_DATA: folder, YOKESIDE_PORT: String(port) });
    expect(await server.ended).toBe(1);
    expect(server.err()).toContain(`Port ${port} is taken`);
    taken.close();
    const one = start({ YOKESIDE_DATA: folder });
    await one.address();
    const two = start({ YOKESIDE_DATA: folder });
    expect(await two.ended).toBe(1);
    expect(two.err()).toContain('Another Yokeside server is using the folder');
  });
});
