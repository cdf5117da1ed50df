import { z } from 'zod';
import { Refusal } from '../../safety/refusal.ts';
import type { StreamKind } from '../log/stream-kind.ts';

/** Who looked at the log of a job, and how far it had come then. */
export interface Mark {
  readonly person: string;
  readonly at: string;
  /** The last line that they saw. */
  readonly upTo: number;
  readonly note: string;
}

export interface Reviews {
  readonly marks: readonly Mark[];
}

const reviewed = z.object({ upTo: z.int(), note: z.string() });

/** The audit of one job, by its number. */
export const auditKind: StreamKind<Reviews> = {
  kind: 'audit',
  initial: { marks: [] },
  evolve: (reviews, { kind, inputs, at, person }) =>
    kind === 'audited'
      ? { marks: [...reviews.marks, { ...reviewed.parse(inputs), at, person: person ?? '' }] }
      : reviews,
  summarise: () => null,
};

/**
 * Whoever had a hand in a job does not mark it as audited.
 * @param parts everybody who wrote, signed, read or was heard in it, and its crew
 * @throws Refusal AUD-002
 * @source 10 CFR 50 appendix B, criterion XVIII
 */
export function refuseOwnAudit(person: string, parts: ReadonlySet<string>): void {
  if (!parts.has(person)) return;
  throw new Refusal({
    kind: 'not-allowed',
    code: 'AUD-002',
    what: 'You had a part in this job: its log is reviewed by somebody who had none.',
    kept: 'Nothing was recorded.',
    next: 'Ask another safety officer, supervisor or engineer.',
  });
}
