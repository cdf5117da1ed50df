import { writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { connect } from 'node:net';
import { join } from 'node:path';
import { connect as connectTls } from 'node:tls';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../server/app.ts';
import { readConfig } from '../../server/config.ts';
import { type Listening, listen } from '../../server/serve.ts';
import { aCertificate, type CertificateFiles } from '../builders/certificate.ts';
import { aFolder } from '../folders.ts';
import { type AnApp, anApp, form, PINS } from './an-app.ts';

let certificate: CertificateFiles;
let listening: Listening;
let app: AnApp;
let origin = '';

beforeAll(async () => {
  certificate = aCertificate(aFolder());
  listening = await listen({ port: 0, host: '127.0.0.1', tls: certificate });
  origin = `https://127.0.0.1:${listening.port}`;
  app = await anApp({ people: true, routes: [], settings: { origins: [origin] } });
  listening.answerWith(createApp({ services: app.services, routes: app.routes }));
});
afterAll(async () => {
  await listening.stop();
  await app.close();
});

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
}

/** Asks as a browser that trusts this certificate and no other. */
function ask(
  path: string,
  { fields }: { readonly fields?: Readonly<Record<string, string>> } = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const posted = { origin, 'content-type': 'application/x-www-form-urlencoded' };
    const options = {
      method: fields === undefined ? 'GET' : 'POST',
      ca: certificate.cert,
      headers: { accept: 'text/html', ...(fields === undefined ? {} : posted) },
    };
    const asked = request(`${origin}${path}`, options, (answer) => {
      answer.resume();
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers }));
    });
    asked.on('error', reject);
    asked.end(fields === undefined ? undefined : form(fields));
  });
}

describe('over TLS', () => {
  test('all is served under the certificate that was named, with a version of today, and browsers are told to stay (WS-34)', async () => {
    const page = await ask('/help');
    expect(page.status).toBe(200);
    expect(page.headers['strict-transport-security']).toBe('max-age=31536000');
    const version = await new Promise<string | null>((resolve, reject) => {
      const socket = connectTls({ port: listening.port, host: '127.0.0.1', ca: certificate.cert }, () => {
        resolve(socket.getProtocol());
        socket.end();
      });
      socket.on('error', reject);
    });
    expect(['TLSv1.2', 'TLSv1.3']).toContain(version);
  });

  test('cookies carry the prefix that only TLS may set, and are sent by it alone (WS-19)', async () => {
    const { status, headers } = await ask('/sign-in', { fields: { who: 't1', pin: PINS.technician } });
    expect(status).toBe(303);
    const cookies = [headers['set-cookie'] ?? []].flat();
    expect(cookies).toHaveLength(2);
    for (const cookie of cookies)
      expect(cookie).toMatch(/^__Host-yokeside-\w+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict; Secure/);
  });

  test('plain text at the same port gets nothing', async () => {
    const told = await new Promise<string>((resolve) => {
      const socket = connect(listening.port, '127.0.0.1');
      let answer = '';
      socket.setTimeout(5000, () => socket.destroy());
      socket.on('data', (bytes) => {
        answer += bytes.toString('latin1');
      });
      socket.on('error', () => undefined);
      socket.on('close', () => resolve(answer));
      socket.write(`GET /help HTTP/1.1\r\nHost: 127.0.0.1:${listening.port}\r\nConnection: close\r\n\r\n`);
    });
    expect(told).not.toContain('200 OK');
    expect(told).not.toContain('Yokeside');
  });
});

describe('without TLS', () => {
  test('beyond this machine it starts only when somebody says so, and then every page says it too (WS-34)', async () => {
    expect(() => readConfig({ YOKESIDE_HOST: '0.0.0.0' })).toThrow('PINs travel over the network');
    expect(readConfig({ YOKESIDE_HOST: '0.0.0.0', YOKESIDE_PLAIN_HTTP: 'yes' }).tls).toBeNull();
    const named = { YOKESIDE_HOST: '0.0.0.0', YOKESIDE_TLS_CERT: 'c.pem', YOKESIDE_TLS_KEY: 'k.pem' };
    expect(readConfig(named).tls).toEqual({ certFile: 'c.pem', keyFile: 'k.pem' });
    const open = await anApp({ people: true, routes: [], settings: { isOpenHttp: true } });
    const { browser } = await open.signedIn('technician');
    for (const path of ['/sign-in', '/help', '/people', '/nothing/here']) {
      const page = await open.get(path, { as: browser });
      expect(await page.text(), path).toContain('No encryption: whoever is on this network can read PINs.');
      expect(page.headers.get('strict-transport-security')).toBeNull();
    }
    await open.close();
    expect(
      await (await app.get('/sign-in', { headers: { host: new URL(origin).host } })).text(),
    ).not.toContain('No encryption');
  });
});

test.each([
  ['one of the two', { YOKESIDE_TLS_CERT: 'c.pem' }],
  ['the other of the two', { YOKESIDE_TLS_KEY: 'k.pem' }],
])('%s alone is refused in plain words', (_, environment) => {
  expect(() => readConfig(environment)).toThrow('TLS wants both');
});

test('files that are no certificate are refused in plain words', async () => {
  const folder = aFolder();
  const [certFile, keyFile] = [join(folder, 'c.pem'), join(folder, 'k.pem')];
  await expect(listen({ port: 0, host: '127.0.0.1', tls: { certFile, keyFile } })).rejects.toThrow(
    'are no certificate with its key',
  );
  for (const file of [certFile, keyFile]) writeFileSync(file, 'not a certificate');
  await expect(listen({ port: 0, host: '127.0.0.1', tls: { certFile, keyFile } })).rejects.toThrow(
    'are no certificate with its key',
  );
});
