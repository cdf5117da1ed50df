import type { CauseId } from '../../../procedures/troubleshooting/causes.ts';
import type { CheckId } from '../../../procedures/troubleshooting/checks.ts';
import type { OpeningId } from '../../../procedures/troubleshooting/openings.ts';
import type { ValveFacts } from '../../../procedures/troubleshooting/valve-facts.ts';
import { NOZZLES, PRACTICE } from './story-sources.ts';
import {
  AIR_TO_CLOSE,
  BARE_DIAPHRAGM,
  DIAPHRAGM_WITH_POSITIONER,
  ELECTRIC_POSITIONER,
  FULLY_FITTED,
  PISTON_ONE_RELAY,
  PISTON_RELAY_AN_END,
  SPRING_PISTON,
} from './valves.ts';

/** A word of the check, or a number on its axis. */
type Found = readonly [check: CheckId, found: string | number];

export interface Story {
  /** What was complained of and found, as it is told at the valve. */
  readonly told: string;
  readonly on: ValveFacts;
  /** What the operator said as the job opened. */
  readonly complaint?: OpeningId;
  readonly found: readonly Found[];
  /** Whichever stands first is one of these; several where these readings do not tell them apart. */
  readonly first: readonly CauseId[];
  readonly because: string;
  readonly source: string;
}

export const STORIES: readonly Story[] = [
  {
    told: 'Asked open, stays shut; current right, supply right, nothing leaves the transducer',
    on: BARE_DIAPHRAGM,
    found: [
      ['controllerOutput', 'wound up'],
      ['travelAgainstOutput', 'stays shut'],
      ['loopCurrent', 0],
      ['supplyPressure', 0],
      ['sourceOutlet', -95],
    ],
    first: ['transducerRestriction'],
    because: 'Current in and air at its inlet, no air out: its restriction passes none to its nozzle.',
    source: NOZZLES,
  },
  {
    told: 'Asked open, stays shut; no current at the terminals',
    on: BARE_DIAPHRAGM,
    found: [
      ['controllerOutput', 'wound up'],
      ['travelAgainstOutput', 'stays shut'],
      ['loopCurrent', 'none'],
    ],
    first: ['wiringOpen'],
    because: 'Without current nothing behind it can answer.',
    source: PRACTICE,
  },
  {
    told: 'Air shuts it, and it stays shut: the transducer gives its most whatever is asked',
    on: AIR_TO_CLOSE,
    found: [
      ['controllerOutput', 'wound up'],
      ['travelAgainstOutput', 'stays shut'],
      ['loopCurrent', 0.02],
      ['sourceOutlet', 70],
    ],
    first: ['transducerNozzle'],
    because: 'A plugged nozzle holds the back pressure at its top, and full air shuts this valve.',
    source: NOZZLES,
  },
  {
    told: 'Opens late, after the spring was set; up and down as usual',
    on: BARE_DIAPHRAGM,
    found: [
      ['airAtTravel', 17],
      ['leavesSeatAt', 'high'],
      ['upAgainstDown', 4],
      ['travelAgainstOutput', -16],
      ['sourceOutlet', 0],
    ],
    first: ['springTooTight'],
    because: 'More air by the same amount both ways is preload; friction would part up from down.',
    source: 'Bench set: p(x) = k (x + x0) / A, so that x0 shifts every pressure alike',
  },
  {
    told: 'Opens early and passes a little when shut; less air at each travel',
    on: BARE_DIAPHRAGM,
    found: [
      ['airAtTravel', -18],
      ['leavesSeatAt', 'low'],
      ['leakShut', 'passes'],
      ['upAgainstDown', 4],
    ],
    first: ['springSlack', 'springBroken'],
    because:
      'The spring gives too little. A cracked one that carries part of its load reads like a slack setting.',
    source: PRACTICE,
  },
  {
    told: 'Sits, then jumps, since it was repacked; thirty per cent between up and down',
    on: AIR_TO_CLOSE,
    found: [
      ['smallStep', 'jumps'],
      ['upAgainstDown', 30],
      ['stemAndGland', 'gland tight'],
    ],
    first: ['packingTight'],
    because: 'Friction is half the difference of air up and down, and the gland is drawn down.',
    source: 'Ind. Eng. Chem. Res. 44 (2005) 6708: valve friction makes loops swing',
  },
  {
    told: 'Travel is right, but a draught comes out of the adjuster',
    on: DIAPHRAGM_WITH_POSITIONER,
    found: [
      ['travelAgainstOutput', 0],
      ['soapAdjuster', 'bubbles'],
      ['springSideVent', 'air comes'],
      ['soapCaseJoint', 'none'],
    ],
    first: ['diaphragmTorn', 'diaphragmPorous'],
    because: 'Air on the spring side came through the diaphragm; the positioner makes the loss good.',
    source: PRACTICE,
  },
  {
    told: 'All at once it only opens or shuts; the lever hangs free',
    on: DIAPHRAGM_WITH_POSITIONER,
    found: [
      ['trend', 'sudden change'],
      ['feedbackLinkage', 'off'],
      ['strokeByController', 'in jumps'],
    ],
    first: ['linkageOff'],
    because: 'Without feedback the positioner drives to an end until its input turns over.',
    source: PRACTICE,
  },
  {
    told: 'Goes on swinging in manual; stem bright, handwheel even',
    on: DIAPHRAGM_WITH_POSITIONER,
    found: [
      ['holdInManual', 'goes on'],
      ['smallStep', 'swings'],
      ['outputGauge', 'swings'],
      ['stemAndGland', 'bright'],
      ['handwheelFeel', 'even'],
    ],
    first: ['gainTooHigh'],
    because: 'The loop is cut and it still swings, without friction: the positioner does it.',
    source: PRACTICE,
  },
  {
    told: 'Will not hold; much air at the exhaust, both ends low, the handle across the cylinder stands open',
    on: PISTON_ONE_RELAY,
    found: [
      ['listenExhaust', 'loud'],
      ['topPressure', 30],
      ['bottomPressure', 28],
      ['equaliser', 'open'],
    ],
    first: ['equaliserOpen'],
    because: 'Both ends are joined: what one relay feeds the other throws away.',
    source: PRACTICE,
  },
  {
    told: 'After the overhaul it runs away from every small step',
    on: PISTON_ONE_RELAY,
    found: [
      ['trend', 'sudden change'],
      ['smallStep', 'other way'],
      ['cylinderGaugesOnStep', 'other way'],
      ['strokeByController', 'other way'],
    ],
    first: ['tubesCrossed'],
    because: 'The end that should empty fills: feedback drives it on in place of back.',
    source: PRACTICE,
  },
  {
    told: 'Bottom stays full with its nozzle clear, and its nozzle gauge stands at the top',
    on: PISTON_RELAY_AN_END,
    found: [
      ['bottomPressure', 99],
      ['bothFlappersAgainstGauges', 'bottom clear, high'],
      ['nozzlePressureBottom', 'stuck high'],
    ],
    first: ['nozzleBottom'],
    because: 'A clear nozzle should have let its pressure fall: it is plugged.',
    source: NOZZLES,
  },
  {
    told: 'Bottom stays full with its nozzle clear, and its nozzle gauge stands at nothing',
    on: PISTON_RELAY_AN_END,
    found: [
      ['bottomPressure', 99],
      ['bothFlappersAgainstGauges', 'bottom clear, high'],
      ['nozzlePressureBottom', 'stuck low'],
    ],
    first: ['relayBottomSticks'],
    because: 'The nozzle asks for less and the relay does not answer it.',
    source: PRACTICE,
  },
  {
    told: 'Top at nothing; the plunger is pressed and it comes back',
    on: PISTON_RELAY_AN_END,
    found: [
      ['topPressure', 1],
      ['flapperByHand', 'one way'],
      ['pressBothPlungers', 'top comes back'],
    ],
    first: ['restrictionTop'],
    because: 'The plunger clears the hole that feeds that nozzle, and nothing else.',
    source: NOZZLES,
  },
  {
    told: 'Air keeps coming from the vent of the spring side of a cylinder',
    on: SPRING_PISTON,
    found: [
      ['springSideVent', 'air comes'],
      ['blockActuatorSide', 8],
    ],
    first: ['pistonSealSpring'],
    because: 'The side without air gets it past the piston alone.',
    source: PRACTICE,
  },
  {
    told: 'Current and supply right, no output, nothing moves; linkage tight',
    on: ELECTRIC_POSITIONER,
    found: [
      ['loopCurrent', 0],
      ['supplyPressure', 1],
      ['outputGauge', 'none'],
      ['travelAgainstOutput', 'stays shut'],
      ['feedbackLinkage', 'tight'],
    ],
    first: ['electricPartDead'],
    because: 'Current and air go in and no air comes out: what turns one into the other is dead.',
    source: PRACTICE,
  },
  {
    told: 'Stopped part way all at once; a relay beside the actuator stands tripped',
    on: FULLY_FITTED,
    found: [
      ['trend', 'sudden change'],
      ['travelAgainstOutput', 'stays part way'],
      ['accessories', 'tripped'],
    ],
    first: ['lockUpShut'],
    because: 'A lock-up shuts the air in where it stands; a trip lets it out, and the spring drives it home.',
    source: PRACTICE,
  },
  {
    told: 'Less flow than the travel explains, more drop over the valve, line open',
    on: AIR_TO_CLOSE,
    found: [
      ['travelAgainstOutput', 1],
      ['flowAgainstTravel', 'less'],
      ['pressureDrop', 'high'],
      ['lineUp', 'as it should be'],
    ],
    first: ['fouled', 'fluidChanged', 'wrongTrim'],
    because: 'What narrows inside the valve leaves it the drop; what narrows the line takes the drop away.',
    source: PRACTICE,
  },
  {
    told: 'Wide open and not enough; little drop left over the valve, a strainer fills',
    on: BARE_DIAPHRAGM,
    found: [
      ['controllerOutput', 'wound up'],
      ['pressureDrop', 'low'],
      ['lineUp', 'block throttles'],
    ],
    first: ['lineThrottled'],
    because: 'The drop has gone to what stands before or behind the valve.',
    source: PRACTICE,
  },
  {
    told: 'Reaches its seat, full stroke, and hisses; clearly above its class',
    on: BARE_DIAPHRAGM,
    found: [
      ['strokeByController', 'full and smooth'],
      ['leakShut', 'passes'],
      ['noise', 'hiss'],
      ['airAtTravel', 0],
    ],
    first: ['seatWorn'],
    because: 'Stem down and spring right: it leaks where the plug sits.',
    source: PRACTICE,
  },
  {
    told: 'Air shuts it, yet it stands off its seat at full air; stops neutral, marks in line, leaves at less air',
    on: AIR_TO_CLOSE,
    found: [
      ['strokeByController', 'short of shut'],
      ['leakShut', 'passes much'],
      ['handwheelAndStops', 'neutral'],
      ['couplingMarks', 'in line'],
      ['leavesSeatAt', 'low'],
    ],
    first: ['objectInSeat'],
    because:
      'It stops where something lies: the spring lifts it off there at less air than its seat would ask.',
    source: PRACTICE,
  },
  {
    told: 'Slow on large moves; supply right at rest, falls by a third in a stroke, rust in the bowl',
    on: DIAPHRAGM_WITH_POSITIONER,
    found: [
      ['supplyPressure', -5],
      ['supplyDroop', 35],
      ['filterBowl', 'dirt'],
      ['outputGauge', 'slow'],
    ],
    first: ['supplyStarves'],
    because: 'Pressure that is there until air flows means that little can flow.',
    source: 'US NRC Information Notice 81-38: dirt and rust in the air stop air-operated valves',
  },
  {
    told: 'Swings as a sine, stands still in manual, follows small steps',
    on: BARE_DIAPHRAGM,
    found: [
      ['controllerOutput', 'swings'],
      ['trend', 'fast swing'],
      ['holdInManual', 'stops'],
      ['smallStep', 'smooth'],
    ],
    first: ['tunedTooTight'],
    because: 'Cut, the loop stands still, and the valve does what it is asked: the controller swings it.',
    source: 'Ind. Eng. Chem. Res. 44 (2005) 6708: a third of controllers perform acceptably',
  },
  {
    told: 'Stands further open than asked; bubbles round the case flange, and air shuts this valve',
    on: AIR_TO_CLOSE,
    found: [
      ['travelAgainstOutput', 12],
      ['soapCaseJoint', 'bubbles'],
      ['soapAdjuster', 'none'],
      ['springSideVent', 'clear'],
    ],
    first: ['caseJoint'],
    because: 'Air is lost to the outside at the flange, and what is lost opens a valve that air shuts.',
    source: PRACTICE,
  },
  {
    told: 'Stem and pointer move, the flow does not care; something rattles',
    on: PISTON_ONE_RELAY,
    found: [
      ['travelAgainstOutput', 0],
      ['flowAgainstTravel', 'does not follow'],
      ['noise', 'rattle'],
    ],
    first: ['plugOff'],
    because: 'What throttles no longer hangs on what moves.',
    source: PRACTICE,
  },
  {
    told: 'Asks for more and gets slower; loud exhaust, equalising valve shut and quiet, air goes past the piston',
    on: PISTON_RELAY_AN_END,
    found: [
      ['smallStep', 'slow'],
      ['listenExhaust', 'loud'],
      ['equaliser', 'shut'],
      ['equaliserFeel', 'quiet'],
      ['crossLeak', 'passes'],
    ],
    first: ['pistonSeals'],
    because: 'Air goes from end to end, and not by the equalising valve.',
    source: 'PMC7398137: leakage is the most common fault of pneumatic valves',
  },
];
