import { ENDS, type End, otherEnd } from '../build.ts';
import { errorOf, pilotBleedKgPerS, portFlow, relayJetM2 } from '../positioner.ts';
import { run } from '../run.ts';
import { restedAt } from '../simulated.ts';
import type { State } from '../state.ts';
import { stepped } from './cylinder.ts';
import { type At, type Looks, processOf, type Said, seenBy, turns, word } from './look.ts';

function nozzle(at: At, end: End): Said {
  const { build } = at.valve;
  const process = processOf(at.hub);
  const state = restedAt(at.valve, { outputPercent: 50, process });
  if (state.supplyPa < 1e4 || build.positionerCockOpen === 0) return word('stuck low');
  const seen: number[] = [];
  let n = 0;
  run(build, {
    state,
    seconds: 12,
    doing: (timeS) => ({ outputPercent: timeS < 4 ? 50 : timeS < 8 ? 55 : 45, process }),
    seen: (now) => {
      if (n++ % 5 === 0) seen.push(now.nozzle[end]);
    },
  });
  if (turns(seen.slice(0, 80), 0.15) >= 5) return word('pulses');
  const [most, least] = [Math.max(...seen), Math.min(...seen)];
  if (most < 0.15) return word('stuck low');
  return word(least > 0.85 ? 'stuck high' : 'working');
}

interface ByHand {
  readonly swings: readonly boolean[];
  readonly moves: readonly boolean[];
  readonly slow: boolean;
}

/** The flapper pressed on its nozzle and let go; with one relay an end, on each in turn. */
function byHand(at: At): ByHand {
  const { build } = at.valve;
  const state = restedAt(at.valve, { outputPercent: 50, process: 'bypassed' });
  const hold = (flapperHeld: number) => {
    run(build, { state, seconds: 6, doing: { outputPercent: 50, process: 'bypassed', flapperHeld } });
    return { ...state.endPa };
  };
  const [covered, clear] = [hold(0.05), hold(6)];
  const ends: readonly End[] = build.frame.doubleActing ? ENDS : [build.frame.risingEnd];
  const supplyPa = Math.max(2e4, build.frame.supplyPa);
  const gone = ends.map((end) => Math.abs(covered[end] - clear[end]) / supplyPa);
  return {
    swings: gone.map((one) => one > 0.5),
    moves: gone.map((one) => one > 0.06),
    slow: build.pilotLagS > 0.4 || (build.outTubeOpen > 0 && build.outTubeOpen < 0.05),
  };
}

function flapperByHand(at: At): Said {
  const { swings, moves, slow } = byHand(at);
  if (!moves.some(Boolean)) return word('not at all');
  if (slow) return word('creeps');
  return word(swings.every(Boolean) ? 'both ways' : 'one way');
}

interface Asked {
  readonly end: End;
  /** What the flapper does at the nozzle that loads this end, and what the gauge of the end says. */
  readonly covered: number;
  readonly whenCovered: number;
  readonly whenClear: number;
  readonly follows: boolean;
}

/** The signal moved far both ways, watching one nozzle and the end that it loads. */
function asked(at: At, end: End): Asked {
  const { build } = at.valve;
  const { frame } = build;
  const loads = end === 'opens' ? 100 : 0;
  const look = (outputPercent: number) => {
    const state = restedAt(at.valve, { outputPercent: 50, process: 'bypassed' });
    let farthest = 0;
    const seen = (now: State) => {
      const error = errorOf(build, now);
      if (Math.abs(error) > Math.abs(farthest)) farthest = error;
    };
    run(build, { state, seconds: 7, doing: { outputPercent, process: 'bypassed' }, seen });
    return { error: farthest, share: state.endPa[end] / Math.max(2e4, frame.supplyPa) };
  };
  const [on, off] = [look(loads), look(100 - loads)];
  return {
    end,
    covered: on.error,
    whenCovered: on.share,
    whenClear: off.share,
    follows: Math.abs(on.error - off.error) > 0.1,
  };
}

function flappers(
  at: At,
  ends: readonly { readonly end: End; readonly low: string; readonly high: string }[],
): Said {
  const { build } = at.valve;
  if (seenBy(at.random, { there: build.flapperAskew > 0, share: 0.92 })) return word('askew');
  const looks = ends.map((one) => ({ ...one, ...asked(at, one.end) }));
  if (!looks.some(({ follows }) => follows)) return word('does not follow');
  const low = looks.find(({ whenCovered }) => whenCovered < 0.35);
  if (low !== undefined) return word(low.low);
  const high = looks.find(({ whenClear }) => whenClear > 0.8);
  return word(high?.high ?? 'agrees');
}

function positionerExhaust(at: At): Said {
  const blows = (which: 'sound' | 'build') => {
    const build = at.valve[which];
    const state = restedAt(at.valve, { outputPercent: 60, process: processOf(at.hub), which });
    if (build.positionerCockOpen === 0 || state.supplyPa < 5e3) return 0;
    const jetM2 = relayJetM2(build);
    const ends: readonly End[] = build.frame.doubleActing ? ENDS : [build.frame.risingEnd];
    let [sum, looks] = [0, 0];
    // A hand is held there for a moment: what comes in puffs is felt as well.
    run(build, {
      state,
      seconds: 2,
      doing: { outputPercent: 60, process: processOf(at.hub) },
      seen: (now) => {
        looks += 1;
        sum += pilotBleedKgPerS(build, { state: now, fedPa: now.supplyPa });
        for (const end of ends)
          sum += portFlow(build, { state: now, end, fedPa: now.supplyPa, jetM2 }).blownKgPerS;
      },
    });
    return sum / looks;
  };
  const [now, usual] = [blows('build'), blows('sound')];
  if (seenBy(at.random, { there: now > usual + 3e-4 && now > 1.6 * usual, share: 0.95 }))
    return word('blows');
  return word(seenBy(at.random, { there: now < 0.2 * usual, share: 0.9 }) ? 'nothing' : 'usual bleed');
}

function outputGauge(at: At): Said {
  const { frame } = at.valve.build;
  const seen = stepped(at, 'build');
  const supplyPa = Math.max(1e4, seen.state.supplyPa);
  const rangePa = frame.sheet.benchSetHighPa - frame.sheet.benchSetLowPa;
  const [start, end] = [seen.travelFraction[0] ?? 0, seen.state.stemAt];
  const [firstPa, lastPa] = [seen.loaded[0] ?? 0, seen.loaded.at(-1) ?? 0];
  if (turns(seen.loaded.slice(20), 0.03 * rangePa) >= 5) return word('swings');
  const stays = Math.abs(lastPa - firstPa) < 0.03 * rangePa;
  const still = Math.abs(end - start) < 0.02;
  if (!stays && still && Math.abs(lastPa - firstPa) > 0.15 * rangePa) return word('without the stem');
  if (still && lastPa > 0.93 * supplyPa) return word('full');
  if (still && lastPa < 0.05 * supplyPa) return word(supplyPa < 2e4 ? 'none' : 'empty');
  if (stays && still) return word('none');
  return word(seen.goneS > Math.max(1.5, 3 * stepped(at, 'sound').goneS) ? 'slow' : 'follows');
}

function positionerBench({ valve: { build } }: At): Said {
  const parts = ENDS.filter((end) => build.frame.relayAnEnd || end === 'opens');
  if (build.electricStuckAt !== null) return word('converter dead');
  if (parts.some((end) => build.restriction[end] < 0.1)) return word('restriction plugged');
  if (parts.some((end) => build.nozzle[end] < 0.2)) return word('nozzle dirty');
  if (build.flapperAskew > 0) return word('flapper bent');
  if (parts.some((end) => build.relayStuckAt[end] !== null)) return word('relay sticks');
  if (build.relayLeakM > 0) return word('relay worn');
  if (build.bellowsHoleM > 0) return word('bellows leaks');
  if (build.rangeSpringOff) return word('range spring off');
  const off = Math.abs(build.zeroOff) > 0.02 || Math.abs(build.spanFactor - 1) > 0.03;
  return word(off ? 'zero or span wrong' : 'sound');
}

function plunger(at: At, where: readonly { readonly end: End; readonly back: string }[]): Said {
  const { build } = at.valve;
  for (const { end, back } of where)
    if (seenBy(at.random, { there: build.restriction[end] < 0.1, share: 0.85 })) return word(back);
  return word('no change');
}

function positionerMarks({ valve: { build }, random }: At): Said {
  const off = Math.abs(build.zeroOff) > 0.04 || Math.abs(build.spanFactor - 1) > 0.05;
  const loose = build.feedback === 0 || build.feedbackBacklash > 0.05;
  return word(seenBy(random, { there: off || loose, share: 0.6 }) ? 'off the marks' : 'at the marks');
}

const ONE = (at: At) => at.valve.build.frame.coveredEnd;

/** From outside, under the cover, on the bench. */
export const looksAtPositioner: Looks = {
  nozzlePressure: (at) => nozzle(at, 'opens'),
  nozzlePressureTop: (at) => nozzle(at, at.valve.build.frame.topEnd),
  nozzlePressureBottom: (at) => nozzle(at, otherEnd(at.valve.build.frame.topEnd)),
  flapperByHand,
  flapperAgainstGauges: (at) => flappers(at, [{ end: ONE(at), low: 'covered, low', high: 'clear, high' }]),
  bothFlappersAgainstGauges: (at) => {
    const { topEnd } = at.valve.build.frame;
    return flappers(at, [
      { end: topEnd, low: 'top covered, low', high: 'top clear, high' },
      { end: otherEnd(topEnd), low: 'bottom covered, low', high: 'bottom clear, high' },
    ]);
  },
  pressPlunger: (at) => plunger(at, [{ end: 'opens', back: 'comes back' }]),
  pressBothPlungers: (at) => {
    const { topEnd } = at.valve.build.frame;
    return plunger(at, [
      { end: topEnd, back: 'top comes back' },
      { end: otherEnd(topEnd), back: 'bottom comes back' },
    ]);
  },
  feedbackLinkage: ({ valve: { build }, random }) => {
    if (seenBy(random, { there: build.feedback === 0, share: 0.97 })) return word('off');
    return word(seenBy(random, { there: build.feedbackBacklash > 0.03, share: 0.93 }) ? 'worn' : 'tight');
  },
  positionerMarks,
  positionerExhaust,
  outputGauge,
  positionerBench,
};
