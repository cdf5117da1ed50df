import { bell } from '../random.ts';
import { rested } from '../run.ts';
import { recordOf, restedAt } from '../simulated.ts';
import { openingN } from '../step.ts';
import { flowThrough, seatLeakOf, trimKv } from '../trim.ts';
import { type At, type Looks, pointerAt, type Said, seenBy, word } from './look.ts';

/** Flow at two openings against what the travel explains; pressures are read beside it and taken out. */
function flowAgainstTravel(at: At): Said {
  const { valve, random } = at;
  const seen = [45, 70].map((outputPercent) => {
    const state = restedAt(valve, { outputPercent, process: 'on' });
    const { flowFraction: flow, dropFraction: drop } = flowThrough(valve.build, {
      stemAt: state.stemAt,
      seatLeakFraction: valve.build.seatLeakFraction,
    });
    const told = flow * (1 + valve.build.measureOff) * (1 + 0.02 * bell(random));
    return {
      told,
      explained: trimKv(pointerAt(at, state)) * Math.sqrt(drop),
      travelFraction: pointerAt(at, state),
    };
  });
  const [one, two] = seen;
  if (one === undefined || two === undefined) return { cannotTell: true };
  const follows = Math.abs(two.told - one.told) > 0.15 * Math.abs(two.explained - one.explained);
  if (two.travelFraction - one.travelFraction > 0.1 && !follows) return word('does not follow');
  if (two.explained < 0.005) return two.told > 0.01 ? word('more') : word('as the curve');
  return { value: 100 * (two.told / two.explained - 1), readSigma: 3 };
}

/** Beyond the signal, so that the whole of the actuator is on the seat. */
const DRIVEN_SHUT_PERCENT = -40;
const TIGHT = 0.002;
const MUCH = 0.02;

function leakShut(at: At): Said {
  const { build } = at.valve;
  const state = rested(build, { outputPercent: DRIVEN_SHUT_PERCENT, process: 'on' });
  const seatN = Math.max(
    0,
    -openingN(build, { state, doing: { outputPercent: DRIVEN_SHUT_PERCENT, process: 'on' } }),
  );
  const leak = seatLeakOf(build, { seatN, stemAt: state.stemAt });
  return word(leak < TIGHT ? 'tight' : leak < MUCH ? 'passes' : 'passes much');
}

function noise({ valve: { build }, random }: At): Said {
  if (seenBy(random, { there: build.pitted, share: 0.95 })) return word('gravel');
  if (seenBy(random, { there: build.fluidGas, share: 0.4 })) return word('gravel');
  if (seenBy(random, { there: build.plugOff, share: 0.55 })) return word('rattle');
  if (seenBy(random, { there: build.turnedRound || build.plateSlack > 1, share: 0.3 })) return word('rattle');
  const leaks = build.seatLeakFraction + build.balanceLeakFraction > 0.005 || build.objectAt > 0;
  return word(seenBy(random, { there: leaks, share: 0.55 }) ? 'hiss' : 'usual');
}

/** With the loop as it runs now. The line takes what is left of the pump. */
function pressureDrop(at: At): Said {
  const { build } = at.valve;
  const stemAt = recordOf(at.valve).samples.at(-1)?.travelFraction ?? 0.5;
  const { dropFraction: drop, flowFraction: flow } = flowThrough(build, {
    stemAt,
    seatLeakFraction: build.seatLeakFraction,
  });
  const usual = 1 / (1 + (flow / 5) ** 2);
  // Beyond that a gauge that suits the usual drop stands at its stop.
  return { value: Math.min(180, 100 * (drop / usual - 1) + 5 * bell(at.random)), readSigma: 4 };
}

function openBody({ valve: { build } }: At): Said {
  if (build.plugOff) return word('plug loose');
  if (build.objectAt > 0) return word('object');
  if (build.galled) return word('galled');
  if (build.pitted) return word('pitted');
  if (build.fouled) return word('fouled');
  if (build.wrongTrim !== 1) return word('wrong trim');
  if (build.balanceLeakFraction > 0) return word('seal worn');
  return word(build.seatLeakFraction > 0 ? 'seat worn' : 'sound');
}

/** Body, trim and line. */
export const looksAtBody: Looks = {
  flowAgainstTravel,
  leakShut,
  noise,
  lineUp: ({ valve: { build }, random }) => {
    if (seenBy(random, { there: build.bypassKv > 0, share: 0.88 })) return word('bypass passes');
    const there = build.lineLoss > 0;
    return word(seenBy(random, { there, share: 0.85 }) ? 'block throttles' : 'as it should be');
  },
  pressureDrop,
  flowArrow: ({ valve: { build } }) => word(build.turnedRound ? 'turned round' : 'agrees'),
  fluidOutside: ({ valve: { build }, random }) => {
    if (seenBy(random, { there: build.outsideGland > 0, share: 0.97 })) return word('gland');
    if (seenBy(random, { there: build.outsideBonnet > 0, share: 0.97 })) return word('bonnet');
    return word(seenBy(random, { there: build.outsideBellows > 0, share: 0.9 }) ? 'bellows' : 'dry');
  },
  openBody,
};
