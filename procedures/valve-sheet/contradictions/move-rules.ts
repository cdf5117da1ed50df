/** Which way plug, stem and spring move. */
import { airActionOf, failPositionOf, stemMayTurn } from '../derived.ts';
import type { ValveSheet } from '../sheet.ts';
import { HAIR, type Rule, wordsFor } from './rule.ts';

const FAILS: Readonly<Record<ValveSheet['failPosition'], string>> = {
  shut: 'shuts',
  open: 'opens',
  stays: 'stays where it is',
};

export const moveRules: readonly Rule[] = [
  {
    code: 'VAL-101',
    fields: ['plugCloses', 'airMovesStem', 'airAction'],
    says: (sheet) => {
      const is = airActionOf(sheet);
      if (sheet.airAction === is) return null;
      return `A plug that closes moving ${sheet.plugCloses} and air that moves the stem ${sheet.airMovesStem} make it ${said(is)}, but the plate says ${said(sheet.airAction)}.`;
    },
  },
  {
    code: 'VAL-102',
    fields: ['failPosition', 'airAction', 'springHeldBy'],
    says: (sheet) => {
      const is = failPositionOf(sheet);
      if (sheet.failPosition === is) return null;
      // Without a spring, kept air may drive it either way.
      if (sheet.springHeldBy === 'no spring' && sheet.volumeTank) return null;
      const spring = sheet.springHeldBy === 'no spring' ? 'no spring and no tank' : 'a spring';
      return `With ${spring}, a valve that is ${said(sheet.airAction)} ${FAILS[is]} on loss of air, but the sheet says that it ${FAILS[sheet.failPosition]}.`;
    },
  },
  {
    code: 'VAL-117',
    fields: ['seatingTurns', 'bellowsSeal', 'stemPinned'],
    says: (sheet) => {
      if (stemMayTurn(sheet) || !sheet.seatingTurns) return null;
      const because = sheet.bellowsSeal ? 'a bellows seal' : 'a pinned stem';
      return `The sheet wants ${sheet.seatingTurns} turns of a stem that is never turned: it has ${because}.`;
    },
  },
  {
    code: 'VAL-118',
    fields: ['seatingTurns', 'stemThread', 'travelM'],
    says: (sheet) => {
      const length = wordsFor(sheet, 'length');
      const lostM = (sheet.seatingTurns ?? 0) * sheet.stemThreadPitchM;
      if (lostM < sheet.travelM * (1 - HAIR)) return null;
      return `${sheet.seatingTurns} turns of ${sheet.stemThread} are ${length(lostM)}, and the whole travel is ${length(sheet.travelM)}.`;
    },
  },
  {
    code: 'VAL-124',
    fields: ['actuatorKind', 'springHeldBy'],
    says: (sheet) =>
      sheet.actuatorKind === 'diaphragm' && sheet.springHeldBy === 'no spring'
        ? 'A diaphragm actuator without a spring has nothing that moves it back.'
        : null,
  },
  {
    code: 'VAL-116',
    fields: ['springHeldBy', 'adjusterThread'],
    says: ({ springHeldBy, adjusterThread }) => {
      if (springHeldBy === 'adjuster' && adjusterThread === null)
        return 'The spring is held by an adjuster, but the adjuster’s thread is not on the sheet.';
      if (springHeldBy !== 'adjuster' && adjusterThread !== null)
        return `An adjuster thread ${adjusterThread} is on the sheet, but no adjuster holds the spring.`;
      return null;
    },
  },
];

function said(airAction: ValveSheet['airAction']): string {
  return airAction.replaceAll('-', ' ');
}
