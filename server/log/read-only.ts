import { Refusal } from '../../safety/refusal.ts';
import type { EntryDraft } from './act.ts';
import type { Checkpoints } from './checkpoints.ts';

export const RESTORED = 'log-restored';

/** Two people must be able to sign in and take the log as it is; wrong PINs are written down whatever stands. */
const WRITTEN_ALL_THE_SAME: readonly string[] = ['signed-in', 'signed-out', 'pin-refused', RESTORED];

/**
 * Stops every entry of the work while the log does not fit its last checkpoint.
 * @throws Refusal LOG-003
 */
export function refuseWhileDistrusted(
  checkpoints: Pick<Checkpoints, 'distrust'> | null,
  entries: readonly Pick<EntryDraft, 'kind'>[],
): void {
  const distrust = checkpoints?.distrust ?? null;
  if (distrust === null || entries.every(({ kind }) => WRITTEN_ALL_THE_SAME.includes(kind))) return;
  throw new Refusal({
    kind: 'conflict',
    code: 'LOG-003',
    what: `The log is not the one that was here before. ${distrust.what}`,
    kept: 'Nothing was recorded: until two people have looked into it, pages can be read and nothing is written.',
    next: 'Make the work safe and stop. Write readings on paper, and tell the safety officer.',
  });
}
