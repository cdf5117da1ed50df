import type { Story } from './field-stories.ts';
import {
  AIR_TO_CLOSE,
  BARE_DIAPHRAGM,
  DIAPHRAGM_WITH_POSITIONER,
  PISTON_ONE_RELAY,
  PISTON_RELAY_AN_END,
} from './valves.ts';

const PRACTICE = 'common practice, no source';
const FORCES = 'Force balance of the stem: p A = k (x + x0) + friction + plug force';

const LOCKED_DIAPHRAGM = { ...BARE_DIAPHRAGM, lockUp: true } as const;
const POSITIONER_AIR_SHUTS = { ...DIAPHRAGM_WITH_POSITIONER, airMovesStem: 'down' } as const;

/** Told in numbers where others say a word, and what the review of the tables asked for. */
export const STORIES_THIRD: readonly Story[] = [
  {
    told: 'Travel nothing at three fifths of the output, and no current: both told as numbers',
    on: BARE_DIAPHRAGM,
    complaint: 'doesNotMove',
    found: [
      ['travelAgainstOutput', -60],
      ['loopCurrent', -13.6],
    ],
    first: ['wiringOpen'],
    because: 'Nothing at the terminals is nothing in the wire, however it is told.',
    source: PRACTICE,
  },
  {
    told: 'Travel nothing at three fifths of the output, supply gauge at nothing',
    on: BARE_DIAPHRAGM,
    complaint: 'doesNotMove',
    found: [
      ['travelAgainstOutput', -60],
      ['supplyPressure', -100],
    ],
    first: ['supplyLost'],
    because: 'A gauge that was seen alive and stands at nothing says that no air comes.',
    source: PRACTICE,
  },
  {
    told: 'Open and stays; 12 psi leave the transducer, none arrives, a tube is flattened',
    on: AIR_TO_CLOSE,
    complaint: 'doesNotMove',
    found: [
      ['travelAgainstOutput', 70],
      ['sourceOutlet', 0],
      ['valveAgainstSource', -100],
      ['traceTubing', 'pinched'],
    ],
    first: ['signalTubeBlocked'],
    because: 'What leaves its source and does not arrive, without a bubble, is stopped on its way.',
    source: PRACTICE,
  },
  {
    told: 'Stands part way; both ends at nothing, air set at its pressure, the small cock before the positioner shut',
    on: PISTON_RELAY_AN_END,
    complaint: 'doesNotMove',
    found: [
      ['travelAgainstOutput', -35],
      ['supplyPressure', 0],
      ['topPressure', 0],
      ['bottomPressure', 0],
      ['traceTubing', 'air shut off'],
    ],
    first: ['positionerSupplyShut'],
    because: 'Air as far as the air set and none behind the cock.',
    source: PRACTICE,
  },
  {
    told: 'Signal arrives, nozzles covered in turn and neither end rises; air set right',
    on: PISTON_RELAY_AN_END,
    complaint: 'doesNotMove',
    found: [
      ['supplyPressure', -1],
      ['topPressure', 0],
      ['bottomPressure', 0],
      ['pressBothPlungers', 'no change'],
      ['listenExhaust', 'no bleed'],
    ],
    first: ['positionerSupplyShut'],
    because: 'Two restrictions, or two relays, seldom go on one day; the air of both is one tube.',
    source: PRACTICE,
  },
  {
    told: 'Output at its bottom, flow does not go lower; stem an eighth more open than asked, stops neutral',
    on: DIAPHRAGM_WITH_POSITIONER,
    complaint: 'passesWhenShut',
    found: [
      ['controllerOutput', 'wound down'],
      ['travelAgainstOutput', 13],
      ['handwheelAndStops', 'neutral'],
      ['outputGauge', 'without the stem'],
    ],
    first: ['objectInSeat'],
    because: 'Asked to shut and with its air let out, it is held off its seat by something.',
    source: PRACTICE,
  },
  {
    told: 'Sits and jumps; uncoupled behind locks the stem drags in its packing',
    on: PISTON_RELAY_AN_END,
    complaint: 'sticksThenJumps',
    found: [
      ['upAgainstDown', 26],
      ['handwheelFeel', 'heavy all over'],
      ['plugFollowsStem', 'drags'],
    ],
    first: ['packingTight'],
    because: 'With the actuator apart what still drags is the packing.',
    source: PRACTICE,
  },
  {
    told: 'Sits and jumps; uncoupled behind locks the stem lifts and turns as it should',
    on: PISTON_ONE_RELAY,
    complaint: 'sticksThenJumps',
    found: [
      ['upAgainstDown', 26],
      ['stemAndGland', 'bright'],
      ['handwheelFeel', 'heavy all over'],
      ['plugFollowsStem', 'plug hangs on it'],
    ],
    first: ['boreScored'],
    because: 'The friction stayed behind with the piston.',
    source: PRACTICE,
  },
  {
    told: 'Gauges of the cylinder part as asked, both ways, and the stem stays; the handwheel turns free',
    on: PISTON_ONE_RELAY,
    complaint: 'doesNotMove',
    found: [
      ['cylinderGaugesOnStep', 'without the stem'],
      ['handwheelFeel', 'free'],
    ],
    first: ['rodOff'],
    because: 'The relay does its work, and nothing holds the stem: it hangs on the piston no more.',
    source: PRACTICE,
  },
  {
    told: 'Gauges of the cylinder part as asked, both ways, and neither stem nor handwheel moves',
    on: PISTON_RELAY_AN_END,
    complaint: 'doesNotMove',
    found: [
      ['cylinderGaugesOnStep', 'without the stem'],
      ['handwheelFeel', 'fast'],
      ['handwheelAndStops', 'neutral'],
    ],
    first: ['plugSeized'],
    because: 'The relay does its work, and the stem is held fast.',
    source: PRACTICE,
  },
  {
    told: 'Pressure stands at the valve whatever is sent; a lock-up beside the actuator has let go',
    on: LOCKED_DIAPHRAGM,
    complaint: 'doesNotMove',
    found: [
      ['valveAgainstSource', 32],
      ['accessories', 'tripped'],
    ],
    first: ['lockUpShut'],
    because: 'It shuts in what stood there; the tube before it goes on with the source.',
    source: PRACTICE,
  },
  {
    told: 'Works below a fifth though the flow is as usual; a sixth of the span too much leaves the transducer',
    on: BARE_DIAPHRAGM,
    complaint: 'controlsPoorly',
    found: [
      ['controllerOutput', 'near shut'],
      ['sourceOutlet', 17],
      ['loopCurrent', 0],
      ['supplyPressure', 0],
    ],
    first: ['transducerOff'],
    because: 'The loop asks for less, because it gets more than it asks for.',
    source: PRACTICE,
  },
  {
    told: 'Swings, and stands still in manual; a pin of the linkage has play',
    on: POSITIONER_AIR_SHUTS,
    complaint: 'hunts',
    found: [
      ['holdInManual', 'stops'],
      ['feedbackLinkage', 'worn'],
      ['smallStep', 'jumps'],
    ],
    first: ['linkageWorn'],
    because: 'Play in the feedback makes the loop go round; cut, it rests.',
    source: PRACTICE,
  },
  {
    told: 'Stops part way; nothing to see at the lever, the handwheel had been left in',
    on: BARE_DIAPHRAGM,
    complaint: 'movesPartWay',
    found: [
      ['controllerOutput', 'wound up'],
      ['travelAgainstOutput', -38],
      ['airAtTravel', 36],
      ['handwheelAndStops', 'engaged'],
    ],
    first: ['stopEngaged'],
    because: 'All the air that is asked for and no more travel: it stands against the handwheel.',
    source: FORCES,
  },
];
