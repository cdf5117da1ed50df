import { type CauseId, SOUND } from './causes.ts';

/**
 * Two faults at once. Any two that do not shut each other out may meet by chance, and two complaints at once are seldom;
 * these meet for a reason: where the one is there, the other is four times as likely as it is by itself. Judgement.
 */
const PAIR_BY_CHANCE_FACTOR = 0.25;
const PAIR_FOR_A_REASON_FACTOR = 4;

interface Reason {
  readonly of: readonly CauseId[];
  readonly with: readonly CauseId[];
  readonly because: string;
}

export const REASONS: readonly Reason[] = [
  {
    of: ['wetAir'],
    with: [
      'transducerRestriction',
      'transducerNozzle',
      'controllerRestriction',
      'controllerNozzle',
      'relayRestriction',
      'relayNozzle',
      'restrictionTop',
      'restrictionBottom',
      'nozzleTop',
      'nozzleBottom',
      'relaySticks',
      'relayTopSticks',
      'relayBottomSticks',
      'signalTubeBlocked',
      'supplyStarves',
    ],
    because: 'Dirty air is the cause, the plugged part its effect.',
  },
  {
    of: ['springTooTight', 'springSlack'],
    with: ['packingTight', 'plugSetWrong'],
    because: 'Set together at one overhaul.',
  },
  {
    of: ['tubesCrossed'],
    with: ['zeroOrSpanWrong'],
    because: 'Adjusted against crossed tubes.',
  },
  {
    of: ['caseJoint'],
    with: ['couplingSlipped'],
    because: 'Put together in a hurry.',
  },
  {
    of: ['equaliserOpen'],
    with: ['pistonSeals'],
    because: 'An open equalising valve hides a piston that passes.',
  },
  {
    of: ['supplyLow'],
    with: ['diaphragmPorous', 'caseJoint', 'lockUpShut'],
    because: 'A low supply hides a leak, or has let the lock-up shut.',
  },
  {
    of: ['packingTight'],
    with: ['transducerOff', 'tunedTooTight', 'packingLeaks', 'linkageWorn'],
    because: 'Somebody made up for the friction elsewhere, or drew the gland down on a leak.',
  },
  {
    of: ['stemBent'],
    with: ['packingLeaks', 'packingTight'],
    because: 'A scored stem cuts the packing.',
  },
  {
    of: ['cavitation'],
    with: ['seatWorn', 'tooSmall', 'fluidChanged'],
    because: 'The same flow that pits the trim.',
  },
  {
    of: ['gaugeWrong'],
    with: ['supplyLow', 'transducerOff', 'zeroOrSpanWrong', 'springTooTight', 'springSlack'],
    because: 'Set by a gauge that reads wrong.',
  },
];

/** Nothing beside a sound valve, and not two answers to one question. */
const ONE_OF: readonly (readonly CauseId[])[] = [
  ['springTooTight', 'springSlack', 'springBroken', 'wrongSpring'],
  ['diaphragmTorn', 'diaphragmPorous'],
  ['transducerRestriction', 'transducerNozzle'],
  ['controllerRestriction', 'controllerNozzle'],
  ['relayRestriction', 'relayNozzle', 'relaySticks'],
  ['supplyLost', 'supplyLow', 'supplyHigh', 'positionerSupplyShut'],
  ['linkageOff', 'linkageWorn'],
  ['tooLarge', 'tooSmall'],
  ['plugSeized', 'plugOff'],
  ['wiringOpen', 'currentLow'],
  ['seatWorn', 'wrongTrim'],
];

/** By how much two causes meet, times both weights. 0: they shut each other out. */
export function pairFactor(one: CauseId, other: CauseId): number {
  if (one === other || one === SOUND || other === SOUND) return 0;
  if (ONE_OF.some((group) => group.includes(one) && group.includes(other))) return 0;
  return reasonOf(one, other) === null ? PAIR_BY_CHANCE_FACTOR : PAIR_FOR_A_REASON_FACTOR;
}

/** @example reasonOf('wetAir', 'relayNozzle') // 'Dirty air is the cause, the plugged part its effect.' */
function reasonOf(one: CauseId, other: CauseId): string | null {
  const found = REASONS.find(
    (reason) =>
      (reason.of.includes(one) && reason.with.includes(other)) ||
      (reason.of.includes(other) && reason.with.includes(one)),
  );
  return found?.because ?? null;
}
