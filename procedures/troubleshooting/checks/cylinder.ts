import { AIR_ON, ANY_HUB, BYPASSED, type Check, ISOLATED } from '../check.ts';
import type { ValveFacts } from '../valve-facts.ts';

const doubleActing = (v: ValveFacts) => !v.spring;

const END = {
  between: 'Between 40 and 90 % of supply',
  full: 'Full supply',
  empty: 'Nothing, on a gauge that was seen alive',
  low: 'Between 10 and 40 % of supply',
} as const;

const END_MEASURED = {
  axis: 'percent of supply',
  soundSigma: 12,
  soundAt: 65,
  anywhere: [0, 105],
  bands: { between: [40, 92], full: [92, 120], empty: [-20, 10], low: [10, 40] },
  typical: { between: [45, 85], full: [96, 101], empty: [0, 6], low: [12, 38] },
} as const;

/** A cylinder with air on both sides. Minutes and misread shares: judgement. */
export const cylinderChecks = {
  topPressure: {
    title: 'Top of the cylinder, at rest between its ends',
    todo: 'Ask for a middle position, let it rest, read the top gauge. Standing at an end, full and nothing is sound.',
    minutes: 3,
    hubs: AIR_ON,
    gauges: () => ['cylinderTop'],
    misread: 0.04,
    outcomes: END,
    measured: END_MEASURED,
    zero: 'empty',
    when: doubleActing,
  },
  bottomPressure: {
    title: 'Bottom of the cylinder, at rest between its ends',
    todo: 'Ask for a middle position, let it rest, read the bottom gauge.',
    minutes: 3,
    hubs: AIR_ON,
    gauges: () => ['cylinderBottom'],
    misread: 0.04,
    outcomes: END,
    measured: END_MEASURED,
    zero: 'empty',
    when: doubleActing,
  },
  cylinderGaugesOnStep: {
    title: 'Both cylinder gauges while the output steps a tenth',
    todo: 'With consent, step the output; watch both gauges and the stem. The end that the signal loads must lead.',
    minutes: 5,
    hubs: AIR_ON,
    consent: true,
    gauges: () => ['cylinderTop', 'cylinderBottom'],
    misread: 0.05,
    outcomes: {
      'one up, one down': 'The loaded end rises, the other falls, both settle',
      none: 'Neither changes',
      'runs open': 'Go to full opening and stay',
      'runs shut': 'Go to full shutting and stay',
      slow: 'Change slowly',
      swings: 'Keep swinging',
      'other way': 'Act the wrong way and run to the end',
      'without the stem': 'The pressures part far as asked, the stem hardly moves',
    },
    when: doubleActing,
  },
  soapCylinder: {
    title: 'Soap test of rod seal and end caps',
    todo: 'Soap where the rod leaves the cylinder, and both end caps.',
    minutes: 6,
    hubs: AIR_ON,
    misread: 0.05,
    outcomes: { none: 'No bubbles', bubbles: 'Bubbles at rod or cap' },
    when: (v) => v.actuator === 'piston',
  },
  soapOutputTubes: {
    title: 'Soap test of the tubes from positioner to actuator',
    todo: 'Soap each joint, with air on.',
    minutes: 6,
    hubs: AIR_ON,
    misread: 0.05,
    outcomes: { none: 'No bubbles', top: 'Bubbles on the top tube', bottom: 'Bubbles on the bottom tube' },
    when: doubleActing,
  },
  equaliser: {
    title: 'Equalising valve across the cylinder',
    todo: 'Look whether it is shut.',
    minutes: 1,
    hubs: ANY_HUB,
    misread: 0.02,
    outcomes: { shut: 'Shut', open: 'Open, or part open' },
    when: doubleActing,
  },
  equaliserFeel: {
    title: 'Air through the equalising valve, by hand on its body',
    todo: 'Hold an end under pressure; feel and listen at the valve, then shut it hard and look whether the pressures part.',
    minutes: 5,
    hubs: BYPASSED,
    consent: true,
    gauges: () => ['cylinderTop', 'cylinderBottom'],
    misread: 0.08,
    outcomes: { quiet: 'Quiet, nothing changes', part: 'The pressures part as it is shut' },
    when: doubleActing,
  },
  crossLeak: {
    title: 'Leak from one end to the other',
    todo: 'Isolated: limited air on the side that already holds the piston at its end, the other side open. Hands clear; vent and show zero after.',
    minutes: 15,
    hubs: ISOLATED,
    testAir: true,
    exposes: () => ['strokeByTestAir'],
    misread: 0.03,
    outcomes: { none: 'No steady flow', passes: 'Steady flow from the open end' },
    when: doubleActing,
  },
} as const satisfies Record<string, Check>;
