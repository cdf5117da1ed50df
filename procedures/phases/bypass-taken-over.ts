/** A repair that goes on where a job left the valve on its bypass: loop and bypass as they are, the air on. */
import type { Standing, Step, TakesOver } from '../vocabulary.ts';
import { yesNo } from './common.ts';

/** Out of control and out of the flow, its air on, whole, nothing locked and nothing signed. */
const ON_ITS_BYPASS: Standing = {
  consent: ['given'],
  loop: ['manual'],
  commands: ['isolated'],
  processFlow: ['set up'],
  closure: ['shut'],
  clear: ['not looked at', 'clear'],
  supplyLock: ['off'],
  secondSupplyLock: ['off'],
  inletLock: ['off'],
  outletLock: ['off'],
  testAir: ['off'],
  workSignOff: ['none'],
  returnSignOff: ['none'],
};

/** Taken over at a step with the flow on the bypass, or with the plant state that operations agreed. */
export function bypassedAt<const Id extends string>(at: Id): TakesOver<Id> {
  return {
    at,
    standing: ON_ITS_BYPASS,
    where: [
      { facts: { bypassLine: 'fitted' }, standing: { bypass: ['open'] } },
      { facts: { bypassLine: 'none' }, standing: { bypass: ['absent'] } },
    ],
  };
}

/** The same in a procedure that is done on the bench as well: there is no bypass there to take it over from. */
export function bypassedInLineAt<const Id extends string>(at: Id): TakesOver<Id> {
  return { ...bypassedAt(at), onlyWhere: { place: 'line' } };
}

type Own = 'takenOver' | 'notAsLeft';

/** What such a job looks at before its first act; the block valves and the look at the valve come after it. */
export function takeOverOnBypass(of: {
  /** `its tubing` */
  readonly what: string;
  readonly bring: readonly string[];
}): Readonly<Record<Own, Step<Own | 'blockForStroke' | 'consent' | 'undoBypass' | 'haltBypass'>>> {
  return {
    takenOver: {
      kind: 'reading',
      phase: 'bypass',
      title: `Go on with {tag} as it stands on its bypass: ${of.what}`,
      how: 'Consent, loop and bypass go along as they stand, and what was read. No signature does.',
      do: [
        'Read what the job before left in its record.',
        'Read the maker’s manual for this work: it outranks this card.',
        ...of.bring,
        'Have the site permit name this work too.',
        'Tell the operator which work begins.',
      ],
      asks: [
        yesNo('notLocked', 'No lock and no tag hangs on its points, nobody else works on it'),
        yesNo('stillHeld', 'Loop in manual and tagged, the flow held as the job before left it'),
      ],
      judge: { rule: 'allYes', with: { fields: 'notLocked stillHeld' } },
      ways: { yes: { to: 'blockForStroke' }, no: { to: 'notAsLeft' } },
      makeSafe: 'haltBypass',
    },
    notAsLeft: {
      kind: 'question',
      phase: 'bypass',
      title: '{tag} does not stand as the job before left it',
      how: 'Only the owner takes a lock off. The operator says who changed loop or bypass, and why.',
      choices: {
        again: { label: 'It stands so again, no lock hangs: look again', to: 'takenOver' },
        anew: { label: 'Ask the operator for the valve anew', to: 'consent' },
        giveBack: { label: 'Give the valve back', to: 'undoBypass' },
      },
      makeSafe: 'haltBypass',
    },
  };
}
