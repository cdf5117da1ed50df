import { BODY_PHASES, BODY_SAFE_AT, bodyJob } from '../phases/body-job.ts';
import { giveBack, ISOLATE_AGAIN } from '../phases/give-back.ts';
import { hotCheck } from '../phases/hot-check.ts';
import { frontOf, isolatedControl, SAFE_AT } from '../phases/overhaul-frame.ts';
import { airAwayFor, glandOpenAt, handedTo, handsOn, isolatedAt, takeOver } from '../phases/taken-over.ts';
import { procedure } from '../vocabulary.ts';

const BRING = [
  'Bring gaskets and packing of this valve, and plug and seat where they are likely spent.',
  'Bring fine compound, bluing, cloths, wood to lay parts on, and a tool for the seat.',
  'Bring two dial indicators, a micrometer, a torque wrench, hook and tamper.',
  'Bring a regulator that bleeds, its gauge and a second gauge.',
  'Bring lifting gear for {actuatorMass} and for the bonnet, a light, and caps for the ends.',
  'Bring seal rings and their sleeve where the plug is balanced, and the lubricants of the manual for threads and rings.',
  'Bring a clamp for the plug stem and penetrating oil.',
] as const;

/** Seat and plug of an isolated valve: the actuator comes off shut, the body is opened, lapped, blued and repacked. */
export const seatAndPlug = procedure({
  id: 'seat-and-plug',
  title: 'Seat and plug',
  energyControl: isolatedControl(
    'To work on seat, plug and packing of a spring-and-diaphragm valve, in the line or on the bench. It opens the body; the case stays shut, its spring in it.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-25',
      change: 'A no to marks made, parts laid down or trim counted stops the work there.',
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
        'It may go on where another job left the valve locked out, or its gland apart. The cage is marked and a screwed seat soaked first; after the stroke the seat may be tested for leak with the locks as they hang. The port of the case stays open while the spring is freed.',
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
        'Plain cards that are done in one go may be entered together, each a line of its own; what is not as it should be is answered on its own card. The stem is warned of as new rings are settled. Cards that gave no reason say why they stand open.',
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
    ...BODY_PHASES,
    { id: 'airAway', title: 'Air away' },
    { id: 'return', title: 'Return to service' },
    { id: 'hot', title: 'Next shift' },
  ],
  start: 'needs',
  takesOver: { isolated: isolatedAt('takenOver'), 'gland open': glandOpenAt('takenOpen') },
  safe: [...SAFE_AT, ...BODY_SAFE_AT],
  steps: {
    ...frontOf({
      bring: BRING,
      next: 'markFirst',
    }),
    takenOver: takeOver({
      phase: 'isolate',
      title: 'Go on with {tag} as it stands: its seat and plug',
      bring: BRING,
      next: 'markFirst',
      makeSafe: 'haltIsolating',
    }),
    takenOpen: takeOver({
      phase: 'body',
      title: 'Go on with {tag} as it stands, its gland apart: its seat and plug',
      bring: BRING,
      next: 'holdOpen',
      makeSafe: 'unsignedOpen',
    }),
    ...bodyJob({ actuatorLies: 'bonnetCrack', firstAir: 'benchFound' }),
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
