/**
 * What the rows of table D share: what must stand before an act, by the short letters of the table.
 *
 * A supply air, T trapped air, P process both sides, D drained and cleared, S spring, E electrical, G weight,
 * H temperature, B process set up for the valve to move.
 */
import type { ConditionId, Needs, StateOf } from './conditions.ts';

export interface ActionClassRow {
  readonly name: string;
  /** What goes wrong without the needs, as a technician would say it. */
  readonly danger: string;
  readonly needs: Needs;
  /** What the act itself makes worse, whatever comes of it: every answer to such a step records this. */
  readonly leaves?: Leaves;
  /** Electrical work has a law of its own (29 CFR 1910.147 leaves it out): the one that such a step cites. */
  readonly electricalRule?: string;
  readonly source: string;
}

export type Leaves = { readonly [C in ConditionId]?: StateOf<C> };

export const PRACTICE = 'common practice, no source';

export const A = {
  supplyAir: ['isolated', 'absent'],
  secondSupply: ['isolated', 'absent'],
} as const satisfies Needs;
export const T = {
  trappedAir: ['isolated', 'absent'],
  lockUpAir: ['isolated', 'absent'],
  oppositeAir: ['isolated', 'absent'],
} as const satisfies Needs;
export const P = {
  processInlet: ['isolated', 'absent'],
  processOutlet: ['isolated', 'absent'],
} as const satisfies Needs;
export const D = { residue: ['cleared', 'absent'] } as const satisfies Needs;
export const E = { electrical: ['isolated', 'absent'] } as const satisfies Needs;
export const G = { weight: ['hung', 'absent'] } as const satisfies Needs;
export const H = { temperature: ['safe', 'absent'] } as const satisfies Needs;
export const B = {
  loop: ['manual', 'absent'],
  commands: ['isolated', 'absent'],
  bypass: ['open', 'absent'],
  processFlow: ['set up', 'absent'],
} as const satisfies Needs;
/** What is opened lets the line out: its shut-off must be good enough for this fluid and this work (EI-25). */
export const P_TO_OPEN = { ...P, isolationGrade: ['enough', 'absent'] } as const satisfies Needs;
export const NO_CASE_AIR = { signalAir: ['isolated', 'absent'] } as const satisfies Needs;
export const SIGNED = { workSignOff: ['given'] } as const satisfies Needs;
export const LINE_OFF = { controllerLine: ['capped', 'absent'] } as const satisfies Needs;
export const SPRING_SHUT_IN = { spring: ['contained', 'released', 'absent'] } as const satisfies Needs;
export const SPRING_FREE = { spring: ['released', 'absent'] } as const satisfies Needs;
/** There is an adjuster to turn; a case that holds its spring itself is let off by its long bolts. */
export const BY_ADJUSTER = { springHolder: ['adjuster'] } as const satisfies Needs;
export const SHUT = { closure: ['shut'] } as const satisfies Needs;
export const OPENS = { closure: 'open' } as const satisfies Leaves;
export const AIR_OFF = { ...A, ...T, ...NO_CASE_AIR } as const satisfies Needs;
/** One air source in the technician's hand and nothing else that can move the stem (EI-13, EI-53). */
export const TEST_AIR_ONLY = {
  ...A,
  ...T,
  ...P,
  ...LINE_OFF,
  ...SPRING_SHUT_IN,
  ...SHUT,
  ...SIGNED,
} as const satisfies Needs;
/** Hands at the stem: the air stands still. */
export const HELD = {
  ...TEST_AIR_ONLY,
  signalAir: ['held'],
  testAir: ['connected'],
} as const satisfies Needs;
/** Held air ends with the act, and where the plug is is not known any more. */
export const AIR_MOVED = { signalAir: 'live', plug: 'seat unknown' } as const satisfies Leaves;
const LOOKED_OVER = { ...SPRING_SHUT_IN, ...SHUT, clear: ['clear'] } as const satisfies Needs;
export const BACK_TOGETHER = {
  ...LOOKED_OVER,
  testAir: ['off'],
  controllerLine: ['connected', 'absent'],
} as const satisfies Needs;
