/** A positioner looked at with its cover off and its air on; the valve is bypassed and blocked, hands out of the yoke. */
import type { Caution, QuantityField, Step, Way } from '../vocabulary.ts';
import { yesNo } from './common.ts';
import { strokeBySignal } from './own-stroke.ts';

const PRESSURE = { type: 'quantity', dimension: 'pressure' } as const;

export const VALVE_JUMPS: Caution = {
  word: 'warning',
  hazard: 'The valve jumps to its end as soon as nozzle, flapper or relay is touched.',
  consequence: 'A finger in the yoke or the linkage is crushed.',
  avoid: 'One hand at the positioner, the other away; nobody near the yoke.',
};

/** Output with the nozzle covered and clear, and the supply at that moment: it swings to its supply, and wants that range. */
const SWING: readonly QuantityField[] = [
  { ...PRESSURE, name: 'supplyNowPa', label: 'Supply gauge, meanwhile', gauge: 'supplyGauge' },
  { ...PRESSURE, name: 'coveredPa', label: 'Output, nozzle covered', gauge: 'supplyGauge' },
  { ...PRESSURE, name: 'clearPa', label: 'Output, nozzle clear', gauge: 'supplyGauge' },
];

type Cover = 'coverOff' | 'gaugeMissing';

/** The cover taken off, and what can be seen without touching. */
export function takeCoverOff<const Next extends string>(step: {
  readonly phase: string;
  readonly next: Next;
  /** Where the cover goes back on without more being done. */
  readonly leave: Next;
  readonly makeSafe: Next;
}): Readonly<Record<Cover, Step<Cover | Next>>> {
  return {
    coverOff: openCover(step),
    gaugeMissing: {
      kind: 'question',
      phase: step.phase,
      title: 'No gauge on that output was seen alive',
      how: 'A zero on a dead gauge looks like a plugged restriction. Move the signal a little: a gauge that moves is alive. It has to show the whole supply.',
      choices: {
        again: { label: 'It moves, or one is fitted to its port: look again', to: 'coverOff' },
        leave: { label: 'It cannot be read: cover on, give it back', to: step.leave, reason: true },
      },
      makeSafe: step.makeSafe,
    },
  };
}

function openCover<const Next extends string>(step: {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
}): Step<Next | 'gaugeMissing'> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: 'Open the cover of the positioner, air on',
    how: 'By the sheet it has {relaysFitted}. Write down which output which relay loads: arrows, letters, tubes followed by eye.',
    why: 'Without air nothing of it can be tried; with air it moves the valve.',
    action: 'openPneumaticCover',
    caution: VALVE_JUMPS,
    do: ['Tell the operator that it may jump.', 'Take the cover off.', 'Look at it, hands off.'],
    asks: [
      {
        name: 'relayLooked',
        label: 'Relay that is in question',
        type: 'choice',
        choices: [
          { value: 'only', label: 'The only one' },
          { value: 'top', label: 'The one that loads the top' },
          { value: 'bottom', label: 'The one that loads the bottom' },
        ],
      },
      yesNo('outputGauge', 'A gauge is on the output of that relay, and it was seen alive'),
    ],
    judge: { rule: 'allYes', with: { fields: 'outputGauge' } },
    ways: { yes: { to: step.next }, no: { to: 'gaugeMissing' } },
    makeSafe: step.makeSafe,
  };
}

/** Output of one relay, its nozzle covered and clear. */
export function swingRelay<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly ways: Readonly<Record<'answers' | 'dead low' | 'dead high' | 'in part' | 'no supply', Way<Id>>>;
  readonly makeSafe: Id;
}): Step<Id> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: step.title,
    picture: 'relay',
    how: 'Read the output that a covered nozzle loads; it swings over {relaySwing} of its supply or more. Let it settle each time.',
    why: 'Empty both ways is a plugged restriction, full both ways a plugged nozzle. A gauge that was never seen alive proves neither.',
    action: 'workAtLivePositioner',
    caution: VALVE_JUMPS,
    do: [
      'Hold the flapper on its nozzle with a soft stick.',
      'Read the output gauge.',
      'Hold the flapper clear of its nozzle.',
      'Read the output gauge again.',
    ],
    asks: SWING,
    judge: { rule: 'relayAnswers' },
    ways: step.ways,
    makeSafe: step.makeSafe,
  };
}

/** The clean-out plunger pressed, and the output read. */
export function pressPlunger<const Id extends string>(step: {
  readonly phase: string;
  readonly ways: Readonly<Record<'answers' | 'still dead' | 'tries used up' | 'no supply', Way<Id>>>;
  readonly makeSafe: Id;
}): Step<Id> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: 'Press the clean-out plunger of that relay',
    picture: 'relay',
    how: 'Air on. The gauge is the proof: it swings over {relaySwing} of its supply or more. At most {plungerTries} times.',
    why: 'The plunger carries the wire of the right size. A drill or a thicker wire makes the hole larger, and the relay is spoiled.',
    action: 'workAtLivePositioner',
    caution: {
      word: 'warning',
      hazard: 'As the restriction clears, its output fills and the valve jumps.',
      consequence: 'A finger in the yoke or the linkage is crushed.',
      avoid:
        'Everybody out of the yoke before the plunger is touched; one hand at the positioner, the other away.',
    },
    do: [
      'Press the plunger to its stop.',
      'Let it come back by its spring.',
      'Hold the flapper on its nozzle with a soft stick.',
      'Read the output gauge.',
      'Hold the flapper clear of its nozzle.',
      'Read the output gauge again.',
    ],
    asks: SWING,
    judge: { rule: 'plungerTried', with: { step: 'pressPlunger' } },
    ways: step.ways,
    makeSafe: step.makeSafe,
  };
}

/** The cover back on, so that the stroke is read as it works. */
export function putCoverOn<const Id extends string>(step: {
  readonly phase: string;
  readonly next: Id;
  readonly again: Id;
  readonly makeSafe: Id;
}): Step<Id> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: 'Put the cover of the positioner back',
    why: 'Without it rain and dust get at the nozzle; a cover that pinches a tube drives the valve off.',
    asks: [yesNo('coverBack', 'Cover on, its vent free, the tubes not pinched')],
    judge: { rule: 'allYes', with: { fields: 'coverBack' } },
    ways: { yes: { to: step.next }, no: { to: step.again } },
    makeSafe: step.makeSafe,
  };
}

type Proof = 'strokeLeft' | 'strokeLeftClose' | 'strokeLeftNotRead' | 'strokeLeftOutside';

/** The whole stroke by its signal as the proof of a repair, and what to do where it is not inside. */
export function strokeProves<const Next extends string>(step: {
  readonly phase: string;
  /** What is done next where it is inside, or left so. */
  readonly next: Next;
  /** Where the repair is taken up again. */
  readonly repair: Next;
  readonly makeSafe: Next;
}): Readonly<Record<Proof, Step<Proof | Next>>> {
  const { phase, next, repair, makeSafe } = step;
  return {
    strokeLeft: strokeBySignal<Proof | Next>({
      phase,
      title: 'Stroke it by its signal, up and down, as left',
      ways: {
        inside: { to: next },
        outside: { to: 'strokeLeftOutside' },
        'too close': { to: 'strokeLeftClose' },
        'not all read': { to: 'strokeLeftNotRead' },
      },
      makeSafe,
    }),
    strokeLeftClose: {
      kind: 'question',
      phase,
      title: 'Too close for this indicator to tell',
      how: 'The indicator’s own doubt covers the limit: neither inside nor outside is shown.',
      choices: {
        again: { label: 'Read the cycle again, with a finer one if there is one', to: 'strokeLeft' },
        goOn: { label: 'Leave it so', to: next, reason: true },
      },
      makeSafe,
    },
    strokeLeftNotRead: {
      kind: 'question',
      phase,
      title: 'Not every setting was read',
      how: 'A valve that stops short of its stroke stops at something: handwheel, stop, trim, or air that does not come up.',
      choices: {
        again: { label: 'Read the cycle again', to: 'strokeLeft' },
        stuck: { label: 'It does not reach them: it is outside', to: 'strokeLeftOutside' },
      },
      makeSafe,
    },
    strokeLeftOutside: {
      kind: 'question',
      phase,
      title: 'It does not follow its signal inside its limits',
      how: 'All points off alike is zero, off more with travel is span or linkage: zero at {signalLow}, span at {signalHigh}, in turn until both stand, by its manual. Apart up and down is friction or slack, and no setting cures that.',
      choices: {
        set: { label: 'Zero and span set by its screws: stroke it again', to: 'strokeLeft' },
        repair: { label: 'Go back to the repair', to: repair },
        calibrate: {
          label: 'Give it back as it is; its calibration comes next',
          to: next,
          reason: true,
          comesNext: 'positioner-calibration',
        },
        friction: {
          label: 'Give it back as it is; it sticks, and its fault is looked for next',
          to: next,
          reason: true,
          comesNext: 'find-the-fault',
        },
      },
      makeSafe,
    },
  };
}

/** Zero and span set in turn, the cover off and the air on. */
export function setZeroAndSpan<const Id extends string>(step: {
  readonly phase: string;
  readonly next: Id;
  readonly makeSafe: Id;
}): Step<Id> {
  return {
    kind: 'instruction',
    phase: step.phase,
    title: 'Set zero and span of the positioner',
    how: 'Rising signal {risingSignal} the valve. One moves the other: in turn, until both stand. By its manual; marks that were made come first.',
    action: 'workAtLivePositioner',
    caution: VALVE_JUMPS,
    do: [
      'Set the signal to {signalLow}.',
      'Set zero, so that the valve just leaves its end as the signal rises.',
      'Set the signal to {signalHigh}.',
      'Set span, so that the valve just reaches its other end.',
      'Check both again, until neither has to be moved.',
    ],
    next: { to: step.next },
    makeSafe: step.makeSafe,
  };
}
