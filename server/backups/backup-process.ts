/**
 * One copy made by a process of its own: reading the whole log takes seconds to minutes, and nobody waits for a card
 * meanwhile. It is the very command that people run by hand.
 */
import { spawn } from 'node:child_process';
import { constants, setPriority } from 'node:os';
import { z } from 'zod';
import type { BackupPlan } from './keep-backing-up.ts';
import type { GoodBackup } from './marks.ts';

const SAID = z.object({
  folder: z.string(),
  entries: z.int(),
  check: z.string(),
  photosLost: z.int(),
});
/** What a command says fits in this; more of it is not kept. */
const SAID_MAX = 20_000;

/**
 * @param script the compiled command `backup`
 * @param dataFolder what is copied
 * @throws Error with what the command said, where it made none
 */
export async function backUpInProcess(of: {
  readonly script: string;
  readonly dataFolder: string;
  readonly plan: BackupPlan;
  readonly stop: AbortSignal;
}): Promise<Omit<GoodBackup, 'at'>> {
  const { script, plan, dataFolder, stop } = of;
  const parameters = [script, plan.to, '--keep-days', String(plan.keepDays), '--json'];
  const env = { ...process.env, YOKESIDE_DATA: dataFolder };
  const { status, said, complained } = await ended(parameters, { env, stop });
  if (status === 0) return SAID.parse(JSON.parse(said));
  throw new Error(complained.trim() || `The backup ended with ${status} and said nothing.`);
}

interface Ended {
  readonly status: number | null;
  readonly said: string;
  readonly complained: string;
}

function ended(
  parameters: readonly string[],
  { env, stop }: { readonly env: NodeJS.ProcessEnv; readonly stop: AbortSignal },
): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, parameters, {
      env,
      signal: stop,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    lowerPriority(child.pid);
    let [said, complained] = ['', ''];
    child.stdout.on('data', (bytes) => {
      said = (said + bytes).slice(0, SAID_MAX);
    });
    child.stderr.on('data', (bytes) => {
      complained = (complained + bytes).slice(0, SAID_MAX);
    });
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, said, complained }));
  });
}

/** Whoever works at a card comes first. */
function lowerPriority(pid: number | undefined): void {
  if (pid === undefined) return;
  try {
    setPriority(pid, constants.priority.PRIORITY_LOW);
  } catch (error) {
    // It may have ended already; and a system that gives no priorities makes the copy all the same.
    if (!(error instanceof Error && 'code' in error)) throw error;
  }
}
