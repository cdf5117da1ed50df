import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../server/app.ts';
import { type Listening, listen } from '../../server/serve.ts';
import { type AnApp, anApp } from './an-app.ts';

let app: AnApp;
let listening: Listening;

beforeAll(async () => {
  listening = await listen({ port: 0, host: '127.0.0.1' });
  app = await anApp({
    people: true,
    routes: [],
    settings: { origins: [`http://127.0.0.1:${listening.port}`] },
  });
});
afterAll(async () => {
  await listening.stop();
  await app.close();
});

/** What the server sends back to these very bytes. */
function raw(...lines: readonly string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(listening.port, '127.0.0.1');
    let answer = '';
    socket.setTimeout(5000, () => socket.destroy(new Error('no answer')));
    socket.on('data', (bytes) => {
      answer += bytes.toString('latin1');
    });
    socket.on('end', () => resolve(answer));
    socket.on('error', reject);
    socket.write(`${lines.join('\r\n')}\r\n\r\n`);
  });
}

const own = () => `Host: 127.0.0.1:${listening.port}`;
const statusOf = (answer: string) => Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1]);

describe('bytes on the wire', () => {
  test('are asked to come again before the server is ready', async () => {
    const answer = await raw('GET /help HTTP/1.1', own(), 'Connection: close');
    expect(statusOf(answer)).toBe(503);
    expect(answer).toContain('content-security-policy');
    listening.answerWith(createApp({ services: app.services, routes: app.routes }));
    expect(statusOf(await raw('GET /help HTTP/1.1', own(), 'Connection: close'))).toBe(200);
  });

  test.each([
    ['two hosts', 400, () => ['GET /help HTTP/1.1', own(), 'Host: evil.example', 'Connection: close']],
    [
      'two hosts the other way',
      400,
      () => ['GET /help HTTP/1.1', 'Host: evil.example', own(), 'Connection: close'],
    ],
    ['no host', 400, () => ['GET /help HTTP/1.1', 'Connection: close']],
    ['an empty host', 400, () => ['GET /help HTTP/1.1', 'Host:', 'Connection: close']],
    [
      'a host in the target',
      400,
      () => ['GET http://evil.example/help HTTP/1.1', own(), 'Connection: close'],
    ],
    [
      'our host in the target, another in the header',
      400,
      () => [
        `GET http://127.0.0.1:${listening.port}/help HTTP/1.1`,
        'Host: evil.example',
        'Connection: close',
      ],
    ],
    ['another host', 421, () => ['GET /help HTTP/1.1', 'Host: evil.example', 'Connection: close']],
    ['another port', 421, () => ['GET /help HTTP/1.1', 'Host: 127.0.0.1:1', 'Connection: close']],
    [
      'a path that begins with two strokes',
      404,
      () => ['GET //evil.example/ HTTP/1.1', own(), 'Connection: close'],
    ],
    ['TRACE', 405, () => ['TRACE /help HTTP/1.1', own(), 'Connection: close']],
    ['a backslash', 400, () => ['GET /\\evil.example HTTP/1.1', own(), 'Connection: close']],
  ])('with %s are answered with %i', async (_, status, lines) => {
    const answer = await raw(...lines());
    expect(statusOf(answer)).toBe(status);
    expect(answer).not.toMatch(/set-cookie/i);
  });

  test('that never end, or are too many, are cut off', async () => {
    const answer = await raw(
      'GET /help HTTP/1.1',
      own(),
      `X-Long: ${'x'.repeat(20_000)}`,
      'Connection: close',
    );
    expect(statusOf(answer)).toBe(431);
  });
});
