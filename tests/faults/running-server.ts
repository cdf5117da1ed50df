/** The program as `npm start` runs it, in a process of its own that may be killed and started again. */
import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { basename, join } from 'node:path';
import type { Texts, Wire } from '../server/jobs/job-client.ts';

const STARTS_WITHIN_MS = 20_000;

export class RunningServer {
  readonly #script: string;
  readonly #folder: string;
  #child: ChildProcess | null = null;
  #address = '';

  /** @param script `server/main.ts`, compiled */
  constructor({ script, folder }: { readonly script: string; readonly folder: string }) {
    this.#script = script;
    this.#folder = folder;
  }

  get address(): string {
    return this.#address;
  }

  async start(): Promise<void> {
    const child = spawn(process.execPath, [this.#script], {
      env: {
        ...process.env,
        YOKESIDE_PORT: '0',
        YOKESIDE_DATA: this.#folder,
        YOKESIDE_PEPPER: join(this.#folder, '..', `${basename(this.#folder)}-key`, 'k'),
      },
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    this.#child = child;
    let said = '';
    child.stderr.setEncoding('utf8');
    this.#address = await new Promise<string>((resolve, reject) => {
      const late = setTimeout(() => reject(new Error(`It did not start: ${said}`)), STARTS_WITHIN_MS);
      child.stderr.on('data', (text: string) => {
        said += text;
        const address = /Yokeside is at (\S+)/.exec(said)?.[1];
        if (address === undefined) return;
        clearTimeout(late);
        resolve(address);
      });
      child.once('exit', (code) => reject(new Error(`It ended with ${code}: ${said}`)));
    });
  }

  /** Without warning, as a power cut does it. */
  async kill(): Promise<void> {
    const child = this.#child;
    if (child === null) return;
    this.#child = null;
    const ended = new Promise<string | null>((resolve) =>
      child.once('exit', (_code, signal) => resolve(signal)),
    );
    child.kill('SIGKILL');
    if ((await ended) !== 'SIGKILL') throw new Error('the server ended before it was killed');
  }

  async killAndStart(): Promise<void> {
    await this.kill();
    await this.start();
  }

  async postJson(path: string, body: object, cookie = ''): Promise<Response> {
    const headers = {
      origin: this.#address,
      accept: 'application/json',
      'content-type': 'application/json',
      cookie,
    };
    return await fetch(`${this.#address}${path}`, { method: 'POST', headers, body: JSON.stringify(body) });
  }

  /** Signs in, and reaches the server wherever it listens after each start: the session outlives it. */
  async signIn(who: string, pin: string): Promise<Wire> {
    const answer = await this.postJson('/sign-in', { who, pin });
    if (!answer.ok) throw new Error(`Signing in gave ${answer.status}: ${await answer.text()}`);
    const cookie = answer.headers
      .getSetCookie()
      .map((line) => line.split(';')[0])
      .join('; ');
    return {
      newRequestId: randomUUID,
      post: (path: string, fields: Texts) => this.postJson(path, fields, cookie),
      get: (path) => fetch(`${this.#address}${path}`, { headers: { accept: 'application/json', cookie } }),
    };
  }
}
