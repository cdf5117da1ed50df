import type { CauseId } from '../troubleshooting/causes.ts';
import type { Build } from './build.ts';
import { faultsOfActuator } from './faults/actuator.ts';
import { faultsBeforeValve, faultsOfAir, faultsOfGear } from './faults/before-valve.ts';
import type { Fault, Faults, Severity } from './faults/fault.ts';
import { faultsOfPositioner } from './faults/positioner.ts';
import { faultsOfProcess, faultsOfStem, faultsOfTrim } from './faults/valve.ts';
import type { Random } from './random.ts';

/** Every fault that the simulated valve can have. */
export const FAULTS: Faults = {
  ...faultsBeforeValve,
  ...faultsOfAir,
  ...faultsOfGear,
  ...faultsOfPositioner,
  ...faultsOfActuator,
  ...faultsOfStem,
  ...faultsOfTrim,
  ...faultsOfProcess,
};

/** Causes that the simulation cannot have, with the reason. */
export const OUT_OF_REACH: Partial<Record<CauseId, string>> = {};

export interface Given {
  readonly cause: CauseId;
  readonly severity: Severity;
}

/** A valve with these faults in it; the sound one is left as it is. */
export function withFaults(
  sound: Build,
  of: { readonly faults: readonly Given[]; readonly random: Random },
): Build {
  const build = structuredClone(sound);
  for (const { cause, severity } of of.faults) {
    const fault: Fault | undefined = FAULTS[cause];
    if (fault === undefined) throw new Error(`the simulated valve cannot have ${cause}`);
    fault.does(build, { severity, random: of.random });
  }
  return build;
}
