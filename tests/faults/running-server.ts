/** The program as `npm start` runs it, in a process of its own that may be killed and started again. */
import { type ChildProcess, spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { DemoPerson } from '../../server/pages/set-up.ts';

const STARTS_WITHIN_MS = 60_000;

export interface RunningServerOptions {
  readonly script: string;
  /** A clock that can be moved; without it, it is the machine's. */
  readonly clock?: string;
  readonly folder: string;
}

export class RunningServer {
  readonly #script: string;
  readonly #clock: readonly string[];
  readonly #folder: string;
  readonly #ahead: string;
  #aheadMs = 0;
  #child: ChildProcess | null = null;
  #address = '';
  #wrote = '';

  /** @param script `server/main.ts`, and `clock` `moved-clock.ts`, both compiled */
  constructor({ script, clock, folder }: RunningServerOptions) {
    this.#script = script;
    this.#clock = clock === undefined ? [] : ['--import', pathToFileURL(clock).href];
    this.#folder = folder;
    this.#ahead = join(folder, '..', `${basename(folder)}-ahead`);
    this.wait(0);
  }

  /** Moves the program's clock on, whether it runs or not. */
  wait(ms: number): void {
    this.#aheadMs += ms;
    writeFileSync(this.#ahead, String(this.#aheadMs));
  }

  /** Its operations log, over all its starts. */
  get operations(): readonly Readonly<Record<string, unknown>>[] {
    return this.#wrote
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => JSON.parse(line));
  }

  get address(): string {
    return this.#address;
  }

  get pid(): number | undefined {
    return this.#child?.pid;
  }

  async start(): Promise<void> {
    const child = spawn(process.execPath, [...this.#clock, this.#script], {
      env: {
        ...process.env,
        YOKESIDE_PORT: '0',
        YOKESIDE_DATA: this.#folder,
        YOKESIDE_TEST_CLOCK: this.#ahead,
        YOKESIDE_PEPPER: join(this.#folder, '..', `${basename(this.#folder)}-key`, 'k'),
      },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.#child = child;
    let said = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      this.#wrote += text;
    });
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

  /** As a system asks its services to end. @returns its exit code */
  async stop(): Promise<number | null> {
    const child = this.#child;
    if (child === null) throw new Error('it does not run');
    this.#child = null;
    const ended = new Promise<number | null>((resolve) => child.once('close', resolve));
    child.kill('SIGTERM');
    return await ended;
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
