import { type Build, otherEnd } from '../build.ts';
import { eitherWay } from '../random.ts';
import { type Faults, grown, grownHole } from './fault.ts';

/** Holes from a pinhole to a tear. */
const PINHOLE_M = [2e-4, 7e-4] as const;
const TEAR_M = [1.2e-3, 5e-3] as const;
const JOINT_M = [2e-4, 2e-3] as const;

function tubeHole(end: 'top' | 'bottom') {
  return (b: Build, { severity }: { readonly severity: number }) => {
    const at = end === 'top' ? b.frame.topEnd : otherEnd(b.frame.topEnd);
    b.outTubeHoleM[at] = grownHole(severity, [6e-4, 3e-3]);
  };
}

/** A joint inside the actuator is loose: the stem follows late, or not at all. */
function loosened(b: Build, { severity }: { readonly severity: number }): void {
  b.plateSlack = severity > 0.5 ? 2 : grown(severity, [0.1, 0.5]);
  b.cameAtOnce = true;
}

/** Diaphragm, spring, cylinder. How bad is judgement. */
export const faultsOfActuator = {
  diaphragmTorn: {
    does: (b, { severity }) => {
      b.diaphragmHoleM = grownHole(severity, TEAR_M);
      b.cameAtOnce = severity > 0.5;
    },
  },
  diaphragmPorous: {
    does: (b, { severity }) => {
      b.diaphragmHoleM = grownHole(severity, PINHOLE_M);
    },
  },
  caseJoint: {
    does: (b, { severity }) => {
      b.caseHoleM = grownHole(severity, JOINT_M);
    },
  },
  caseStemSeal: {
    does: (b, { severity }) => {
      b.stemSealHoleM = grownHole(severity, JOINT_M);
    },
  },
  pistonSealSpring: {
    does: (b, { severity }) => {
      b.crossHoleM = grownHole(severity, [3e-4, 2.5e-3]);
    },
  },
  actuatorTubeLeaks: {
    does: (b, { severity }) => {
      b.outTubeHoleM[b.frame.risingEnd] = grownHole(severity, [3e-4, 3e-3]);
    },
  },
  springBroken: {
    does: (b, { severity }) => {
      b.springBroken = true;
      b.rateFactor = grown(severity, [1.1, 0.8]);
      b.cameAtOnce = true;
    },
  },
  springTooTight: {
    does: (b, { severity }) => {
      b.preloadShiftFraction = grown(severity, [0.1, 0.4]);
    },
  },
  springSlack: {
    does: (b, { severity }) => {
      b.preloadShiftFraction = -grown(severity, [0.1, 0.25]);
    },
  },
  wrongSpring: {
    does: (b, { severity, random }) => {
      b.rateFactor = eitherWay(random) === 1 ? grown(severity, [1.25, 1.7]) : grown(severity, [0.75, 0.5]);
    },
  },
  springVentPlugged: {
    does: (b, { severity }) => {
      b.ventOpen = severity > 0.3 ? 1e-4 : 2e-3;
    },
  },
  plateLoose: { does: loosened },
  rodOff: { does: loosened },
  pistonSeals: {
    does: (b, { severity }) => {
      b.crossHoleM = grownHole(severity, [1.2e-3, 4e-3]);
    },
  },
  rodSeal: {
    does: (b, { severity }) => {
      b.rodSealHoleM = grownHole(severity, [3e-4, 2e-3]);
    },
  },
  equaliserOpen: {
    does: (b, { severity }) => {
      b.equaliserHoleM = grownHole(severity, [4e-3, 8e-3]);
      b.equaliserLooksOpen = true;
      b.cameAtOnce = severity > 0.5;
    },
  },
  equaliserPasses: {
    does: (b, { severity }) => {
      b.equaliserHoleM = grownHole(severity, [1.2e-3, 3e-3]);
    },
  },
  topTubeLeaks: { does: tubeHole('top') },
  bottomTubeLeaks: { does: tubeHole('bottom') },
  outputTubeBlocked: {
    does: (b, { severity }) => {
      b.outTubeOpen = severity > 0.5 ? 0 : grown(severity, [0.08, 0.02]);
    },
  },
  boreScored: {
    does: (b, { severity }) => {
      b.boreScored = true;
      b.boreFrictionN = grown(severity, [0.08, 0.25]) * thrustN(b);
      b.frictionN += b.boreFrictionN;
      b.breakawayN = b.frictionN * 1.4;
      b.crossHoleM = Math.max(b.crossHoleM, 4e-4);
    },
  },
} as const satisfies Faults;

/** What the air of the actuator can do over its range. */
export function thrustN(b: Build): number {
  const { frame } = b;
  return frame.doubleActing
    ? frame.areaM2 * frame.supplyPa * 0.65
    : Math.max(frame.springNPerM * frame.travelM, 1);
}
