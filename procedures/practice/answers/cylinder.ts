import { type End, otherEnd } from '../build.ts';
import { readPressure } from '../gauge.ts';
import { run } from '../run.ts';
import { kept, restedAt } from '../simulated.ts';
import type { State } from '../state.ts';
import { type At, type Looks, processOf, type Said, seenBy, turns, word } from './look.ts';

function endPressure(at: At, which: 'top' | 'bottom'): Said {
  const { build } = at.valve;
  const { frame } = build;
  const end: End = which === 'top' ? frame.topEnd : otherEnd(frame.topEnd);
  const state = restedAt(at.valve, { outputPercent: 50, process: processOf(at.hub) });
  if (state.supplyPa < 0.05 * frame.supplyPa || build.positionerCockOpen === 0)
    return state.endPa[end] < 1e4 ? word('empty') : { cannotTell: true };
  const point = which === 'top' ? 'cylinderTop' : 'cylinderBottom';
  const read = readPressure(build, {
    point,
    truePa: state.endPa[end],
    mostPa: frame.supplyPa,
    random: at.random,
  });
  return { value: (100 * read.value) / state.supplyPa, readSigma: (100 * read.sigma) / state.supplyPa };
}

export interface Stepped {
  readonly loaded: readonly number[];
  readonly travelFraction: readonly number[];
  readonly goneS: number;
  readonly state: State;
}

/** The output steps by a tenth; ten looks a second. */
export function stepped(at: At, which: 'sound' | 'build'): Stepped {
  const process = processOf(at.hub);
  return kept(at.valve, {
    key: `tenth ${which} ${process}`,
    work: () => {
      const state = restedAt(at.valve, { outputPercent: 50, process, which });
      const build = at.valve[which];
      const loaded: number[] = [];
      const travelFraction: number[] = [];
      let n = 0;
      run(build, {
        state,
        seconds: 14,
        doing: { outputPercent: 60, process },
        seen: (now) => {
          if (n++ % 10 !== 0) return;
          loaded.push(now.endPa[build.frame.risingEnd]);
          travelFraction.push(now.stemAt);
        },
      });
      const from = travelFraction[0] ?? 0;
      const goal = Math.abs(state.stemAt - from);
      const gone = travelFraction.findIndex((one) => Math.abs(one - from) >= 0.8 * goal);
      return { loaded, travelFraction, goneS: gone < 0 ? 14 : gone / 10, state };
    },
  });
}

/** A sound stem moves a tenth on a small change of its ends. Judgement. */
const PARTS_FAR_FRACTION = 0.15;

function cylinderGaugesOnStep(at: At): Said {
  const { frame } = at.valve.build;
  const seen = stepped(at, 'build');
  const supplyPa = Math.max(1, seen.state.supplyPa);
  const most = Math.max(...seen.loaded) - Math.min(...seen.loaded);
  if (turns(seen.loaded.slice(20), 0.02 * supplyPa) >= 5) return word('swings');
  const [start, end] = [seen.travelFraction[0] ?? 0, seen.state.stemAt];
  const atEnd = end > 0.97 || end < 0.03;
  const fullOrEmpty = [seen.state.endPa.opens, seen.state.endPa.shuts].some((pa) => pa > 0.93 * supplyPa);
  if (end - start < -0.05) return word('other way');
  if (most > PARTS_FAR_FRACTION * supplyPa && Math.abs(end - start) < 0.01) return word('without the stem');
  if (atEnd && fullOrEmpty && Math.abs(end - 0.6) > 0.2) return word(end > 0.5 ? 'runs open' : 'runs shut');
  if (most < 0.02 * frame.supplyPa && Math.abs(end - start) < 0.02) return word('none');
  const usualS = stepped(at, 'sound').goneS;
  return word(seen.goneS > Math.max(1.5, 3 * usualS) ? 'slow' : 'one up, one down');
}

/** A cylinder with air on both sides. */
export const looksAtCylinder: Looks = {
  topPressure: (at) => endPressure(at, 'top'),
  bottomPressure: (at) => endPressure(at, 'bottom'),
  cylinderGaugesOnStep,
  equaliser: ({ valve: { build } }) => word(build.equaliserLooksOpen ? 'open' : 'shut'),
  equaliserFeel: ({ valve: { build }, random }) =>
    word(seenBy(random, { there: build.equaliserHoleM > 0, share: 0.9 }) ? 'part' : 'quiet'),
  crossLeak: ({ valve: { build } }) =>
    word(build.crossHoleM > 8e-4 || build.equaliserHoleM > 0 ? 'passes' : 'none'),
};
