import type { ChoiceField, QuantityField, Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';

type Own =
  | 'glandLook'
  | 'glandJets'
  | 'glandNotSound'
  | 'glandNoRoom'
  | 'glandBefore'
  | 'glandNotRead'
  | 'glandRound'
  | 'glandAfter'
  | 'glandCocked'
  | 'glandWorse'
  | 'glandTooTight'
  | 'glandSettles'
  | 'glandAgain'
  | 'glandAgainLeaks';

interface Ways<Next extends string> {
  readonly phase: string;
  /** The gland is dry and free, or left as it is with a reason. */
  readonly done: Next;
  readonly makeSafe: Next;
}

const SETTLE_S = 600;

/** Up and down at one travel, off a gauge that is there already. */
const BOTH_WAYS: readonly QuantityField[] = (['Up', 'Down'] as const).map((way) => ({
  name: `gland${way}Pa`,
  label:
    way === 'Up' ? 'Signal at half travel, coming from below' : 'Signal at half travel, coming from above',
  type: 'quantity',
  dimension: 'pressure',
  gauge: 'signalGauge',
  optional: true,
}));

const LEAK: ChoiceField = {
  name: 'glandLeak',
  label: 'What comes out at the stem',
  type: 'choice',
  choices: [
    { value: 'weeps', label: 'It weeps, or drops fall' },
    { value: 'dry', label: 'Nothing' },
    { value: 'jets', label: 'A jet, or a cloud' },
  ],
};

const LEAK_NOW: ChoiceField = {
  name: 'glandLeakNow',
  label: 'At the stem now',
  type: 'choice',
  choices: [
    { value: 'dry', label: 'Dry' },
    { value: 'less', label: 'Less than before, or the same' },
    { value: 'more', label: 'More than before' },
  ],
};

/** The gland of a live valve tightened in small equal steps, the stem stroked after each. Consent is given before. */
export function liveGland<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return { ...looks(ways), ...rounds(ways), ...findings(ways) } as Readonly<Record<Own, Step<Own | Next>>>;
}

function looks<const Next extends string>({
  phase,
  done,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    glandLook: {
      kind: 'reading',
      phase,
      title: 'Look at the gland of {tag}, hands off',
      how: 'Stand aside of the studs. A flange with springs under its nuts is tightened to the mark of its maker, no further.',
      why: 'A stud that is wasted by rust holds until it is turned.',
      asks: [
        LEAK,
        yesNo('studsSound', 'Studs and nuts sound: no rust that eats them, full thread in both nuts'),
        yesNo('stemSound', 'The stem is bright and straight'),
        yesNo('followerRoom', 'The follower stands level and has room left to go down'),
      ],
      judge: { rule: 'glandLook' },
      ways: {
        'may be tightened': { to: 'glandBefore' },
        dry: { to: done },
        jets: { to: 'glandJets' },
        'not sound': { to: 'glandNotSound' },
        'no room': { to: 'glandNoRoom' },
      },
      makeSafe,
    },
    glandBefore: {
      kind: 'reading',
      phase,
      title: 'Have the valve moved and read its friction, before a nut is touched',
      how: 'The operator goes through half travel slowly, once up and once down. Read the gauge on the case, or at the source. None is fitted for this. They may differ by {frictionGap}.',
      why: 'What is tight already jumps when it is tightened more.',
      shows: ['frictionGap', 'frictionLimit', 'packingFriction'],
      asks: BOTH_WAYS,
      judge: { rule: 'glandFriction' },
      ways: {
        inside: { to: 'glandRound' },
        'too tight': { to: 'glandTooTight' },
        'not read': { to: 'glandNotRead' },
      },
      makeSafe,
    },
    glandNotRead: {
      kind: 'question',
      phase,
      title: 'The friction was not read both ways',
      how: 'Without it nobody sees when the packing grips the stem: the gland is left alone.',
      choices: {
        again: { label: 'Have it moved again and read', to: 'glandBefore' },
        leave: { label: 'It cannot be moved or read: leave the gland', to: done, reason: true },
      },
      makeSafe,
    },
  };
}

function rounds<const Next extends string>({
  phase,
  done,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    glandRound: {
      kind: 'reading',
      phase,
      title: 'Tighten both gland nuts by half a flat each',
      how: 'A flat is one side of the nut. Opposite nuts alike, so that the follower stays level. Stop at the torque that the maker allows.',
      action: 'tightenLiveGland',
      caution: {
        word: 'danger',
        hazard: 'The packing is all that holds the line in.',
        consequence: 'A gland that is let off, or a stud that breaks, blows the packing out and kills.',
        avoid:
          'Tighten only, never loosen. Stand beside the studs, face shield down, and leave when it gets worse.',
      },
      shows: ['energyInlet', 'energyTemperature'],
      do: [
        'Fit the spanner square on the nut.',
        'Tighten one nut by half a flat.',
        'Tighten the opposite nut alike.',
      ],
      asks: [yesNo('followerLevel', 'The follower is level, both nuts turned alike')],
      judge: { rule: 'allYes', with: { fields: 'followerLevel' } },
      ways: { yes: { to: 'glandAfter' }, no: { to: 'glandCocked' } },
      makeSafe,
    },
    glandAfter: {
      kind: 'reading',
      phase,
      title: 'Have the valve moved, and look at the stem',
      how: 'Hands off. Once up and once down through half travel, as before. They may differ by {frictionGap}.',
      why: 'Packing that grips makes the valve stick and jump: then it is tight enough, whatever it leaks.',
      asks: [...BOTH_WAYS, LEAK_NOW],
      judge: { rule: 'glandRound', with: { round: 'glandRound' } },
      ways: {
        dry: { to: 'glandSettles' },
        'still leaks': { to: 'glandRound' },
        'too tight': { to: 'glandTooTight' },
        worse: { to: 'glandWorse' },
        'rounds used up': { to: 'glandNoRoom' },
        'not read': { to: 'glandNotRead' },
      },
      makeSafe,
    },
    glandSettles: {
      kind: 'wait',
      phase,
      title: 'Let the packing settle',
      how: 'It creeps after it was tightened, and may weep again.',
      waitS: SETTLE_S,
      next: { to: 'glandAgain' },
      makeSafe,
    },
    glandAgain: {
      kind: 'reading',
      phase,
      title: 'Look at the stem once more',
      why: 'Packing that was tightened may weep again once the stem has moved.',
      asks: [LEAK_NOW],
      judge: { rule: 'oneOf', with: { field: 'glandLeakNow', good: 'dry' } },
      ways: { yes: { to: done }, no: { to: 'glandAgainLeaks' } },
      makeSafe,
    },
  };
}

function findings<const Next extends string>({
  phase,
  done,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    glandJets: {
      kind: 'question',
      phase,
      title: 'It jets: nobody works at this gland',
      how: 'Go away from it and tell the operator. The line is taken out of service by the site’s own rules, then the packing is renewed.',
      choices: {
        leave: {
          label: 'Operator told, area kept clear',
          to: done,
          reason: true,
          comesNext: 'packing-renewal',
        },
      },
      makeSafe,
    },
    glandNotSound: {
      kind: 'question',
      phase,
      title: 'Studs or stem are not sound',
      how: 'A stud that is eaten breaks under the spanner; a scored stem cuts any packing. The packing is renewed with the valve isolated.',
      choices: {
        leave: {
          label: 'Leave it alone, and plan the packing',
          to: done,
          reason: true,
          comesNext: 'packing-renewal',
        },
      },
      makeSafe,
    },
    glandCocked: {
      kind: 'question',
      phase,
      title: 'The follower is not level',
      how: 'A follower that stands askew scores the stem and presses on one side only. It is levelled by the high side, never by letting the low side off.',
      choices: {
        level: { label: 'Level it: the next half flat goes on the high side alone', to: 'glandAfter' },
        leave: {
          label: 'It does not come level: leave it, and plan the packing',
          to: done,
          reason: true,
          comesNext: 'packing-renewal',
        },
      },
      makeSafe,
    },
    glandNoRoom: {
      kind: 'question',
      phase,
      title: 'The packing has given what it had',
      how: 'A follower without room, or so many rounds, mean that rings are spent. No ring is added to a live valve; the packing is renewed with the valve isolated.',
      choices: {
        leave: {
          label: 'Leave it, and plan the packing',
          to: done,
          reason: true,
          comesNext: 'packing-renewal',
        },
      },
      makeSafe,
    },
    glandWorse: {
      kind: 'question',
      phase,
      title: 'It leaks more than before',
      how: 'Go back from it. What gets worse when it is tightened is broken: a ring, the follower or a stud.',
      choices: {
        leave: {
          label: 'Operator told; leave it, and plan the packing',
          to: done,
          reason: true,
          comesNext: 'packing-renewal',
        },
      },
      makeSafe,
    },
    glandTooTight: {
      kind: 'question',
      phase,
      title: 'The packing grips the stem as far as it may',
      how: 'Up and down differ by {frictionGap} or nearly. No more is tightened, and nothing is loosened while the line is live.',
      choices: {
        leave: { label: 'Leave it so; tell the operator that it may stick', to: done, reason: true },
        again: { label: 'The gauge was read wrong: read both ways again', to: 'glandBefore' },
      },
      makeSafe,
    },
    glandAgainLeaks: {
      kind: 'question',
      phase,
      title: 'It weeps again',
      choices: {
        again: { label: 'Read the friction and go on', to: 'glandBefore' },
        leave: {
          label: 'Leave it so, and plan the packing',
          to: done,
          reason: true,
          comesNext: 'packing-renewal',
        },
      },
      makeSafe,
    },
  };
}
