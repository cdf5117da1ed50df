import { findContact, holdAir } from '../phases/test-air.ts';
import type { Step } from '../vocabulary.ts';

type Own =
  | 'mustNotTurn'
  | 'threadLook'
  | 'holdForPlug'
  | 'airNotHeld'
  | 'turnStem'
  | 'contactLeft'
  | 'contactDiffers'
  | 'holdOpen'
  | 'openNotHeld'
  | 'setIndicator';

interface Ways<Next extends string> {
  readonly choose: Next;
  readonly contact: Next;
  readonly stuck: Next;
  readonly asLeft: Next;
  readonly leave: Next;
  readonly danger: Next;
  readonly stop: Next;
}

/** The plug stem turned on held air, the contact found again, the indicator set at the open end. */
export function setPlug<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return {
    mustNotTurn: {
      kind: 'question',
      phase: 'setPlug',
      title: 'This plug stem must not be turned',
      how: 'A bellows seal tears and a pinned stem shears. The maker sets the seat load of such a valve another way.',
      why: 'A bellows twists off with its stem, and a pin shears: neither shows until it leaks or lets go.',
      choices: {
        back: { label: 'Choose other work', to: ways.choose },
        leave: { label: 'Leave it as found', to: ways.leave, reason: true },
      },
      makeSafe: ways.stop,
    },
    threadLook: {
      kind: 'question',
      phase: 'setPlug',
      title: 'Look at the thread left in the connector',
      how: 'After {turnsWanted} the stem must still be held by at least its own diameter of thread (common practice).',
      why: 'A stem that is held by less thread pulls out of its connector under load.',
      choices: {
        enough: { label: 'Enough thread stays in', to: 'holdForPlug' },
        tooLittle: { label: 'Too little would stay in', to: 'mustNotTurn' },
      },
      makeSafe: ways.stop,
    },
    holdForPlug: holdAir<Own | Next>({
      phase: 'setPlug',
      title: 'Hold the plug off its seat with {benchSetMid}',
      how: 'Then leave the regulator alone: the air stays as it is while the stem is turned.',
      held: 'turnStem',
      notHeld: 'airNotHeld',
      danger: ways.danger,
      makeSafe: ways.stop,
    }),
    airNotHeld: {
      kind: 'question',
      phase: 'setPlug',
      title: 'The air is not held, or the plug is too near its seat',
      how: 'Look for the leak with soap: hose, joint, diaphragm. The stem is not turned on such air.',
      choices: {
        plug: { label: 'Set it again, for the plug', to: 'holdForPlug' },
        other: { label: 'Choose other work', to: ways.choose },
        stop: { label: 'Stop', to: ways.stop },
      },
      makeSafe: ways.stop,
    },
    turnStem: {
      kind: 'reading',
      phase: 'setPlug',
      title: 'Turn the plug stem {turnsWanted}, {turnDirection}',
      how: 'Turns by {turnsBecause}. Contact then comes at {expectedContact}, with {liftLeft} of lift left.',
      why: 'How the plug closes gives the direction, not the air. The extra turns load the seat.',
      action: 'turnPlugStem',
      caution: {
        word: 'warning',
        hazard: 'The connector is between your hands and the spring.',
        consequence: 'If the air changes it drives the stem through them.',
        avoid: 'Nobody touches the regulator. Watch the gauge; let go at the first change.',
      },
      do: ['Loosen the lock nuts.', 'Turn the plug stem, counting.', 'Tighten the lock nuts.'],
      shows: ['stemThread', 'signalShift', 'expectedContact', 'seatLoadExpected', 'seatLoadNeed', 'liftLeft'],
      asks: [
        {
          name: 'turnsMade',
          label: 'Turns made',
          type: 'quantity',
          dimension: 'turns',
          wanted: 'turnsWanted',
        },
        {
          name: 'lockNuts',
          label: 'Lock nuts tight',
          type: 'choice',
          choices: [{ value: 'yes', label: 'Yes' }],
        },
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'contactLeft', sets: { signalAir: 'live', plug: 'seat unknown' } } },
      makeSafe: ways.stop,
    },
    contactLeft: findContact<Own | Next>({
      phase: 'setPlug',
      title: 'Find the contact again: {expectedContact} is expected',
      rule: 'contactAfter',
      ways: {
        'as expected': { to: 'holdOpen' },
        'not as expected': { to: 'contactDiffers' },
        'does not move': { to: ways.stuck },
        'above limit': { to: ways.danger },
      },
      makeSafe: ways.stop,
    }),
    contactDiffers: {
      kind: 'question',
      phase: 'setPlug',
      title: 'The contact is not where the turns should put it',
      how: 'Likely: turns miscounted, a stem that slipped in its connector, another thread than the sheet says.',
      choices: {
        turnAgain: { label: 'Hold the air and turn again', to: 'holdForPlug' },
        accept: { label: 'Keep it as it is', to: 'holdOpen', reason: true },
      },
      makeSafe: ways.stop,
    },
    holdOpen: holdAir<Own | Next>({
      phase: 'setPlug',
      title: 'Hold the valve at its open end with {openEndSignal}',
      how: 'Travel is counted from the open end, so that half signal stays half travel.',
      held: 'setIndicator',
      notHeld: 'openNotHeld',
      danger: ways.danger,
      makeSafe: ways.stop,
    }),
    openNotHeld: {
      kind: 'question',
      phase: 'setPlug',
      title: 'The valve is not held at its open end',
      how: 'Look for the leak with soap: hose, joint, diaphragm.',
      choices: { again: { label: 'Set it again', to: 'holdOpen' }, stop: { label: 'Stop', to: ways.stop } },
      makeSafe: ways.stop,
    },
    setIndicator: {
      kind: 'instruction',
      phase: 'setPlug',
      title: 'Set the travel indicator at the open end',
      how: 'Fingers at the pointer only; let go at the first change of the gauge.',
      action: 'setIndicatorOnTestAir',
      caution: {
        word: 'warning',
        hazard: 'The pointer is set while air holds the spring.',
        consequence: 'If the air changes the stem moves at once, and crushes a finger at the pointer.',
        avoid: 'Nobody touches the regulator. Watch the gauge; let go at the first change.',
      },
      do: ['Loosen the pointer.', 'Set it to full open.', 'Tighten the pointer.'],
      next: { to: ways.asLeft, sets: { signalAir: 'live', plug: 'seat unknown' } },
      makeSafe: ways.stop,
    },
  };
}
