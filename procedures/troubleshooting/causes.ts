import type { Cause } from './cause.ts';
import { airCauses } from './causes/air.ts';
import { controllerCauses } from './causes/controller.ts';
import { pistonCauses } from './causes/piston.ts';
import { positionerCauses } from './causes/positioner.ts';
import { processCauses } from './causes/process.ts';
import { oneRelayCauses, relayAnEndCauses } from './causes/relays.ts';
import { rigCauses } from './causes/rig.ts';
import { signalCauses } from './causes/signal.ts';
import { springActuatorCauses } from './causes/spring-actuator.ts';
import { stemCauses } from './causes/stem.ts';
import { trimCauses } from './causes/trim.ts';
import type { ValveFacts } from './valve-facts.ts';

/** Every cause there is, from the control room to the pipe. */
export const CAUSES = {
  ...controllerCauses,
  ...signalCauses,
  ...airCauses,
  ...positionerCauses,
  ...oneRelayCauses,
  ...relayAnEndCauses,
  ...springActuatorCauses,
  ...pistonCauses,
  ...stemCauses,
  ...trimCauses,
  ...processCauses,
  ...rigCauses,
} as const;

export type CauseId = keyof typeof CAUSES;

export const CAUSE_IDS = Object.keys(CAUSES) as readonly CauseId[];

/** Nothing is wrong: no fault beside it, and nothing to repair. */
export const SOUND: CauseId = 'nothingWrong';

export function causeOf(id: CauseId): Cause {
  return CAUSES[id];
}

/** The causes that such a valve can have. */
export function causesFor(v: ValveFacts): readonly CauseId[] {
  return CAUSE_IDS.filter((id) => causeOf(id).when?.(v) ?? true);
}
