import { procedureNamed } from '../served.ts';
import type { Place } from '../served-procedure.ts';
import type { ValveSheet } from '../valve-sheet/sheet.ts';
import type { Hub } from './check.ts';
import { repairProcedure, WITHOUT_PROCEDURE } from './repair-procedures.ts';
import { type RepairId, repairOf } from './repairs.ts';
import { goesOnAs } from './steps/goes-on.ts';

/** How a repair is made on this very valve. */
export interface RepairWay {
  /** The procedure of the house that makes it; null where it has none. */
  readonly procedure: string | null;
  /** Why that is not to be had for this valve, or why there is none; blank where it is. */
  readonly because: string;
}

/** @example repairWay('repack', { sheet, place: 'line' }).procedure // 'packing-renewal' */
export function repairWay(
  id: RepairId,
  { sheet, place }: { readonly sheet: ValveSheet; readonly place: Place },
): RepairWay {
  const procedure = repairProcedure(id, sheet.actuatorKind);
  if (procedure === undefined) return { procedure: null, because: WITHOUT_PROCEDURE[id] ?? '' };
  return { procedure, because: procedureNamed(procedure)?.whyNot(sheet, place) ?? '' };
}

/** Whether a repair goes on from where the valve stands, goes on once it is isolated, or only after it was given back. */
export function goesOnFrom(
  id: RepairId,
  { hub, way }: { readonly hub: Hub; readonly way: RepairWay },
): 'here' | 'isolated' | 'given back' {
  if (way.because !== '' || hub === 'in service') return 'given back';
  if (goesOnAs(hub, way.procedure) !== null) return 'here';
  const isolatedFirst = hub === 'bypassed' && goesOnAs('isolated', way.procedure) !== null;
  return isolatedFirst && repairOf(id).hub === 'isolated' ? 'isolated' : 'given back';
}
