/**
 * A whole stroke check as data: what a person types on each card, read off a valve whose friction makes the way
 * up and the way down differ. The same texts may be posted as a form or as JSON, or typed into a browser.
 */
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { strokeAnswers, type Texts, textsAt } from '../../server/demo/stroke-answers.ts';
import { aSheetOf } from './sheets.ts';

export { type Texts, textsAt };

export interface Geometry {
  readonly plugCloses: 'down' | 'up';
  readonly airMovesStem: 'down' | 'up';
}

/** Every way in which plug and air can work together. */
export const GEOMETRIES: readonly Geometry[] = [
  { plugCloses: 'down', airMovesStem: 'up' },
  { plugCloses: 'down', airMovesStem: 'down' },
  { plugCloses: 'up', airMovesStem: 'up' },
  { plugCloses: 'up', airMovesStem: 'down' },
];

/** FV-214 built the other way round: texts of its sheet that follow from how plug and air work together. */
function textsFor({ plugCloses, airMovesStem }: Geometry): Texts {
  const closes = plugCloses === airMovesStem;
  return {
    plugCloses,
    airMovesStem,
    airAction: closes ? 'air-to-close' : 'air-to-open',
    failPosition: closes ? 'open' : 'shut',
  };
}

export function sheetFor(geometry: Geometry, texts: Texts = {}): ValveSheet {
  return aSheetOf({ ...textsFor(geometry), ...texts });
}

/** Friction of packing and stem, as signal: 0.3 psi on 100 in2 is 30 lbf each way. */
export const FRICTION_PSI = 0.3;

/** Holds of the script, which somebody else signs. */
export const SIGNED_STEPS: readonly string[] = ['holdWork', 'signBench', 'signReturn'];

/** Waits of the script, with how long they take, in seconds. */
export const WAITED_STEPS: Readonly<Record<string, number>> = { rigShutIn: 20, waitDrained: 300 };

/**
 * What is given on every card that is answered on the way from opening to `done`, by step id; a table has one
 * set of texts for each of its rows. Holds are signed and waits are waited for: their texts are empty.
 *
 * @example strokeScript(aSheet()).holdForPlug // { heldPa: '9 psi', heldAgainPa: '9 psi', heldTravelM: '0.356 in' }
 */
export function strokeScript(sheet: ValveSheet): Readonly<Record<string, Texts | readonly Texts[]>> {
  return {
    ...strokeAnswers(sheet, {
      frictionPsi: FRICTION_PSI,
      shiftPsi: 0,
      work: 'setPlug',
      note: 'Stem two turns longer.',
    }),
    benchRecord: { noProcess: 'yes', noLines: 'yes', portOpen: 'yes', clampedDown: 'yes' },
  };
}
