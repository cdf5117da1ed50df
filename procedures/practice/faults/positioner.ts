import { type Build, type End, otherEnd } from '../build.ts';
import { between, eitherWay, type Random } from '../random.ts';
import { type Faults, grown, grownHole } from './fault.ts';

const PLUGGED = 0.004;

/** With one relay its nozzle is the only one. */
function partOf(b: Build, where: 'only' | 'top' | 'bottom'): End {
  if (where === 'only') return 'opens';
  return where === 'top' ? b.frame.topEnd : otherEnd(b.frame.topEnd);
}

function restrictionPlugged(where: 'only' | 'top' | 'bottom') {
  return (b: Build, { severity }: { readonly severity: number }) => {
    b.restriction[partOf(b, where)] = severity > 0.4 ? PLUGGED : 0.01;
    b.cameAtOnce = severity > 0.4;
  };
}

function nozzlePlugged(where: 'only' | 'top' | 'bottom') {
  return (b: Build, { severity }: { readonly severity: number }) => {
    b.nozzle[partOf(b, where)] = severity > 0.4 ? 0.005 : 0.04;
    b.cameAtOnce = severity > 0.4;
  };
}

function relayStuck(where: 'only' | 'top' | 'bottom') {
  return (b: Build, { random }: { readonly random: Random }) => {
    // Stuck where it was: filling, emptying, or about at balance.
    const at = random() < 0.4 ? 0 : eitherWay(random) * between(random, [0.3, 1]);
    b.relayStuckAt[partOf(b, where)] = at;
    b.cameAtOnce = true;
  };
}

/** The positioner and its relays. How bad is judgement. */
export const faultsOfPositioner = {
  flapperBent: {
    does: (b, { severity, random }) => {
      b.flapperAskew = grown(severity, [0.4, 1]);
      b.zeroOff = eitherWay(random) * grown(severity, [0.05, 0.12]);
    },
  },
  relayWorn: {
    does: (b, { severity }) => {
      b.relayLeakM = grownHole(severity, [1.5e-3, 4e-3]);
    },
  },
  bellowsRuptured: {
    does: (b, { severity }) => {
      b.bellowsHoleM = grownHole(severity, [1.5e-3, 4e-3]);
      b.spanFactor = 0;
      b.cameAtOnce = true;
    },
  },
  linkageOff: {
    does: (b) => {
      b.feedback = 0;
      b.cameAtOnce = true;
    },
  },
  rangeSpringOff: {
    does: (b) => {
      b.rangeSpringOff = true;
      b.cameAtOnce = true;
    },
  },
  linkageWorn: {
    does: (b, { severity }) => {
      b.feedbackBacklash = grown(severity, [0.04, 0.15]);
    },
  },
  zeroOrSpanWrong: {
    does: (b, { severity, random }) => {
      const off = eitherWay(random) * grown(severity, [0.05, 0.2]);
      if (random() < 0.6) b.zeroOff = off;
      else b.spanFactor = 1 + off * 1.4;
    },
  },
  gainTooHigh: {
    does: (b, { severity }) => {
      b.gain *= grown(severity, [15, 40]);
      b.pilotLagS = 0.15;
    },
  },
  electricPartDead: {
    does: (b, { severity }) => {
      b.electricStuckAt = severity < 0.15 ? 1 : 0;
      b.cameAtOnce = true;
    },
  },
  tubesCrossed: {
    does: (b) => {
      b.tubesCrossed = true;
      b.cameAtOnce = true;
    },
  },
  relayRestriction: { does: restrictionPlugged('only') },
  relayNozzle: { does: nozzlePlugged('only') },
  relaySticks: { does: relayStuck('only') },
  restrictionTop: { does: restrictionPlugged('top') },
  restrictionBottom: { does: restrictionPlugged('bottom') },
  nozzleTop: { does: nozzlePlugged('top') },
  nozzleBottom: { does: nozzlePlugged('bottom') },
  relayTopSticks: { does: relayStuck('top') },
  relayBottomSticks: { does: relayStuck('bottom') },
} as const satisfies Faults;
