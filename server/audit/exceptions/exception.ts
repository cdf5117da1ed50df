/** What is worth a question to somebody who was not there. None of it is an offence, and speed alone is not even worth one. */
import type { JobDraft } from '../../../procedures/evolve.ts';
import type { GearItem } from '../../../procedures/test-gear/gear.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import type { LogEntry } from '../../store/store.ts';

interface Rule {
  /** As the list says it. */
  readonly says: string;
  /** What counts, with its bounds, and on whose side it errs. */
  readonly how: string;
}

/** Bounds without a source are common practice. */
export const RULES = {
  notLive: {
    says: 'Shown safe on a gauge that read nothing live before',
    how: 'A zero on a gauge that read no more than twice its uncertainty on every line before it. Jobs that went on from another are left out: their live readings are there.',
  },
  ventTooQuick: {
    says: 'Vented sooner than the air can have left',
    how: 'From the last live reading to the zero in less time than choked air of 50 °C takes out of the tank of the sheet through a hole of 28 mm, or out of the part of the case that the stem had moved through one of 18 mm, both without loss. No sheet says how wide a vent is, and none is wider than that: true vents take longer, so it errs on the side of the technician and tells only what cannot be.',
  },
  noEvidence: {
    says: 'Shown safe with no reading and no word of how',
    how: 'A line that made an energy count as isolated, with nothing given in it. Locks that are taken off are no such line.',
  },
  sameEvidence: {
    says: 'Two energies shown by the very same readings of one gauge',
    how: 'Two lines that show different energies with one gauge, one live reading and one zero. One card that asks for several energies at once is no such pair.',
  },
  oneScreen: {
    says: 'Acknowledged and signed by two people at one screen within seconds',
    how: 'A hold that is signed at the screen of the line before, by somebody else, at most 20 seconds after it.',
  },
  wrongPins: {
    says: 'A run of wrong PINs',
    how: 'Five wrong ones in a row or more, in one name or in names that nobody has.',
  },
  waived: {
    says: 'A hold waived, or passed without its witness',
    how: 'Every one. No hold over an isolation can be waived.',
  },
  byRadio: { says: 'Signed by radio', how: 'Every signature that was read out and read back.' },
  secondPerson: {
    says: 'Signed by a second person, with no supervisor there',
    how: 'Every signature of a second competent person.',
  },
  overridden: {
    says: 'Judged otherwise than the figures do',
    how: 'Every reading that a person took for good where its limit said otherwise.',
  },
  writtenLate: {
    says: 'Written later than it was read',
    how: 'Every line whose writer gave an earlier time for its reading.',
  },
  overdueGauge: {
    says: 'Read on a gauge past its due day',
    how: 'The day of the line is later than the due day of the gauge when the job was opened.',
  },
  correctedLater: {
    says: 'A reading corrected after the verdict that rests on it',
    how: 'A correction with a verdict between the line that it corrects and itself.',
  },
  clockMoved: {
    says: 'The clock was moved',
    how: 'A line of a job whose time is more than 2 seconds before that of the line before it, a jump of the clock of the server by a minute or more, or a checkpoint that could not be given because the clock stood before the last one.',
  },
  tooPerfect: {
    says: 'Stroke readings with less scatter than reading them by eye gives',
    how: 'All stroke rows of a job between 15 % and 85 % of travel, a straight line through each run of one direction, all of one slope: what is left beside them is below 0.06 % of travel, with at least 6 degrees of freedom and readings given to 0.5 % or finer. Of 10,000 simulated honest jobs with a reading error of 0.25 % of travel, 3 were told where it was read to 0.1 %, fewer than 20 where to 0.5 %. No plant has been measured.',
  },
  lockOverShift: {
    says: 'A lock on for longer than a shift',
    how: 'More than 12 hours from the line that hung it to the one that took it off, or until now.',
  },
} as const satisfies Readonly<Record<string, Rule>>;

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
