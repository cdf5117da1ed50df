import type { Build } from '../build.ts';
import { between, eitherWay, type Random } from '../random.ts';
import { type Faults, grown, grownHole } from './fault.ts';

/** From nearly healthy to shut: a restriction or a nozzle that dirt fills. */
function plugged(severity: number): number {
  return severity > 0.6 ? 0.004 : grown(severity, [0.05, 0.01]);
}

function sourceRestriction(b: Build, { severity }: { readonly severity: number }): void {
  b.sourceRestriction = plugged(severity);
  b.cameAtOnce = severity > 0.5;
}

function sourceNozzle(b: Build, { severity }: { readonly severity: number }): void {
  b.sourceNozzle = severity > 0.5 ? 0.01 : 0.05;
  b.cameAtOnce = severity > 0.4;
}

/** Controller, wiring, source, signal tube and accessories. How bad is judgement, holes as the leaks of the trade. */
export const faultsBeforeValve = {
  nothingWrong: { does: () => {} },
  outputHeld: {
    does: (b) => {
      b.mode = 'held';
    },
  },
  wrongAction: {
    does: (b) => {
      b.loopWrongWay = true;
    },
  },
  tunedTooTight: {
    does: (b, { severity }) => {
      b.loopGain = grown(severity, [11, 20]);
    },
  },
  disturbance: {
    does: (b, { severity }) => {
      b.disturbance = grown(severity, [0.08, 0.2]);
    },
  },
  measurementWrong: {
    does: (b, { severity, random }) => {
      b.measureOff = eitherWay(random) * grown(severity, [0.05, 0.2]);
      b.inputBad = random() < 0.25;
    },
  },
  wiringOpen: {
    does: (b) => {
      b.currentFactor = 0;
      b.cameAtOnce = true;
    },
  },
  currentLow: {
    does: (b, { severity }) => {
      b.currentFactor = grown(severity, [0.95, 0.75]);
    },
  },
  transducerRestriction: { does: sourceRestriction },
  transducerNozzle: { does: sourceNozzle },
  controllerRestriction: { does: sourceRestriction },
  controllerNozzle: { does: sourceNozzle },
  transducerOff: {
    does: (b, { severity, random }) => {
      const off = eitherWay(random) * grown(severity, [0.05, 0.2]);
      if (random() < 0.6) b.sourceOffset = off;
      else b.sourceFactor = 1 + 1.4 * off;
    },
  },
  rangeMismatch: {
    does: (b, { severity, random }) => {
      // A source of twice or half the range, or one half of a split range.
      const kind = severity < 0.5 ? 0.5 : 2;
      b.sourceFactor = kind;
      b.sourceOffset = kind === 2 && random() < 0.5 ? -1 : 0;
      b.cameAtOnce = true;
    },
  },
  signalTubeLeaks: {
    does: (b, { severity }) => {
      b.tubeHoleM = grownHole(severity, [3e-4, 4e-3]);
      b.cameAtOnce = severity > 0.7;
    },
  },
  signalTubeBlocked: {
    does: (b, { severity, random }) => {
      b.tubeOpen = severity > 0.5 ? 0 : grown(severity, [0.02, 0.005]);
      b.trapsAir = random() < 0.7;
      b.cameAtOnce = severity > 0.5;
    },
  },
  lockUpShut: {
    does: (b) => {
      b.lockUpShut = true;
      b.cameAtOnce = true;
    },
  },
  tripSolenoid: {
    does: (b) => {
      b.tripVents = true;
      b.cameAtOnce = true;
    },
  },
  boosterSticks: {
    does: (b, { severity, random }) => {
      if (random() < 0.5) b.boosterHunts = grown(severity, [0.05, 0.15]);
      else b.boosterSlow = grown(severity, [0.8, 1]);
    },
  },
} as const satisfies Faults;

/** The air set. */
export const faultsOfAir = {
  supplyLost: {
    does: (b) => {
      b.headerPa = 0;
      b.cameAtOnce = true;
    },
  },
  positionerSupplyShut: {
    does: (b) => {
      b.positionerCockOpen = 0;
      b.cameAtOnce = true;
    },
  },
  supplyLow: {
    does: (b, { severity }) => {
      b.supplySetPa *= grown(severity, [0.85, 0.45]);
    },
  },
  supplyStarves: {
    does: (b, { severity }) => {
      b.supplyDroopPaSPerKg *= grown(severity, [8, 40]);
      b.sourceMostKgPerS *= grown(severity, [0.3, 0.1]);
      b.bowl = severity > 0.4 ? 'dirt' : 'dry';
    },
  },
  wetAir: {
    does: (b, { severity, random }) => {
      b.wetFraction = grown(severity, [0.4, 1]);
      b.bowl = 'wet';
      b.pilotLagS = grown(severity, [0.5, 2]);
      b.sourceMostKgPerS *= grown(severity, [0.5, 0.15]);
      fouls(b, random);
    },
  },
  supplyHigh: {
    does: (b, { severity }) => {
      b.supplySetPa *= grown(severity, [1.15, 1.5]);
    },
  },
} as const satisfies Faults;

/** Water and oil leave their film in the fine holes. */
function fouls(b: Build, random: Random): void {
  for (const end of ['opens', 'shuts'] as const) {
    b.restriction[end] = between(random, [0.6, 1]);
    b.nozzle[end] = between(random, [0.7, 1]);
  }
}

/** The gear of the test itself. */
export const faultsOfGear = {
  gaugeWrong: {
    does: (b, { severity, random }) => {
      const points = ['source', 'signal', 'actuator', 'supply', 'cylinderTop', 'cylinderBottom'];
      const off = eitherWay(random) * grown(severity, [0.03, 0.15]);
      b.gaugeOff = { [points[Math.floor(random() * points.length)] ?? 'signal']: off };
    },
  },
  rigLeaks: {
    does: (b, { severity }) => {
      b.rigHoleM = grownHole(severity, [1e-4, 5e-4]);
    },
  },
  rigDoesNotBleed: {
    does: (b) => {
      b.rigStaysUp = true;
    },
  },
} as const satisfies Faults;
