import { BODY_PHASES, BODY_SAFE_AT, bodyJob } from '../phases/body-job.ts';
import { airStays, bleedCase, soapCase } from '../phases/case-air.ts';
import { tightenNuts } from '../phases/case-nuts.ts';
import { closeCase, loadedHalt, openCase } from '../phases/case-open.ts';
import { yesNo } from '../phases/common.ts';
import { renewDiaphragm } from '../phases/diaphragm.ts';
import { giveBack, ISOLATE_AGAIN } from '../phases/give-back.ts';
import { hotCheck } from '../phases/hot-check.ts';
import { frontOf, isolatedControl, SAFE_AT } from '../phases/overhaul-frame.ts';
import { airAwayFor, handedTo, handsOn, isolatedAt, takeOver } from '../phases/taken-over.ts';
import { openHalt, unsignedHalt, whereOn, workHold } from '../phases/work-hold.ts';
import { procedure } from '../vocabulary.ts';

const BRING = [
  'Bring diaphragm, gaskets, packing and seals of this valve, and plug and seat where they are likely spent.',
  'Bring fine compound, bluing, cloths, wood to lay parts on, and a tool for the seat.',
  'Bring two dial indicators, a micrometer, ring spanners, a torque wrench, hook and tamper.',
  'Bring long bolts where the case holds the spring.',
  'Bring a regulator that bleeds, its gauge and a second gauge.',
  'Bring lifting gear for {actuatorMass} and for the bonnet, a light, and caps for the ends.',
  'Bring seal rings and their sleeve where the plug is balanced, and the lubricants of the manual for threads and rings.',
  'Bring a clamp for the plug stem and penetrating oil.',
] as const;

/** A diaphragm valve taken apart, actuator and body, renewed where it is worn, and proved as left. */
export const valveOverhaul = procedure({
  id: 'valve-overhaul',
  title: 'Overhaul of actuator and body',
  energyControl: isolatedControl(
    'To overhaul a spring-and-diaphragm valve, actuator and body, in the line or on the bench. It opens case, gland and bonnet.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-25',
      change:
        'A cover that follows its nuts is run down again and its spring freed further; long bolts that do not stand sound stop the work. A no to marks made, parts laid down or trim counted stops the work there.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'Before the first signature somebody else reads both drains again. The last round of the bonnet nuts is shown to a witness, who has a quarter of an hour to come; an engineer may waive it.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'It may go on where another job left the valve locked out. Plate and diaphragm are taken out with the stem held; the cage is marked and a screwed seat soaked first. After the stroke the work may go on as leak test, diaphragm or spring change with the locks as they hang. The port of the case stays open while the spring is freed.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change:
        'Where the case holds the spring, the connector is released only on held air that has taken its load; a stem that no air moves keeps its connector on, and its case is let off first. Before the stroke as left the new packing is stroked until its rings have settled, and the gland looked at and loaded again without air. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop. The seal rings of a balanced plug come off first, and new ones go on before the trim goes in. A clamp for the plug stem and penetrating oil are at hand.',
    },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'A connector released on held air is cracked first and watched; the plug goes down before the air is bled. Lock nuts come off the stem first, and its thread is taped before rings go over it. Hands stay out of the yoke while the air is bled off.',
    },
    {
      letter: 'G',
      date: '2026-11-26',
      change: 'Where the case holds the spring, no card offers an adjuster.',
    },
    {
      letter: 'H',
      date: '2026-11-26',
      change:
        'Plain cards that are done in one go may be entered together, each a line of its own; what is not as it should be is answered on its own card. Long bolts have a warning of their own, and the stem is warned of as new rings are settled. Cards that gave no reason say why they stand open.',
    },
    {
      letter: 'J',
      date: '2026-11-26',
      change:
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back. Hang a heavy bonnet before its last nuts come off, and until they are on; the card that sets it on is entered by itself.',
    },
  ],
  phases: [
    { id: 'ready', title: 'Get ready' },
    { id: 'bypass', title: 'Onto the bypass' },
    { id: 'isolate', title: 'Take off line' },
    ...BODY_PHASES.slice(0, 2),
    { id: 'case', title: 'Inside the case' },
    ...BODY_PHASES.slice(2),
    { id: 'airAway', title: 'Air away' },
    { id: 'return', title: 'Return to service' },
    { id: 'hot', title: 'Next shift' },
  ],
  start: 'needs',
  takesOver: { isolated: isolatedAt('takenOver') },
  safe: [...SAFE_AT, ...BODY_SAFE_AT, 'haltCase', 'haltLoaded', 'haltShut', 'haltFollows', 'unsignedCase'],
  steps: {
    ...frontOf({
      bring: BRING,
      next: 'markFirst',
    }),
    takenOver: takeOver({
      phase: 'isolate',
      title: 'Go on with {tag} as it stands: actuator and body',
      bring: BRING,
      next: 'markFirst',
      makeSafe: 'haltIsolating',
    }),
    ...bodyJob({
      actuatorLies: 'caseLook',
      firstAir: 'soapLeft',
      where: { case: ['The case: what holds its spring, then open it', 'caseLook'] },
      whereOnAir: { soap: ['Soap the case that was open', 'soapLeft'] },
    }),
    caseLook: {
      kind: 'reading',
      phase: 'case',
      title: 'Look once more what holds this spring, and count the bolts',
      how: 'An adjuster that was backed off lets its case be opened. Long bolts among short ones hold the spring themselves: they come last, evenly.',
      why: 'Bolts taken in the wrong order let a loaded spring throw the cover.',
      asks: [
        {
          name: 'caseBolts',
          label: 'Case bolts, counted',
          type: 'choice',
          choices: ['6', '8', '10', '12', '16', '20', '24', 'other'].map((value) => ({
            value,
            label: value === 'other' ? 'another count' : value,
          })),
        },
        yesNo('holderAsSheet', 'It is held as the sheet has it'),
      ],
      judge: { rule: 'allYes', with: { fields: 'holderAsSheet' } },
      ways: {
        yes: { to: { by: 'springHeldBy', ways: { adjuster: 'loosenCase', case: 'shortBolts' } } },
        no: { to: 'holderOther' },
      },
      makeSafe: 'haltOpen',
    },
    holderOther: {
      kind: 'question',
      phase: 'case',
      title: 'The spring is held another way than the sheet has it',
      how: 'The order in which a case is opened hangs on it: the case stays shut until the sheet is put right.',
      choices: {
        shut: { label: 'The case stays shut; go on with the body', to: 'bonnetCrack', reason: true },
        again: { label: 'Look again', to: 'caseLook' },
      },
      makeSafe: 'haltOpen',
    },
    ...openCase({
      phase: 'case',
      next: 'diaphragmOut',
      makeSafe: 'haltCase',
      stopLoaded: 'haltLoaded',
      notOpened: 'haltOpen',
    }),
    ...loadedHalt({ phase: 'case', next: 'haltOpen', goOn: 'longBolts' }),
    ...renewDiaphragm({ phase: 'case', next: 'closeCase', makeSafe: 'haltCase' }),
    ...closeCase({
      phase: 'case',
      next: 'bonnetCrack',
      makeSafe: 'haltCase',
      stopLoaded: 'haltLoaded',
      letOff: 'longBolts',
    }),
    haltCase: openHalt({
      phase: 'case',
      title: 'Stopped: the case is open, its spring is free, locks stay on',
      goOn: 'whereCase',
      signAgain: 'holdCase',
      self: 'haltCase',
    }),
    holdCase: workHold({
      phase: 'case',
      title: 'Before work at the open case goes on',
      allows: [
        'loosenCaseBolts',
        'loosenLongCaseBolts',
        'workInCase',
        'breakBonnetJoint',
        'removePacking',
        'removeTrim',
        'workInBody',
        'connectTestAir',
        'strokeByTestAir',
        'joinStemConnector',
        'windAdjusterOnTestAir',
        'turnPlugStem',
      ],
      next: 'whereCase',
      halt: 'unsignedCase',
    }),
    unsignedCase: unsignedHalt({ phase: 'case', hold: 'holdCase', self: 'unsignedCase' }),
    whereCase: whereOn({
      phase: 'case',
      choices: {
        cover: ['The cover is still on: take it off', 'coverOff'],
        out: ['Plate and diaphragm: take them out', 'diaphragmOut'],
        look: ['The diaphragm is out: look at it', 'diaphragmLook'],
        parts: ['Everything beside it', 'caseParts'],
        fit: ['The new one goes in', 'diaphragmNew'],
        close: ['Everything is in: bring the case together', 'closeCase'],
      },
      makeSafe: 'haltCase',
    }),
    soapLeft: soapCase({
      phase: 'together',
      title: 'Soap the case that was open',
      ways: {
        tight: { to: 'benchFound' },
        'case joint': { to: 'bleedForNuts' },
        diaphragm: { to: 'stillLeaks' },
        'stem seal': { to: 'stillLeaks' },
        'too little air': { to: 'stillLeaks' },
        'above limit': { to: 'ventFirst' },
      },
      ventNow: 'ventNow',
    }),
    stillLeaks: {
      kind: 'question',
      phase: 'together',
      title: 'Air still comes through, or does not come up',
      how: 'Rig and hose first. Then: rim folded, plate nut slack, the wrong side to the air, or the seal at the stem. The stems are joined and the stroke is read first; then the case is opened again as its own job.',
      choices: {
        again: { label: 'Put right at the rig: soap again', to: 'soapLeft' },
        nuts: { label: 'It is only the joint: its nuts', to: 'bleedForNuts' },
        on: { label: 'Go on; its diaphragm is done again after the stroke', to: 'benchFound', reason: true },
      },
      makeSafe: 'ventNow',
    },
    bleedForNuts: bleedCase({
      phase: 'together',
      title: 'Bleed the air off before a nut is touched',
      next: 'nutsAgain',
      notGone: 'nutsAirStays',
      ventNow: 'ventNow',
    }),
    nutsAirStays: airStays({ phase: 'together', again: 'bleedForNuts', ventNow: 'ventNow' }),
    nutsAgain: tightenNuts({
      phase: 'together',
      title: 'Tighten the case nuts once more, crosswise',
      next: 'connectAgain',
      broken: 'nutsUneven',
      makeSafe: 'ventNow',
    }),
    nutsUneven: {
      kind: 'question',
      phase: 'together',
      title: 'The nuts do not come up evenly',
      how: 'A nut that turns without end has a stripped bolt: it is replaced by itself, the others left tight.',
      choices: {
        again: { label: 'Put right: go round again', to: 'nutsAgain' },
        on: {
          label: 'It cannot be made even: soap shows how much it leaks',
          to: 'connectAgain',
          reason: true,
        },
      },
      makeSafe: 'ventNow',
    },
    ...airAwayFor({ phase: 'airAway', next: 'whatNext', ventNow: 'ventNow' }),
    whatNext: {
      kind: 'question',
      phase: 'airAway',
      title: 'What comes before it goes back?',
      how: '{seatLoadNeed} on the seat is wanted; a leak test shows what it lets through. Every lock stays where it hangs.',
      why: 'With the locks still on, one more job costs no second isolation.',
      choices: {
        back: { label: 'Nothing more: it goes back', to: 'finalCheck' },
        leak: handsOn('Its seat is tested for leak: go on as that test', 'toLeakTest'),
        diaphragm: handsOn('The case still leaks: go on as the job of the diaphragm', 'toDiaphragm'),
        spring: handsOn('The span is another than the sheet has: go on as the spring change', 'toSpring'),
      },
      makeSafe: 'haltAirAway',
    },
    toLeakTest: handedTo({
      phase: 'airAway',
      title: 'It goes on as the seat leakage test',
      procedure: 'seat-leak-test',
      as: 'isolated',
    }),
    toDiaphragm: handedTo({
      phase: 'airAway',
      title: 'It goes on as the job of the diaphragm',
      procedure: 'diaphragm-renewal',
      as: 'isolated',
    }),
    toSpring: handedTo({
      phase: 'airAway',
      title: 'It goes on as the spring change',
      procedure: 'spring-change',
      as: 'isolated',
    }),
    ...giveBack({ done: 'done', inLine: 'hotCheck', isolateAgain: ISOLATE_AGAIN }),
    ...hotCheck({ done: 'done' }),
    done: { kind: 'end', phase: 'return', title: 'The valve is back', closes: 'done' },
  },
});
