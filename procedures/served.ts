import { COMMISSIONING } from './commissioning/procedures.ts';
import { SETTINGS } from './commissioning/settings.ts';
import { OVERHAUL } from './overhaul/procedures.ts';
import type { ServedProcedure } from './served-procedure.ts';
import { TROUBLESHOOTING } from './troubleshooting/procedures.ts';

/** The procedures that new jobs open on, in the order in which a valve offers them. */
export const PROCEDURES: readonly ServedProcedure[] = [
  ...COMMISSIONING,
  ...SETTINGS,
  ...OVERHAUL,
  ...TROUBLESHOOTING,
];

/** @example procedureNamed('stroke-check')?.folder // 'commissioning' */
export function procedureNamed(id: string): ServedProcedure | undefined {
  return PROCEDURES.find(({ definition }) => definition.id === id);
}
