/** A repair that wants the valve isolated as it stands goes on as its own job: locks and readings go along. */
import { handedTo, handsOn } from '../../phases/taken-over.ts';
import type { InstructionStep, QuestionStep, Step } from '../../vocabulary.ts';
import { nameStepId } from './hub-choices.ts';

/** Procedures that take over a valve that is locked out. */
export const GOES_ON_AS = [
  'case-nuts',
  'diaphragm-renewal',
  'piston-seals',
  'spring-change',
  'bench-set',
  'packing-renewal',
  'seat-and-plug',
  'valve-overhaul',
] as const;

type GoesOnAs = (typeof GOES_ON_AS)[number];

/** The procedure that goes on from the locked-out valve, where this repair has one that does. */
export function goesOnAs(procedure: string | null | undefined): GoesOnAs | null {
  return GOES_ON_AS.find((id) => id === procedure) ?? null;
}

const PHASE = 'isolated';

function tail(id: GoesOnAs): string {
  return id.replaceAll(/(?:^|-)(\w)/g, (_, letter: string) => letter.toUpperCase());
}

export function goesOnStepId(id: GoesOnAs): string {
  return `goOn${tail(id)}`;
}

/** Where the naming behind locks begins: nothing of the rig stays on, whoever takes the valve next. */
export const RIG_AWAY = 'rigAway';

/** A question for each of them, and the end that hands over. @param giveBack where the valve is given back instead */
export function goesOnCards(giveBack: string): Readonly<Record<string, Step>> {
  return Object.fromEntries([
    [RIG_AWAY, rigAway()],
    ...GOES_ON_AS.flatMap((id): readonly (readonly [string, Step])[] => [
      [goesOnStepId(id), goesOnCard(id, giveBack)],
      [
        `to${tail(id)}`,
        handedTo({
          phase: PHASE,
          title: 'It goes on as the job of this repair',
          procedure: id,
          as: 'isolated',
        }),
      ],
    ]),
  ]);
}

function rigAway(): InstructionStep<string> {
  return {
    kind: 'instruction',
    phase: PHASE,
    title: 'Leave nothing of the test rig on the actuator',
    action: 'disconnectTestAir',
    do: ['Look whether anything of the rig hangs there.', 'Take it off.', 'Cap the port.'],
    next: { to: nameStepId('isolated'), sets: { testAir: 'off' } },
    makeSafe: 'haltIsolating',
  };
}

function goesOnCard(id: GoesOnAs, giveBack: string): QuestionStep<string> {
  return {
    kind: 'question',
    phase: PHASE,
    title: 'The repair that was named: does it go on now?',
    how: 'Every lock stays where it hangs, and isolation and readings go along. No signature does: that work has holds of its own.',
    why: 'Undoing the isolation and making it again costs an hour, and each change of locks is a chance to err.',
    choices: {
      on: handsOn('Parts and people are at hand: go on as its job', `to${tail(id)}`),
      back: { label: 'Not now: give the valve back, the repair is planned', to: giveBack, comesNext: id },
    },
    makeSafe: 'haltIsolating',
  };
}
