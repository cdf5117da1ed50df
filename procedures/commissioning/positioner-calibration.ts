import { anywhereControl, anywhereFrame, giveBackAnywhere, takeAnywhere } from '../phases/bench-air.ts';
import { bypassedInLineAt, takeOverOnBypass } from '../phases/bypass-taken-over.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { putRight } from '../phases/finding.ts';
import { positionerStrokeCard, supplyFirst } from '../phases/own-stroke.ts';
import type { FigureName } from '../quantities.ts';
import type { Step } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';
import { positionerProof } from './positioner-proof.ts';

const makeSafe = 'haltStroke' as const;

const BRING = [
  'Bring a signal source for this positioner.',
  'Bring a supply gauge, a gauge for each output and a travel indicator.',
  'Bring a recorder or a camera for the step.',
  'Bring a small screwdriver, for one with nozzle and flapper.',
] as const;

/** What the card after a stroke shows of it. */
const STROKE_SAYS = [
  'strokeError',
  'errorTolerance',
  'strokeHysteresis',
  'hysteresisTolerance',
  'strokeZero',
  'strokeSpan',
  'strokeLine',
  'strokeUncertainty',
] as const satisfies readonly FigureName[];

/** What is off as found, and whether it is set. */
function isOff(step: {
  readonly title: string;
  readonly how: string;
}): Step<'howItIsSet' | 'strokeFound' | 'nextPerson' | 'haltStroke'> {
  return {
    kind: 'question',
    phase: 'asFound',
    ...step,
    shows: STROKE_SAYS,
    choices: {
      set: { label: 'Set it', to: 'howItIsSet' },
      again: { label: 'Put right from outside: stroke it again', to: 'strokeFound' },
      leave: { label: 'It wants linkage, cam or packing: give it back', to: 'nextPerson', reason: true },
    },
    makeSafe,
  };
}

/** Zero, span, dead band, gain and the gauges of a positioner, in its place. */
export const positionerCalibration = procedure({
  id: 'positioner-calibration',
  title: 'Positioner calibration',
  energyControl: anywhereControl(
    'To set zero and span of a positioner on its valve, in the line or on the bench, and to measure what is left: line, hysteresis, dead band, step and, on a cylinder, both sides. A pneumatic positioner is set with its cover off and its air on: hands stay clear of the yoke, and a touched flapper makes the valve jump.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'After a stop the block valves are looked at again before the valve moves; what is not right on the way back is decided on a card of its own.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'It is done on the bench as well. The card after a stroke says which of zero, span, line and hysteresis is off. Dead band, step and both sides of a cylinder are read and judged, each against a figure that stands on the card.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'On the bench let off both ends of a cylinder before a hose comes off. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change: 'It may go on where a job that looked for the fault left the valve on its bypass.',
    },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'Where the step cannot be read, the gauges of a cylinder still are. Cards that gave no reason say why they stand open.',
    },
    {
      letter: 'G',
      date: '2026-11-26',
      change:
        'Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back.',
    },
  ],
  ...anywhereFrame([
    { id: 'air', title: 'Air' },
    { id: 'asFound', title: 'As found' },
    { id: 'set', title: 'Setting' },
    { id: 'asLeft', title: 'As left' },
  ]),
  takesOver: { bypassed: bypassedInLineAt('takenOver') },
  steps: {
    ...takeAnywhere({
      title: 'Get ready to calibrate the positioner of {tag}',
      how: 'Rising signal loads the {risingLoads} and {risingSignal} the valve. In the line the operator may be the source.',
      bring: BRING,
      next: 'supplyRead',
    }),
    ...takeOverOnBypass({ what: 'the settings of its positioner', bring: BRING }),
    ...supplyFirst({ phase: 'air', next: 'linkage', makeSafe }),
    linkage: {
      kind: 'reading',
      phase: 'asFound',
      title: 'Look at feedback linkage and mounting, hands off',
      how: 'Slack here is hysteresis that no screw cures.',
      why: 'What is slack now would be read as a fault of the positioner.',
      asks: [
        yesNo('linkageTight', 'Arm, pin and bracket without slack, spring of the pin on'),
        yesNo('linkageSquare', 'The arm stands level at half travel'),
      ],
      judge: { rule: 'allYes', with: { fields: 'linkageTight linkageSquare' } },
      ways: { yes: { to: 'strokeFound' }, no: { to: 'linkageSlack' } },
      makeSafe,
    },
    linkageSlack: {
      kind: 'question',
      phase: 'asFound',
      title: 'The linkage is slack or stands askew',
      how: 'It is put right with the air off: that is an isolated job of its own. Calibrating over it hides it until the next shift.',
      choices: {
        leave: {
          label: 'Give it back; the job on its linkage comes next',
          to: 'nextPerson',
          reason: true,
          comesNext: 'feedback-linkage',
        },
        goOn: { label: 'Read it as found all the same', to: 'strokeFound', reason: true },
      },
      makeSafe,
    },
    strokeFound: positionerStrokeCard({
      phase: 'asFound',
      title: 'Stroke it by its signal, as found',
      ways: {
        inside: { to: 'deadBand' },
        'zero off': { to: 'zeroOff' },
        'span off': { to: 'spanOff' },
        'middle off': { to: 'middleOff' },
        'apart up and down': { to: 'apart' },
        'too close': { to: 'howItIsSet' },
        'not all read': { to: 'foundNotRead' },
      },
      makeSafe,
    }),
    foundNotRead: {
      kind: 'question',
      phase: 'asFound',
      title: 'Not every setting was read',
      choices: {
        again: { label: 'Read the cycle again', to: 'strokeFound' },
        set: { label: 'It does not reach them: set it', to: 'howItIsSet' },
      },
      makeSafe,
    },
    zeroOff: isOff({
      title: 'Zero is off: the whole line lies too high or too low',
      how: 'Look first whether arm or pin has slipped on the stem: then zero wanders off again. The linkage comes before the screw.',
    }),
    spanOff: isOff({
      title: 'Span is off: the stroke is too long or too short',
      how: 'Look first at the hole that the arm is pinned in, the range spring and the cam: they set the span in steps, the screw only trims it.',
    }),
    middleOff: isOff({
      title: 'The ends would fit, and the middle does not',
      how: 'No screw cures it: an arm that is not level at half travel, the wrong cam, a characteristic that was chosen. Zero and span only tilt what is bent.',
    }),
    apart: isOff({
      title: 'Up and down stand too far apart',
      how: 'No screw cures it: packing too tight or dry, slack in the linkage, a gain too low. Setting over it splits the error in two halves.',
    }),
    howItIsSet: {
      kind: 'question',
      phase: 'set',
      title: 'How this positioner is set',
      how: 'Zero at the low end, then span at the high end, in turn: one moves the other.',
      shows: STROKE_SAYS,
      choices: {
        set: {
          label: 'Set zero and span',
          to: {
            by: 'positioner',
            ways: { pneumatic: 'coverOff', electropneumatic: 'byKeys', none: 'byKeys' },
          },
        },
        leave: { label: 'Leave it as found', to: 'deadBand', reason: true },
      },
      makeSafe,
    },
    coverOff: {
      kind: 'reading',
      phase: 'set',
      title: 'Open the cover of the positioner, air on, hands out of the yoke',
      how: 'From here on every touch may move the valve. Nobody else is near it.',
      action: 'openPneumaticCover',
      caution: {
        word: 'warning',
        hazard: 'A touched flapper makes the valve jump at once.',
        consequence: 'A finger in the yoke is crushed.',
        avoid: 'One hand at the screw, the other at your side; look where both are.',
      },
      asks: [yesNo('coverOffClear', 'Cover off, nobody in the yoke')],
      judge: { rule: 'allYes', with: { fields: 'coverOffClear' } },
      ways: { yes: { to: 'setZeroSpan' }, no: { to: 'coverNotOff' } },
      makeSafe,
    },
    coverNotOff: putRight({
      phase: 'set',
      title: 'The cover is not off, or somebody is in the yoke',
      how: 'A cover that sticks is eased round its seal, never pried over the flapper.',
      again: ['Off, nobody in the yoke: go on', 'coverOff'],
      stop: ['It stays on: stop', makeSafe],
      makeSafe,
    }),
    setZeroSpan: {
      kind: 'reading',
      phase: 'set',
      title: 'Set zero at {signalLow}, then span at {signalHigh}, in turn',
      how: 'One moves the other: go round until both stand. Marks that were made come first.',
      action: 'openPneumaticCover',
      caution: STEM_MOVES,
      do: [
        'Set the signal to {signalLow}.',
        'Set zero, so that the valve just leaves its end as the signal rises.',
        'Set the signal to {signalHigh}.',
        'Set span, so that the valve just reaches its other end.',
        'Check both again, until neither has to be moved.',
        'Tighten the lock screws.',
      ],
      asks: [yesNo('zeroSpanStand', 'Both ends stand without another touch, lock screws tight')],
      judge: { rule: 'allYes', with: { fields: 'zeroSpanStand' } },
      ways: { yes: { to: 'coverOn' }, no: { to: 'doesNotSet' } },
      makeSafe,
    },
    coverOn: {
      kind: 'instruction',
      phase: 'set',
      title: 'Put the cover back before it is read',
      how: 'A cover that is off lets wind and dirt at the flapper.',
      do: ['Fit the cover.', 'Tighten its screws.'],
      next: { to: 'strokeLeft' },
      makeSafe,
    },
    byKeys: {
      kind: 'reading',
      phase: 'set',
      title: 'Set both ends by the keys of the positioner',
      how: 'By its manual. A run of self-setting strokes the valve from end to end by itself: people clear for all of it. Its electric cover stays shut.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [yesNo('zeroSpanStand', 'It says that it is set, and shows no fault')],
      judge: { rule: 'allYes', with: { fields: 'zeroSpanStand' } },
      ways: { yes: { to: 'strokeLeft' }, no: { to: 'doesNotSet' } },
      makeSafe,
    },
    doesNotSet: {
      kind: 'question',
      phase: 'set',
      title: 'Zero or span does not stand',
      how: 'What its display says, where it has one. Air leaking at the bellows, a partly plugged restriction, a worn nozzle, a slack linkage, a supply too low. Setting over a fault makes two.',
      choices: {
        again: { label: 'Try once more', to: 'howItIsSet' },
        leave: { label: 'Cover on; give it back, and find the fault', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    strokeLeft: positionerStrokeCard({
      phase: 'asLeft',
      title: 'Stroke it by its signal, as left',
      ways: {
        inside: { to: 'deadBand' },
        'zero off': { to: 'leftOutside' },
        'span off': { to: 'leftOutside' },
        'middle off': { to: 'leftOutside' },
        'apart up and down': { to: 'leftOutside' },
        'too close': { to: 'leftClose' },
        'not all read': { to: 'leftNotRead' },
      },
      makeSafe,
    }),
    leftClose: {
      kind: 'question',
      phase: 'asLeft',
      title: 'Too close for this indicator to tell',
      how: 'It is no fault of the valve. A finer indicator, or a little more at zero or span.',
      shows: STROKE_SAYS,
      choices: {
        goOn: { label: 'Leave it so', to: 'deadBand', reason: true },
        again: { label: 'Set it closer', to: 'howItIsSet' },
      },
      makeSafe,
    },
    leftNotRead: {
      kind: 'question',
      phase: 'asLeft',
      title: 'Not every setting was read as left',
      choices: {
        again: { label: 'Read the cycle again', to: 'strokeLeft' },
        set: { label: 'It does not reach them: set it again', to: 'howItIsSet' },
      },
      makeSafe,
    },
    leftOutside: {
      kind: 'question',
      phase: 'asLeft',
      title: 'As left it is still outside',
      how: 'The middle off: linkage, cam or characteristic. Apart up and down: packing, slack or gain. Zero or span off again: something slips.',
      shows: STROKE_SAYS,
      choices: {
        again: { label: 'Set it again', to: 'howItIsSet' },
        leave: { label: 'Leave it so', to: 'deadBand', reason: true },
      },
      makeSafe,
    },
    ...positionerProof(),
    ...giveBackAnywhere(),
  },
});
