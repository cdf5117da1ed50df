import { airAway, airOffControl, airOnAgain } from '../phases/air-off.ts';
import { airOffFrame } from '../phases/air-off-frame.ts';
import { BLOWN_CLEAR } from '../phases/blow-down.ts';
import { bypassedAt, takeOverOnBypass } from '../phases/bypass-taken-over.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { strokeProves } from '../phases/live-positioner.ts';
import { takeForStroke } from '../phases/own-air.ts';
import { giveBackStroked } from '../phases/stroked-back.ts';
import type { Step, Way } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const halt = 'haltStroke' as const;
const shut = 'haltIsolating' as const;
const HANDS = { clear: 'not looked at' } as const;

const BRING = [
  'Bring tube of the same size and material, fittings of the same make, a cutter and a deburring tool.',
  'Bring soap, two spanners for the joints, caps, and marks for the tubes.',
  'Bring your locks and tags, a supply gauge, a signal gauge and a travel indicator.',
] as const;

/** Tubes of a valve that leak, are crushed or crossed: soaped with air on, renewed with it off. */
export const tubing = procedure({
  id: 'tubing',
  title: 'Tubing mended',
  energyControl: airOffControl(
    'To find and mend a tube that leaks, is crushed or goes to the wrong port. Soap with the air on; no joint is touched before the air is off.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'The tube is soaped at both ends of the signal, hands out of the yoke; the new one is made and laid on one card, and connected on the next. After a stop the block valves are looked at again.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'Look for kept air on the other side of the actuator too, on a cylinder at its other end; soap each tube of a cylinder with its end on air. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
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
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back, and before circuits are switched on again. Eye protection on where a tube is blown through.',
    },
  ],
  ...airOffFrame({
    airOn: [{ id: 'found', title: 'As found' }],
    airOff: { id: 'work', title: 'Tube' },
    proof: 'Proof',
  }),
  takesOver: { bypassed: bypassedAt('takenOver') },
  steps: {
    ...takeForStroke({
      title: 'Get ready for the tubing of {tag}',
      how: 'Signal {signalLow} to {signalHigh}; supply {supplyWantedLow} to {supplyWantedHigh}, {supplyWantedBecause}.',
      bring: BRING,
      next: 'tubesFound',
    }),
    ...takeOverOnBypass({ what: 'its tubing', bring: BRING }),
    tubesFound: soapTubes({
      phase: 'found',
      title: 'Soap and follow every tube, as found',
      ways: {
        leaks: { to: 'airKnown' },
        crushed: { to: 'airKnown' },
        crossed: { to: 'airKnown' },
        sound: { to: 'tubesSound' },
      },
    }),
    tubesSound: {
      kind: 'question',
      phase: 'found',
      title: 'The tubes are sound',
      how: 'Air that is lost all the same goes through the diaphragm or the relay. A tube may be plugged inside where it looks right: slow both ways.',
      onCylinder: {
        how: 'Air that is lost all the same goes past the seals or through the relay. A tube may be plugged inside where it looks right: slow both ways.',
      },
      choices: {
        leave: { label: 'Not the tubes: stroke it and give it back', to: 'strokeLeft' },
        soap: {
          label: 'Stroke it and give it back; soap tests of actuator and body come next',
          to: 'strokeLeft',
          comesNext: 'soap-tests',
        },
        again: { label: 'Soap again, with full signal on', to: 'tubesFound' },
        open: { label: 'One is plugged: air off', to: 'airKnown' },
      },
      makeSafe: halt,
    },
    ...airAway({ next: 'tubeOff' }),
    tubeOff: {
      kind: 'reading',
      phase: 'work',
      title: 'Take the bad tube off, or the two that are exchanged',
      how: 'One at a time, its ends and ports marked alike: that is how none gets crossed. Exchanged ones get the mark of the port where they belong.',
      action: 'breakSignalLine',
      caution: {
        word: 'caution',
        hazard: 'A tube may keep air between two shut ends.',
        consequence: 'Its end whips and cuts.',
        avoid: 'The joint eased until it hisses, and taken off once it is silent.',
      },
      do: [
        'Mark both ends and both ports.',
        'Loosen one joint with two spanners.',
        'Take the tube off.',
        'Cap the open ports.',
      ],
      asks: [yesNo('tubeEndsMarked', 'Marked, off, the ports capped')],
      judge: { rule: 'allYes', with: { fields: 'tubeEndsMarked' } },
      ways: {
        yes: { to: 'tubeNew', sets: { controllerLine: 'capped', ...HANDS } },
        no: { to: 'tubeStays', sets: { controllerLine: 'capped', ...HANDS } },
      },
      makeSafe: shut,
    },
    tubeStays: {
      kind: 'question',
      phase: 'work',
      title: 'The tube does not come off, or a port is open',
      how: 'A nut that gives no way is held at its fitting, not at the positioner: a port torn out of the housing costs a positioner.',
      choices: {
        again: { label: 'Freed, a cap is here: once more', to: 'tubeOff' },
        back: { label: 'It stays on until parts come: bring the air back', to: 'lineLook', reason: true },
      },
      makeSafe: shut,
    },
    tubeNew: {
      kind: 'reading',
      phase: 'work',
      title: 'Make the new tube and lay it',
      how: 'Bent without a flat, clear of hot pipe, its ends meeting the ports without force. Ferrules of one make only; an old ferrule goes on with its own tube or not at all. Exchanged or only plugged: the old tube, blown through.',
      action: 'workOnAirParts',
      caution: BLOWN_CLEAR,
      do: [
        'Cut the tube square.',
        'Remove burr and chips from its ends.',
        'Let clean dry air blow through it.',
        'Lay it in its clips, marks on marks.',
      ],
      asks: [yesNo('tubeRight', 'Whole, clean inside, clipped, marks on marks')],
      judge: { rule: 'allYes', with: { fields: 'tubeRight' } },
      ways: { yes: { to: 'lineZero', sets: HANDS }, no: { to: 'tubeNotRight', sets: HANDS } },
      makeSafe: shut,
    },
    tubeNotRight: {
      kind: 'question',
      phase: 'work',
      title: 'The tube is not right yet',
      how: 'A tube that is pulled to its port cracks at the ferrule.',
      choices: {
        again: { label: 'Make it again', to: 'tubeNew' },
        leave: { label: 'Parts are missing: the old one goes back as it was', to: 'lineZero', reason: true },
      },
      makeSafe: shut,
    },
    ...airOnAgain({ next: 'tubesLeft' }),
    tubesLeft: soapTubes({
      phase: 'proof',
      title: 'Soap and follow every tube, as left',
      ways: {
        sound: { to: 'strokeLeft' },
        leaks: { to: 'tubesStill' },
        crushed: { to: 'tubesStill' },
        crossed: { to: 'tubesStill' },
      },
    }),
    tubesStill: {
      kind: 'question',
      phase: 'proof',
      title: 'A tube is still not right',
      how: 'No joint is tightened under air: a ferrule that lets go throws its tube.',
      choices: {
        off: { label: 'Shut the air off and put it right', to: 'airKnown' },
        again: { label: 'It was old soap: look again', to: 'tubesLeft' },
        leave: { label: 'A weep that is left; parts are ordered', to: 'strokeLeft', reason: true },
      },
      makeSafe: halt,
    },
    ...strokeProves({ phase: 'proof', next: 'nextPerson', repair: 'airKnown', makeSafe: halt }),
    ...giveBackStroked(),
  },
});

function soapTubes<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly ways: Readonly<Record<'sound' | 'crossed' | 'crushed' | 'leaks', Way<Id>>>;
}): Step<Id | 'haltStroke'> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: step.title,
    how: 'At {signalHigh}, then at {signalLow}, so that each tube has its air on once. From the cock to the actuator: supply, signal, output. A small leak takes a while to blow its bubble.',
    onCylinder: {
      how: 'At {signalHigh}, then at {signalLow}: the tube to each end has air at one of them only. From the cock to the cylinder: supply, signal, output. A small leak takes a while to blow its bubble.',
    },
    action: 'strokeByOwnAir',
    caution: STEM_MOVES,
    do: [
      'Have the signal set to {signalHigh}.',
      'Put soap on each joint, hands out of the yoke.',
      'Watch each joint for a while.',
      'Have the signal set to {signalLow}.',
      'Watch each joint again.',
    ],
    asks: [
      {
        name: 'tubeAir',
        label: 'Bubbles or a hiss',
        type: 'choice',
        choices: [
          { value: 'none', label: 'None' },
          { value: 'joint', label: 'At a joint' },
          { value: 'tube', label: 'Along a tube' },
        ],
      },
      {
        name: 'tubesRun',
        label: 'How they run, against drawing and marks',
        type: 'choice',
        choices: [
          { value: 'right', label: 'Right, whole, clear of hot pipe' },
          { value: 'crushed', label: 'One is crushed, kinked or iced' },
          { value: 'crossed', label: 'Two are exchanged' },
        ],
      },
      { name: 'tubesWhere', label: 'Where', type: 'text', optional: true },
    ],
    judge: { rule: 'tubesLook' },
    ways: step.ways,
    makeSafe: 'haltStroke',
  };
}
