/** What every overhaul of an isolated valve begins and ends with. */
import type { ConditionId } from '../../safety/conditions.ts';
import type { EnergyControl, Step } from '../vocabulary.ts';
import { isolate } from './isolate.ts';
import { ontoBypass } from './onto-bypass.ts';
import { readyRig } from './ready-rig.ts';

/** How such a job isolates; its use is its own. */
export function isolatedControl(use: string): EnergyControl {
  return {
    use,
    isolation:
      'Loop in manual, flow on the bypass or the plant state agreed; both block valves and every air feed shut, each by its own point; sides drained, air vented, kept air vented at its own vent.',
    locks:
      'Who shuts a point hangs their own lock and tag there and writes its number; the same person takes it off. Another person takes over with a lock of their own on first. Local rules and the site lockout come first.',
    verification:
      'Each pressure on a gauge that was seen alive there and reads at most the stated limit, or by a vent watched twice; the process once more after it was shut in. Another person signs over it.',
  };
}

/** The energies that a signer is shown before work. */
export const ALL_ENERGIES: readonly ConditionId[] = [
  'supplyAir',
  'secondSupply',
  'signalAir',
  'spring',
  'processInlet',
  'processOutlet',
  'bypass',
  'trappedAir',
  'lockUpAir',
  'oppositeAir',
  'temperature',
  'weight',
  'residue',
  'electrical',
  'commands',
  'safetyFunction',
  'closure',
];

/** Where nothing more has to be done to be safe, in the phases that all of them share. */
export const SAFE_AT = [
  'haltBypass',
  'haltIsolating',
  'ventNow',
  'haltAirAway',
  'haltReturn',
  'haltOnAir',
  'haltProcess',
  'haltUnsigned',
] as const;

type Front =
  | keyof ReturnType<typeof readyRig>
  | keyof ReturnType<typeof ontoBypass>
  | keyof ReturnType<typeof isolate>
  | 'notStarted';

/** Needs, energies, rig, bypass and isolation, up to the first card of the work itself. */
export function frontOf<const Next extends string>({
  bring,
  next,
}: {
  /** Lines of what is needed, behind the manual and before the permit. */
  readonly bring: readonly string[];
  readonly next: Next;
}): Readonly<Record<Front, Step<Front | Next | 'airOff' | 'backCheck'>>> {
  const ready = readyRig<Front>({ next: { bench: 'benchRecord', line: 'consent' }, stopped: 'notStarted' });
  return {
    ...ready,
    needs: {
      ...ready.needs,
      kind: 'instruction',
      do: [
        'Read the maker’s manual for this valve: it outranks this card.',
        ...bring,
        'Bring your locks and tags, soap, face shield and gloves.',
        'Have the site permit in hand: local rules and the site lockout come first.',
      ],
      next: { to: 'knowEnergies' },
    } as Step<Front>,
    ...ontoBypass<Front>({ next: 'shutInlet', notStarted: 'notStarted' }),
    ...isolate<Front | Next | 'airOff' | 'backCheck'>({
      next,
      giveBack: { bench: 'airOff', line: 'backCheck' },
    }),
    notStarted: {
      kind: 'end',
      phase: 'ready',
      title: 'Stopped before anything was changed',
      closes: 'stopped',
    },
  } as Readonly<Record<Front, Step<Front | Next | 'airOff' | 'backCheck'>>>;
}
