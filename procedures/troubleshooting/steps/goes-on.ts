/** A repair goes on as its own job with the valve as it stands: behind its locks or on its bypass, with what was read. */
import { handedTo, handsOn } from '../../phases/taken-over.ts';
import type { InstructionStep, QuestionStep, Step } from '../../vocabulary.ts';
import { nameStepId } from './hub-choices.ts';

/** Procedures that take over a valve that is locked out, or one on its bypass with its air on. */
export const GOES_ON_AS = {
  isolated: [
    'case-nuts',
    'diaphragm-renewal',
    'piston-seals',
    'spring-change',
    'bench-set',
    'packing-renewal',
    'seat-and-plug',
    'valve-overhaul',
  ],
  bypassed: [
    'tubing',
    'air-set',
    'nozzle-flapper',
    'relay-restriction',
    'positioner-bellows',
    'feedback-linkage',
    'solenoid',
    'converter-wiring',
    'positioner-calibration',
    'converter-calibration',
    'indicator-and-coupling',
  ],
} as const;

/** How the valve stands when its repair goes on. */
export type HandingHub = keyof typeof GOES_ON_AS;

type GoesOnAs<H extends HandingHub = HandingHub> = (typeof GOES_ON_AS)[H][number];

export const EVERY_GOES_ON: readonly GoesOnAs[] = [...GOES_ON_AS.isolated, ...GOES_ON_AS.bypassed];

/** The procedure that goes on from where the valve stands, where this repair has one that does. */
export function goesOnAs(hub: HandingHub, procedure: string | null | undefined): GoesOnAs | null {
  const all: readonly GoesOnAs[] = GOES_ON_AS[hub];
  return all.find((id) => id === procedure) ?? null;
}

const PHASE = { isolated: 'isolated', bypassed: 'onBypass' } as const;
const MAKE_SAFE = { isolated: 'haltIsolating', bypassed: 'haltBypass' } as const;

function tail(id: GoesOnAs): string {
  return id.replaceAll(/(?:^|-)(\w)/g, (_, letter: string) => letter.toUpperCase());
}

export function goesOnStepId(id: GoesOnAs): string {
  return `goOn${tail(id)}`;
}

/** Where the naming behind locks begins: nothing of the rig stays on, whoever takes the valve next. */
export const RIG_AWAY = 'rigAway';

/** A question for each of them, and the end that hands over. @param giveBack where the valve is given back instead */
export function goesOnCards(hub: HandingHub, giveBack: string): Readonly<Record<string, Step>> {
  return Object.fromEntries([
    ...(hub === 'isolated' ? [[RIG_AWAY, rigAway()] as const] : []),
    ...GOES_ON_AS[hub].flatMap((id): readonly (readonly [string, Step])[] => [
      [goesOnStepId(id), goesOnCard(id, { hub, giveBack })],
      [
        `to${tail(id)}`,
        handedTo({
          phase: PHASE[hub],
          title: 'It goes on as the job of this repair',
          procedure: id,
          as: hub,
        }),
      ],
    ]),
  ]);
}

function rigAway(): InstructionStep<string> {
  return {
    kind: 'instruction',
    phase: PHASE.isolated,
    title: 'Leave nothing of the test rig on the actuator',
    action: 'disconnectTestAir',
    do: ['Look whether anything of the rig hangs there.', 'Take it off.', 'Cap the port.'],
    next: { to: nameStepId('isolated'), sets: { testAir: 'off' } },
    makeSafe: 'haltIsolating',
  };
}

const WORDS = {
  isolated: {
    how: 'Every lock stays where it hangs, and isolation and readings go along. No signature does: that work has holds of its own.',
    why: 'Undoing the isolation and making it again costs an hour, and each change of locks is a chance to err.',
  },
  bypassed: {
    how: 'The operator agrees first. Loop and bypass stay as they stand, the air on, and what was read goes along. Where that work shuts air off, it hangs locks of its own.',
    why: 'Giving the valve back and taking it over again moves the process twice more.',
  },
} as const;

function goesOnCard(
  id: GoesOnAs,
  { hub, giveBack }: { readonly hub: HandingHub; readonly giveBack: string },
): QuestionStep<string> {
  return {
    kind: 'question',
    phase: PHASE[hub],
    title: 'The repair that was named: does it go on now?',
    ...WORDS[hub],
    choices: {
      on: handsOn('Parts and people are at hand: go on as its job', `to${tail(id)}`),
      back: { label: 'Not now: give the valve back, the repair is planned', to: giveBack, comesNext: id },
    },
    makeSafe: MAKE_SAFE[hub],
  };
}
