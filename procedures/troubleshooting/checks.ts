import type { Check } from './check.ts';
import { actuatorChecks } from './checks/actuator.ts';
import { airChecks } from './checks/air.ts';
import { bodyChecks } from './checks/body.ts';
import { controlRoomChecks } from './checks/control-room.ts';
import { cylinderChecks } from './checks/cylinder.ts';
import { positionerChecks } from './checks/positioner.ts';
import { rigChecks } from './checks/rig.ts';
import { signalChecks } from './checks/signal.ts';
import { strokeChecks } from './checks/stroke.ts';
import type { ValveFacts } from './valve-facts.ts';

/** Every check there is, in the order in which a person goes round: outside first, opening last. */
const CHECKS = {
  ...controlRoomChecks,
  ...signalChecks,
  ...airChecks,
  ...positionerChecks,
  ...cylinderChecks,
  ...actuatorChecks,
  ...strokeChecks,
  ...bodyChecks,
  ...rigChecks,
} as const;

export type CheckId = keyof typeof CHECKS;

export const CHECK_IDS = Object.keys(CHECKS) as readonly CheckId[];

export function checkOf(id: CheckId): Check {
  return CHECKS[id];
}

/** The checks that such a valve has. */
export function checksFor(v: ValveFacts): readonly CheckId[] {
  return CHECK_IDS.filter((id) => checkOf(id).when?.(v) ?? true);
}

export function isCheckId(text: string): text is CheckId {
  return Object.hasOwn(CHECKS, text);
}
