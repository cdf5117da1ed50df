import { jetM2, passKgPerS } from '../air.ts';
import { otherEnd } from '../build.ts';
import { readPressure } from '../gauge.ts';
import { run } from '../run.ts';
import { restedAt } from '../simulated.ts';
import { stateAt } from '../state.ts';
import { type At, type Looks, processOf, type Said, seenBy, word } from './look.ts';

/** A tenth of a litre a minute is seen in soap. Judgement. */
const BUBBLES_KG_PER_S = 2e-6;

/** Bubbles rise from what has air before it. */
function bubbles(at: At, of: { readonly holeM: number; readonly share?: number }): Said {
  const { build } = at.valve;
  const state = restedAt(at.valve, { outputPercent: 60, process: processOf(at.hub) });
  const ends = build.frame.doubleActing ? state.endPa : { one: state.endPa[build.frame.risingEnd] };
  const fromPa = Math.max(...Object.values(ends));
  const air = passKgPerS({ areaM2: jetM2(of.holeM), fromPa, toPa: 0 }) > BUBBLES_KG_PER_S;
  const share = of.share ?? (of.holeM > 2.5e-4 ? 0.97 : 0.9);
  return word(seenBy(at.random, { there: of.holeM > 0 && air, share }) ? 'bubbles' : 'none');
}

function springSideVent(at: At): Said {
  const { build } = at.valve;
  if (seenBy(at.random, { there: build.ventOpen < 1, share: 0.95 })) return word('plugged');
  const state = restedAt(at.valve, { outputPercent: 60, process: processOf(at.hub) });
  const holeM = Math.max(build.diaphragmHoleM, build.frame.doubleActing ? 0 : build.crossHoleM);
  // Through a tear the air of the whole source comes, though hardly any pressure stands before it.
  const fromPa = state.endPa[build.frame.risingEnd];
  const there = passKgPerS({ areaM2: jetM2(holeM), fromPa, toPa: 0 }) > BUBBLES_KG_PER_S;
  return word(seenBy(at.random, { there, share: holeM > 4e-4 ? 0.96 : 0.75 }) ? 'air comes' : 'clear');
}

/** Shut in at half pressure for a minute. */
function blockActuatorSide(at: At): Said {
  const { frame } = at.valve.build;
  const rig = at.valve.build.rigHoleM;
  // The cock at the actuator shuts its tubes off: what leaks there is not in it.
  const build = {
    ...at.valve.build,
    caseHoleM: Math.hypot(at.valve.build.caseHoleM, rig),
    outTubeHoleM: { opens: 0, shuts: 0 },
  };
  const state = restedAt(at.valve, { outputPercent: 50, process: 'bypassed' });
  const end = frame.doubleActing ? frame.topEnd : frame.risingEnd;
  const firstPa = state.endPa[end];
  if (firstPa < 8e3) return { cannotTell: true };
  const seconds = 20;
  run(build, { state, seconds, doing: { outputPercent: 50, process: 'bypassed', blockedIn: true } });
  const point = frame.doubleActing ? 'cylinderTop' : 'actuator';
  const mostPa = 1.2 * Math.max(frame.doubleActing ? frame.supplyPa : 0, frame.signalHighPa);
  // The fall is watched on one pointer: its zero does not count, what can be seen of its divisions does.
  const read = readPressure(build, { point, truePa: firstPa, mostPa, random: at.random });
  const lost = ((firstPa - state.endPa[end]) * 60) / seconds;
  return { value: (100 * lost) / firstPa, readSigma: Math.min(2, (30 * read.sigma) / firstPa) };
}

interface Bench {
  readonly startPa: number;
  readonly endPa: number;
}

/** Uncoupled, on the air of the rig: where it starts and where it ends. */
function benchSetUncoupled(at: At): Said {
  const { build } = at.valve;
  const {
    frame,
    frame: { sheet },
  } = build;
  const rangePa = sheet.benchSetHighPa - sheet.benchSetLowPa;
  const topPa = sheet.benchSetHighPa + 0.5 * rangePa;
  const opens = frame.risingEnd === 'opens';
  const state = stateAt(build, opens ? 0 : 1);
  const rise: number[] = [];
  const fall: number[] = [];
  const seenAt = (stemAt: number) => (opens ? stemAt : 1 - stemAt);
  const ramp = (of: { readonly from: number; readonly to: number; readonly into: number[] }) =>
    run(build, {
      state,
      seconds: 45,
      doing: (timeS) => ({
        outputPercent: 50,
        process: 'bypassed',
        uncoupled: true,
        rigPa: of.from + ((of.to - of.from) * timeS) / 45,
      }),
      seen: (now) => {
        const moved = seenAt(now.stemAt);
        const slot = Math.round(moved * 100);
        if (slot >= 2 && slot <= 98) of.into[slot] ??= now.endPa[frame.risingEnd];
      },
    });
  ramp({ from: 0, to: topPa, into: rise });
  const reached = seenAt(state.stemAt) > 0.95;
  ramp({ from: topPa, to: 0, into: fall });
  const [up, down] = [benchOf(rise), benchOf(fall)];
  if (!reached || up === null || down === null)
    return word(build.plateSlack > 0 && build.plateSlack < 1 ? 'span wrong' : 'does not stroke');
  const half = { startPa: (up.startPa + down.startPa) / 2, endPa: (up.endPa + down.endPa) / 2 };
  const apart = Math.abs(up.startPa - down.startPa) > 0.12 * rangePa;
  return apart ? word('up and down apart') : wordForBench(at, half);
}

function benchOf(table: readonly number[]): Bench | null {
  const [start, end] = [table[3] ?? table[4] ?? table[5], table[97] ?? table[96] ?? table[95]];
  return start === undefined || end === undefined ? null : { startPa: start, endPa: end };
}

function wordForBench(at: At, bench: Bench): Said {
  const { build } = at.valve;
  const { sheet } = build.frame;
  const rangePa = sheet.benchSetHighPa - sheet.benchSetLowPa;
  const off = (truePa: number, wantedPa: number) => {
    const mostPa = 1.5 * sheet.benchSetHighPa;
    const { value } = readPressure(build, { point: 'actuator', truePa, mostPa, random: at.random });
    return (value - wantedPa) / rangePa;
  };
  const start = off(bench.startPa, sheet.benchSetLowPa + 0.03 * rangePa);
  const end = off(bench.endPa, sheet.benchSetHighPa - 0.03 * rangePa);
  if (Math.abs(end - start) > 0.12) return word('span wrong');
  if (start > 0.05 && end > 0.05) return word('both high');
  return word(start < -0.05 && end < -0.05 ? 'both low' : 'as on the sheet');
}

function openActuator({ valve: { build } }: At): Said {
  if (build.plateSlack > 0) return word('joint loose');
  if (build.diaphragmHoleM > 0) return word('diaphragm torn');
  if (build.springBroken) return word('spring broken');
  if (build.boreScored) return word('bore scored');
  return word(build.crossHoleM > 0 ? 'piston seal worn' : 'sound');
}

/** A spring actuator, and what is common to all. */
export const looksAtActuator: Looks = {
  soapCaseJoint: (at) => bubbles(at, { holeM: at.valve.build.caseHoleM }),
  // What has come through the diaphragm goes out by the vent as well as by the adjuster.
  soapAdjuster: (at) => {
    const holeM = at.valve.build.diaphragmHoleM;
    return bubbles(at, { holeM, share: holeM > 1e-3 ? 0.9 : 0.6 });
  },
  soapStemSeal: (at) => bubbles(at, { holeM: at.valve.build.stemSealHoleM }),
  springSideVent,
  soapActuatorTube: (at) => {
    const { frame, outTubeHoleM } = at.valve.build;
    return bubbles(at, { holeM: outTubeHoleM[frame.risingEnd] });
  },
  blockActuatorSide,
  benchSetUncoupled,
  handwheelAndStops: ({ valve: { build } }) => word(build.stopSeen ? 'engaged' : 'neutral'),
  openActuator,
  soapCylinder: (at) => bubbles(at, { holeM: at.valve.build.rodSealHoleM }),
  soapOutputTubes: (at) => {
    const { frame, outTubeHoleM } = at.valve.build;
    const [top, bottom] = [outTubeHoleM[frame.topEnd], outTubeHoleM[otherEnd(frame.topEnd)]];
    const said = bubbles(at, { holeM: Math.max(top, bottom) });
    return 'word' in said && said.word === 'none' ? said : word(top > 0 ? 'top' : 'bottom');
  },
};
