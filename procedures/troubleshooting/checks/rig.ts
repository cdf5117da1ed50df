import { ANY_HUB, type Check } from '../check.ts';

/** The test gear itself. Minutes and misread shares: judgement. */
export const rigChecks = {
  gaugeAgainstGauge: {
    title: 'Gauge against gauge',
    todo: 'Put a second gauge on the same point; compare at zero and at two pressures.',
    minutes: 3,
    hubs: ANY_HUB,
    misread: 0.03,
    outcomes: { agree: 'Within the two errors', differ: 'One reads wrong or sticks' },
    measured: {
      axis: 'percent of span that the two are apart, whichever way',
      soundSigma: 0.3,
      soundAt: 0.4,
      anywhere: [0, 50],
      bands: { agree: [-5, 1.5], differ: [1.5, 60] },
      typical: { differ: [1.5, 20] },
    },
  },
  rigHold: {
    title: 'Test rig shut in with its end plugged',
    todo: 'Plug the end, set the pressure, shut in, watch a minute. The rig is small: compare air lost, not pressure alone.',
    minutes: 4,
    hubs: ANY_HUB,
    misread: 0.03,
    outcomes: { holds: 'Less than 2 % a minute', falls: 'Falls faster' },
    measured: {
      axis: 'percent lost a minute',
      soundSigma: 0.4,
      soundAt: 0.4,
      anywhere: [0, 100],
      bands: { holds: [-5, 2], falls: [2, 120] },
      typical: { falls: [2.5, 60] },
    },
    when: (v) => v.rigUsed,
  },
  rigBleed: {
    title: 'Test regulator turned down with its end plugged',
    todo: 'Turn the regulator down; the gauge must follow the knob.',
    minutes: 2,
    hubs: ANY_HUB,
    misread: 0.03,
    outcomes: { follows: 'Follows the knob down', 'stays up': 'Stays up until vented by hand' },
    when: (v) => v.rigUsed,
  },
} as const satisfies Record<string, Check>;
