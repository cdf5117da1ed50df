import { between, eitherWay } from '../random.ts';
import { thrustN } from './actuator.ts';
import { type Faults, grown } from './fault.ts';

/** Stem, coupling, packing. Friction as a share of what the actuator can do over its range; judgement. */
export const faultsOfStem = {
  packingTight: {
    does: (b, { severity, random }) => {
      b.frictionN += grown(severity, [0.07, 0.25]) * thrustN(b);
      b.breakawayN = b.frictionN * between(random, [1.25, 1.6]);
      b.glandTight = random() < 0.75;
    },
  },
  stemBent: {
    does: (b, { severity, random }) => {
      b.bindN = grown(severity, [0.12, 0.45]) * thrustN(b);
      b.bindAt = between(random, [0.3, 0.7]);
      b.breakawayN = b.frictionN * 1.4;
      b.stemScored = random() < 0.9;
    },
  },
  plugSeized: {
    does: (b, { random }) => {
      b.seizedAt = random() < 0.7 ? between(random, [0.15, 0.85]) : Math.round(random());
      b.galled = true;
      b.cameAtOnce = random() < 0.5;
    },
  },
  packingLeaks: {
    does: (b, { severity, random }) => {
      b.outsideGland = grown(severity, [0.3, 1]);
      b.stemScored = random() < 0.2;
    },
  },
  couplingSlipped: {
    does: (b, { severity, random }) => {
      b.couplingSlip = eitherWay(random) * grown(severity, [0.05, 0.25]);
      b.plugOffset = b.couplingSlip;
    },
  },
  stopEngaged: {
    does: (b, { severity, random }) => {
      if (random() < 0.65) b.stopHigh = grown(severity, [0.85, 0.3]);
      else b.stopLow = grown(severity, [0.1, 0.6]);
      b.stopSeen = true;
    },
  },
  plugOff: {
    does: (b) => {
      b.plugOff = true;
      b.cameAtOnce = true;
    },
  },
  plugSetWrong: {
    does: (b, { severity, random }) => {
      b.plugOffset = eitherWay(random) * grown(severity, [0.05, 0.15]);
    },
  },
} as const satisfies Faults;

/** Trim and joints of the body. */
export const faultsOfTrim = {
  seatWorn: {
    does: (b, { severity }) => {
      b.seatLeakFraction = grown(severity, [0.004, 0.08]);
    },
  },
  objectInSeat: {
    does: (b, { severity }) => {
      b.objectAt = grown(severity, [0.06, 0.35]);
      b.cameAtOnce = severity > 0.5;
    },
  },
  fouled: {
    does: (b, { severity }) => {
      b.kvFactor = grown(severity, [0.8, 0.4]);
      b.fouled = true;
    },
  },
  cavitation: {
    does: (b, { severity }) => {
      b.pitted = true;
      b.kvFactor = grown(severity, [0.95, 0.8]);
      b.seatLeakFraction = grown(severity, [0, 0.03]);
      b.dropFactor = grown(severity, [1.2, 1.6]);
    },
  },
  turnedRound: {
    does: (b) => {
      b.turnedRound = true;
    },
  },
  bonnetLeaks: {
    does: (b, { severity }) => {
      b.outsideBonnet = grown(severity, [0.3, 1]);
    },
  },
  bellowsSealFailed: {
    does: (b, { severity }) => {
      b.outsideBellows = grown(severity, [0.3, 1]);
    },
  },
  balanceSeal: {
    does: (b, { severity }) => {
      b.balanceLeakFraction = grown(severity, [0.005, 0.04]);
    },
  },
  wrongTrim: {
    does: (b, { severity, random }) => {
      const factor = grown(severity, [1.3, 2.2]);
      b.wrongTrim = random() < 0.5 ? factor : 1 / factor;
    },
  },
} as const satisfies Faults;

/** Round the valve: line, drop, size. */
export const faultsOfProcess = {
  processBypassPasses: {
    does: (b, { severity }) => {
      b.bypassKv = grown(severity, [0.06, 0.4]);
    },
  },
  lineThrottled: {
    does: (b, { severity }) => {
      b.lineLoss = grown(severity, [0.4, 0.8]);
    },
  },
  thrustTooSmall: {
    does: (b, { severity }) => {
      const { frame } = b;
      const needed = grown(severity, [0.3, 0.8]) * thrustN(b);
      // On a small port it takes many times the design drop: then somebody has let the full line pressure on it.
      b.dropFactor = Math.max(1.6, needed / Math.max(1, Math.abs(frame.plugForceN)));
    },
  },
  tooLarge: {
    does: (b, { severity }) => {
      b.demand = grown(severity, [0.05, 0.025]);
    },
  },
  tooSmall: {
    does: (b, { severity }) => {
      b.demand = grown(severity, [1.15, 1.6]);
    },
  },
  fluidChanged: {
    does: (b, { severity, random }) => {
      b.fluidFactor = grown(severity, [0.8, 0.5]);
      b.fluidGas = random() < 0.35;
    },
  },
} as const satisfies Faults;
