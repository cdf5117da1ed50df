import { connect, type Socket } from 'node:net';
import { afterEach, describe, expect, test } from 'vitest';
import { createApp } from '../../server/app.ts';
import { LIMITS, type Limits, type Listening, listen } from '../../server/serve.ts';
import { type AnApp, anApp } from './an-app.ts';

const open: Socket[] = [];
let listening: Listening;
let app: AnApp;

afterEach(async () => {
  for (const socket of open.splice(0)) socket.destroy();
  await listening.stop();
  await app.close();
});

async function start(limits: Partial<Limits>): Promise<void> {
  listening = await listen({ port: 0, host: '127.0.0.1', limits: { ...LIMITS, ...limits } });
  const origin = `http://127.0.0.1:${listening.port}`;
  app = await anApp({ people: true, routes: [], settings: { origins: [origin] } });
  listening.answerWith(createApp({ services: app.services, routes: app.routes }));
}

interface Caller {
  readonly socket: Socket;
  /** What came back, and after how long the server closed. */
  readonly closed: Promise<{ readonly told: string; readonly afterMs: number }>;
}

/** A caller who sends this and then nothing more. */
function call(text: string, from = '127.0.0.1'): Caller {
  const startedAt = performance.now();
  const socket = connect({ port: listening.port, host: '127.0.0.1', localAddress: from });
  open.push(socket);
  let told = '';
  socket.on('data', (bytes) => {
    told += bytes.toString('latin1');
  });
  socket.on('error', () => undefined);
  socket.write(text);
  const closed = new Promise<{ told: string; afterMs: number }>((resolve) =>
    socket.on('close', () => resolve({ told, afterMs: performance.now() - startedAt })),
  );
  return { socket, closed };
}

async function isServed(from = '127.0.0.1'): Promise<boolean> {
  const host = `Host: 127.0.0.1:${listening.port}`;
  const { closed } = call(`GET /alive HTTP/1.1\r\n${host}\r\nConnection: close\r\n\r\n`, from);
  return (await closed).told.startsWith('HTTP/1.1 200');
}

describe('a caller', () => {
  test.each([
    ['says nothing', { headersMs: 400 }, () => ''],
    ['sends its head a letter at a time', { headersMs: 400 }, () => 'GET /help HTTP/1.1\r\nHo'],
    [
      'promises a body and does not send it',
      { headersMs: 400, requestMs: 800 },
      () =>
        `POST /sign-in HTTP/1.1\r\nHost: 127.0.0.1:${listening.port}\r\nOrigin: http://127.0.0.1:${listening.port}\r\n` +
        'Content-Type: application/json\r\nContent-Length: 1000\r\n\r\n{',
    ],
  ])('who %s is cut off, and others are served meanwhile (WS-52)', async (_, limits, text) => {
    await start(limits);
    const slow = call(text());
    expect(await isServed()).toBe(true);
    const { told, afterMs } = await slow.closed;
    // Well before the bounds of production would do it, however busy this machine is.
    expect(afterMs).toBeLessThan(LIMITS.headersMs - 1000);
    expect(told).not.toContain('200 OK');
    expect(await isServed()).toBe(true);
  });

  test('who opens a thousand connections gets no more than a few, and others are served meanwhile (WS-52)', async () => {
    await start({ connectionsOfOne: 40 });
    const elsewhere = process.platform === 'linux' ? '127.0.0.2' : '127.0.0.1';
    const many = Array.from({ length: 1000 }, () => call('', elsewhere));
    await expect
      .poll(() => many.filter(({ socket }) => !socket.destroyed).length, { timeout: 20_000 })
      .toBe(40);
    if (elsewhere !== '127.0.0.1') expect(await isServed()).toBe(true);
    for (const { socket } of many) socket.destroy();
    await expect.poll(() => isServed(elsewhere)).toBe(true);
  });
});

test('the bounds that hold in production are short enough to matter and long enough for a slow radio (WS-52)', () => {
  expect(LIMITS.headersMs).toBeLessThanOrEqual(10_000);
  expect(LIMITS.requestMs).toBeLessThanOrEqual(30_000);
  expect(LIMITS.connectionsOfOne).toBeLessThan(LIMITS.connections / 2);
});
