/** A valve with its positioner, and what is read on it where nothing is wrong. */

import { AIR_AND_POSITIONER } from '../../procedures/overhaul/air-and-positioner.ts';
import { CYCLE_POINTS, pointField } from '../../procedures/rules/own-stroke.ts';
import type { ServedProcedure } from '../../procedures/served-procedure.ts';
import type { Overrides } from './answers.ts';
import { aSheetOf } from './sheets.ts';
import type { Texts } from './stroke-script.ts';

export const POSITIONER_SHEET = aSheetOf({
  positioner: 'pneumatic',
  positionerRisingSignalLoads: 'bottom',
  positionerRelays: 'one',
  supplyLowPa: '18',
  supplyHighPa: '22',
});

export function repairNamed(id: string): ServedProcedure {
  const found = AIR_AND_POSITIONER.find(({ definition }) => definition.id === id);
  if (found === undefined) throw new Error(`${id} is not served`);
  return found;
}

/** A cycle that stands where the signal asks. */
const ON_ITS_SIGNAL: Texts = Object.fromEntries(
  CYCLE_POINTS.map((point) => [pointField(point, 'travel'), `${point.percent} %`]),
);

/** Output of a relay in psi, on a supply of 20 psi unless another is given. */
export function swing(covered: number, clear: number, supply = 20): Texts {
  return { supplyNowPa: `${supply} psi`, coveredPa: `${covered} psi`, clearPa: `${clear} psi` };
}

export const SWINGS = swing(20, 0.5);
export const EMPTY = swing(0.3, 0.2);
export const FULL = swing(19.8, 19.5);

/** What is read along the way where the air goes off and comes back as it should. */
export const AIR_AS_IT_SHOULD: Overrides = {
  supplyRead: { supplyReadPa: '20 psi' },
  shutSupply: { supplyBeforePa: '20 psi', signalBeforePa: '9 psi' },
  ventSupply: { supplyAfterPa: '0 psi' },
  actuatorZero: { signalAfterPa: '0 psi' },
  supplyBack: { supplyBackPa: '20 psi' },
  strokeLeft: ON_ITS_SIGNAL,
};
