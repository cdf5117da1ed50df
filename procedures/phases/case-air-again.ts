import type { ActionClass } from '../../safety/action-classes.ts';
import type { Step } from '../vocabulary.ts';
import { airLimits } from './air-limits.ts';
import { connectCase } from './case-air.ts';
import { unsignedHalt, type WhereOn, whereOn, workHold } from './work-hold.ts';

type Own = keyof ReturnType<typeof airLimits> | 'holdAir' | 'unsignedAir' | 'connectAgain' | 'whereAir';

/** Test air that passed its limit or was stopped under: vented, signed for again, connected again, and where the work goes on. */
export function caseAirAgain<const Next extends string>({
  allows,
  choices,
}: {
  readonly allows: readonly ActionClass[];
  readonly choices: WhereOn<Next>;
}): Readonly<Record<Own, Step<Own | Next | 'disconnectAir'>>> {
  return {
    ...airLimits<string>({ connect: 'connectAgain', signAgain: 'holdAir', giveBack: 'disconnectAir' }),
    holdAir: workHold<string>({
      phase: 'asFound',
      title: 'Before test air goes on again',
      allows,
      next: 'connectAgain',
      halt: 'unsignedAir',
    }),
    unsignedAir: unsignedHalt<string>({ phase: 'asFound', hold: 'holdAir', self: 'unsignedAir' }),
    connectAgain: connectCase<string>({
      phase: 'asFound',
      title: 'Check that one regulator and its gauge are on the case',
      do: ['Set the regulator to zero.', 'Check the joint at the case.'],
      next: 'whereAir',
      ventNow: 'ventNow',
    }),
    whereAir: whereOn<string>({ phase: 'asFound', choices, makeSafe: 'ventNow' }),
  } as Readonly<Record<Own, Step<Own | Next | 'disconnectAir'>>>;
}
