import type { Field, Step } from '../vocabulary.ts';
import { STEM_MOVES, yesNo } from './common.ts';
import { putRight } from './finding.ts';

type Lift = 'hangActuator' | 'notHung' | 'actuatorOff' | 'notLaid';
type Off = Lift | 'connectorOff' | 'howFar';
type SetOn = 'actuatorOn' | 'yokeNotTight' | 'bodyShut' | 'bodyNotShut';
type On = SetOn | 'actuatorBack' | 'joinFree' | 'threadShort';
type Held = 'holdJoin' | 'joinNotHeld' | 'joinHeld' | 'threadShortHeld';

interface Ways<Next extends string> {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
}

const SWINGS = {
  word: 'warning',
  hazard: 'The actuator weighs {actuatorMass} and swings as it comes free.',
  consequence: 'A hand between yoke and bonnet is crushed.',
  avoid: 'Lifting gear above its middle, slack taken up; nobody under it.',
} as const;

const LOWERED = {
  ...SWINGS,
  hazard: 'The actuator weighs {actuatorMass} and swings as it is lowered.',
} as const;

export const THREAD_HOLDS = yesNo(
  'threadHolds',
  'Both stems are held by at least their own diameter of thread',
);

export const CONNECTOR_OFF = [
  'Loosen the screws of the connector in turn.',
  'Take the travel pointer off.',
  'Take the connector off.',
] as const;

export const THREAD_FREE: Field = {
  name: 'exposedThreadM',
  label: 'Thread of the plug stem that stands free',
  type: 'quantity',
  dimension: 'length',
  carried: true,
};

function threadShort<const Id extends string>(step: {
  readonly phase: string;
  readonly again: Id;
  readonly makeSafe: Id;
}): Step<Id> {
  return {
    kind: 'question',
    phase: step.phase,
    title: 'A stem is held by too little thread',
    how: 'The connector shears off it under the first full stroke. It goes back to its mark; where the mark is right, stem or connector is another one than before.',
    choices: {
      again: { label: 'Set to its mark: join them again', to: step.again },
      stop: { label: 'It is another part: stop, and get the right one', to: step.makeSafe },
    },
    makeSafe: step.makeSafe,
  };
}

/** The stems parted, and the actuator raised or taken off, its weight hung first. */
export function connectorOff<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<Off, Step<Off | Next>>> {
  const { phase, next, makeSafe } = ways;
  return {
    ...partStems({ ...ways, next: 'howFar' }),
    howFar: {
      kind: 'question',
      phase,
      title: 'Does the actuator come off?',
      how: 'Split rings go in beside the stem. Whole rings, a new stem or an open body want the actuator off.',
      choices: {
        off: { label: 'It comes off', to: 'hangActuator' },
        stays: { label: 'It stays: split rings', to: next },
      },
      makeSafe,
    },
    ...liftOff(ways),
  } as Readonly<Record<Off, Step<Off | Next>>>;
}

/** The stems parted and the actuator taken off, whatever is done to the valve below. */
export function actuatorOff<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<'connectorOff' | Lift, Step<'connectorOff' | Lift | Next>>> {
  return { ...partStems({ ...ways, next: 'hangActuator' }), ...liftOff(ways) } as Readonly<
    Record<'connectorOff' | Lift, Step<'connectorOff' | Lift | Next>>
  >;
}

function partStems({ phase, next, makeSafe }: Ways<string>): Readonly<Record<'connectorOff', Step<string>>> {
  return {
    connectorOff: {
      kind: 'reading',
      phase,
      title: 'Release the stem connector',
      how: 'Write down what thread stands free between stem and connector: it goes back to that.',
      action: 'releaseStemConnector',
      caution: {
        word: 'warning',
        hazard: 'The stem jumps or drops as the connector lets go.',
        consequence: 'A finger in the connector is crushed.',
        avoid: 'Loosen both screws a little in turn; tools only, no hand between the stems.',
      },
      do: CONNECTOR_OFF,
      asks: [THREAD_FREE],
      judge: { rule: 'record' },
      ways: { kept: { to: next } },
      makeSafe,
    },
  };
}

function liftOff({ phase, next, makeSafe }: Ways<string>): Readonly<Record<Lift, Step<string>>> {
  return {
    hangActuator: {
      kind: 'reading',
      phase,
      title: 'Hang the actuator on lifting gear, {actuatorMass}',
      how: 'Gear for that weight and in date. Where the weight is not known, for the heaviest of this size by the maker’s list.',
      why: 'Free of its yoke nut, the whole actuator rests on whoever holds it.',
      asks: [yesNo('hung', 'It hangs by its eyes or by slings round the yoke, slack taken up')],
      judge: { rule: 'allYes', with: { fields: 'hung' } },
      ways: { yes: { to: 'actuatorOff', sets: { weight: 'hung' } }, no: { to: 'notHung' } },
      makeSafe,
    },
    notHung: putRight<string>({
      phase,
      title: 'The actuator does not hang safely',
      how: 'Eyes by the manual, slings round the yoke, never round case or tubing; gear whose mark is read.',
      again: ['It hangs now, slack taken up', 'hangActuator'],
      stop: ['No gear for it here: leave it standing and stop', makeSafe],
      makeSafe,
    }),
    actuatorOff: {
      kind: 'reading',
      phase,
      title: 'Lift the actuator off and lay it down',
      how: 'The case stays shut. Straight up, until the plug stem is clear; a yoke that sticks is tapped, never pried at the stem.',
      action: 'liftActuator',
      caution: SWINGS,
      do: [
        'Check that nothing joins the stems any more.',
        'Loosen the yoke nut or the yoke bolts.',
        'Raise it straight up.',
        'Lay it where it cannot roll.',
      ],
      asks: [yesNo('laidDown', 'It lies safe, its ports covered')],
      judge: { rule: 'allYes', with: { fields: 'laidDown' } },
      ways: {
        yes: { to: next, sets: { closure: 'open' } },
        no: { to: 'notLaid', sets: { closure: 'open' } },
      },
      makeSafe,
    },
    notLaid: putRight<string>({
      phase,
      title: 'It did not come off, or does not lie safe',
      how: 'A yoke that sticks is tapped all round, the gear holding its weight. Laid on wood, wedged, its ports covered.',
      again: ['It is free: go on lifting and lay it down', 'actuatorOff'],
      stop: ['It does not come: yoke bolts in again, and stop', makeSafe],
      makeSafe,
    }),
  };
}

interface Together<Next extends string> {
  readonly phase: string;
  readonly makeSafe: Next;
  /** Where the adjuster is wound back. */
  readonly springBack: Next;
  /** Where test air goes on, to join the stems on it. */
  readonly onAir: Next;
}

/** The actuator back on, everything shut; where the spring is free the stems are joined by hand. */
export function connectorOn<const Next extends string>({
  phase,
  makeSafe,
  springBack,
  onAir,
}: Together<Next>): Readonly<Record<On, Step<On | Next>>> {
  return {
    actuatorBack: {
      kind: 'question',
      phase,
      title: 'Is the actuator off?',
      why: 'An actuator that came off is set on before its stems are joined.',
      choices: {
        off: { label: 'It is off: it goes back on', to: 'actuatorOn' },
        stayed: { label: 'It was never off', to: 'bodyShut' },
      },
      makeSafe,
    },
    ...setOn({ phase, makeSafe, adjuster: 'joinFree', onAir }),
    joinFree: {
      kind: 'reading',
      phase,
      title: 'Join the stems to their mark, the spring free',
      how: 'Plug on its seat, actuator stem pulled to it by hand. Thread as it stood free before; lock nuts against the connector.',
      action: 'joinFreeStems',
      do: [
        'Set the plug on its seat.',
        'Fit the connector over both threads.',
        'Tighten its screws in turn.',
      ],
      asks: [
        {
          name: 'exposedThreadJoinedM',
          label: 'Thread of the plug stem that stands free now',
          type: 'quantity',
          dimension: 'length',
        },
        THREAD_HOLDS,
      ],
      judge: { rule: 'allYes', with: { fields: 'threadHolds' } },
      ways: { yes: { to: springBack }, no: { to: 'threadShort' } },
      makeSafe,
    },
    threadShort: threadShort<string>({ phase, again: 'joinFree', makeSafe }),
  } as Readonly<Record<On, Step<On | Next>>>;
}

/** The actuator back on and everything shut, the stems not joined yet: its bench set is read first. */
export function actuatorOn<const Next extends string>({
  phase,
  makeSafe,
  springBack,
  onAir,
}: Together<Next>): Readonly<Record<SetOn, Step<SetOn | Next>>> {
  return setOn({ phase, makeSafe, adjuster: springBack, onAir }) as Readonly<
    Record<SetOn, Step<SetOn | Next>>
  >;
}

function setOn({
  phase,
  makeSafe,
  adjuster,
  onAir,
}: {
  readonly phase: string;
  readonly makeSafe: string;
  readonly adjuster: string;
  readonly onAir: string;
}): Readonly<Record<SetOn, Step<string>>> {
  return {
    actuatorOn: {
      kind: 'reading',
      phase,
      title: 'Set the actuator back on',
      how: 'Straight down over the stem, to its mark. Yoke nut by the maker’s manual.',
      action: 'setActuatorOn',
      caution: LOWERED,
      do: ['Lower it straight down over the stem.', 'Tighten yoke nut or yoke bolts.'],
      asks: [yesNo('yokeTight', 'On its mark and tight, the lifting gear still on')],
      judge: { rule: 'allYes', with: { fields: 'yokeTight' } },
      ways: { yes: { to: 'bodyShut' }, no: { to: 'yokeNotTight' } },
      makeSafe,
    },
    yokeNotTight: putRight<string>({
      phase,
      title: 'The yoke is not on its mark, or not tight',
      how: 'Raised a little, turned to its mark, the faces clean. A yoke nut that does not draw up has a spoiled thread or dirt under it.',
      again: ['Set anew: look again', 'actuatorOn'],
      stop: ['It hangs on its gear: stop', makeSafe],
      makeSafe,
    }),
    bodyShut: {
      kind: 'reading',
      phase,
      title: 'Check that case, bonnet and gland are shut',
      why: 'Spring and air come back next, and act on whatever is still loose.',
      asks: [
        yesNo('caseTight', 'Case: every bolt in and tight'),
        yesNo('bonnetTight', 'Bonnet: every nut in and tight'),
        yesNo('glandTight', 'Gland: loaded and level'),
      ],
      judge: { rule: 'allYes', with: { fields: 'caseTight bonnetTight glandTight' } },
      ways: {
        yes: {
          to: { by: 'springHeldBy', ways: { adjuster, case: onAir } },
          sets: { closure: 'shut' },
        },
        no: { to: 'bodyNotShut' },
      },
      makeSafe,
    },
    bodyNotShut: {
      kind: 'question',
      phase,
      title: 'Something is not shut',
      how: 'No air and no spring on a valve that is open.',
      choices: {
        again: { label: 'Shut and tight now: check again', to: 'bodyShut' },
        stop: { label: 'Leave it and stop', to: makeSafe },
      },
      makeSafe,
    },
  };
}

/** The stems of a case that holds its spring, joined on held air. */
export function joinOnAir<const Next extends string>({
  phase,
  next,
  makeSafe,
  danger,
}: Ways<Next> & { readonly danger: Next }): Readonly<Record<Held, Step<Held | Next>>> {
  const signal = { type: 'quantity', dimension: 'pressure', gauge: 'signalGauge', onCase: true } as const;
  return {
    holdJoin: {
      kind: 'reading',
      phase,
      title: 'Hold the actuator stem off its stop with {benchSetQuarter}',
      how: 'Then leave the regulator alone: the air stays as it is while the stems are joined.',
      action: 'strokeByTestAir',
      caution: STEM_MOVES,
      asks: [
        { ...signal, name: 'joinPa', label: 'Signal now' },
        { ...signal, name: 'joinAgainPa', label: 'Signal a minute later' },
      ],
      judge: { rule: 'steady', with: { first: 'joinPa', again: 'joinAgainPa' } },
      ways: {
        steady: { to: 'joinHeld', sets: { signalAir: 'held' } },
        falls: { to: 'joinNotHeld' },
        'above limit': { to: danger },
      },
      makeSafe,
    },
    joinNotHeld: {
      kind: 'question',
      phase,
      title: 'The air is not held',
      how: 'Look for the leak with soap: hose, joint, diaphragm. No hand goes between the stems on such air.',
      choices: {
        again: { label: 'Set it again', to: 'holdJoin' },
        stop: { label: 'Stop', to: makeSafe },
      },
      makeSafe,
    },
    joinHeld: {
      kind: 'reading',
      phase,
      title: 'Join the stems to their mark',
      how: 'Plug raised or lowered by hand to meet the stem. Thread as it stood free before; lock nuts against the connector.',
      action: 'joinStemConnector',
      caution: {
        word: 'warning',
        hazard: 'Air that changes drives the stems together.',
        consequence: 'A finger between them is crushed.',
        avoid: 'Nobody touches the regulator. Watch the gauge; let go at the first change.',
      },
      do: ['Fit the connector over both threads.', 'Tighten its screws in turn.'],
      asks: [
        {
          name: 'exposedThreadJoinedM',
          label: 'Thread of the plug stem that stands free now',
          type: 'quantity',
          dimension: 'length',
        },
        THREAD_HOLDS,
      ],
      judge: { rule: 'allYes', with: { fields: 'threadHolds' } },
      ways: {
        yes: { to: next, sets: { signalAir: 'live', plug: 'seat unknown' } },
        no: { to: 'threadShortHeld', sets: { signalAir: 'live', plug: 'seat unknown' } },
      },
      makeSafe,
    },
    threadShortHeld: threadShort<Held | Next>({ phase, again: 'holdJoin', makeSafe }),
  };
}
