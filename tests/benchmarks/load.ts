/**
 * Clients that post one after the other, each as soon as its last answer is whole, in a thread of their own, so that
 * the server keeps its thread. What is counted is what a Node client can ask for: a faster client would see more of
 * a route that does nothing.
 */
import { Agent, request } from 'node:http';
import { parentPort, Worker, workerData } from 'node:worker_threads';

/** What one client posts, over and over; each time with a request id of its own. */
export interface Client {
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly fields: Readonly<Record<string, string>>;
  /** Fields of the JSON answer that the next post carries, for example the place that the job has reached. */
  readonly carried?: readonly string[];
}

export interface Load {
  readonly origin: string;
  readonly clients: readonly Client[];
  readonly lastsS: number;
}

export interface Counted {
  readonly perSecond: number;
  readonly middleMs: number;
  /** Of a hundred answers, one takes longer. */
  readonly slowestMs: number;
}

/** Runs a load and counts its answers. @throws Error if any answer is not 2xx */
export function underLoad(load: Load): Promise<Counted> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: load });
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

async function run({ origin, clients, lastsS }: Load): Promise<Counted> {
  const agent = new Agent({ keepAlive: true, maxSockets: clients.length });
  const tookMs: number[] = [];
  const startMs = performance.now();
  const endMs = startMs + lastsS * 1000;
  await Promise.all(clients.map((client, at) => ask({ client, at, origin, agent, endMs, tookMs })));
  const lastedS = (performance.now() - startMs) / 1000;
  agent.destroy();
  tookMs.sort((one, other) => one - other);
  const share = (part: number) => tookMs[Math.floor(tookMs.length * part)] ?? Number.NaN;
  return { perSecond: tookMs.length / lastedS, middleMs: share(0.5), slowestMs: share(0.99) };
}

interface Asking {
  readonly client: Client;
  readonly at: number;
  readonly origin: string;
  readonly agent: Agent;
  readonly endMs: number;
  readonly tookMs: number[];
}

async function ask({ client, at, origin, agent, endMs, tookMs }: Asking): Promise<void> {
  let fields = client.fields;
  for (let count = 0; performance.now() < endMs; count += 1) {
    const sentMs = performance.now();
    const body = new URLSearchParams({ ...fields, requestId: `load-${at}-${count}-${sentMs}` }).toString();
    const answer = await post({ url: origin + client.path, headers: client.headers, body, agent });
    tookMs.push(performance.now() - sentMs);
    if (client.carried === undefined) continue;
    const given = JSON.parse(answer) as Readonly<Record<string, unknown>>;
    fields = { ...fields, ...Object.fromEntries(client.carried.map((name) => [name, String(given[name])])) };
  }
}

function post(of: {
  readonly url: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
  readonly agent: Agent;
}): Promise<string> {
  return new Promise((resolve, reject) => {
    const headers = {
      'content-type': 'application/x-www-form-urlencoded',
      'content-length': Buffer.byteLength(of.body),
      ...of.headers,
    };
    const asked = request(of.url, { method: 'POST', agent: of.agent, headers }, (answer) => {
      const pieces: Buffer[] = [];
      answer.on('data', (piece: Buffer) => pieces.push(piece));
      answer.once('end', () => {
        const text = Buffer.concat(pieces).toString('utf8');
        const status = answer.statusCode ?? 0;
        if (status >= 200 && status < 300) resolve(text);
        else reject(new Error(`${of.url} answered ${status}: ${text.slice(0, 500)}`));
      });
    });
    asked.once('error', reject);
    asked.end(of.body);
  });
}

if (parentPort !== null) {
  const port = parentPort;
  // A failed client throws here, which the thread that waits hears as an error.
  port.postMessage(await run(workerData as Load));
}
