import type { Json } from '../procedures/json.ts';

/**
 * What whoever looks after the server reads: starts, stops, faults and what was refused, one line of JSON each. Never a PIN, a token,
 * or what a person typed; what happened to a valve belongs in the site's log.
 */
export interface OperationsLog {
  write(event: string, details?: Readonly<Record<string, Json>>): void;
}

/** @param out takes one line, without its line break */
export function operationsLog(options: { now(): Date; out(line: string): void }): OperationsLog {
  return {
    // JSON escapes line breaks and control characters, so that nobody can make a second line.
    write: (event, details = {}) =>
      options.out(JSON.stringify({ at: options.now().toISOString(), event, ...details })),
  };
}

/** What a fault is written as: kind, message and where, which hold nothing that a person typed. */
export function faultDetails(error: unknown): Readonly<Record<string, Json>> {
  if (!(error instanceof Error)) return { fault: typeof error };
  const cause = error.cause instanceof Error ? { cause: `${error.cause.name}: ${error.cause.message}` } : {};
  return { fault: `${error.name}: ${error.message}`, stack: error.stack ?? '', ...cause };
}
