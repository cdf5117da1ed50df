import { noBlockValves, type ServedProcedure } from '../served-procedure.ts';
import { ALL_ROLES } from '../test-gear/roles.ts';
import { strokeCheck } from './stroke-check.ts';

/** Setting, checking and giving back. */
export const COMMISSIONING: readonly ServedProcedure[] = [
  {
    definition: strokeCheck,
    folder: 'commissioning',
    gear: ALL_ROLES,
    whyNot(sheet, place) {
      if (sheet.actuatorKind !== 'diaphragm') return 'A piston is not stroked by air on a spring case.';
      if (sheet.springHeldBy === 'no spring') return 'It has no spring to stroke against.';
      if (sheet.positioner !== 'none')
        return 'It has a positioner: its stroke is checked with the positioner in the loop.';
      return noBlockValves(sheet, place);
    },
  },
];
