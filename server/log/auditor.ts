import type { LogEntry } from '../store/store.ts';

export interface AuditProblem {
  /** The place in the stream where it shows. */
  readonly place: number;
  readonly what: string;
}

/**
 * A check of one kind of stream that goes beyond the chain: that the machine, run again over a job's entries, agrees
 * with what they say, for example. Run by the verifier once the chain is known to be whole. Pure.
 *
 * @example
 * const jobAuditor: Auditor = { kind: 'job', audit: (stream, entries) => disagreements(entries) };
 */
export interface Auditor {
  /** The part of the stream's name before the colon. */
  readonly kind: string;
  /** Another stream that this one is judged by, as a job by its procedure; without it, none. */
  needs?(entries: readonly LogEntry[]): string;
  /** @param needed the entries of that other stream */
  audit(stream: string, entries: readonly LogEntry[], needed: readonly LogEntry[]): readonly AuditProblem[];
}
