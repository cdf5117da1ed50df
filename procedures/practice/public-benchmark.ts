import type { CauseId } from '../troubleshooting/causes.ts';

/**
 * The 19 faults of the public DAMADICS actuator benchmark (specification v1.02, benchmark definition v1.0, 2002), and
 * the causes here that do the same to a valve. What is out of reach stands below, with the reason.
 */
export interface BenchmarkFault {
  readonly words: string;
  readonly group: 'valve' | 'actuator' | 'positioner' | 'outside';
  readonly causes: readonly CauseId[];
}

export const BENCHMARK_FAULTS = {
  f1: {
    words: 'Valve clogging: the plug meets something before the end of its travel',
    group: 'valve',
    causes: ['objectInSeat', 'stopEngaged'],
  },
  f2: { words: 'Sediment on plug or seat', group: 'valve', causes: ['fouled', 'objectInSeat'] },
  f3: { words: 'Erosion of plug or seat', group: 'valve', causes: ['seatWorn', 'cavitation'] },
  f4: {
    words: 'More or less friction in the bushing',
    group: 'valve',
    causes: ['packingTight', 'stemBent'],
  },
  f5: {
    words: 'Leak to the outside: packing, bonnet, bellows',
    group: 'valve',
    causes: ['packingLeaks', 'bonnetLeaks', 'bellowsSealFailed'],
  },
  f6: {
    words: 'Leak inside the valve, with the plug shut',
    group: 'valve',
    causes: ['seatWorn', 'balanceSeal'],
  },
  f7: {
    words: 'The medium evaporates, or its flow is critical',
    group: 'valve',
    causes: ['fluidChanged', 'cavitation'],
  },
  f8: { words: 'Twisted or bent stem', group: 'actuator', causes: ['stemBent'] },
  f9: {
    words: 'Leaking housing or terminals of the actuator',
    group: 'actuator',
    causes: ['caseJoint', 'caseStemSeal', 'actuatorTubeLeaks'],
  },
  f10: {
    words: 'Perforated diaphragm',
    group: 'actuator',
    causes: ['diaphragmPorous', 'diaphragmTorn'],
  },
  f11: {
    words: 'Fault of the spring',
    group: 'actuator',
    causes: ['springBroken', 'springSlack', 'wrongSpring'],
  },
  f12: {
    words: 'Fault of the current-to-pressure transducer',
    group: 'positioner',
    causes: ['transducerOff', 'transducerRestriction', 'transducerNozzle', 'electricPartDead'],
  },
  f13: {
    words: 'Fault of the stem displacement sensor',
    group: 'positioner',
    causes: ['zeroOrSpanWrong', 'linkageOff', 'couplingSlipped'],
  },
  f14: {
    words: 'Fault of the pressure sensor of the actuator',
    group: 'positioner',
    causes: ['gaugeWrong'],
  },
  f15: { words: 'Fault of the positioner feedback: backlash', group: 'positioner', causes: ['linkageWorn'] },
  f16: {
    words: 'Supply pressure of the positioner falls',
    group: 'outside',
    causes: ['supplyLow', 'supplyStarves', 'supplyLost', 'positionerSupplyShut'],
  },
  f17: {
    words: 'Unexpected pressure change across the valve',
    group: 'outside',
    causes: ['lineThrottled', 'thrustTooSmall'],
  },
  f18: {
    words: 'Bypass of the process opened, part or full',
    group: 'outside',
    causes: ['processBypassPasses'],
  },
  f19: { words: 'Fault of the flow sensor', group: 'outside', causes: ['measurementWrong'] },
} as const satisfies Record<string, BenchmarkFault>;

/** Parts of those faults that nothing here does, with the reason. */
export const BENCHMARK_OUT_OF_REACH = {
  f4: 'Less friction than usual harms no loop and is no cause here; it is read as narrow where up and down are compared.',
  f5: 'The benchmark takes the leak off the flow; here fluid outside is looked for, and the loss of flow is too small to be read.',
  f7: 'Its temperature of the medium is not read at the valve; noise and flow against travel are what is left of it.',
  f13: 'A sensor apart from the feedback of the positioner is not looked at; one that is the feedback is a wrong zero or span.',
} as const;
