import { AIR_ON, type Check } from '../check.ts';
import { hasPositioner } from '../valve-facts.ts';

/** The air set. Minutes and misread shares: judgement. */
export const airChecks = {
  supplyPressure: {
    title: 'Supply pressure, no air being used',
    todo: 'Read the supply gauge against what the sheet allows. A gauge that is made for a signal may not reach so far.',
    minutes: 2,
    hubs: AIR_ON,
    gauges: () => ['supply'],
    misread: 0.02,
    outcomes: {
      normal: 'As the sheet allows, within 6 %',
      low: 'Lower than that',
      none: 'No pressure, on a gauge that was seen alive',
      high: 'Higher than that',
    },
    measured: {
      axis: 'percent past what the sheet allows; 0 inside it',
      soundSigma: 2,
      // A regulator gives way by a little to what the relays of a cylinder bleed all the time. Judgement.
      soundOn: (v) =>
        hasPositioner(v) && !v.spring ? { soundAt: -2, soundSigma: 2.5 } : { soundAt: 0, soundSigma: 2 },
      anywhere: [-100, 60],
      bands: { normal: [-6, 6], low: [-100, -6], high: [6, 60] },
      typical: { low: [-60, -7], high: [8, 40] },
      numberOf: { none: [-101, -95] },
    },
    zero: 'none',
  },
  supplyDroop: {
    title: 'Supply pressure while the valve strokes',
    todo: 'With consent, step the output and watch the supply gauge fall and come back.',
    minutes: 4,
    hubs: AIR_ON,
    consent: true,
    gauges: () => ['supply'],
    misread: 0.05,
    outcomes: { small: 'Falls by less than 12 %', large: 'Falls by more, or comes back slowly' },
    measured: {
      axis: 'percent of supply lost while stroking',
      soundSigma: 2,
      soundAt: 5,
      // A source alone takes little; the relay of a positioner fills an actuator at once, that of a cylinder two ends.
      soundOn: (v) => ({
        soundAt: hasPositioner(v) ? (v.spring ? 6 : 8) : 1,
        soundSigma: hasPositioner(v) ? 3 : 1.5,
      }),
      anywhere: [0, 100],
      bands: { small: [-20, 12], large: [12, 120] },
      typical: { large: [13, 60] },
    },
  },
  filterBowl: {
    title: 'Blow down the filter bowl',
    todo: 'With consent, open the drain and look. The supply dips meanwhile: the valve may move.',
    minutes: 3,
    hubs: AIR_ON,
    consent: true,
    misread: 0.04,
    outcomes: { dry: 'Clean and dry', wet: 'Water or oil', dirt: 'Rust, desiccant or scale' },
  },
  listenExhaust: {
    title: 'Listen and feel for exhaust that goes on',
    todo: 'Go round positioner, actuator and accessories with hand and ear.',
    minutes: 2,
    hubs: AIR_ON,
    misread: 0.1,
    outcomes: {
      'small bleed': 'The usual small bleed',
      loud: 'Loud, goes on',
      'no bleed': 'No bleed at all',
    },
  },
} as const satisfies Record<string, Check>;
