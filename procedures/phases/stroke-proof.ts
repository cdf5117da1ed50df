import { strokeTables } from '../commissioning/stroke-tables.ts';
import { FULL_CYCLE, MID_STROKES } from '../cycle-verdict.ts';
import type { Step, Target, Way } from '../vocabulary.ts';
import { findContact } from './test-air.ts';

type Found = 'contactFound' | 'asFoundCycle' | 'asFoundStrokes' | 'asFoundVerdict' | 'notMovingFound';
type Left = 'contactLeft' | 'asLeftCycle' | 'asLeftStrokes' | 'asLeftVerdict' | 'notMovingLeft';

const IDS = {
  asFound: {
    contact: 'contactFound',
    cycle: 'asFoundCycle',
    strokes: 'asFoundStrokes',
    verdict: 'asFoundVerdict',
    stuck: 'notMovingFound',
  },
  asLeft: {
    contact: 'contactLeft',
    cycle: 'asLeftCycle',
    strokes: 'asLeftStrokes',
    verdict: 'asLeftVerdict',
    stuck: 'notMovingLeft',
  },
} as const;

interface Ways<Next extends string> {
  /** Inside all of its limits. */
  readonly inside: Target<Next>;
  /** Outside, too close to tell, or not repeating. */
  readonly outside: Target<Next>;
  /** Where a stem that does not move leads. */
  readonly stuck: Target<Next>;
  readonly danger: Next;
  readonly makeSafe: Next;
}

/** Contact, cycle and repeated strokes by test air, with their verdict: as found. */
export function strokeAsFound<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<Found, Step<Found | Next>>> {
  return proof('asFound', ways) as Readonly<Record<Found, Step<Found | Next>>>;
}

/** The same as left. */
export function strokeAsLeft<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<Left, Step<Left | Next>>> {
  return proof('asLeft', ways) as Readonly<Record<Left, Step<Left | Next>>>;
}

function proof<const Next extends string>(
  when: 'asFound' | 'asLeft',
  { inside, outside, stuck, danger, makeSafe }: Ways<Next>,
): Readonly<Record<string, Step<string>>> {
  const ids = IDS[when];
  const words = when === 'asFound' ? 'as found' : 'as left';
  const bad: Way<string> = { to: outside };
  return {
    [ids.contact]: findContact<string>({
      phase: when,
      title: `Find the contact with the seat, ${words}`,
      rule: 'contact',
      ways: {
        found: { to: ids.cycle },
        'does not move': { to: ids.stuck },
        'above limit': { to: danger },
      },
      makeSafe,
    }),
    [ids.stuck]: {
      kind: 'question',
      phase: when,
      title: 'The stem does not move',
      how: 'Look, hands off: gauge alive, tube open, handwheel in neutral, stop or block in the yoke, connector joined, packing too tight.',
      choices: {
        again: { label: 'Found and put right from outside: try again', to: ids.contact },
        on: { label: 'It does not move: go on without this stroke', to: stuck, reason: true },
      },
      makeSafe,
    },
    ...strokeTables<string, string, string>(
      { cycle: ids.cycle, strokes: ids.strokes, verdict: ids.verdict, phase: when, danger, makeSafe },
      { rows: FULL_CYCLE, strokes: MID_STROKES },
    ),
    [ids.verdict]: {
      kind: 'judgement',
      phase: when,
      title: `What the stroke says, ${words}`,
      judge: { rule: 'cycle', with: { cycle: ids.cycle, strokes: ids.strokes } },
      ways: {
        inside: { to: inside },
        outside: bad,
        'too close': bad,
        'does not repeat': bad,
        'not enough readings': { to: ids.cycle },
      },
      makeSafe,
    },
  };
}
