import { ABOVE_ZERO, ANY_NUMBER, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { type PlugCloses, stemTurn } from './seating-turns.ts';

/**
 * How many turns after contact give the seat load that a class needs.
 *
 * Shape: five numbers in, turns out. turns = (need · π · d − before)/(k · pitch), never below 0
 * Valid: as seatingTurns; whether the lift lost is bearable is for seatingTurns to say.
 * @param portDiameterM      above 0
 * @param seatLoadBeforeN    without turns; any number
 * @param seatLoadNeedNPerM  0 or more
 * @param springRateNPerM    above 0
 * @param threadPitchM       above 0
 * @returns force needed, force missing, exact turns, and turns rounded up to the next quarter
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-07] figures derived
 * @example seatingTurnsForNeed({ portDiameterM: 0.0508, seatLoadBeforeN: 2000, seatLoadNeedNPerM: 14010,
 *   springRateNPerM: 280202.94, threadPitchM: 0.00127 })
 *   // { neededN: 2235.897, missingN: 235.897, turns: 0.662896, turnsToQuarter: 0.75 }
 */
export function seatingTurnsForNeed(input: {
  readonly portDiameterM: number;
  readonly seatLoadBeforeN: number;
  readonly seatLoadNeedNPerM: number;
  readonly springRateNPerM: number;
  readonly threadPitchM: number;
}): {
  readonly neededN: number;
  readonly missingN: number;
  readonly turns: number;
  readonly turnsToQuarter: number;
} {
  const { portDiameterM, seatLoadBeforeN, seatLoadNeedNPerM, springRateNPerM, threadPitchM } = input;
  refuseOutside({ portDiameterM, springRateNPerM, threadPitchM }, ABOVE_ZERO);
  refuseOutside({ seatLoadBeforeN }, ANY_NUMBER);
  refuseOutside({ seatLoadNeedNPerM }, ZERO_OR_MORE);
  const neededN = seatLoadNeedNPerM * Math.PI * portDiameterM;
  const missingN = Math.max(0, neededN - seatLoadBeforeN);
  const turns = missingN / (springRateNPerM * threadPitchM);
  // A hair over a quarter is rounding, not a reason for another quarter.
  return { neededN, missingN, turns, turnsToQuarter: Math.max(0, Math.ceil(turns * 4 - 1e-9) / 4) };
}

export interface SeatingFacts {
  readonly plugCloses: PlugCloses;
  readonly bellowsSeal: boolean;
  readonly stemPinned: boolean;
  /** Length of thread that grips now, and the least that must; blank: not measured or not known. */
  readonly threadEngagedM?: number | null;
  readonly threadEngagedMinM?: number | null;
  readonly threadPitchM: number;
  readonly turns: number;
}

export type SeatingObstacle = 'bellows seal' | 'pinned stem' | 'too little thread left';

/**
 * Whether this plug stem may be turned at all, by the facts that are given.
 *
 * Shape: facts in, obstacles out; an empty list means that none of the facts given forbids it.
 * Valid: only what is given is judged. What was not measured is listed as unknown, never taken as good.
 * @param plugCloses         moving down or moving up
 * @param bellowsSeal        a bellows twists and tears: never turned
 * @param stemPinned         never turned
 * @param threadEngagedM     thread that grips now; 0 or more, or blank
 * @param threadEngagedMinM  least that must grip; 0 or more, or blank
 * @param threadPitchM       above 0
 * @param turns              0 or more
 * @returns whether it may be turned, what forbids it, thread left after the turns, what is unknown
 * @throws CalcError CALC-001, CALC-002 or CALC-005 by the name of the input
 * @source [S-07] common practice
 * @example seatingObstacles({ plugCloses: 'down', bellowsSeal: false, stemPinned: false, threadEngagedM: 0.0127,
 *   threadEngagedMinM: 0.0127, threadPitchM: 0.00127, turns: 2 })
 *   // { mayTurn: false, obstacles: ['too little thread left'], threadLeftM: 0.01016, unknown: [] }
 */
export function seatingObstacles(input: SeatingFacts): {
  readonly mayTurn: boolean;
  readonly obstacles: readonly SeatingObstacle[];
  readonly threadLeftM: number | null;
  readonly unknown: readonly 'thread left'[];
} {
  const { threadPitchM, turns, threadEngagedM = null, threadEngagedMinM = null } = input;
  const { screwPlugStem } = stemTurn(input);
  refuseOutside({ threadPitchM }, ABOVE_ZERO);
  refuseOutside({ turns }, ZERO_OR_MORE);
  if (threadEngagedM !== null) refuseOutside({ threadEngagedM }, ZERO_OR_MORE);
  if (threadEngagedMinM !== null) refuseOutside({ threadEngagedMinM }, ZERO_OR_MORE);
  const changeM = (screwPlugStem === 'out' ? -1 : 1) * turns * threadPitchM;
  const threadLeftM = threadEngagedM === null ? null : threadEngagedM + changeM;
  const known = threadLeftM !== null && threadEngagedMinM !== null;
  const obstacles: SeatingObstacle[] = [];
  if (input.bellowsSeal) obstacles.push('bellows seal');
  if (input.stemPinned) obstacles.push('pinned stem');
  if (known && threadLeftM < threadEngagedMinM - 1e-9) obstacles.push('too little thread left');
  return { mayTurn: obstacles.length === 0, obstacles, threadLeftM, unknown: known ? [] : ['thread left'] };
}
