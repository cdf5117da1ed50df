import { holdAir } from '../phases/test-air.ts';
import type { Step } from '../vocabulary.ts';

type Own = 'noAdjuster' | 'holdForAdjuster' | 'adjusterNotHeld' | 'windAdjuster' | 'afterAdjuster';

interface Ways<Next extends string> {
  readonly choose: Next;
  readonly contact: Next;
  readonly asLeft: Next;
  readonly leave: Next;
  readonly danger: Next;
  readonly stop: Next;
}

/** The spring adjuster wound on held air, and where the work goes on after it. */
export function windSpring<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return {
    noAdjuster: {
      kind: 'question',
      phase: 'setPlug',
      title: 'This spring has no adjuster',
      how: 'The case holds it. Its bench set changes only with the spring, in the overhaul.',
      choices: {
        back: { label: 'Choose other work', to: ways.choose },
        leave: { label: 'Leave it as found', to: ways.leave, reason: true },
      },
      makeSafe: ways.stop,
    },
    holdForAdjuster: holdAir<Own | Next>({
      phase: 'setPlug',
      title: 'Hold the valve with {benchSetMid} while the adjuster is wound',
      how: 'Then leave the regulator alone: the adjuster moves the stem by itself.',
      held: 'windAdjuster',
      notHeld: 'adjusterNotHeld',
      danger: ways.danger,
      makeSafe: ways.stop,
    }),
    adjusterNotHeld: {
      kind: 'question',
      phase: 'setPlug',
      title: 'The air is not held',
      how: 'Look for the leak with soap: hose, joint, diaphragm.',
      choices: {
        again: { label: 'Set it again', to: 'holdForAdjuster' },
        other: { label: 'Choose other work', to: ways.choose },
      },
      makeSafe: ways.stop,
    },
    windAdjuster: {
      kind: 'reading',
      phase: 'setPlug',
      title: 'Wind the spring adjuster {adjusterTurns}: {adjusterDirection}',
      how: 'Both ends of the bench set move together; its span does not.',
      action: 'windAdjusterOnTestAir',
      caution: {
        word: 'warning',
        hazard: 'The spring moves the stem as the adjuster turns.',
        consequence: 'A finger in the yoke can be crushed.',
        avoid: 'Spanner from outside the yoke; nobody touches the regulator.',
      },
      asks: [
        {
          name: 'adjusterTurnsMade',
          label: 'Turns made',
          type: 'quantity',
          dimension: 'turns',
          wanted: 'adjusterTurns',
        },
        {
          name: 'adjusterHeightNowM',
          label: 'Adjuster height now',
          type: 'quantity',
          dimension: 'length',
          optional: true,
        },
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'afterAdjuster', sets: { signalAir: 'live', plug: 'seat unknown' } } },
      makeSafe: ways.stop,
    },
    afterAdjuster: {
      kind: 'question',
      phase: 'setPlug',
      title: 'After the adjuster',
      how: 'The contact moves with the adjuster: find it again before the plug is set.',
      choices: {
        contact: { label: 'Find the contact again', to: ways.contact },
        asLeft: { label: 'Read the cycle as left', to: ways.asLeft },
      },
      makeSafe: ways.stop,
    },
  };
}
