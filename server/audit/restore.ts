/** A log that does not fit its last checkpoint is taken as it is: by two people, as an entry of its own. */
import { Refusal } from '../../safety/refusal.ts';
import { wrongFields } from '../http/fields.ts';
import { fingerprintOf } from '../log/chain.ts';
import { RESTORED } from '../log/read-only.ts';
import type { By } from '../people/people.ts';
import type { Person } from '../people/person.ts';
import { isReviewer } from '../people/review.ts';
import type { Services } from '../services.ts';
import { SITE_STREAM } from '../site-stream.ts';

export interface Restore {
  /** Who is signed in, with their PIN once more. */
  readonly person: Person;
  readonly pin: string;
  /** The other one, at the same screen. */
  readonly other: string;
  readonly otherPin: string;
  readonly why: string;
  readonly by: By;
}

/**
 * @throws Refusal AUD-001 where nothing is wrong, FRM-002 for one person twice or one who may not, PPL-001 for a wrong PIN
 */
export async function takeAsItIs(services: Services, restore: Restore): Promise<void> {
  const { log, people, checkpoints, now } = services;
  const distrust = checkpoints?.distrust ?? null;
  if (checkpoints === null || distrust === null) throw nothingToRestore();
  const { screen } = restore.by;
  const one = await people.verify({ who: restore.person.id, pin: restore.pin, screen });
  const other = await people.verify({ who: restore.other, pin: restore.otherPin, screen });
  if (one.id === other.id) throw wrongFields({ other: 'This must be another person.' });
  if (!isReviewer(other.role))
    throw wrongFields({ other: 'A safety officer, supervisor or engineer signs this with you.' });
  const { checkpoint, found, what } = distrust;
  const inputs = {
    why: restore.why,
    what,
    before: checkpoint === null ? null : { seq: checkpoint.seq, hash: checkpoint.hash, at: checkpoint.at },
    found: { seq: found.seq, hash: found.hash },
    people: [one, other].map(({ id, name, role }) => ({ id, name, role })),
  };
  await log.act({
    ...restore.by,
    fingerprint: fingerprintOf({ restored: found.hash, why: restore.why }),
    streams: [SITE_STREAM],
    decide: () => ({
      entries: [{ stream: SITE_STREAM, kind: RESTORED, inputs, outcome: {}, effects: {} }],
      answer: {},
    }),
  });
  checkpoints.accept(await log.head(), now());
}

function nothingToRestore(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'AUD-001',
    what: 'The log fits its last checkpoint: there is nothing to take as it is.',
    kept: 'Nothing was recorded.',
    next: 'Go back to the log.',
  });
}
