import type { Hub } from '../../troubleshooting/check.ts';
import type { CheckId } from '../../troubleshooting/checks.ts';
import type { ValveFacts } from '../../troubleshooting/valve-facts.ts';
import type { Random } from '../random.ts';
import type { SimulatedValve } from '../simulated.ts';
import type { State } from '../state.ts';
import type { Doing } from '../step.ts';

/** What somebody says who made a check: a word, a number on its axis, or nothing that can be told. */
export type Said =
  | { readonly word: string }
  | { readonly value: number; readonly readSigma: number }
  | { readonly cannotTell: true };

export interface At {
  readonly valve: SimulatedValve;
  readonly facts: ValveFacts;
  readonly hub: Hub;
  readonly random: Random;
}

export type Looks = { readonly [C in CheckId]?: (at: At) => Said };

export function word(outcome: string): Said {
  return { word: outcome };
}

export function processOf(hub: Hub): Doing['process'] {
  return hub === 'in service' ? 'on' : 'bypassed';
}

/** One of a person's looks: seen with this chance where it is there. */
export function seenBy(random: Random, of: { readonly there: boolean; readonly share: number }): boolean {
  return of.there && random() < of.share;
}

/** The travel that the pointer shows; without a positioner it hangs on the plug's side of the coupling. */
export function pointerAt({ valve }: At, state: State): number {
  const { build } = valve;
  return state.stemAt - (build.frame.positioner === 'none' ? build.couplingSlip : 0);
}

export function spanPa({ valve }: At): number {
  return valve.build.frame.signalHighPa - valve.build.frame.signalLowPa;
}

/** How often a record turns round by more than a threshold. */
export function turns(values: readonly number[], threshold: number): number {
  let [count, direction] = [0, 0];
  let extreme = values[0] ?? 0;
  for (const value of values) {
    const change = value - extreme;
    if (direction >= 0 && change < -threshold) {
      if (direction > 0) count += 1;
      [direction, extreme] = [-1, value];
    } else if (direction <= 0 && change > threshold) {
      if (direction < 0) count += 1;
      [direction, extreme] = [1, value];
    } else if (direction * change > 0 || direction === 0) extreme = direction === 0 ? extreme : value;
  }
  return count;
}
