/**
 * Clients that post one after the other, each as soon as its last answer is whole, in a thread of their own, so that
 * the server keeps its thread. What is counted is what a Node client can ask for: a faster client would see more of
 * a route that does nothing.
 */
import { Agent, request } from 'node:http';
import { setTimeout as after } from 'node:timers/promises';
import { parentPort, Worker, workerData } from 'node:worker_threads';

export type Fields = Readonly<Record<string, string>>;

/** Somewhere to post to: once the first fields, then the others, over and over. */
export interface Target {
  readonly path: string;
  readonly first: Fields;
  readonly again: Fields;
  /** Fields that each post takes from the JSON answer before it, and what they are called there. */
  readonly carried: Fields;
}

export interface Client {
  readonly headers: Fields;
  /** The address that it asks from; a server serves one address only so many at once. */
  readonly from?: string;
  /** Gone round one after the other, so that none grows longer than a real one. */
  readonly targets: readonly Target[];
}

export interface Load {
  readonly origin: string;
  readonly clients: readonly Client[];
  /** How many posts a target gets before the next one has its turn. */
  readonly postsEach: number;
  readonly lastsS: number;
  /**
   * All clients together post so many a second, whether they were answered or not, and a wait is counted from when a post was due;
   * without it each posts as soon as it was answered.
   */
  readonly perSecond?: number;
}

export interface Counted {
  readonly perSecond: number;
  readonly middleMs: number;
  /** Of a hundred answers, one takes longer. */
  readonly slowestMs: number;
  /** Of each client, in their order. */
  readonly ofEach: readonly OfClient[];
}

export interface OfClient {
  readonly answers: number;
  readonly longestMs: number;
  /** How many posts of one other client were sent and answered while this one waited for one answer: at most 1 where who comes first is served first. */
  readonly overtaken: number;
}

/** From when to when a client waited for an answer. */
interface Wait {
  readonly sentMs: number;
  readonly answeredMs: number;
}

/** Runs a load and counts its answers. @throws Error if any answer is not 2xx */
export function underLoad(load: Load): Promise<Counted> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: load });
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

async function run(load: Load): Promise<Counted> {
  const agent = new Agent({ keepAlive: true, maxSockets: load.clients.length });
  const startMs = performance.now();
  const asked = { load, agent, endMs: startMs + load.lastsS * 1000 };
  const each = await Promise.all(
    load.clients.map((client, at) => ask(client, { ...asked, waits: [], due: pace(load, { at, startMs }) })),
  );
  const lastedS = (performance.now() - startMs) / 1000;
  agent.destroy();
  const ofEach = each.map((own) => ({
    answers: own.length,
    longestMs: Math.max(0, ...own.map(lastedMs)),
    overtaken: mostOvertaken(own, each),
  }));
  const tookMs = each
    .flat()
    .map(lastedMs)
    .sort((one, other) => one - other);
  const share = (part: number) => tookMs[Math.floor(tookMs.length * part)] ?? Number.NaN;
  return { perSecond: tookMs.length / lastedS, middleMs: share(0.5), slowestMs: share(0.99), ofEach };
}

const lastedMs = ({ sentMs, answeredMs }: Wait): number => answeredMs - sentMs;

/** A client waits for one answer after the other, so that its waits stand in order of both times. */
function mostOvertaken(own: readonly Wait[], each: readonly (readonly Wait[])[]): number {
  let most = 0;
  for (const { sentMs, answeredMs } of own) {
    for (const others of each) {
      const before = countUntil(others, (other) => other.sentMs > sentMs);
      const whole = countUntil(others, (other) => other.answeredMs >= answeredMs);
      most = Math.max(most, whole - before);
    }
  }
  return most;
}

/** How many stand before the first that is beyond; none after it is not. */
function countUntil(waits: readonly Wait[], isBeyond: (wait: Wait) => boolean): number {
  let [low, high] = [0, waits.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isBeyond(waits[middle] as Wait)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** @returns what waits until the next post of a client is due, and says when that was */
function pace(
  { perSecond, clients }: Load,
  { at, startMs }: { readonly at: number; readonly startMs: number },
): () => Promise<number> {
  if (perSecond === undefined) return async () => performance.now();
  let posts = 0;
  return async () => {
    const dueMs = startMs + ((posts * clients.length + at) * 1000) / perSecond;
    posts += 1;
    const waitMs = dueMs - performance.now();
    if (waitMs > 0) await after(waitMs);
    return Math.min(dueMs, performance.now());
  };
}

interface Asking {
  /** When the next post is due; resolves then. */
  readonly due: () => Promise<number>;
  readonly load: Load;
  readonly agent: Agent;
  readonly endMs: number;
  readonly waits: Wait[];
}

/** @returns its waits, one after the other */
async function ask(client: Client, asking: Asking): Promise<readonly Wait[]> {
  const next = new Map<Target, Fields>(client.targets.map((target) => [target, target.first]));
  while (performance.now() < asking.endMs) {
    for (const target of client.targets) {
      for (let count = 0; count < asking.load.postsEach && performance.now() < asking.endMs; count += 1) {
        const answer = await timed(asking, { client, target, fields: next.get(target) ?? target.first });
        next.set(target, { ...target.again, ...carriedFrom(answer, target.carried) });
      }
    }
  }
  return asking.waits;
}

async function timed(
  { load, agent, waits, due }: Asking,
  { client, target, fields }: { readonly client: Client; readonly target: Target; readonly fields: Fields },
): Promise<string> {
  const body = new URLSearchParams({ ...fields, requestId: crypto.randomUUID() }).toString();
  const sentMs = await due();
  const answer = await post({
    url: load.origin + target.path,
    headers: client.headers,
    body,
    agent,
    ...(client.from === undefined ? {} : { localAddress: client.from }),
  });
  waits.push({ sentMs, answeredMs: performance.now() });
  return answer;
}

function carriedFrom(answer: string, carried: Fields): Fields {
  const given = JSON.parse(answer) as Readonly<Record<string, unknown>>;
  return Object.fromEntries(Object.entries(carried).map(([field, name]) => [field, String(given[name])]));
}

function post(of: {
  readonly url: string;
  readonly headers: Fields;
  readonly body: string;
  readonly agent: Agent;
  readonly localAddress?: string;
}): Promise<string> {
  return new Promise((resolve, reject) => {
    const headers = {
      'content-type': 'application/x-www-form-urlencoded',
      'content-length': Buffer.byteLength(of.body),
      ...of.headers,
    };
    const { agent, localAddress } = of;
    const from = localAddress === undefined ? {} : { localAddress };
    const asked = request(of.url, { method: 'POST', agent, headers, ...from }, (answer) => {
      const pieces: Buffer[] = [];
      answer.on('data', (piece: Buffer) => pieces.push(piece));
      answer.once('error', reject);
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
