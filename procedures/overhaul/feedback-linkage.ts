import { airAway, airOffControl, airOnAgain } from '../phases/air-off.ts';
import { airOffFrame } from '../phases/air-off-frame.ts';
import { bypassedAt, takeOverOnBypass } from '../phases/bypass-taken-over.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { strokeProves } from '../phases/live-positioner.ts';
import { takeForStroke } from '../phases/own-air.ts';
import { giveBackStroked } from '../phases/stroked-back.ts';
import { procedure } from '../vocabulary.ts';

const halt = 'haltStroke' as const;
const shut = 'haltIsolating' as const;
const HANDS = { clear: 'not looked at' } as const;

const BRING = [
  'Bring pins, clips, bushings and nuts of this linkage.',
  'Bring a dial indicator, a supply gauge and a gauge for the actuator.',
  'Bring a square, a marker, and spanners for its lock nuts.',
  'Bring your locks and tags, and soap.',
] as const;

/** The linkage from stem to positioner: watched from outside with air on, touched with it off. */
export const feedbackLinkage = procedure({
  id: 'feedback-linkage',
  title: 'Feedback linkage of the positioner',
  energyControl: airOffControl(
    'To mend a feedback linkage that is off, slack or worn. It is watched with the air on, hands off; it stands in the yoke and is touched only with the air off.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'A linkage that does not follow after it was set may be given back with a reason; after a stop the block valves are looked at again before the valve moves.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'Look for kept air on the other side of the actuator too, on a cylinder at its other end. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change: 'It may go on where a job that looked for the fault left the valve on its bypass.',
    },
    { letter: 'E', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back, and before circuits are switched on again.',
    },
  ],
  ...airOffFrame({
    airOn: [{ id: 'found', title: 'As found' }],
    airOff: { id: 'linkage', title: 'Linkage' },
    proof: 'Proof',
  }),
  takesOver: { bypassed: bypassedAt('takenOver') },
  steps: {
    ...takeForStroke({
      title: 'Get ready for the feedback linkage of {tag}',
      how: 'Without its feedback a positioner runs to one end and stays there. Play at the stem, at most {linkPlayLimit}: half of the hysteresis allowed (common practice, no source).',
      bring: BRING,
      next: 'linkWatched',
    }),
    ...takeOverOnBypass({ what: 'its feedback linkage', bring: BRING }),
    linkWatched: {
      kind: 'reading',
      phase: 'found',
      title: 'Watch the linkage while the signal moves a little, hands off',
      how: 'From {signalHalf} a little up and a little down. Lever, pin and cam start with the stem, not after it.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      do: ['Have the signal moved a little up.', 'Have it moved back.', 'Watch pin, lever and cam.'],
      asks: [
        {
          name: 'linkSeen',
          label: 'The linkage',
          type: 'choice',
          choices: [
            { value: 'follows', label: 'Follows the stem at once, both ways' },
            { value: 'late', label: 'Follows late, or pin and hole show play' },
            { value: 'off', label: 'Is off, broken or bent' },
          ],
        },
      ],
      judge: { rule: 'oneOf', with: { field: 'linkSeen', good: 'late,off' } },
      ways: { yes: { to: 'airKnown' }, no: { to: 'linkFollows' } },
      makeSafe: halt,
    },
    linkFollows: {
      kind: 'question',
      phase: 'found',
      title: 'The linkage follows',
      how: 'Play that is too small to see still shows on a dial indicator, with the air off.',
      choices: {
        measure: { label: 'Measure its play, air off', to: 'airKnown' },
        leave: { label: 'It is sound: stroke it and give it back', to: 'strokeLeft' },
      },
      makeSafe: halt,
    },
    ...airAway({ next: 'linkPlay' }),
    linkPlay: {
      kind: 'reading',
      phase: 'linkage',
      title: 'Measure the play of the linkage at the stem',
      how: 'Dial indicator at the end of the lever, stem at rest. Move the lever by hand to both sides until the positioner’s cam starts to move. At most {linkPlayLimit}.',
      action: 'workOnAirParts',
      do: ['Mark lever, pin and cam.', 'Set the dial indicator on the lever.', 'Read how far it moves.'],
      asks: [
        yesNo('linkWhole', 'The linkage is on and whole'),
        {
          name: 'linkPlayM',
          label: 'Play at the lever',
          type: 'quantity',
          dimension: 'length',
          gauge: 'travelIndicator',
          optional: true,
        },
      ],
      judge: { rule: 'linkPlay' },
      ways: {
        tight: { to: 'linkSet', sets: HANDS },
        worn: { to: 'linkMended', sets: HANDS },
        off: { to: 'linkMended', sets: HANDS },
        'not read': { to: 'playNotRead', sets: HANDS },
      },
      makeSafe: shut,
    },
    playNotRead: {
      kind: 'question',
      phase: 'linkage',
      title: 'The play was not read',
      how: 'Without a figure nobody can say later whether it has grown.',
      choices: {
        again: { label: 'Read it', to: 'linkPlay' },
        mend: { label: 'It is plainly worn: renew pin and bushing', to: 'linkMended' },
      },
      makeSafe: shut,
    },
    linkMended: {
      kind: 'reading',
      phase: 'linkage',
      title: 'Renew what is worn, and put the linkage on',
      how: 'Pin and bushing together: a new pin in an old hole is slack again in a month. Its play is measured once more afterwards.',
      action: 'workOnAirParts',
      do: ['Take the worn parts out.', 'Fit pin, bushing and clip.', 'Tighten the lock nuts.'],
      asks: [yesNo('linkFree', 'It moves freely over the whole stroke of the lever, and nothing rubs')],
      judge: { rule: 'allYes', with: { fields: 'linkFree' } },
      ways: { yes: { to: 'linkPlay', sets: HANDS }, no: { to: 'linkBinds', sets: HANDS } },
      makeSafe: shut,
    },
    linkBinds: {
      kind: 'question',
      phase: 'linkage',
      title: 'It binds, or the parts are not here',
      how: 'A pin that is pressed in askew, or a lock nut drawn up on the lever, binds. A linkage that binds is worse than one with play.',
      choices: {
        again: { label: 'Put right: fit it again', to: 'linkMended' },
        leave: { label: 'The old parts go back until new ones come', to: 'linkSet', reason: true },
      },
      makeSafe: shut,
    },
    linkSet: {
      kind: 'reading',
      phase: 'linkage',
      title: 'Set lever and cam to their marks',
      how: 'The lever stands square to the stem at half travel, by its mark where the stem rests at an end; the pin in the hole for {travel} of travel; the cam on the lobe for the way it moves.',
      why: 'A lever that is not square makes the stroke curved, and no zero or span cures that.',
      action: 'workOnAirParts',
      do: [
        'Put the pin in the hole for this travel.',
        'Set the lever to its mark.',
        'Set the cam to its mark.',
      ],
      asks: [yesNo('linkOnMarks', 'Pin, lever and cam on their marks, lock nuts tight')],
      judge: { rule: 'allYes', with: { fields: 'linkOnMarks' } },
      ways: { yes: { to: 'lineLook', sets: HANDS }, no: { to: 'linkPlay', sets: HANDS } },
      makeSafe: shut,
    },
    ...airOnAgain({ next: 'linkLeft' }),
    linkLeft: {
      kind: 'reading',
      phase: 'proof',
      title: 'Watch the linkage follow, hands off',
      how: 'At {signalHalf} the valve stands near half travel, and the lever square to the stem.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        yesNo('linkFollowsNow', 'It follows at once, both ways, and nothing rubs'),
        yesNo('squareAtHalf', 'The lever is square at half travel'),
      ],
      judge: { rule: 'allYes', with: { fields: 'linkFollowsNow squareAtHalf' } },
      ways: { yes: { to: 'strokeLeft' }, no: { to: 'linkNotRight' } },
      makeSafe: halt,
    },
    linkNotRight: {
      kind: 'question',
      phase: 'proof',
      title: 'The linkage does not follow as it should',
      how: 'Square at an end and not at half: the pin is in the wrong hole, or the cam on the wrong lobe.',
      choices: {
        off: { label: 'Shut the air off and set it again', to: 'airKnown' },
        again: { label: 'Seen wrong: watch it again', to: 'linkLeft' },
        leave: {
          label: 'It stays so until parts come: read the stroke and give it back',
          to: 'strokeLeft',
          reason: true,
        },
      },
      makeSafe: halt,
    },
    ...strokeProves({ phase: 'proof', next: 'nextPerson', repair: 'airKnown', makeSafe: halt }),
    ...giveBackStroked(),
  },
});
