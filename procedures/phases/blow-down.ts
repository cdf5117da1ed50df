import type { Caution, Choice, Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';

type Own = 'blowDown' | 'dirtInAir' | 'blowDownRefused';

interface Ends<Next extends string> {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
  /** What is said where dirt came and the work goes on; the job on the air set, unless this is it. */
  readonly dirty?: Omit<Choice<string>, 'to'>;
}

const AIR_SET_NEXT = {
  label: 'Go on; the job on the air set comes next',
  reason: true,
  comesNext: 'air-set',
} as const;

/** A part that is off, cleared by a jet of clean air. */
export const BLOWN_CLEAR = {
  word: 'caution',
  hazard: 'Dirt that is blown out of a small hole flies fast.',
  consequence: 'It is driven into the eye.',
  avoid: 'Eye protection on, the open end pointed into a cloth.',
} as const satisfies Caution;

/** The drain of the air set blown down with the operator's consent, to see what the air carries. */
export function blowAirSetDown<const Next extends string>(
  step: Ends<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return { blowDown: blown<Own | Next>(step), ...askedAgain(step) } as Readonly<
    Record<Own, Step<Own | Next>>
  >;
}

function blown<Id extends string>({ phase, next, makeSafe }: Omit<Ends<Id>, 'dirty'>): Step<Id | Own> {
  return {
    kind: 'reading',
    phase,
    title: 'Blow the drain of the air set down, and look at what comes',
    how: 'Short, into a white cloth. Supply sags meanwhile, and the valve may move: the operator says yes first.',
    why: 'What plugs a restriction comes with the air, and comes again.',
    action: 'blowAirLineDown',
    caution: {
      word: 'caution',
      hazard: 'Air at line pressure throws oil, water and scale.',
      consequence: 'It is driven into eyes and skin.',
      avoid: 'Eye protection on, face and hands out of the jet.',
    },
    do: ['Ask the operator.', 'Hold a cloth under the drain.', 'Open the drain a little.', 'Shut it again.'],
    asks: [
      yesNo('blowDownAgreed', 'The operator agreed before it was blown down'),
      {
        name: 'drainFound',
        label: 'What came',
        type: 'choice',
        choices: [
          { value: 'dry', label: 'Dry and clean' },
          { value: 'wet', label: 'Water or oil' },
          { value: 'dirt', label: 'Rust, scale or desiccant' },
        ],
      },
    ],
    judge: { rule: 'drain' },
    ways: { clean: { to: next }, dirty: { to: 'dirtInAir' }, 'not agreed': { to: 'blowDownRefused' } },
    makeSafe,
  };
}

function askedAgain<Next extends string>({
  phase,
  next,
  makeSafe,
  dirty = AIR_SET_NEXT,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    dirtInAir: {
      kind: 'question',
      phase,
      title: 'The air carries water, oil or dirt',
      how: 'Until the filter is renewed and the header is looked at, it plugs again. Say so to whoever keeps the air.',
      choices: {
        again: { label: 'Blow it down until it is clean', to: 'blowDown' },
        on: { ...dirty, to: next },
      },
      makeSafe,
    },
    blowDownRefused: {
      kind: 'question',
      phase,
      title: 'It was not agreed',
      how: 'Without it nobody knows what plugs the air parts: the next person wants to read that it was not looked at.',
      choices: {
        again: { label: 'Ask the operator again', to: 'blowDown' },
        on: { label: 'Leave the drain alone and go on', to: next, reason: true },
      },
      makeSafe,
    },
  };
}
