import { z } from 'zod';
import { type Names, nameOf } from '../jobs/view/words.ts';
import { shownTime } from '../shown-time.ts';
import type { Removal } from './absence-stream.ts';

/** What was done to somebody's locks while they were away, as it is told to them and to everybody. */
export const removalWordsSchema = z.object({
  at: z.string(),
  by: z.string(),
  job: z.string(),
  locks: z.string(),
  foundOut: z.string(),
  attempts: z.string(),
  toldBy: z.string(),
  reason: z.string(),
});

export function removalWords(removal: Removal, names: Names): z.infer<typeof removalWordsSchema> {
  const { at, by, job, locks, foundOut, attempts, toldBy, reason } = removal;
  return {
    at: shownTime(at),
    by: nameOf(by, names),
    job,
    locks: locks.map(({ point, lock }) => `${lock} on ${point}`).join(', '),
    foundOut,
    attempts,
    toldBy,
    reason,
  };
}
