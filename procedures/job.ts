import type { ConditionId } from '../safety/conditions.ts';
import type { Envelope, SignWay } from '../safety/sign-off.ts';
import type { Situation } from '../safety/situation.ts';
import type { Facts } from './facts.ts';
import type { JobNote } from './notes/note.ts';
import type { Signing } from './signing.ts';
import type { GearItem } from './test-gear/gear.ts';
import type { GearRole } from './test-gear/roles.ts';
import type { LastTime } from './troubleshooting/job/last-time.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';

/** A value as it was read: SI for the arithmetic, the text and unit as typed for the record. */
export interface Reading {
  readonly field: string;
  readonly valueSi: number;
  readonly typed: string;
  readonly unit: string;
  readonly gauge: string | null;
  /** Half width that covers the reading (95 %), from the gauge; null for what is counted or judged by eye. */
  readonly uncertaintySi: number | null;
  /** Who read it, where that is not who wrote it (by radio). */
  readonly readBy: string | null;
}

/** A choice made or a text written, kept as given. */
export type Words = Readonly<Record<string, string>>;

/** Tables that were uploaded or pasted, by field, kept as they came. */
export type Csv = Readonly<Record<string, string>>;

/** Numbers and words that a rule worked out, as the entry stores them. */
export type Figures = Readonly<Record<string, number | string | null>>;

/** What somebody says of a line that they write later than they read: a claim, nothing more. */
export interface Late {
  readonly claimedAt: string;
  readonly reason: string;
}

/** Lines that were entered in one go, when the work was over: each has its own place, and says so. */
export interface Together {
  /** Place of the first of them. When they were entered is the time of each line itself. */
  readonly first: number;
}

/** One answered card. */
export interface Answer {
  /** Place in the job's stream: how a correction names it. */
  readonly place: number;
  readonly seq: number;
  readonly at: string;
  readonly person: string;
  readonly step: string;
  readonly act: string;
  readonly readings: readonly Reading[];
  readonly words: Words;
  readonly row: number | null;
  readonly outcome: string;
  readonly figures: Figures;
  /** Why it was corrected, sent back, stopped or parked; blank for a plain answer. */
  readonly reason: string;
  /** When it was read by the word of whoever wrote it, and why it was not written then; the line's own time is the server's. */
  readonly late: Late | null;
  /** Entered in one go with other lines; null for a line of its own. */
  readonly together: Together | null;
  readonly to: string;
  /** A later answer, a way back or a correction stands in its place. */
  /** Tables that came with it, by field, as they came. */
  readonly csv?: Csv;
  readonly superseded: boolean;
  readonly corrected: boolean;
}

export interface Row {
  readonly place: number;
  readonly signal: Reading;
  readonly travel: Reading;
}

/** How an energy came to its present state. */
export interface EvidenceNote {
  readonly place: number;
  readonly seq: number;
  readonly at: string;
  readonly person: string;
  readonly step: string;
  readonly readings: readonly Reading[];
  readonly words: Words;
}

/** The lock that this job hung, by the condition that stands for it. */
export interface JobLock {
  readonly lock: string;
  readonly point: string;
  readonly owner: string;
}

export interface SignedHold {
  readonly step: string;
  readonly place: number;
  readonly at: string;
  readonly person: string;
  /** The name as it was printed then. */
  readonly name: string;
  readonly way: SignWay;
  /** Why no supervisor stood there; blank where one did. */
  readonly why: string;
  readonly envelope: Envelope | null;
  readonly shownDigest: string;
}

export type JobStatus = 'none' | 'open' | 'parked' | 'closed';

/** A job as its log tells it: the fold of its stored entries, nothing else. */
export interface Job {
  readonly id: string;
  readonly status: JobStatus;
  readonly closedAs: string | null;
  readonly tag: string;
  readonly sheet: ValveSheet;
  readonly sheetRevision: number;
  readonly gear: { readonly [R in GearRole]?: GearItem };
  readonly facts: Facts;
  readonly procedure: string;
  readonly procedureRevision: string;
  readonly definitionHash: string;
  readonly openedAt: string;
  readonly closedAt: string | null;
  readonly openedBy: string;
  /** The job that handed this valve on as it stood; null for a job that began afresh. */
  readonly goesOnFrom: string | null;
  /** What an earlier search for a fault of this valve found and did; only a search has it. */
  readonly lastTime?: LastTime;
  /** The job that went on with the valve when this one closed. */
  readonly goesOnAs: string | null;
  readonly step: string;
  /** Place of the newest entry: a form carries it, so that an answer to an older card is noticed. */
  readonly place: number;
  readonly seq: number;
  readonly arrivedAt: string;
  readonly answers: readonly Answer[];
  readonly readings: Readonly<Record<string, Reading>>;
  readonly words: Words;
  readonly figures: Readonly<Record<string, Figures>>;
  readonly tables: Readonly<Record<string, readonly Row[]>>;
  readonly situation: Situation;
  readonly evidence: { readonly [C in ConditionId]?: EvidenceNote };
  readonly locks: { readonly [C in ConditionId]?: JobLock };
  readonly envelope: Envelope | null;
  readonly holds: readonly SignedHold[];
  /** Who did or recorded work since the last signed hold: they cannot sign the next. */
  readonly performers: readonly string[];
  readonly signing: Signing;
  /** Findings and parts, beside the work: no card and no rule rests on them. */
  readonly notes: readonly JobNote[];
}
