import { AIR_ON, ANY_HUB, BYPASSED, type Check, ISOLATED } from '../check.ts';
import { actuatorGauge, type ValveFacts } from '../valve-facts.ts';

const diaphragm = (v: ValveFacts) => v.actuator === 'diaphragm';
const spring = (v: ValveFacts) => v.spring;

/** A spring actuator, diaphragm or piston, from outside. Minutes and misread shares: judgement. */
export const actuatorChecks = {
  airAtTravel: {
    title: 'Actuator air at a known travel',
    todo: 'Read travel and actuator pressure at the same moment, at rest; say from which side it came. With the process on, the plug force is in it.',
    minutes: 4,
    hubs: AIR_ON,
    gauges: (v) => [actuatorGauge(v)],
    misread: 0.05,
    outcomes: {
      'as it should be': 'As spring and area ask, within 8 % of their range',
      'more than it should': 'More air for this travel than spring and area ask',
      'less than it should': 'Less air for this travel than spring and area ask',
      'does not build': 'Stays far below what is sent, or sends do not move it',
    },
    measured: {
      axis: 'percent of bench set range, above what spring and area ask at this travel',
      soundSigma: 4,
      anywhere: [-80, 120],
      bands: {
        'as it should be': [-8, 8],
        'more than it should': [8, 150],
        'less than it should': [-110, -8],
      },
      typical: { 'more than it should': [10, 70], 'less than it should': [-60, -10] },
      numberOf: { 'does not build': [-100, -15] },
    },
    when: spring,
  },
  soapCaseJoint: {
    title: 'Soap test of the case joint',
    todo: 'With air in the case, soap all round the flange.',
    minutes: 5,
    hubs: AIR_ON,
    misread: 0.05,
    outcomes: { none: 'No bubbles', bubbles: 'Bubbles at the joint' },
    when: diaphragm,
  },
  soapAdjuster: {
    title: 'Soap test at the spring adjuster',
    todo: 'Soap round adjuster and spring side. No air belongs there: air here has come through the diaphragm.',
    minutes: 5,
    hubs: AIR_ON,
    misread: 0.06,
    outcomes: { none: 'No bubbles', bubbles: 'Bubbles or a draught' },
    when: (v) => diaphragm(v) && v.springHeldBy === 'adjuster',
  },
  soapStemSeal: {
    title: 'Soap test where the stem enters the case',
    todo: 'Soap round the stem below the case. Not to be mixed with the adjuster.',
    minutes: 5,
    hubs: AIR_ON,
    misread: 0.06,
    outcomes: { none: 'No bubbles', bubbles: 'Bubbles round the stem' },
    // With air above the diaphragm the stem passes the side without air.
    when: (v) => diaphragm(v) && v.airMovesStem === 'up',
  },
  springSideVent: {
    title: 'Vent of the side without air',
    todo: 'Look that it is open, hold a hand before it.',
    minutes: 2,
    hubs: AIR_ON,
    misread: 0.06,
    outcomes: {
      clear: 'Open, no air comes',
      'air comes': 'Air keeps coming',
      plugged: 'Plugged, painted over, a nest',
    },
    when: spring,
  },
  soapActuatorTube: {
    title: 'Soap test of the tube from positioner to actuator',
    todo: 'Soap each joint, with air on.',
    minutes: 4,
    hubs: AIR_ON,
    misread: 0.05,
    outcomes: { none: 'No bubbles', bubbles: 'Steady bubbles' },
    when: (v) => spring(v) && v.positioner !== 'none',
  },
  blockActuatorSide: {
    title: 'Blocking-in, gauge on the actuator side',
    todo: 'Half pressure. Shut the cock at the actuator and vent the source side: a cock that passes shows itself. Soap the gauge joint; watch the fall. Never crush a tube; without a cock leave this check.',
    minutes: 12,
    hubs: BYPASSED,
    consent: true,
    gauges: (v) => (v.spring ? [actuatorGauge(v)] : ['cylinderTop']),
    exposes: () => ['fitGaugeIntoLiveLine'],
    misread: 0.05,
    outcomes: {
      tight: 'Loses less than 2 % a minute',
      'slow fall': '2 to 20 % a minute',
      'fast fall': 'More than 20 % a minute, or cannot be held',
    },
    measured: {
      axis: 'percent lost a minute',
      soundSigma: 0.5,
      soundAt: 0.5,
      anywhere: [0, 200],
      bands: { tight: [-5, 2], 'slow fall': [2, 20], 'fast fall': [20, 400] },
      typical: { 'slow fall': [2.2, 20], 'fast fall': [20, 150] },
    },
  },
  benchSetUncoupled: {
    title: 'Bench set with the stem uncoupled',
    todo: 'Isolated: uncouple. Limited air, hands clear: read where it starts and where it ends. Vent and show zero after.',
    minutes: 45,
    hubs: ISOLATED,
    testAir: true,
    exposes: () => ['releaseStemConnector', 'strokeByTestAir'],
    misread: 0.04,
    outcomes: {
      'as on the sheet': 'Start and end within 5 % of the range',
      'both high': 'Start and end both high',
      'both low': 'Start and end both low',
      'span wrong': 'Start right, span wrong',
      'does not stroke': 'Does not stroke',
      'up and down apart': 'Up and down far apart, the plug uncoupled',
    },
    when: (v) => diaphragm(v) && spring(v),
  },
  handwheelAndStops: {
    title: 'Handwheel and travel stops',
    todo: 'Look: neutral, stops at rated travel.',
    minutes: 1,
    hubs: ANY_HUB,
    misread: 0.03,
    outcomes: { neutral: 'Neutral', engaged: 'Engaged, or a stop wound in' },
  },
  openActuator: {
    title: 'Actuator opened and looked at',
    todo: 'Isolated, spring released as its kind asks, air shown gone: open it and look.',
    minutes: 120,
    hubs: ISOLATED,
    exposes: (v) =>
      v.actuator === 'piston'
        ? ['openPistonCylinder']
        : v.springHeldBy === 'adjuster'
          ? ['backOffAdjuster', 'loosenCaseBolts']
          : ['loosenShortCaseBolts', 'loosenLongCaseBolts'],
    misread: 0.02,
    outcomes: {
      sound: 'No damage',
      'diaphragm torn': 'Diaphragm torn or porous',
      'spring broken': 'Spring broken or corroded',
      'piston seal worn': 'Piston seal worn',
      'bore scored': 'Bore scored or rusty',
      'joint loose': 'Plate, nut or rod joint loose',
    },
    onlyOn: { 'diaphragm torn': 'diaphragm', 'piston seal worn': 'piston', 'bore scored': 'piston' },
  },
} as const satisfies Record<string, Check>;
