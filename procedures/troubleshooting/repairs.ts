import type { ActionClass } from '../../safety/action-classes.ts';
import type { CauseId } from './causes.ts';
import { repairsOfActuatorAndValve } from './repairs/actuator-and-valve.ts';
import { repairsBeforeActuator } from './repairs/before-actuator.ts';
import type { Repair } from './repairs/repair.ts';
import type { ValveFacts } from './valve-facts.ts';

export const REPAIRS = { ...repairsBeforeActuator, ...repairsOfActuatorAndValve } as const;

export type RepairId = keyof typeof REPAIRS;

export const REPAIR_IDS = Object.keys(REPAIRS) as readonly RepairId[];

export function repairOf(id: RepairId): Repair {
  return REPAIRS[id];
}

/**
 * What a repair exposes people to on this valve: a case that holds its spring is opened another way, and so is a
 * cylinder.
 */
export function repairExposes(id: RepairId, v: ValveFacts): readonly ActionClass[] {
  const { exposes } = repairOf(id);
  const opensActuator = exposes.includes('loosenCaseBolts') || exposes.includes('openPistonCylinder');
  if (!opensActuator) return exposes;
  if (v.actuator === 'piston') return ['openPistonCylinder'];
  if (v.springHeldBy === 'adjuster') return ['backOffAdjuster', 'loosenCaseBolts'];
  return ['loosenShortCaseBolts', 'loosenLongCaseBolts'];
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
