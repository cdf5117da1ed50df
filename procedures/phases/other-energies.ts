import type { ChoiceField, Step, TextField } from '../vocabulary.ts';
import { notShown } from './isolate-parts.ts';

type Kept = 'keptAir' | 'keptAirLeft';
export type Others = Kept | 'otherEnergies' | 'othersNotSafe';

const phase = 'isolate';
const makeSafe = 'haltIsolating';

/** Air that is kept by design, and every energy that is neither air, spring nor process: safe, or recorded absent. */
export function lookForOthers<const Next extends string>(next: {
  readonly bench: Next;
  readonly line: Next;
}): Readonly<Record<Others, Step<Others | Next | 'haltIsolating'>>> {
  return { ...lookForKeptAir<Others>('otherEnergies'), ...rest(next) } as Readonly<
    Record<Others, Step<Others | Next | 'haltIsolating'>>
  >;
}

/** Tank, lock-up relay and the other side of the actuator, each vented at its own vent or recorded absent. */
export function lookForKeptAir<const Next extends string>(
  next: Next,
): Readonly<Record<Kept, Step<Kept | Next | 'haltIsolating'>>> {
  return {
    keptAir: {
      kind: 'reading',
      phase,
      title: 'Look for air that is kept after the supply is shut',
      how: 'Each volume counts by itself, and is vented at its own vent.',
      why: 'A tank or a relay strokes the valve though every cock is locked.',
      asks: [
        kept('trappedAir', 'Tank or booster'),
        kept('lockUpAir', 'Behind a lock-up relay'),
        kept('oppositeAir', 'The other side of the actuator, where it is fed too'),
      ],
      judge: { rule: 'keptAir', with: { fields: 'trappedAir lockUpAir oppositeAir' } },
      ways: {
        'all safe': {
          to: next,
          sets: {
            trappedAir: { from: 'trappedAir', among: ['isolated', 'absent'] },
            lockUpAir: { from: 'lockUpAir', among: ['isolated', 'absent'] },
            oppositeAir: { from: 'oppositeAir', among: ['isolated', 'absent'] },
          },
        },
        'one is not safe': { to: 'keptAirLeft' },
        'the sheet has one': { to: 'keptAirLeft' },
      },
      onCylinder: { labels: { oppositeAir: 'The other end of the cylinder' } },
      makeSafe,
    },
    keptAirLeft: notShown('Air is kept somewhere, or the sheet has what you did not find', {
      how: 'The sheet says: tank or booster {sheetTank}, lock-up relay {sheetLockUp}, {actuatorKind}. Nothing goes on by memory.',
      choices: { again: { label: 'Vented at its own vent: look again', to: 'keptAir' } },
    }),
  } as Readonly<Record<Kept, Step<Kept | Next | 'haltIsolating'>>>;
}

function rest<const Next extends string>(next: {
  readonly bench: Next;
  readonly line: Next;
}): Readonly<Partial<Record<Others, Step<Others | Next | 'haltIsolating'>>>> {
  return {
    otherEnergies: {
      kind: 'reading',
      phase,
      title: 'Look for everything else that can hurt',
      how: 'Each one is recorded, also where there is nothing of it. What was made safe says how.',
      why: 'Spring, air and process are not the whole list.',
      asks: [
        other('temperature', 'Temperature: body, tracing, jacket', ['hot', 'safe', 'It may be touched']),
        {
          name: 'bodyTemperatureK',
          label: 'Body temperature, where it may be touched',
          type: 'quantity',
          dimension: 'temperature',
          optional: true,
        },
        other('weight', 'Weight that this work could let go', ['free', 'hung', 'Hung, slack taken up']),
        other('residue', 'Residue in drains, bonnet, packing', ['present', 'cleared', 'Cleared']),
        how('residueHow', 'How it was cleared, with gas test and time'),
        other('electrical', 'Electrical parts that this work touches', [
          'live',
          'isolated',
          'Locked off and tried dead',
        ]),
        how('electricalHow', 'Breaker, lock, and who tried it dead'),
        other('safetyFunction', 'Safety function of this valve', ['armed', 'overridden', 'Overridden']),
        how('safetyFunctionHow', 'Number of the override'),
      ],
      judge: {
        rule: 'others',
        with: { fields: 'temperature weight residue electrical safetyFunction' },
      },
      ways: {
        'all safe': {
          to: { by: 'place', ways: next },
          sets: {
            temperature: { from: 'temperature', among: ['safe', 'absent'] },
            weight: { from: 'weight', among: ['hung', 'absent'] },
            residue: { from: 'residue', among: ['cleared', 'absent'] },
            electrical: { from: 'electrical', among: ['isolated', 'absent'] },
            safetyFunction: { from: 'safetyFunction', among: ['overridden', 'absent'] },
          },
        },
        'one is not safe': { to: 'othersNotSafe' },
        'too hot to touch': { to: 'othersNotSafe' },
        'not said how': { to: 'othersNotSafe' },
        'the sheet has one': { to: 'othersNotSafe' },
      },
      makeSafe,
    },
    othersNotSafe: notShown('One of them is not safe, not told how, or on the sheet', {
      how: 'The sheet says: {energyResidue} Part of a trip: {sheetTrip}. At most {safeTouch} may be touched. A bare yes is not enough.',
      choices: { again: { label: 'Made safe: look again', to: 'otherEnergies' } },
    }),
  } as Readonly<Partial<Record<Others, Step<Others | Next | 'haltIsolating'>>>>;
}

function kept(name: string, label: string): ChoiceField {
  return other(name, label, ['live', 'isolated', 'Vented at its own vent: cracked twice, no flow']);
}

function other(
  name: string,
  label: string,
  [bad, good, said]: readonly [string, string, string],
): ChoiceField {
  return {
    name,
    label,
    type: 'choice',
    choices: [
      { value: 'absent', label: 'Nothing of it here' },
      { value: good, label: said },
      { value: bad, label: 'Not safe' },
    ],
  };
}

function how(name: string, label: string): TextField {
  return { name, label, type: 'text', optional: true };
}
