import type { Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';

type Own = 'blowDown' | 'dirtInAir' | 'blowDownRefused';

/** The drain of the air set blown down with the operator's consent, to see what the air carries. */
export function blowAirSetDown<const Next extends string>(step: {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
}): Readonly<Record<Own, Step<Own | Next>>> {
  const { phase, next, makeSafe } = step;
  return {
    blowDown: {
      kind: 'reading',
      phase,
      title: 'Blow the drain of the air set down, and look at what comes',
      how: 'Short, into a white cloth. Supply sags meanwhile: the operator says yes first.',
      why: 'What plugged it came with the air and comes again.',
      action: 'blowAirLineDown',
      caution: {
        word: 'caution',
        hazard: 'Air at line pressure throws oil, water and scale.',
        consequence: 'It is driven into eyes and skin.',
        avoid: 'Eye protection on, face and hands out of the jet.',
      },
      do: [
        'Ask the operator.',
        'Hold a cloth under the drain.',
        'Open the drain a little.',
        'Shut it again.',
      ],
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
    },
    dirtInAir: {
      kind: 'question',
      phase,
      title: 'The air carries water, oil or dirt',
      how: 'Until the filter is renewed and the header is looked at, it plugs again. Say so to whoever keeps the air.',
      choices: {
        again: { label: 'Blow it down until it is clean', to: 'blowDown' },
        on: { label: 'Go on; the job on the air set is opened next', to: next, reason: true },
      },
      makeSafe,
    },
    blowDownRefused: {
      kind: 'question',
      phase,
      title: 'It was not agreed',
      choices: {
        again: { label: 'Ask the operator again', to: 'blowDown' },
        on: { label: 'Leave the drain alone and go on', to: next, reason: true },
      },
      makeSafe,
    },
  };
}
