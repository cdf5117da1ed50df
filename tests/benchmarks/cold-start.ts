/** From the start of the program to its first page, beside a program that answers one line and nothing else. */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { atMostMs, type Ratio, type Took, told } from './ratio.ts';

const ROUNDS = 5;
/** What Linux counts processor time in. */
const TICK_MS = 10;

const BARE = `
  import { createServer } from 'node:http';
  const server = createServer((_, answer) => answer.end('here'));
  server.listen(0, '127.0.0.1', () => console.error('Bare is at http://127.0.0.1:' + server.address().port));
`;

/** @param main the compiled program */
export async function measureColdStart(folder: string, main: string): Promise<Ratio> {
  const [own, bare]: [Took[], Took[]] = [[], []];
  for (let round = 0; round < ROUNDS; round += 1) {
    const at = join(folder, `start-${round}`);
    mkdirSync(at);
    own.push(await startOf([main], at));
    bare.push(await startOf(['--input-type=module', '-e', BARE], at));
  }
  const [ownBest, bareBest] = [bestOf(own), bestOf(bare)];
  return {
    what: 'cold start to the first page',
    ...atMostMs(400, ownBest.wallMs),
    from: `${told(ownBest)}; a bare Node server ${told(bareBest)}`,
  };
}

function bestOf(all: readonly Took[]): Took {
  return {
    wallMs: Math.min(...all.map(({ wallMs }) => wallMs)),
    cpuMs: Math.min(...all.map(({ cpuMs }) => cpuMs)),
  };
}

function startOf(script: readonly string[], folder: string): Promise<Took> {
  const begunMs = performance.now();
  const child = spawn(process.execPath, script, {
    env: { ...process.env, YOKESIDE_DATA: join(folder, 'data'), YOKESIDE_PORT: '0' },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  return new Promise((resolve, reject) => {
    let said = '';
    child.stderr.setEncoding('utf8').on('data', async (text: string) => {
      said += text;
      const address = / is at (\S+)/.exec(said)?.[1];
      if (address === undefined) return;
      child.stderr.removeAllListeners('data').resume();
      child.removeAllListeners('exit');
      const answer = await fetch(`${address}/`);
      await answer.text();
      const took = { wallMs: performance.now() - begunMs, cpuMs: cpuMsOf(child.pid) };
      child.once('exit', () => (answer.ok ? resolve(took) : reject(new Error(`It gave ${answer.status}.`))));
      child.kill('SIGTERM');
    });
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`It ended with ${code}: ${said}`)));
  });
}

/** NaN where the system does not tell. */
function cpuMsOf(pid: number | undefined): number {
  const file = `/proc/${pid}/stat`;
  if (!existsSync(file)) return Number.NaN;
  // Behind the name, which may hold blanks: the 12th and 13th are user and system time.
  const fields = readFileSync(file, 'utf8').split(') ')[1]?.split(' ') ?? [];
  return (Number(fields[11]) + Number(fields[12])) * TICK_MS;
}
