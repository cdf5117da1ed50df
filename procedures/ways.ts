import type { Facts } from './facts.ts';
import type { OpenStep, Sets, Step, Target, Way } from './vocabulary.ts';

/** One way out of a step: the event that takes it, the outcome it needs, where it leads. */
export interface NamedWay {
  readonly event: 'ANSWER' | 'SIGN' | 'SEND_BACK' | 'GO_ON' | 'WAIVE' | 'STOP';
  /** Null where any answer takes it. */
  readonly outcome: string | null;
  readonly way: Way<string>;
}

/** What a compiled transition carries, besides where it leads. */
export interface WayMeta {
  readonly sets: Sets;
  readonly outcome: string | null;
  readonly by: { readonly fact: string; readonly is: string } | null;
}

/** Every way out of a step, in one list: what is compiled, proved and printed is the same. */
export function waysOf(step: Step): readonly NamedWay[] {
  if (step.kind === 'end') return [];
  return [...answersOf(step), { event: 'STOP', outcome: null, way: { to: step.makeSafe } }];
}

function answersOf(step: OpenStep): readonly NamedWay[] {
  switch (step.kind) {
    case 'instruction':
    case 'wait':
      return [{ event: 'ANSWER', outcome: null, way: step.next }];
    case 'question':
      return Object.entries(step.choices).map(([outcome, way]) => ({ event: 'ANSWER', outcome, way }));
    case 'hold':
      return [
        { event: 'SIGN', outcome: null, way: step.signed },
        { event: 'SEND_BACK', outcome: null, way: step.sentBack },
        ...(step.point === 'hold' ? [] : [{ event: 'GO_ON', outcome: null, way: step.signed } as const]),
        ...(step.waivedBy === undefined
          ? []
          : [{ event: 'WAIVE', outcome: null, way: step.signed } as const]),
      ];
    default:
      return Object.entries(step.ways).map(([outcome, way]) => ({ event: 'ANSWER', outcome, way }));
  }
}

/** @example targetUnder({ by: 'place', ways: { bench: 'a', line: 'b' } }, facts) // 'a' for a valve on the bench */
export function targetUnder(target: Target<string>, facts: Facts): string {
  return typeof target === 'string' ? target : (target.ways[facts[target.by]] ?? '');
}
