import type { ActionClass } from '../../safety/action-classes.ts';
import type { ConditionId } from '../../safety/conditions.ts';
import type { WhenFact } from '../facts.ts';
import type { Choice, HoldStep, QuestionStep, Target } from '../vocabulary.ts';
import { ALL_ENERGIES } from './overhaul-frame.ts';

/** The hold before work that cannot be undone: each energy shown safe, signed by somebody who did none of it. */
export function workHold<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly allows: readonly ActionClass[];
  readonly next: Id;
  readonly halt: Id;
  /** Energies of which one misread number would hurt most. */
  readonly readTwice?: readonly ConditionId[];
}): HoldStep<Id> {
  return {
    kind: 'hold',
    phase: step.phase,
    title: step.title,
    how: 'Work stops here. Each energy is shown safe by a reading. Somebody who did none of this work signs, or sends it back.',
    point: 'hold',
    criterion:
      'Each energy is absent, or shown safe by a reading inside its limit or by a vent without flow, tried twice.',
    ...(step.readTwice === undefined ? {} : { readTwice: step.readTwice }),
    evidence: ALL_ENERGIES,
    allows: step.allows,
    signed: { to: step.next, sets: { workSignOff: 'given' } },
    sentBack: { to: step.halt },
    makeSafe: step.halt,
  };
}

/** Where work stops with something open: locks stay on, nothing under air. */
export function openHalt<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly goOn: Id;
  readonly signAgain: Id;
  readonly self: Id;
}): QuestionStep<Id> {
  return {
    kind: 'question',
    phase: step.phase,
    title: step.title,
    how: 'Nothing is under air. Cover what is open, tie up what hangs, step back.',
    choices: {
      goOn: { label: 'Go on', to: step.goOn },
      signAgain: { label: 'Have the hold signed again', to: step.signAgain, sets: { workSignOff: 'none' } },
    },
    makeSafe: step.self,
  };
}

/** Where work stops that nobody has signed for any more: only a signature leads on. */
export function unsignedHalt<const Id extends string>(step: {
  readonly phase: string;
  readonly hold: Id;
  readonly self: Id;
}): QuestionStep<Id> {
  return {
    kind: 'question',
    phase: step.phase,
    title: 'Stopped: nothing more is done without a signature',
    how: 'Locks stay on, nothing is under air. Put right what was sent back, then have it signed.',
    choices: { again: { label: 'Have the hold signed', to: step.hold } },
    makeSafe: step.self,
  };
}

/** Where work may go on, and on which valves alone where it is not on all. */
export type WhereOn<Id extends string> = Readonly<
  Record<string, readonly [label: string, to: Target<Id>, when?: WhenFact]>
>;

/** Asked where work goes on after a stop. */
export function whereOn<const Id extends string>(step: {
  readonly phase: string;
  readonly choices: WhereOn<Id>;
  readonly makeSafe: Id;
}): QuestionStep<Id> {
  const choices = Object.entries(step.choices).map(([id, [label, to, when]]): [string, Choice<Id>] => [
    id,
    { label, to, ...(when === undefined ? {} : { when }) },
  ]);
  return {
    kind: 'question',
    phase: step.phase,
    title: 'Where the work goes on',
    how: 'By what was done before it stopped.',
    choices: Object.fromEntries(choices),
    makeSafe: step.makeSafe,
  };
}
