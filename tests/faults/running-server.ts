/** The program as `npm start` runs it, in a process of its own that may be killed and started again. */
import { type ChildProcess, spawn } from 'node:child_process';
import { basename, join } from 'node:path';
import type { DemoPerson } from '../../server/pages/set-up.ts';

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

  /** Loads the demo plant into an empty site and tells its people with their PINs. */
  async loadDemo(): Promise<readonly DemoPerson[]> {
    const headers = { origin: this.#address, accept: 'application/json' };
    const answer = await fetch(`${this.#address}/set-up/demo`, { method: 'POST', headers });
    if (!answer.ok) throw new Error(`Loading the demo plant gave ${answer.status}: ${await answer.text()}`);
    return ((await answer.json()) as { readonly people: readonly DemoPerson[] }).people;
  }
}
