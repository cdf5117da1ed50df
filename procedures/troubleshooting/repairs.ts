import type { CauseId } from './causes.ts';
import { repairsOfActuatorAndValve } from './repairs/actuator-and-valve.ts';
import { repairsBeforeActuator } from './repairs/before-actuator.ts';
import type { Repair } from './repairs/repair.ts';

const REPAIRS = { ...repairsBeforeActuator, ...repairsOfActuatorAndValve } as const;

export type RepairId = keyof typeof REPAIRS;

export const REPAIR_IDS = Object.keys(REPAIRS) as readonly RepairId[];

export function repairOf(id: RepairId): Repair {
  return REPAIRS[id];
}

/** The repair that puts a cause right. */
export function repairFor(cause: CauseId): RepairId {
  const found = BY_CAUSE.get(cause);
  if (found === undefined) throw new Error(`no repair for ${cause}`);
  return found;
}

const BY_CAUSE: ReadonlyMap<CauseId, RepairId> = new Map(
  REPAIR_IDS.flatMap((id) => repairOf(id).cures.map((cause) => [cause, id] as const)),
);
