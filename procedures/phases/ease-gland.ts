import type { Step } from '../vocabulary.ts';

export type EaseGland = 'glandReload' | 'glandEase' | 'glandShut' | 'glandReloadShut' | 'haltGland';

/** New packing loaded again after its first strokes, or eased where it grips: nothing is behind it. */
export function easeGland<const Next extends string>({
  phase,
  next,
  makeSafe,
}: {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
}): Readonly<Record<EaseGland, Step<EaseGland | Next>>> {
  return {
    glandReload: {
      kind: 'instruction',
      phase,
      title: 'Tighten the gland again: {glandLoad}',
      how: 'In small equal steps, the follower level.',
      action: 'closeBody',
      do: ['Tighten both nuts alike.', 'Check that the follower is level.'],
      next: { to: next },
      makeSafe,
    },
    glandEase: {
      kind: 'instruction',
      phase,
      title: 'Loosen the gland a little, both nuts alike',
      how: 'Half a flat each, then stroke it again. A gland that must be eased below its load has the wrong set, or a stem that is not straight.',
      action: 'removePacking',
      caution: {
        word: 'caution',
        hazard: 'What is trapped between new rings can spit.',
        consequence: 'It stings eyes and skin.',
        avoid: 'Face shield down; half a flat at a time.',
      },
      do: ['Loosen both nuts by half a flat.', 'Check that the follower is level.'],
      next: { to: 'glandShut', sets: { closure: 'open' } },
      makeSafe,
    },
    glandShut: {
      kind: 'question',
      phase,
      title: 'Is the gland still loaded and level?',
      choices: {
        yes: { label: 'Loaded, level, both nuts alike', to: next, sets: { closure: 'shut' } },
        more: { label: 'A nut turns by hand: load it again', to: 'glandReloadShut' },
      },
      makeSafe: 'haltGland',
    },
    glandReloadShut: {
      kind: 'instruction',
      phase,
      title: 'Tighten the gland until it holds: {glandLoad}',
      action: 'closeBody',
      do: ['Tighten both nuts alike.', 'Check that the follower is level.'],
      next: { to: next, sets: { closure: 'shut' } },
      makeSafe: 'haltGland',
    },
    haltGland: {
      kind: 'question',
      phase,
      title: 'Stopped: the gland may be slack, no air on the case',
      how: 'Locks stay on. No air and no process on a gland that is not loaded.',
      choices: { goOn: { label: 'Go on: look at the gland', to: 'glandShut' } },
      makeSafe: 'haltGland',
    },
  } as Readonly<Record<EaseGland, Step<EaseGland | Next>>>;
}
