/** What becomes of the acts of one batch. */
import type { Json } from '../../procedures/json.ts';
import { StorageUnavailable } from '../store/storage-unavailable.ts';
import type { Answered } from '../store/store.ts';
import type { Act } from './act.ts';
import { LogDamaged } from './chain.ts';
import { sameAnswer, type WorkingBatch } from './working-batch.ts';

export interface Waiting {
  readonly act: Act;
  resolve(answer: Json): void;
  reject(error: unknown): void;
}

/** What becomes of an act: at once if it was durable before, else once the commit is through. */
export type Outcome = { readonly durable: boolean } & (
  | { readonly answer: Json }
  | { readonly error: unknown }
);

export function decided(
  act: Act,
  { answered, in: working }: { readonly answered: Answered | undefined; readonly in: WorkingBatch },
): Outcome {
  return answered === undefined
    ? { durable: false, ...outcomeOf(() => working.decide(act)) }
    : { durable: true, ...outcomeOf(() => sameAnswer(act, answered)) };
}

function outcomeOf(decide: () => Json): { answer: Json } | { error: unknown } {
  try {
    return { answer: decide() };
  } catch (error) {
    return { error };
  }
}

export function settle(waiting: Waiting, outcome: Outcome | undefined): void {
  if (outcome === undefined) waiting.reject(new TypeError('The act was not decided.'));
  else if ('answer' in outcome) waiting.resolve(outcome.answer);
  else waiting.reject(outcome.error);
}

export function asError(error: unknown): Error {
  return error instanceof Error ? error : new Error(String(error));
}

export function asUnavailable(error: unknown): Error {
  if (error instanceof StorageUnavailable || error instanceof LogDamaged) return error;
  const reason = error instanceof Error ? error.message : String(error);
  return new StorageUnavailable(reason, { cause: error });
}
