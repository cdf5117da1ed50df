/** The stem on test air: what gauge and scale show at one setting, and where the stem leaves and meets its ends. */
import type { RowPlan } from '../../vocabulary.ts';
import { dialFor, readPressure, readTravel } from '../gauge.ts';
import { run } from '../run.ts';
import { kept, lookRandom, type SimulatedValve } from '../simulated.ts';
import { type State, stateAt } from '../state.ts';
import type { Shown } from './gauges.ts';

/** How far a setting is come to from one side, as a share of the bench set range: common practice, no source. */
const RUN_UP_SHARE = 0.4;
const SETTLE_S = 20;
const RAMP_S = 12;

interface Setting {
  readonly plan: Pick<RowPlan, 'percent' | 'direction'>;
  /** Air that the setting asks for. */
  readonly plannedPa: number;
  /** How many rows were read before: each look has its own small error. */
  readonly row: number;
}

/** Signal gauge and scale at one row of a stroke table, come to from the side that the row asks. */
export function rowOnRig(valve: SimulatedValve, of: Setting): readonly Shown[] {
  const { build } = valve;
  const { frame } = build;
  const { plan, plannedPa, row } = of;
  const state = structuredClone(
    kept(valve, {
      key: `row ${plan.direction} ${plannedPa}`,
      work: () => settled(valve, { plannedPa, isUp: plan.direction === 'up' }),
    }),
  );
  const random = lookRandom(valve, `row ${row} ${plan.percent} ${plan.direction}`);
  const mostPa = 1.2 * frame.sheet.benchSetHighPa;
  const { value } = readPressure(build, {
    point: 'signal',
    truePa: state.endPa[frame.risingEnd],
    mostPa,
    random,
  });
  const stemAt = state.stemAt - build.couplingSlip;
  return [
    { name: 'signalPa', label: 'Signal', dimension: 'pressure', valueSi: value, fullSi: dialFor(mostPa) },
    {
      name: 'travelM',
      label: 'Travel',
      dimension: 'length',
      valueSi: Math.max(0, readTravel(build, { stemAt, random }).value),
      fullSi: frame.travelM,
    },
  ];
}

function settled(
  { build }: SimulatedValve,
  { plannedPa, isUp }: { readonly plannedPa: number; readonly isUp: boolean },
): State {
  const { frame } = build;
  const { benchSetLowPa, benchSetHighPa } = frame.sheet;
  const runUpPa = RUN_UP_SHARE * (benchSetHighPa - benchSetLowPa);
  const fromPa = Math.max(0, plannedPa + (isUp ? -runUpPa : runUpPa));
  const state = stateAt(build, frame.risingEnd === 'opens' ? 0 : 1);
  const air = (pressurePa: number) => ({ outputPercent: 0, process: 'bypassed' as const, rigPa: pressurePa });
  run(build, { state, seconds: SETTLE_S, doing: air(fromPa) });
  run(build, {
    state,
    seconds: RAMP_S,
    doing: (timeS) => air(fromPa + ((plannedPa - fromPa) * timeS) / RAMP_S),
  });
  return run(build, { state, seconds: SETTLE_S, doing: air(plannedPa) });
}

/** Air at which the stem leaves its rest and meets its end, rising, then falling; null where it never does. */
export interface BenchEnds {
  readonly benchLowUpPa: number | null;
  readonly benchHighUpPa: number | null;
  readonly benchHighDownPa: number | null;
  readonly benchLowDownPa: number | null;
  readonly benchTravelM: number;
}

type Seen = readonly [pressurePa: number, movedShare: number];

/** Share of the travel that counts as a hair of movement on a dial indicator: judgement. */
const HAIR = 0.01;
const STROKE_S = 60;

/** Both ends of the bench set as the stem shows them on slowly rising and falling air. */
export function benchEnds(valve: SimulatedValve): BenchEnds {
  return kept(valve, { key: 'bench ends', work: () => workOut(valve) });
}

function workOut({ build }: SimulatedValve): BenchEnds {
  const { frame } = build;
  const topPa = 1.25 * frame.sheet.benchSetHighPa;
  const state = stateAt(build, frame.risingEnd === 'opens' ? 0 : 1);
  const moved = () => (frame.risingEnd === 'opens' ? state.stemAt : 1 - state.stemAt);
  const ramp = (of: { readonly from: number; readonly to: number }): readonly Seen[] => {
    const seen: Seen[] = [];
    run(build, {
      state,
      seconds: STROKE_S,
      doing: (timeS) => ({
        outputPercent: 0,
        process: 'bypassed',
        rigPa: of.from + ((of.to - of.from) * timeS) / STROKE_S,
      }),
      seen: (now) => seen.push([now.endPa[frame.risingEnd], moved()]),
    });
    return seen;
  };
  const up = ramp({ from: 0, to: topPa });
  const most = moved();
  const down = ramp({ from: topPa, to: 0 });
  const least = [...up, ...down].reduce((low, [, at]) => Math.min(low, at), 1);
  const first = (of: readonly Seen[], is: (at: number) => boolean) =>
    of.find(([, at]) => is(at))?.[0] ?? null;
  const moves = most - least > 10 * HAIR;
  return {
    benchLowUpPa: moves ? first(up, (at) => at > least + HAIR) : null,
    benchHighUpPa: moves ? first(up, (at) => at > most - HAIR) : null,
    benchHighDownPa: moves ? first(down, (at) => at < most - HAIR) : null,
    benchLowDownPa: moves ? first(down, (at) => at < least + HAIR) : null,
    benchTravelM: (most - least) * frame.travelM,
  };
}
