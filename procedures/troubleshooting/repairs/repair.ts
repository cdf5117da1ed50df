import type { CauseId } from '../causes.ts';
import type { Hub } from '../check.ts';
import type { CheckId } from '../checks.ts';

/**
 * What puts a cause right, and the check that proves it. Causes with one repair form one class: what tells them
 * apart changes nothing that anybody does. Minutes: judgement.
 */
export interface Repair {
  readonly words: string;
  readonly todo: string;
  readonly cures: readonly CauseId[];
  readonly minutes: number;
  readonly hub: Hub;
  readonly consent: boolean;
  /** The first of these that the valve has proves it; none: it proves itself in service. */
  readonly proof: readonly CheckId[];
}

export const operator = { hub: 'in service', consent: true } as const;
export const onBypass = { hub: 'bypassed', consent: true } as const;
export const isolated = { hub: 'isolated', consent: true } as const;
