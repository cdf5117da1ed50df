/** What is worth a question to somebody who was not there. None of it is an offence, and speed alone is not even worth one. */
import type { JobDraft } from '../../../procedures/evolve.ts';
import type { GearItem } from '../../../procedures/test-gear/gear.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import type { LogEntry } from '../../store/store.ts';

/** Each rule, as the list of exceptions says it. */
export const RULES = {
  notLive: 'Shown safe on a gauge that read nothing live before',
  ventTooQuick: 'Vented sooner than the air can have left',
  noEvidence: 'Shown safe with no reading and no word of how',
  sameEvidence: 'Two energies shown by the very same readings of one gauge',
  oneScreen: 'Acknowledged and signed by two people at one screen within seconds',
  wrongPins: 'A run of wrong PINs',
  waived: 'A hold waived, or passed without its witness',
  byRadio: 'Signed by radio',
  secondPerson: 'Signed by a second person, with no supervisor there',
  overridden: 'Judged otherwise than the figures do',
  writtenLate: 'Written later than it was read',
  overdueGauge: 'Read on a gauge past its due day',
  correctedLater: 'A reading corrected after the verdict that rests on it',
  clockMoved: 'The clock was moved',
  tooPerfect: 'Stroke readings with less scatter than reading them by eye gives',
  lockOverShift: 'A lock on for longer than a shift',
} as const;

export type RuleId = keyof typeof RULES;

export interface Exception {
  readonly rule: RuleId;
  /** Lines of the job, or of the site's own stream. */
  readonly lines: readonly number[];
  readonly at: string;
  /** The figures that it rests on; blank where the rule says all. */
  readonly what: string;
}

/** One line of a job, as the rules read it. */
export interface JobLine
  extends Pick<LogEntry, 'place' | 'seq' | 'at' | 'person' | 'screen' | 'kind'>,
    Pick<JobDraft, 'inputs' | 'outcome' | 'effects'> {}

/** What was pinned when the job was opened. */
export interface Opened {
  readonly id: string;
  readonly tag: string;
  readonly sheet: Partial<ValveSheet>;
  readonly gear: Readonly<Record<string, GearItem | undefined>>;
  readonly procedure: string;
  readonly goesOnFrom?: string | null;
}

export interface AuditedJob {
  readonly opened: Opened;
  readonly lines: readonly JobLine[];
}

/** @throws TypeError for a job without lines */
export function auditedJob(entries: readonly LogEntry[]): AuditedJob {
  const [first, ...others] = entries;
  if (first?.kind !== 'job-opened') throw new TypeError('These are not the lines of a job.');
  return { opened: first.inputs as unknown as Opened, lines: others as unknown as JobLine[] };
}

export function exception(rule: RuleId, line: Pick<JobLine, 'place' | 'at'>, what = ''): Exception {
  return { rule, lines: [line.place], at: line.at, what };
}
