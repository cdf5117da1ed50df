import { AIR_BACK_PHASE, AIR_OFF_PHASE, airAway, airOffControl, airOnAgain } from '../phases/air-off.ts';
import { yesNo } from '../phases/common.ts';
import { strokeProves } from '../phases/live-positioner.ts';
import {
  giveBackStroked,
  OWN_AIR_FRONT,
  OWN_AIR_RETURN,
  OWN_AIR_SAFE_AT,
  takeForStroke,
} from '../phases/own-air.ts';
import type { Step, Way } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const halt = 'haltStroke' as const;
const shut = 'haltIsolating' as const;
const HANDS = { clear: 'not looked at' } as const;

/** Tubes of a valve that leak, are crushed or crossed: soaped with air on, renewed with it off. */
export const tubing = procedure({
  id: 'tubing',
  title: 'Tubing mended',
  energyControl: airOffControl(
    'To find and mend a tube that leaks, is crushed or goes to the wrong port. Soap with the air on; no joint is touched before the air is off.',
  ),
  revisions: [{ letter: 'A', date: '2026-11-25', change: 'First issue.' }],
  phases: [
    ...OWN_AIR_FRONT,
    { id: 'found', title: 'As found' },
    AIR_OFF_PHASE,
    { id: 'work', title: 'Tube' },
    AIR_BACK_PHASE,
    { id: 'proof', title: 'Proof' },
    OWN_AIR_RETURN,
  ],
  start: 'needs',
  safe: [...OWN_AIR_SAFE_AT, shut],
  steps: {
    ...takeForStroke({
      title: 'Get ready for the tubing of {tag}',
      how: 'Signal {signalLow} to {signalHigh}; supply {supplyWantedLow} to {supplyWantedHigh}, {supplyWantedBecause}.',
      bring: [
        'Bring tube of the same size and stuff, fittings of the same make, a cutter and a deburrer.',
        'Bring soap, two spanners for the joints, caps, and marks for the tubes.',
        'Bring your locks and tags, a supply gauge, a signal gauge and a travel indicator.',
      ],
      next: 'tubesFound',
    }),
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
      how: 'Air that is lost all the same goes through diaphragm, seals or relay. A tube may be plugged inside where it looks right: slow both ways.',
      choices: {
        leave: { label: 'Not the tubes: stroke it and give it back', to: 'strokeLeft' },
        again: { label: 'Soap again, with full signal on', to: 'tubesFound' },
        open: { label: 'One is plugged: air off', to: 'airKnown' },
      },
      makeSafe: halt,
    },
    ...airAway({ next: 'tubeOff' }),
    tubeOff: {
      kind: 'reading',
      phase: 'work',
      title: 'Take the bad tube off',
      how: 'One at a time, its ends and ports marked alike: that is how none gets crossed.',
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
      asks: [yesNo('tubeEndsMarked', 'Marked, off and capped')],
      judge: { rule: 'allYes', with: { fields: 'tubeEndsMarked' } },
      ways: {
        yes: { to: 'tubeNew', sets: { controllerLine: 'capped', ...HANDS } },
        no: { to: shut, sets: { controllerLine: 'capped', ...HANDS } },
      },
      makeSafe: shut,
    },
    tubeNew: {
      kind: 'reading',
      phase: 'work',
      title: 'Make and fit the new tube',
      how: 'Cut square, deburred, blown through, bent without a flat, held by clips, clear of hot pipe. Ferrules of one make only; an old ferrule goes on with its own tube or not at all.',
      action: 'workOnAirParts',
      do: [
        'Let clean dry air through the tube.',
        'Fit it to its marks.',
        'Tighten the joints by their maker’s turns.',
      ],
      asks: [yesNo('tubeRight', 'Whole, clipped, marks on marks')],
      judge: { rule: 'allYes', with: { fields: 'tubeRight' } },
      ways: { yes: { to: 'lineZero', sets: HANDS }, no: { to: 'tubeNotRight', sets: HANDS } },
      makeSafe: shut,
    },
    tubeNotRight: {
      kind: 'question',
      phase: 'work',
      title: 'The tube is not right yet',
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
      how: 'No joint is tightened under air.',
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
    how: 'With {signalHigh} on. From the cock to the actuator: supply, signal, output. Wait at each joint: a small leak takes a while to blow its bubble.',
    action: 'readGauge',
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
