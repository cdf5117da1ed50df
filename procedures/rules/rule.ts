import type { Csv, Figures, Job, Reading, Words } from '../job.ts';

/** What a rule looks at: the job so far, and what the person has just given. */
export interface RuleInput {
  readonly job: Job;
  readonly readings: Readonly<Record<string, Reading>>;
  readonly words: Words;
  /** Tables that were given with it. */
  readonly csv?: Csv;
  /** The rows of the table that is being answered, the new one included. */
  readonly step: string;
  readonly params: Readonly<Record<string, string>>;
}

export interface Judged {
  readonly outcome: string;
  readonly figures: Figures;
}

/** A rule turns readings into one of a closed list of outcomes, with the figures that a person would check. */
export interface Rule {
  readonly outcomes: readonly string[];
  /** Parameters that a step must give. */
  readonly params: readonly string[];
  judge(input: RuleInput): Judged;
}
