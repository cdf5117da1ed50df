import { AIR_ON, ANY_HUB, BYPASSED, type Check, ISOLATED } from '../check.ts';
import { upDownPercent, usualFriction } from '../friction.ts';
import { actuatorGauge, hasPositioner, type ValveFacts } from '../valve-facts.ts';

const STROKE = {
  'full and smooth': 'Full travel within 2 %, smooth',
  'short of open': 'Does not reach open',
  'short of shut': 'Does not reach its seat',
  'does not move': 'Does not move',
  'in jumps': 'Moves in jumps',
  'other way': 'Moves against the signal',
  slow: 'Full travel, but slow',
  overshoots: 'Overshoots or keeps swinging',
} as const;

const actuatorAir = (v: ValveFacts) =>
  v.spring ? ([actuatorGauge(v)] as const) : (['cylinderTop', 'cylinderBottom'] as const);

/** How the stem moves. Minutes and misread shares: judgement. */
export const strokeChecks = {
  travelAgainstOutput: {
    title: 'Travel against the output',
    todo: 'Read the travel indicator and the output at the same moment.',
    minutes: 2,
    hubs: ['in service', 'bypassed'],
    misread: 0.04,
    outcomes: {
      agrees: 'Within 3 % of travel',
      'stays shut': 'Stays shut',
      'stays open': 'Stays open',
      'stays part way': 'Stays in one middle position',
      'less open': 'Less open than asked',
      'more open': 'More open than asked',
      'other way': 'Moves against the output',
    },
    measured: {
      axis: 'percent of travel more open than asked',
      soundSigma: 1.2,
      // Without a positioner friction and the source leave it off by something.
      soundOn: (v) =>
        hasPositioner(v) ? { soundSigma: 1.2 } : { soundSigma: Math.hypot(1.5, 100 * usualFriction(v)) },
      anywhere: [-100, 100],
      bands: { agrees: [-3, 3], 'less open': [-110, -3], 'more open': [3, 110] },
      typical: { 'less open': [-40, -4], 'more open': [4, 40] },
      // Read off once, a stem that stands reads as far from what is asked as the output is: from a fifth to full, since a
      // controller that gets no answer goes on to its end.
      numberOf: {
        'stays shut': [-102, -18],
        'stays open': [8, 102],
        'stays part way': [-50, 50],
        'other way': [-60, 60],
      },
    },
  },
  smallStep: {
    title: 'Stem on a small step each way',
    todo: 'With consent, step the output up by a twentieth, then down; watch the stem.',
    minutes: 5,
    hubs: AIR_ON,
    consent: true,
    misread: 0.05,
    outcomes: {
      smooth: 'Moves within 2 s and stops',
      'no move': 'Does not move',
      jumps: 'Sits still, then jumps',
      slow: 'Takes more than three times its usual time',
      swings: 'Overshoots or keeps swinging',
      'other way': 'Moves the wrong way',
    },
  },
  strokeByController: {
    title: 'Full stroke from the controller, on the bypass',
    todo: 'Hands clear. Give nothing, a quarter, half, three quarters, full, and back; read travel at each.',
    minutes: 12,
    hubs: BYPASSED,
    consent: true,
    misread: 0.04,
    outcomes: STROKE,
  },
  strokeOnTestAir: {
    title: 'Full stroke from a local source',
    todo: 'Isolated: limited air at the actuator or the positioner inlet, hands clear. Nothing to full and back; vent and show zero after.',
    minutes: 20,
    hubs: ISOLATED,
    testAir: true,
    exposes: () => ['connectTestAir', 'strokeByTestAir'],
    misread: 0.04,
    outcomes: STROKE,
  },
  leavesSeatAt: {
    title: 'Actuator air at which the stem leaves its seat',
    todo: 'On the bypass and with no pressure drop over the plug: creep off the seat and read.',
    minutes: 10,
    hubs: BYPASSED,
    consent: true,
    gauges: actuatorAir,
    misread: 0.06,
    outcomes: {
      'as it should be': 'Within 9 % of the range',
      high: 'Higher than that',
      low: 'Lower than that',
      never: 'Never leaves',
    },
    measured: {
      axis: 'percent of bench set range above the seat end and its friction',
      soundSigma: 4,
      anywhere: [-80, 120],
      bands: { 'as it should be': [-9, 9], high: [9, 150], low: [-110, -9] },
      typical: { high: [10, 70], low: [-60, -10] },
    },
  },
  upAgainstDown: {
    title: 'Actuator air up against down at mid travel',
    todo: 'Come to half travel from below, read; from above, read. The difference is twice the friction.',
    minutes: 15,
    hubs: BYPASSED,
    consent: true,
    gauges: actuatorAir,
    misread: 0.06,
    outcomes: {
      usual: 'Up to 8 % of the range',
      wide: '8 to 30 %',
      'very wide': 'More than 30 %',
      narrow: 'Next to nothing: under 1 %',
    },
    measured: {
      axis: 'percent of bench set range between up and down',
      soundSigma: 1.4,
      soundAt: 4.5,
      // The packing of the sheet; a positioner that creeps adds what its relay needs to turn round.
      soundOn: (v) => {
        const soundAt = 0.85 * upDownPercent(v, usualFriction(v)) + (hasPositioner(v) ? 0.5 : 0);
        return { soundAt, soundSigma: Math.hypot(1, 0.3 * soundAt) };
      },
      anywhere: [0, 120],
      bands: { usual: [1, 8], wide: [8, 30], 'very wide': [30, 150], narrow: [-20, 1] },
      typical: { wide: [9, 30], 'very wide': [30, 90], narrow: [0, 0.8] },
    },
  },
  handwheelFeel: {
    title: 'Feel of handwheel or lever over the stroke',
    todo: 'On the bypass, the output held where no air is on the actuator: turn it through by hand, then back to neutral.',
    minutes: 10,
    hubs: BYPASSED,
    consent: true,
    misread: 0.08,
    outcomes: {
      even: 'Even effort',
      'heavy all over': 'Heavy everywhere',
      'heavy in one place': 'Heavy in one place',
      free: 'Almost no load',
      fast: 'Does not turn',
    },
  },
  stemAndGland: {
    title: 'Stem and gland, by look',
    todo: 'Look at the stem over its stroke, and at the gland nuts.',
    minutes: 3,
    hubs: ANY_HUB,
    misread: 0.1,
    outcomes: {
      bright: 'Bright, straight',
      'scored or bent': 'Scored, corroded or bent',
      'gland tight': 'Follower hard down, or dry',
    },
  },
  couplingMarks: {
    title: 'Stem coupling and its marks',
    todo: 'Look: marks in line, bolts tight.',
    minutes: 3,
    hubs: ANY_HUB,
    misread: 0.04,
    outcomes: { 'in line': 'Marks in line', slipped: 'Out of line, bolts loose' },
  },
  plugFollowsStem: {
    title: 'Stem turned by hand against the plug',
    todo: 'Isolated: with the coupling released, lift and turn the stem; feel the plug hang on it.',
    minutes: 20,
    hubs: ISOLATED,
    exposes: () => ['releaseStemConnector'],
    misread: 0.06,
    outcomes: {
      'plug hangs on it': 'Its weight and its seat are felt',
      'nothing on it': 'Lifts free, no seat is felt',
      drags: 'It hangs on it and drags in its packing or guide',
      fast: 'Does not move',
    },
  },
} as const satisfies Record<string, Check>;
