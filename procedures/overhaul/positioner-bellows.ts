import { airAway, airOffControl, airOnAgain } from '../phases/air-off.ts';
import { airOffFrame } from '../phases/air-off-frame.ts';
import { pressByHand, readBellows, watchBellows } from '../phases/bellows-hold.ts';
import { bypassedAt, takeOverOnBypass } from '../phases/bypass-taken-over.ts';
import { yesNo } from '../phases/common.ts';
import { putCoverOn, setZeroAndSpan, strokeProves } from '../phases/live-positioner.ts';
import { takeForStroke } from '../phases/own-air.ts';
import { giveBackStroked } from '../phases/stroked-back.ts';
import { procedure } from '../vocabulary.ts';

const halt = 'haltStroke' as const;
const shut = 'haltIsolating' as const;
const HANDS = { clear: 'not looked at' } as const;

const BRING = [
  'Bring a bellows of the same range, with its gaskets.',
  'Bring a signal gauge, a supply gauge and a travel indicator.',
  'Bring a hand regulator with a shut-off and its own gauge.',
  'Bring small spanners, a rule for the spring, eye protection and a marker.',
  'Bring your locks and tags, soap and caps for the tubes.',
] as const;

/** The input bellows of a pneumatic positioner: tried in its place first, then renewed with air and signal off. */
export const positionerBellows = procedure({
  id: 'positioner-bellows',
  title: 'Input bellows of the positioner renewed',
  energyControl: airOffControl(
    'To find a leaking input bellows of a pneumatic positioner in its place, and to renew it with air and signal off; then zero and span.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'The cover comes off and the signal line is blown out before the bellows is touched; after a stop the block valves are looked at again before the valve moves.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'Look for kept air on both sides of the actuator. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
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
    airOn: [{ id: 'found', title: 'Leak check in place' }],
    airOff: { id: 'bellows', title: 'Bellows' },
    proof: 'Zero, span and proof',
  }),
  takesOver: { bypassed: bypassedAt('takenOver') },
  steps: {
    ...takeForStroke({
      title: 'Get ready for the input bellows of {tag}',
      how: 'Its range is {signalLow} to {signalHigh}; no more than {bellowsTest} goes on it.',
      bring: BRING,
      next: 'signalCock',
    }),
    ...takeOverOnBypass({ what: 'its input bellows', bring: BRING }),
    signalCock: {
      kind: 'question',
      phase: 'found',
      title: 'Can the signal be shut in at the positioner?',
      how: 'A cock in the signal line with a gauge between it and the bellows. No joint is loosened for this while the air is on.',
      why: 'Shut in on a gauge of its own, a bellows shows its leak in its place.',
      choices: {
        cock: { label: 'Cock and gauge are there: shut it in', to: 'shutSignalIn' },
        none: { label: 'No cock: try it by hand, air off', to: 'airKnown' },
      },
      makeSafe: halt,
    },
    shutSignalIn: {
      kind: 'instruction',
      phase: 'found',
      title: 'Shut the signal in on the bellows',
      how: 'At most {bellowsTest}: the valve goes to its end and should stay there. Come up to it from below.',
      why: 'The same air stays on the bellows: what it loses now goes through the bellows or a joint.',
      action: 'strokeByOwnAir',
      caution: {
        word: 'warning',
        hazard: 'A bellows that leaks lets the valve go while it is watched.',
        consequence: 'A finger in the yoke is crushed.',
        avoid: 'Hands stay outside yoke and linkage until the cock is open again.',
      },
      do: [
        'Have the signal set to {bellowsTest}.',
        'Shut the cock in the signal line.',
        'Read the signal gauge.',
      ],
      next: { to: 'watchFound' },
      makeSafe: halt,
    },
    watchFound: watchBellows({ phase: 'found', next: 'holdFound', makeSafe: halt }),
    holdFound: readBellows({
      phase: 'found',
      title: 'Read whether the bellows held, in its place',
      how: 'Both readings on the one gauge behind the cock. Then the cock comes open again, slowly.',
      after: 'The cock is open again',
      ways: {
        falls: { to: 'bellowsFalls' },
        holds: { to: 'bellowsTight' },
        'too little signal': { to: 'shutSignalIn' },
        'above range': { to: 'signalTooHigh' },
        'still under air': { to: 'cockStillShut' },
      },
      makeSafe: halt,
    }),
    cockStillShut: {
      kind: 'question',
      phase: 'found',
      title: 'The cock is still shut',
      how: 'A valve whose signal is shut in stands still whatever the operator does.',
      choices: {
        again: { label: 'Open again now: shut in and read once more', to: 'shutSignalIn' },
        stuck: { label: 'It does not open: air off, the cock is renewed', to: 'airKnown', reason: true },
      },
      makeSafe: halt,
    },
    signalTooHigh: {
      kind: 'question',
      phase: 'found',
      title: 'More signal than the bellows may have',
      how: 'Its range ends at {signalHigh}. Whatever sends more is put right first: converter, regulator or a gauge that is wrong.',
      choices: {
        again: { label: 'Signal set down: shut in again', to: 'shutSignalIn' },
        leave: { label: 'It stays too high: give the valve back', to: 'nextPerson', reason: true },
      },
      makeSafe: halt,
    },
    bellowsFalls: {
      kind: 'question',
      phase: 'found',
      title: 'The shut-in signal falls',
      how: 'Soap cock, gauge and joints before the bellows is blamed.',
      choices: {
        bellows: { label: 'Nothing bubbles outside: it is the bellows', to: 'airKnown' },
        again: { label: 'A joint was tightened: shut in again', to: 'shutSignalIn' },
      },
      makeSafe: halt,
    },
    bellowsTight: {
      kind: 'question',
      phase: 'found',
      title: 'The bellows is tight',
      how: 'Then the signal is lost before it, or nozzle, relay or linkage do it. What the stroke shows says which job comes next.',
      choices: {
        leave: { label: 'Not the bellows: stroke it and give it back', to: 'strokeLeft' },
        nozzle: {
          label: 'Stroke it and give it back; the job on nozzle and flapper comes next',
          to: 'strokeLeft',
          comesNext: 'nozzle-flapper',
        },
        again: { label: 'Shut in once more', to: 'shutSignalIn' },
        renew: { label: 'It is stiff or dented: renew it all the same', to: 'airKnown', reason: true },
      },
      makeSafe: halt,
    },
    ...airAway({ next: 'lineOff' }),
    lineOff: {
      kind: 'reading',
      phase: 'bellows',
      title: 'Take the signal line off the positioner and cap it',
      how: 'The line may come from a source that still has air: loosen it slowly.',
      action: 'breakSignalLine',
      caution: {
        word: 'caution',
        hazard: 'A signal line under pressure whips.',
        consequence: 'It cuts or bruises.',
        avoid: 'The joint eased until it hisses, and taken off once it is silent.',
      },
      do: ['Mark each tube.', 'Loosen the signal joint.', 'Cap the signal line.'],
      asks: [yesNo('lineOffCapped', 'Signal line off and capped, the positioner’s port open')],
      judge: { rule: 'allYes', with: { fields: 'lineOffCapped' } },
      ways: {
        yes: { to: 'triedBefore', sets: { controllerLine: 'capped', ...HANDS } },
        no: { to: 'lineNotOff', sets: { controllerLine: 'capped', ...HANDS } },
      },
      makeSafe: shut,
    },
    lineNotOff: {
      kind: 'question',
      phase: 'bellows',
      title: 'The signal line is not off, or not capped',
      how: 'One that hisses on and on has air behind it: its source is shut first. A cap keeps dirt and water out of the line.',
      choices: {
        again: { label: 'Its source is shut, a cap is here: once more', to: 'lineOff' },
        back: { label: 'It stays on: look at the tubes, bring the air back', to: 'lineLook' },
      },
      makeSafe: shut,
    },
    triedBefore: {
      kind: 'question',
      phase: 'bellows',
      title: 'Was the bellows shut in and read in its place?',
      how: 'A bellows that nobody saw leak is not taken out.',
      why: 'Each time that it comes out, gasket and zero are at stake.',
      choices: {
        yes: { label: 'Yes, and it fell: take it out', to: 'bellowsOut' },
        no: { label: 'No: try it by hand first', to: 'pressFound' },
      },
      makeSafe: shut,
    },
    pressFound: pressByHand('Try the bellows by hand, as found', 'handFoundWait'),
    handFoundWait: watchBellows({ phase: 'bellows', next: 'handFound', makeSafe: shut }),
    handFound: readBellows({
      phase: 'bellows',
      title: 'Read whether the bellows held, by hand',
      how: 'Both readings on the gauge of the hand regulator, shut off. Then it is bled to zero.',
      after: 'Bled to zero, the hand regulator off',
      ways: {
        falls: { to: 'bellowsOut' },
        holds: { to: 'handTight' },
        'too little signal': { to: 'pressFound' },
        'above range': { to: 'handTooHigh' },
        'still under air': { to: 'handTooHigh' },
      },
      makeSafe: shut,
    }),
    handTooHigh: {
      kind: 'question',
      phase: 'bellows',
      title: 'Bleed the hand regulator to zero now',
      how: 'No more than {bellowsTest} goes on the bellows, and nothing is taken apart under air.',
      choices: {
        bled: { label: 'At zero and off: try it again from the start', to: 'pressFound' },
        hurt: { label: 'At zero; it had more than its range: take it out', to: 'bellowsOut', reason: true },
      },
      makeSafe: shut,
    },
    handTight: {
      kind: 'question',
      phase: 'bellows',
      title: 'The bellows is tight',
      how: 'Then the signal is lost before it: line, joints, converter. Else nozzle, relay or linkage do it.',
      choices: {
        leave: { label: 'Not the bellows: put the line back', to: 'lineZero' },
        tubes: {
          label: 'Put the line back; the job on the tubing comes next',
          to: 'lineZero',
          comesNext: 'tubing',
        },
        renew: { label: 'It is stiff or dented: take it out', to: 'bellowsOut', reason: true },
      },
      makeSafe: shut,
    },
    bellowsOut: {
      kind: 'reading',
      phase: 'bellows',
      title: 'Take the bellows out',
      how: 'Height of the range spring, or the threads that show: zero comes back to it. Keep flapper and nozzle clear of your tools.',
      action: 'workOnAirParts',
      do: [
        'Take the cover off.',
        'Write the height of the range spring down.',
        'Mark lever, spring and bellows.',
        'Take the lever off its pivot.',
        'Remove the bellows with its gasket.',
        'Look into it and along its folds.',
      ],
      asks: [
        {
          name: 'rangeSpringM',
          label: 'Height of the range spring; blank where it has none',
          type: 'quantity',
          dimension: 'length',
          optional: true,
        },
        {
          name: 'bellowsLook',
          label: 'What it shows',
          type: 'choice',
          choices: [
            { value: 'split', label: 'Split, cracked or corroded' },
            { value: 'gasket', label: 'Sound; its gasket or its seat leaks' },
            { value: 'wet', label: 'Water or oil in it' },
            { value: 'sound', label: 'Nothing' },
          ],
        },
      ],
      judge: { rule: 'oneOf', with: { field: 'bellowsLook', good: 'split,gasket' } },
      ways: {
        yes: { to: 'bellowsIn', sets: HANDS },
        no: { to: 'bellowsOdd', sets: HANDS },
      },
      makeSafe: shut,
    },
    bellowsOdd: {
      kind: 'question',
      phase: 'bellows',
      title: 'The bellows shows no split',
      how: 'Water or oil came with the signal: what feeds the line has it as well. A crack between folds is seen only when it is stretched a little.',
      choices: {
        renew: { label: 'A new one goes in', to: 'bellowsIn' },
        wet: {
          label: 'Water or oil: a new one goes in; the job on the air set comes next',
          to: 'bellowsIn',
          comesNext: 'air-set',
        },
        back: { label: 'Dried, the same one goes back on a new gasket', to: 'bellowsIn', reason: true },
      },
      makeSafe: shut,
    },
    bellowsIn: {
      kind: 'reading',
      phase: 'bellows',
      title: 'Fit the bellows, with a new gasket',
      how: 'Its range is stamped on it: {signalLow} to {signalHigh}. It sits square and is not twisted; spring and lever go back to their marks.',
      action: 'workOnAirParts',
      do: [
        'Check the range on the new bellows.',
        'Remove the old gasket from its seat.',
        'Fit the gasket and the bellows.',
        'Tighten its screws evenly.',
        'Put spring and lever back to their marks.',
      ],
      asks: [yesNo('bellowsRight', 'Right range, square, free over its whole way')],
      judge: { rule: 'allYes', with: { fields: 'bellowsRight' } },
      ways: { yes: { to: 'pressLeft', sets: HANDS }, no: { to: 'bellowsWrong', sets: HANDS } },
      makeSafe: shut,
    },
    bellowsWrong: {
      kind: 'question',
      phase: 'bellows',
      title: 'It is not the right one, or does not sit free',
      how: 'One of another range makes the whole stroke wrong, and no span screw brings it back.',
      choices: {
        again: { label: 'Fit it again, or the right one', to: 'bellowsIn' },
        leave: {
          label: 'None is here: the old one is back in, one is ordered',
          to: 'lineLook',
          reason: true,
        },
      },
      makeSafe: shut,
    },
    pressLeft: pressByHand('Try the bellows by hand, as left', 'handLeftWait'),
    handLeftWait: watchBellows({ phase: 'bellows', next: 'handLeft', makeSafe: shut }),
    handLeft: readBellows({
      phase: 'bellows',
      title: 'Read whether the new bellows held',
      how: 'Both readings on the gauge of the hand regulator, shut off. Then it is bled to zero.',
      after: 'Bled to zero, the hand regulator off',
      ways: {
        holds: { to: 'lineZero' },
        falls: { to: 'leftFalls' },
        'too little signal': { to: 'pressLeft' },
        'above range': { to: 'leftTooHigh' },
        'still under air': { to: 'leftTooHigh' },
      },
      makeSafe: shut,
    }),
    leftTooHigh: {
      kind: 'question',
      phase: 'bellows',
      title: 'Bleed the hand regulator to zero now',
      how: 'No more than {bellowsTest} goes on the bellows: one that had more is not used.',
      choices: {
        bled: { label: 'At zero and off: try it again from the start', to: 'pressLeft' },
        hurt: { label: 'At zero; it had more than its range: another one', to: 'bellowsOut' },
      },
      makeSafe: shut,
    },
    leftFalls: {
      kind: 'question',
      phase: 'bellows',
      title: 'It still falls',
      how: 'Soap the gasket and the hand rig under air first.',
      choices: {
        rig: { label: 'The rig leaked, and is tight now: try again', to: 'pressLeft' },
        out: { label: 'Gasket or bellows: take it out again', to: 'bellowsOut' },
        leave: { label: 'It leaks on; parts are ordered: put it together', to: 'lineZero', reason: true },
      },
      makeSafe: shut,
    },
    ...airOnAgain({ next: 'zeroSpan' }),
    zeroSpan: setZeroAndSpan({ phase: 'proof', next: 'coverOn', makeSafe: halt }),
    coverOn: putCoverOn({ phase: 'proof', next: 'strokeLeft', again: 'zeroSpan', makeSafe: halt }),
    ...strokeProves({ phase: 'proof', next: 'nextPerson', repair: 'zeroSpan', makeSafe: halt }),
    ...giveBackStroked(),
  },
});
