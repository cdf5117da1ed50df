import { shutEnd } from '../../../procedures/calculations/force-balance.ts';
import { plugForce } from '../../../procedures/calculations/plug-force.ts';
import type { UnitId } from '../../../procedures/calculations/unit-table.ts';
import { format, preferredUnit } from '../../../procedures/calculations/units.ts';
import type { Job } from '../../../procedures/job.ts';
import { judged } from './results.ts';
import type { JobRecord } from './schema.ts';

/**
 * What holds this valve shut with the process on, term by term: spring and air, process, friction, and the load that is
 * left on the seat. Null for a cylinder without a spring, which has no bench set to reckon with.
 */
export function forcesOf(job: Job): JobRecord['forces'] {
  const { sheet } = job;
  if (sheet.springHeldBy === 'no spring') return null;
  const friction = frictionOf(job);
  const { portDiameterM, shutOffDropPa } = sheet;
  const plugForceOpeningN = plugForce({ ...sheet, inletPa: shutOffDropPa, outletPa: 0 }).openingN;
  const supplyPa = airOf(job);
  const end = shutEnd({ ...sheet, plugForceOpeningN, frictionN: friction.frictionN, supplyPa });
  const newtons = (valueSi: number) => signed(valueSi, preferredUnit('force', sheet.units));
  const pascals = (valueSi: number) => format({ valueSi, unit: preferredUnit('pressure', sheet.units) });
  const closes = sheet.airAction === 'air-to-close';
  const needN = sheet.seatLoadNPerM === null ? null : sheet.seatLoadNPerM * Math.PI * portDiameterM;
  const lifts = end.firstLiftPa ?? end.contactPa ?? 0;
  return {
    rows: [
      {
        label: closes ? 'air less spring, towards the seat' : 'spring, towards the seat',
        value: `${newtons(end.springOrAirN)}${closes ? `, with ${pascals(supplyPa)} on the case` : ', with no air on the case'}`,
      },
      {
        label: 'process on the shut plug',
        value: `${newtons(end.plugForceN)}, with ${pascals(shutOffDropPa)} across it`,
      },
      { label: 'friction, against closing', value: `${newtons(end.frictionN)}, ${friction.from}` },
      {
        label: 'left on the seat',
        value: `${newtons(end.seatLoadN)}${end.heldShut ? '' : ': NOT HELD SHUT'}`,
      },
      {
        label: 'wanted by the seat',
        value: needN === null ? 'not on the sheet' : newtons(needN),
      },
      {
        label: closes ? 'the plug meets its seat at' : 'the plug leaves its seat at',
        value: pascals(lifts),
      },
    ],
    note: 'Worked out from the valve sheet, with the friction named here; not measured with the process on. Plus pushes towards the seat.',
  };
}

/** As left before as found before the sheet; a valve of whose friction nothing is known is reckoned without. */
function frictionOf(job: Job): { readonly frictionN: number; readonly from: string } {
  for (const [when, from] of [
    ['asLeft', 'as left'],
    ['asFound', 'as found'],
  ] as const) {
    const frictionN = judged(job, when)?.frictionN;
    if (typeof frictionN === 'number') return { frictionN: Math.max(0, frictionN), from };
  }
  const { packingFrictionN } = job.sheet;
  return packingFrictionN === null
    ? { frictionN: 0, from: 'not known, and not counted' }
    : { frictionN: packingFrictionN, from: 'of this packing by the sheet' };
}

/** Without a positioner no more than its signal reaches the case. */
function airOf({ sheet: { positioner, signalHighPa, supplyLowPa } }: Job): number {
  return positioner === 'none' ? signalHighPa : (supplyLowPa ?? signalHighPa);
}

function signed(valueSi: number, unit: UnitId): string {
  const text = format({ valueSi: Math.abs(valueSi), unit });
  return valueSi < 0 ? `\u2212${text}` : `+${text}`;
}
