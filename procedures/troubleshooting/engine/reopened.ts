import type { CheckId } from '../checks.ts';
import { type RepairId, repairOf } from '../repairs.ts';
import { type Evidence, settled } from './evidence.ts';
import type { Model } from './model.ts';

/** A cause that moves so much of a check's answers may have been what the check showed. */
const MOVES = 0.2;

/** Whether a repair may have changed what a check reads: one of the causes that it cures shows there. */
function reopens(model: Model, of: { readonly repair: RepairId; readonly check: CheckId }): boolean {
  const rows = model.tables.get(of.check)?.rows;
  const sound = rows?.[model.soundRow]?.shares[0] ?? 0;
  return repairOf(of.repair).cures.some((cause) => {
    const row = rows?.[model.rowOf.get(cause) ?? -1];
    return row !== undefined && sound - (row.shares[0] ?? 0) >= MOVES;
  });
}

export function settledIn(model: Model, evidence: readonly Evidence[]): ReadonlySet<CheckId> {
  return settled(evidence, (repair, check) => reopens(model, { repair, check }));
}
