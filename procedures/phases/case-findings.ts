/** What follows at a case where a card was answered no: each put right, or stopped with the spring held. */
import type { Step } from '../vocabulary.ts';
import { finding, putRight } from './finding.ts';

interface Places<Next extends string> {
  readonly phase: string;
  readonly stopLoaded: Next;
}

/** Long bolts that may not be trusted, and a spring that is not free after its cover has followed. */
export function openFindings<const Next extends string>({
  phase,
  stopLoaded,
}: Places<Next>): Readonly<Record<'longNotSound' | 'notFreeAgain', Step<string>>> {
  return {
    longNotSound: putRight<string>({
      phase,
      title: 'A long bolt does not stand sound',
      how: 'They carry the whole spring, opposite each other. A short bolt beside it goes back in and is tightened first; then the long one is changed, one at a time.',
      again: ['Changed one at a time, all tight: on to the long bolts', 'longBolts'],
      stop: ['No sound one here: the nuts are run down again', stopLoaded],
      makeSafe: stopLoaded,
    }),
    notFreeAgain: finding<string>({
      phase,
      title: 'The spring is still not free',
      how: 'A screw that turns with its nut lets nothing off: the nut is held. One that is slack too soon has a broken spring, and is met as loaded.',
      choices: {
        again: { label: 'Turned on, the nut held: count again', to: 'freeAgain' },
        maker: {
          label: 'It cannot be freed: the actuator goes to its maker as it is',
          to: 'haltFollows',
          reason: true,
        },
      },
      makeSafe: 'haltFollows',
    }),
  };
}

/** A spring that does not sit, and a cover that comes down on one side. */
export function closeFindings<const Next extends string>({
  phase,
  makeSafe,
  stopLoaded,
  letOff,
}: Places<Next> & { readonly makeSafe: Next; readonly letOff: Next }): Readonly<
  Record<'notSeated' | 'drawUneven', Step<string>>
> {
  return {
    notSeated: putRight<string>({
      phase,
      title: 'Spring or rim does not sit right',
      how: 'A spring off its seat slips as the cover comes down; a fold in the rim leaks from the first day.',
      again: ['Lifted and set anew: look again', 'closeCase'],
      stop: ['It does not sit: stop with the case open', makeSafe],
      makeSafe,
    }),
    drawUneven: finding<string>({
      phase,
      title: 'The halves do not meet all round',
      how: 'The low side waits until the high side has followed. A spring that stands askew wants the cover let off again, evenly.',
      choices: {
        again: { label: 'The high side followed: go on, a turn each', to: 'drawDown' },
        off: { label: 'The spring stands askew: let the long bolts off', to: letOff },
      },
      makeSafe: stopLoaded,
    }),
  };
}
