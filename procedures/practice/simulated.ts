import type { ValveSheet } from '../valve-sheet/sheet.ts';
import { type Build, frameOf, soundBuild } from './build.ts';
import { type Given, withFaults } from './faults.ts';
import { atOnce } from './in-steps.ts';
import { type LoopRecord, loopRecord } from './loop.ts';
import { type Random, seeded } from './random.ts';
import { resting } from './run.ts';
import type { State } from './state.ts';
import type { Doing } from './step.ts';

/** A simulated valve with what is wrong with it. What takes long to work out is kept once it was asked for. */
export interface SimulatedValve {
  readonly sound: Build;
  readonly build: Build;
  readonly faults: readonly Given[];
  readonly kept: Map<string, unknown>;
  readonly seed: number;
}

/**
 * A valve of a sheet with hidden faults. The same seed gives the same valve.
 * @example simulatedValve(sheet, { faults: [{ cause: 'packingTight', severity: 0.5 }], seed: 7 })
 */
export function simulatedValve(
  sheet: ValveSheet,
  of: {
    readonly faults: readonly Given[];
    readonly seed: number;
    readonly coveredNozzleLoadsOther?: boolean;
  },
): SimulatedValve {
  const random = seeded(of.seed);
  const sound = soundBuild(frameOf(sheet, of), random);
  const build = withFaults(sound, { faults: of.faults, random });
  return { sound, build, faults: of.faults, kept: new Map(), seed: of.seed };
}

export function kept<T>(valve: SimulatedValve, of: { readonly key: string; readonly work: () => T }): T {
  // A key is always worked out by one piece of work.
  if (valve.kept.has(of.key)) return valve.kept.get(of.key) as T;
  const value = of.work();
  valve.kept.set(of.key, value);
  return value;
}

/** The same for work that goes on in steps; what was asked for before takes none. */
export function* keptInSteps<T>(
  valve: SimulatedValve,
  of: { readonly key: string; readonly steps: () => Generator<void, T> },
): Generator<void, T> {
  if (valve.kept.has(of.key)) return valve.kept.get(of.key) as T;
  const value = yield* of.steps();
  valve.kept.set(of.key, value);
  return value;
}

/** The loop over the last hours, the same whoever looks; in steps of a second of it. */
export function* recording(valve: SimulatedValve): Generator<void, LoopRecord> {
  return yield* keptInSteps(valve, {
    key: 'record',
    steps: () => loopRecord(valve.sound, { faulty: valve.build, random: seeded(valve.seed + 1) }),
  });
}

/** The same at once. */
export function recordOf(valve: SimulatedValve): LoopRecord {
  return atOnce(recording(valve));
}

interface Rest {
  readonly outputPercent: number;
  readonly process: Doing['process'];
  readonly which?: 'sound' | 'build';
}

/** At rest with an output, in steps of a second; a copy, so that whoever gets it may go on from there. */
export function* restingAt(valve: SimulatedValve, of: Rest): Generator<void, State> {
  const which = of.which ?? 'build';
  const state = yield* keptInSteps(valve, {
    key: `rest ${which} ${of.outputPercent} ${of.process}`,
    steps: () => resting(valve[which], of),
  });
  return structuredClone(state);
}

/** The same at once. */
export function restedAt(valve: SimulatedValve, of: Rest): State {
  return atOnce(restingAt(valve, of));
}

/** A generator for one look: the same look gives the same answer. */
export function lookRandom(valve: SimulatedValve, check: string): Random {
  let mixed = valve.seed;
  for (const letter of check) mixed = Math.imul(mixed ^ letter.charCodeAt(0), 0x01000193);
  return seeded(mixed);
}
