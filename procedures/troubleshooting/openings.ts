import { type Answer, HEARSAY } from './engine/evidence.ts';
import { signalOpens, type ValveFacts } from './valve-facts.ts';

/**
 * What the operator says when the job opens. It is taken as a doubtful answer to the check that looks at the same
 * thing, and gives way to that check as soon as somebody has made it. Doubts: judgement.
 */
export interface Opening {
  readonly words: string;
  readonly says: (v: ValveFacts) => readonly Pick<Answer, 'check' | 'outcome'>[];
  readonly doubt: number;
}

export const OPENINGS = {
  doesNotMove: {
    words: 'Does not move',
    says: () => [{ check: 'smallStep', outcome: 'no move' }],
    doubt: 0.25,
  },
  movesPartWay: {
    words: 'Moves part way',
    says: (v) => [
      { check: 'strokeByController', outcome: signalOpens(v) ? 'short of open' : 'short of shut' },
    ],
    doubt: 0.5,
  },
  sticksThenJumps: {
    words: 'Sticks, then jumps',
    says: () => [{ check: 'smallStep', outcome: 'jumps' }],
    doubt: 0.25,
  },
  hunts: {
    words: 'Hunts',
    says: () => [{ check: 'trend', outcome: 'fast swing' }],
    doubt: 0.4,
  },
  slow: {
    words: 'Is slow',
    says: () => [{ check: 'smallStep', outcome: 'slow' }],
    doubt: 0.3,
  },
  passesWhenShut: {
    words: 'Passes when shut',
    says: () => [{ check: 'leakShut', outcome: 'passes much' }],
    doubt: 0.4,
  },
  leaksAtPacking: {
    words: 'Leaks at the packing',
    says: () => [{ check: 'fluidOutside', outcome: 'gland' }],
    doubt: 0.2,
  },
  flowWrong: {
    words: 'Flow is wrong though travel is right',
    says: () => [
      { check: 'flowAgainstTravel', outcome: 'less' },
      { check: 'travelAgainstOutput', outcome: 'agrees' },
    ],
    doubt: 0.5,
  },
  controlsPoorly: {
    words: 'Controls poorly',
    says: () => [{ check: 'trend', outcome: 'offset' }],
    doubt: 0.7,
  },
} as const satisfies Record<string, Opening>;

export type OpeningId = keyof typeof OPENINGS;

export const OPENING_IDS = Object.keys(OPENINGS) as readonly OpeningId[];

/**
 * The evidence that an opening word is worth.
 * @example openingEvidence(facts, 'sticksThenJumps')[0].outcome // 'jumps'
 */
export function openingEvidence(v: ValveFacts, id: OpeningId): readonly Answer[] {
  const opening: Opening = OPENINGS[id];
  return opening.says(v).map((one) => ({ kind: 'answer', gauge: HEARSAY, doubt: opening.doubt, ...one }));
}
