import { airLimits } from '../phases/air-limits.ts';
import { airStays, bleedCase, connectCase, soapCase } from '../phases/case-air.ts';
import { CASE_BOLTS, tightenNuts } from '../phases/case-nuts.ts';
import { yesNo } from '../phases/common.ts';
import { giveBack, ISOLATE_AGAIN } from '../phases/give-back.ts';
import { ALL_ENERGIES, frontOf, isolatedControl, SAFE_AT } from '../phases/overhaul-frame.ts';
import { airAwayFor, handedTo, handsOn, isolatedAt, takeOver } from '../phases/taken-over.ts';
import { procedure } from '../vocabulary.ts';

const BRING = [
  'Bring two ring spanners for the case nuts, a torque wrench and spare case bolts.',
  'Bring a regulator that bleeds, its gauge and a second gauge.',
] as const;

/** The cheapest cure of a leaking case joint: its nuts, crosswise, with the air off; then soap. */
export const caseNuts = procedure({
  id: 'case-nuts',
  title: 'Case nuts tightened and soaped',
  energyControl: isolatedControl(
    'To cure a case joint that leaks on a spring-and-diaphragm valve, in the line or on the bench. It opens neither case nor body.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'Where the diaphragm leaks and one is at hand, the work goes on as its renewal with the locks as they hang.',
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
      change: 'Hands stay out of the yoke while the air is bled off.',
    },
    { letter: 'E', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back.',
    },
  ],
  phases: [
    { id: 'ready', title: 'Get ready' },
    { id: 'bypass', title: 'Onto the bypass' },
    { id: 'isolate', title: 'Take off line' },
    { id: 'asFound', title: 'Where it leaks' },
    { id: 'nuts', title: 'Case nuts' },
    { id: 'airAway', title: 'Air away' },
    { id: 'return', title: 'Return to service' },
  ],
  start: 'needs',
  takesOver: { isolated: isolatedAt('takenOver') },
  safe: SAFE_AT,
  steps: {
    ...frontOf({
      bring: BRING,
      next: 'holdWork',
    }),
    takenOver: takeOver({
      phase: 'isolate',
      title: 'Go on with {tag} as it stands: its case nuts',
      bring: BRING,
      next: 'holdWork',
      makeSafe: 'haltIsolating',
    }),
    holdWork: {
      kind: 'hold',
      phase: 'isolate',
      title: 'Before test air goes on the case',
      how: 'Work stops here. Each energy is shown safe by a reading. Somebody who did none of this work signs, or sends it back.',
      point: 'hold',
      criterion:
        'Each energy is absent, or shown safe by a reading inside its limit or by a vent without flow, tried twice.',
      evidence: ALL_ENERGIES,
      allows: ['connectTestAir', 'strokeByTestAir'],
      signed: { to: 'connectAir', sets: { workSignOff: 'given' } },
      sentBack: { to: 'haltIsolating' },
      makeSafe: 'haltIsolating',
    },
    connectAir: connectCase({
      phase: 'asFound',
      title: 'Connect one regulator and its gauge to the case',
      do: ['Set the regulator to zero.', 'Connect it to the case.'],
      next: 'soapFound',
      ventNow: 'ventNow',
    }),
    soapFound: soapCase({
      phase: 'asFound',
      title: 'Soap the case, as found',
      ways: {
        'case joint': { to: 'bleedForNuts' },
        tight: { to: 'tightAsFound' },
        diaphragm: { to: 'diaphragmLeaks' },
        'stem seal': { to: 'stemSealLeaks' },
        'too little air': { to: 'airNotReached' },
        'above limit': { to: 'ventFirst' },
      },
      ventNow: 'ventNow',
    }),
    airNotReached: {
      kind: 'question',
      phase: 'asFound',
      title: 'The air does not come up to {soapPressure}',
      how: 'Look first: regulator shut, supply of the rig, hose joint. What the regulator cannot hold up is a large leak; listen at the adjuster and the vent.',
      choices: {
        again: { label: 'Rig put right: soap again', to: 'soapFound' },
        diaphragm: { label: 'It blows at the adjuster or the vent', to: 'diaphragmLeaks' },
        joint: { label: 'It blows at the joint: tighten the nuts', to: 'bleedForNuts' },
      },
      makeSafe: 'ventNow',
    },
    tightAsFound: {
      kind: 'question',
      phase: 'asFound',
      title: 'The case is tight',
      how: 'What was heard may be the controller line, its fittings or the positioner: soap those once the air is back.',
      choices: {
        leave: { label: 'Nothing to tighten: give it back', to: 'airOff' },
        again: { label: 'Soap it once more', to: 'soapFound' },
        nuts: { label: 'A nut is slack all the same: tighten them', to: 'bleedForNuts' },
      },
      makeSafe: 'ventNow',
    },
    diaphragmLeaks: {
      kind: 'question',
      phase: 'asFound',
      title: 'The diaphragm leaks: nuts do not cure it',
      how: 'A split or a hole only grows. With a diaphragm at hand it is renewed now, and every lock stays where it hangs.',
      choices: {
        renew: { label: 'A diaphragm is here: bleed off and renew it', to: 'bleedForNext' },
        leave: {
          label: 'Give it back as it is, and have a diaphragm ordered',
          to: 'airOff',
          reason: true,
          comesNext: 'diaphragm-renewal',
        },
        again: { label: 'Look again: soap it once more', to: 'soapFound' },
      },
      makeSafe: 'ventNow',
    },
    stemSealLeaks: {
      kind: 'question',
      phase: 'asFound',
      title: 'The seal at the stem leaks',
      how: 'It is renewed with the case open, as the diaphragm is. A stem that is scored cuts the new one too: look at it now.',
      choices: {
        renew: { label: 'A seal is here: bleed off and open the case', to: 'bleedForNext' },
        leave: {
          label: 'Give it back as it is, and have a seal ordered',
          to: 'airOff',
          reason: true,
          comesNext: 'diaphragm-renewal',
        },
        joint: { label: 'The joint leaks as well: tighten the nuts', to: 'bleedForNuts' },
      },
      makeSafe: 'ventNow',
    },
    bleedForNuts: bleedCase({
      phase: 'nuts',
      title: 'Bleed the air off before a nut is touched',
      next: 'countBolts',
      notGone: 'nutsAirStays',
      ventNow: 'ventNow',
    }),
    nutsAirStays: airStays({ phase: 'nuts', again: 'bleedForNuts', ventNow: 'ventNow' }),
    countBolts: {
      kind: 'reading',
      phase: 'nuts',
      title: 'Look at the case bolts and count them',
      how: 'Long bolts among short ones hold the spring of some cases: they are tightened like the others, never let off.',
      why: 'A long bolt that is let off by mistake lets the spring go.',
      asks: [
        CASE_BOLTS,
        yesNo('boltsSound', 'None is missing, bent, wasted by rust or turned to its last thread'),
        yesNo('gapEven', 'The gap between the two halves is even, no bead squeezed out'),
      ],
      judge: { rule: 'allYes', with: { fields: 'boltsSound gapEven' } },
      ways: { yes: { to: 'tighten' }, no: { to: 'boltsBad' } },
      makeSafe: 'ventNow',
    },
    boltsBad: {
      kind: 'question',
      phase: 'nuts',
      title: 'A bolt is not sound, or the joint is not even',
      how: 'A missing or a broken bolt is replaced one at a time, the others left as they are, air off. A bead that is squeezed out wants a diaphragm.',
      choices: {
        replaced: { label: 'One bolt at a time replaced: look again', to: 'countBolts' },
        even: { label: 'Only the gap is uneven: tighten the wide side first', to: 'tighten' },
        opened: { label: 'It wants the case opened: as the job of the diaphragm', to: 'bleedForNext' },
        leave: {
          label: 'It wants the case opened: give it back',
          to: 'airOff',
          reason: true,
          comesNext: 'diaphragm-renewal',
        },
      },
      makeSafe: 'ventNow',
    },
    tighten: tightenNuts({
      phase: 'nuts',
      title: 'Tighten the case nuts crosswise',
      next: 'connectAgain',
      broken: 'nutsUneven',
      makeSafe: 'ventNow',
    }),
    nutsUneven: {
      kind: 'question',
      phase: 'nuts',
      title: 'The nuts do not come up evenly',
      how: 'A nut that turns without end has a stripped or a broken bolt. It is replaced by itself, the others left tight.',
      choices: {
        again: { label: 'Put right: go round again', to: 'tighten' },
        count: { label: 'Look at all bolts again', to: 'countBolts' },
        leave: { label: 'It cannot be made even: give it back', to: 'airOff', reason: true },
      },
      makeSafe: 'ventNow',
    },
    soapLeft: soapCase({
      phase: 'nuts',
      title: 'Soap the case again, as left',
      ways: {
        tight: { to: 'airOff' },
        'case joint': { to: 'jointStillLeaks' },
        diaphragm: { to: 'diaphragmLeaks' },
        'stem seal': { to: 'stemSealLeaks' },
        'too little air': { to: 'airNotReached' },
        'above limit': { to: 'ventFirst' },
      },
      ventNow: 'ventNow',
    }),
    jointStillLeaks: {
      kind: 'question',
      phase: 'nuts',
      title: 'The joint still leaks',
      how: 'Nuts at their torque that still leak: the bead of the diaphragm is hard or cut, or the flange is bent. More torque bends the flange further.',
      choices: {
        round: { label: 'They were not yet at their torque: one more round', to: 'bleedForNuts' },
        renew: { label: 'It wants a diaphragm, and one is here: bleed off and renew it', to: 'bleedForNext' },
        leave: {
          label: 'It wants a diaphragm: give it back as it is',
          to: 'airOff',
          reason: true,
          comesNext: 'diaphragm-renewal',
        },
      },
      makeSafe: 'ventNow',
    },
    ...airLimits({ connect: 'connectAgain', signAgain: 'holdWork', giveBack: 'disconnectAir' }),
    connectAgain: connectCase({
      phase: 'nuts',
      title: 'Check that one regulator and its gauge are on the case',
      do: ['Set the regulator to zero.', 'Check the joint at the case.'],
      next: 'whereOn',
      ventNow: 'ventNow',
    }),
    whereOn: {
      kind: 'question',
      phase: 'nuts',
      title: 'Where the work goes on',
      choices: {
        left: { label: 'The nuts are tight: soap the case again', to: 'soapLeft' },
        found: { label: 'Soap the case as found', to: 'soapFound' },
        nuts: { label: 'The nuts: bleed the air off first', to: 'bleedForNuts' },
      },
      makeSafe: 'ventNow',
    },
    ...airAwayFor({ phase: 'airAway', next: 'caseOpens', ventNow: 'ventNow' }),
    caseOpens: {
      kind: 'question',
      phase: 'airAway',
      title: 'Does the case get its diaphragm now?',
      how: 'Every lock stays where it hangs. Spring and case are signed for in that job, by themselves.',
      choices: {
        renew: handsOn('Go on as the job of the diaphragm', 'toDiaphragm'),
        leave: {
          label: 'Not now: give it back as it is',
          to: 'finalCheck',
          reason: true,
          comesNext: 'diaphragm-renewal',
        },
      },
      makeSafe: 'haltAirAway',
    },
    toDiaphragm: handedTo({
      phase: 'airAway',
      title: 'It goes on as the job of the diaphragm',
      procedure: 'diaphragm-renewal',
      as: 'isolated',
    }),
    ...giveBack({ done: 'done', isolateAgain: ISOLATE_AGAIN }),
    done: { kind: 'end', phase: 'return', title: 'The valve is back', closes: 'done' },
  },
});
