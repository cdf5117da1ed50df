/** What the server remembers of its copies and of the checks of its log. Outside the log: it tells of the machine, not of the work. */
import { z } from 'zod';
import type { Json } from '../../procedures/json.ts';
import type { Store } from '../store/store.ts';

/** A copy that was made, and read whole by the verifier of the log before it had its name. */
export interface GoodBackup {
  readonly at: string;
  readonly folder: string;
  readonly entries: number;
  /** Check number of its last entry. */
  readonly check: string;
  /** Photos that the log itself has lost, which the copy therefore lacks too. */
  readonly photosLost: number;
}

export interface FailedBackup {
  readonly at: string;
  readonly why: string;
}

/** The whole log read again, entry by entry. */
export interface Verification {
  readonly at: string;
  readonly entries: number;
  readonly isWhole: boolean;
  /** A copy is read whole, and holds what the log held. */
  readonly by: 'a person' | 'a backup';
}

export interface Marks {
  readonly backup: GoodBackup | null;
  /** The last try that failed, where none has gone well since. */
  readonly failed: FailedBackup | null;
  readonly verification: Verification | null;
}

const KIND = 'mark';
const BACKUP = z.object({
  at: z.iso.datetime(),
  folder: z.string(),
  entries: z.int(),
  check: z.string(),
  photosLost: z.int(),
});
const FAILED = z.object({ at: z.iso.datetime(), why: z.string() });
const VERIFICATION = z.object({
  at: z.iso.datetime(),
  entries: z.int(),
  isWhole: z.boolean(),
  by: z.enum(['a person', 'a backup']),
});

export async function readMarks(store: Store): Promise<Marks> {
  const [backup, failed, verification] = await Promise.all([
    store.outside(KIND, 'backup'),
    store.outside(KIND, 'backup-failed'),
    store.outside(KIND, 'verification'),
  ]);
  return {
    backup: BACKUP.nullable().parse(backup ?? null),
    failed: FAILED.nullable().parse(failed ?? null),
    verification: VERIFICATION.nullable().parse(verification ?? null),
  };
}

export async function markBackup(store: Store, backup: GoodBackup): Promise<void> {
  await put(store, 'backup', { ...backup });
  await store.deleteOutside(KIND, 'backup-failed');
  const { at, entries } = backup;
  await markVerification(store, { at, entries, isWhole: true, by: 'a backup' });
}

export async function markFailedBackup(store: Store, failed: FailedBackup): Promise<void> {
  await put(store, 'backup-failed', { ...failed });
}

export async function markVerification(store: Store, verification: Verification): Promise<void> {
  await put(store, 'verification', { ...verification });
}

async function put(store: Store, id: string, body: Json): Promise<void> {
  await store.putOutside({ kind: KIND, id, body });
}
