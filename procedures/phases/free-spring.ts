import type { Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';

type Free = 'freeSpring' | 'springNotFree';
type Back = 'springBack' | 'springBackDiffers';

/** The spring freed by its adjuster, the turns counted: before connector or case is touched. */
export function freeSpring<const Next extends string>({
  phase,
  next,
  makeSafe,
}: {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
}): Readonly<Record<Free, Step<Free | Next>>> {
  return {
    freeSpring: {
      kind: 'reading',
      phase,
      title: 'Back off the spring adjuster until the spring is free',
      how: 'Count every turn. With no air it pushes {springForceShut}; it can be free after {turnsToFree}, and later where the plug is screwed hard on its seat.',
      why: 'A loaded spring under a loosened case or connector is the classic serious accident of this work.',
      action: 'backOffAdjuster',
      caution: {
        word: 'warning',
        hazard: 'The spring still pushes while the adjuster is turned.',
        consequence: 'A screw that runs out of its thread under load shoots out.',
        avoid: 'Face out of line with the screw. Stop when thread runs out before the spring is free.',
      },
      do: [
        'Write the height of the adjuster down.',
        'Turn it back, counting.',
        'Check that the spring is loose.',
      ],
      shows: ['springForceShut', 'turnsToFree'],
      asks: [
        {
          name: 'adjusterTurnsOff',
          label: 'Turns backed off',
          type: 'quantity',
          dimension: 'turns',
          wanted: 'turnsToFree',
        },
        yesNo('springSlack', 'The screw turns by hand and the spring button is loose'),
      ],
      judge: { rule: 'springFree' },
      ways: {
        free: { to: next, sets: { spring: 'released' } },
        'not free': { to: 'springNotFree' },
        'too few turns': { to: 'springNotFree' },
      },
      makeSafe,
    },
    springNotFree: {
      kind: 'question',
      phase,
      title: 'The spring is not shown free',
      how: 'By the turns counted it still pushes {springForceLeft}; it can be free after {turnsToFree}. A screw that is slack sooner has a broken spring or a nut that turns along: it is met as loaded.',
      choices: {
        again: { label: 'Turned on: count again from the first turn', to: 'freeSpring' },
        stop: {
          label: 'It cannot be freed: the actuator goes to its maker as it is',
          to: makeSafe,
          reason: true,
        },
      },
      makeSafe,
    },
  };
}

/** The adjuster wound back by the turns that came off, the case shut. */
export function springBack<const Next extends string>({
  phase,
  next,
  makeSafe,
  stopLoaded,
}: {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
  /** Where to stop once the spring is loaded again. */
  readonly stopLoaded: Next;
}): Readonly<Record<Back, Step<Back | Next>>> {
  return {
    springBack: {
      kind: 'reading',
      phase,
      title: 'Wind the spring adjuster back by {adjusterTurnsOff}',
      how: 'To the height that was written down. The bench set is checked afterwards, whatever the count says.',
      action: 'windAdjusterBack',
      caution: {
        word: 'warning',
        hazard: 'The spring is loaded again, turn by turn.',
        consequence: 'Fingers at the stem are crushed as it moves.',
        avoid: 'Hands outside the yoke; spanner from outside.',
      },
      asks: [
        {
          name: 'adjusterTurnsOn',
          label: 'Turns wound back',
          type: 'quantity',
          dimension: 'turns',
          wanted: 'adjusterTurnsOff',
        },
      ],
      judge: { rule: 'turnsBack' },
      ways: {
        'as found': { to: next, sets: { spring: 'contained' } },
        differs: { to: 'springBackDiffers', sets: { spring: 'contained' } },
      },
      makeSafe,
    },
    springBackDiffers: {
      kind: 'question',
      phase,
      title: 'Other turns were wound back than came off',
      choices: {
        right: { label: 'Turned to the old height now', to: next },
        meant: { label: 'Meant so: the bench set is adjusted anyway', to: next, reason: true },
      },
      makeSafe: stopLoaded,
    },
  };
}
