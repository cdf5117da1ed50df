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
  'Bring spanners for coupling and pointer, a torque wrench and a marker.',
  'Bring a supply gauge, a signal gauge and a travel indicator.',
  'Bring your locks and tags.',
] as const;

/** The pointer set and the coupling tightened with the air off; a coupling that slipped is left to the job that isolates the valve. */
export const indicatorAndCoupling = procedure({
  id: 'indicator-and-coupling',
  title: 'Travel indicator and stem coupling',
  energyControl: airOffControl(
    'To set a travel pointer and to tighten a stem coupling that has not slipped, with the air off. A coupling that slipped is set with the valve isolated, in a job of its own.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'A pointer that does not stand right has a card of its own; a coupling that slipped names the job that sets it. After a stop the block valves are looked at again before the valve moves.',
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
    airOff: { id: 'work', title: 'Pointer and coupling' },
    proof: 'Proof',
  }),
  takesOver: { bypassed: bypassedAt('takenOver') },
  steps: {
    ...takeForStroke({
      title: 'Get ready for indicator and coupling of {tag}',
      how: 'Travel {travel}. A pointer that is wrong makes a good valve look bad; a coupling that slipped makes a bad valve look good.',
      bring: BRING,
      next: 'couplingSeen',
    }),
    ...takeOverOnBypass({ what: 'its indicator and coupling', bring: BRING }),
    couplingSeen: {
      kind: 'reading',
      phase: 'found',
      title: 'Look at coupling, marks and pointer while the valve moves, hands off',
      how: 'From {signalLow} to {signalHigh} and back. Both stems move as one; the old marks stay in line.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        {
          name: 'couplingLooks',
          label: 'The coupling',
          type: 'choice',
          choices: [
            { value: 'whole', label: 'Whole, marks in line' },
            { value: 'slack', label: 'A screw is slack, marks still in line' },
            { value: 'slipped', label: 'Marks out of line, or one stem moves before the other' },
          ],
        },
      ],
      judge: { rule: 'oneOf', with: { field: 'couplingLooks', good: 'whole,slack' } },
      ways: { yes: { to: 'airKnown' }, no: { to: 'couplingSlipped' } },
      makeSafe: halt,
    },
    couplingSlipped: {
      kind: 'question',
      phase: 'found',
      title: 'The coupling has slipped',
      how: 'Nobody sets plug and stem with pressure in the body: the valve is isolated for it. Until then its travel says nothing, and it may not shut.',
      choices: {
        leave: {
          label: 'Give it back, operator told; stroke check and plug adjustment come next',
          to: 'nextPerson',
          reason: true,
          comesNext: 'stroke-check',
        },
        again: { label: 'Seen wrong: look again', to: 'couplingSeen' },
      },
      makeSafe: halt,
    },
    ...airAway({ next: 'couplingTight' }),
    couplingTight: {
      kind: 'reading',
      phase: 'work',
      title: 'Tighten the coupling, and look at its threads',
      how: 'The stem is at rest at its fail position; process behind the plug may still push it. Both screws alike, to the torque of the manual. Nothing is let off.',
      action: 'tightenConnector',
      caution: {
        word: 'warning',
        hazard: 'Pressure left in the body can push the stem.',
        consequence: 'A finger between stem and yoke is crushed.',
        avoid: 'Spanner only, fingers out from between stem and yoke.',
      },
      do: ['Mark coupling and both stems.', 'Tighten both screws alike.', 'Check the lock nuts.'],
      asks: [
        yesNo('couplingHolds', 'Screws take their torque, full thread of both stems in it'),
        yesNo('couplingInLine', 'The marks are still in line'),
      ],
      judge: { rule: 'allYes', with: { fields: 'couplingHolds couplingInLine' } },
      ways: { yes: { to: 'pointerSet', sets: HANDS }, no: { to: 'couplingBad', sets: HANDS } },
      makeSafe: shut,
    },
    couplingBad: {
      kind: 'question',
      phase: 'work',
      title: 'The coupling does not hold, or has moved',
      how: 'A stripped screw or too little thread is renewed with the valve isolated.',
      choices: {
        leave: {
          label: 'Leave it as it is; stroke check and plug adjustment come next',
          to: 'lineLook',
          reason: true,
          comesNext: 'stroke-check',
        },
        again: { label: 'Put right: tighten it again', to: 'couplingTight' },
      },
      makeSafe: shut,
    },
    pointerSet: {
      kind: 'reading',
      phase: 'work',
      title: 'Set the pointer to the end where the stem rests',
      how: 'Without air {tag} {failWanted}: the pointer stands on that mark. Where the stem does not rest at an end, the pointer is left alone.',
      onCylinder: {
        how: 'Without air {tag} {failWanted}. Where the stem does not rest at an end, the pointer is left alone.',
      },
      action: 'tightenConnector',
      do: [
        'Look that the stem rests at its end.',
        'Set the pointer to the mark of that end.',
        'Tighten its screws.',
      ],
      asks: [
        yesNo('pointerRight', 'The stem rests at its end, the pointer is on its mark, or it was left alone'),
      ],
      judge: { rule: 'allYes', with: { fields: 'pointerRight' } },
      ways: { yes: { to: 'lineLook', sets: HANDS }, no: { to: 'pointerBad', sets: HANDS } },
      makeSafe: shut,
    },
    pointerBad: {
      kind: 'question',
      phase: 'work',
      title: 'The pointer does not hold on its mark',
      how: 'A pointer that was bent back, or a scale that was moved, is worse than none: people believe it.',
      choices: {
        again: { label: 'Screw or pointer renewed: set it again', to: 'pointerSet' },
        leave: { label: 'Taken off and tagged until a new one comes', to: 'lineLook', reason: true },
      },
      makeSafe: shut,
    },
    ...airOnAgain({ next: 'couplingLeft' }),
    couplingLeft: {
      kind: 'reading',
      phase: 'proof',
      title: 'Watch pointer and coupling over the whole stroke, hands off',
      how: 'From {signalLow} to {signalHigh} and back: {travel} on the scale.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        yesNo('bothAsOne', 'Both stems move as one, marks in line'),
        yesNo('bothEnds', 'The pointer is on its mark at both ends'),
      ],
      judge: { rule: 'allYes', with: { fields: 'bothAsOne bothEnds' } },
      ways: { yes: { to: 'strokeLeft' }, no: { to: 'pointerOff' } },
      makeSafe: halt,
    },
    pointerOff: {
      kind: 'question',
      phase: 'proof',
      title: 'Pointer or coupling is not right over the whole stroke',
      how: 'Right at one end only: the scale, or the valve does not make its stroke. Handwheel and stops first.',
      choices: {
        stroke: { label: 'The valve is short of its stroke: read it', to: 'strokeLeft' },
        off: { label: 'Set it again, air off', to: 'airKnown' },
        leave: { label: 'The pointer stays off and tagged: read the stroke', to: 'strokeLeft', reason: true },
        slipped: { label: 'The stems do not move as one', to: 'couplingSlipped' },
      },
      makeSafe: halt,
    },
    ...strokeProves({ phase: 'proof', next: 'nextPerson', repair: 'airKnown', makeSafe: halt }),
    ...giveBackStroked(),
  },
});
