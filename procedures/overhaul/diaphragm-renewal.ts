import { CASE_PHASES, CASE_SAFE_AT, caseJob } from '../phases/case-job.ts';
import { renewDiaphragm } from '../phases/diaphragm.ts';
import { springBack } from '../phases/free-spring.ts';
import { giveBack, ISOLATE_AGAIN } from '../phases/give-back.ts';
import { frontOf, isolatedControl, SAFE_AT } from '../phases/overhaul-frame.ts';
import { caseOpenAt, handedTo, isolatedAt, takeOver } from '../phases/taken-over.ts';
import { procedure } from '../vocabulary.ts';

const BRING = [
  'Bring the diaphragm of this actuator, seal and bolts, by their part numbers.',
  'Bring two ring spanners, a torque wrench, and long bolts where the case holds the spring.',
  'Bring a regulator that bleeds, its gauge, a second gauge and a dial indicator.',
  'Bring a marker, a light, cloths, and a spanner for the flats of the stem.',
] as const;

/** The diaphragm renewed: the spring freed before the first bolt, or let off by the long bolts last; soap and bench set. */
export const diaphragmRenewal = procedure({
  id: 'diaphragm-renewal',
  title: 'Diaphragm renewed',
  energyControl: isolatedControl(
    'To renew the diaphragm of a spring-and-diaphragm actuator, in the line or on the bench. It opens the case; the body stays shut.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-25',
      change:
        'A cover that follows its nuts is run down again and its spring freed further; long bolts that do not stand sound stop the work.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'It may go on where another job left the valve locked out, or its case open. Plate and diaphragm are taken out with the stem held. A broken spring is changed with the case open as it is.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'Look for kept air on the other side of the actuator too, on a cylinder at its other end. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change:
        'Marker, light, cloths and a spanner for the flats of the stem are at hand. Hands stay out of the yoke while the air is bled off.',
    },
    {
      letter: 'F',
      date: '2026-11-26',
      change: 'Where the case holds the spring, no card offers an adjuster.',
    },
    {
      letter: 'G',
      date: '2026-11-26',
      change:
        'Plain cards that are done in one go may be entered together, each a line of its own; what is not as it should be is answered on its own card. Long bolts have a warning of their own: the cover is meant to follow, and every nut stays on. Cards that gave no reason say why they stand open.',
    },
    {
      letter: 'H',
      date: '2026-11-26',
      change:
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back.',
    },
  ],
  phases: [
    { id: 'ready', title: 'Get ready' },
    { id: 'bypass', title: 'Onto the bypass' },
    { id: 'isolate', title: 'Take off line' },
    ...CASE_PHASES,
    { id: 'airAway', title: 'Air away' },
    { id: 'return', title: 'Return to service' },
  ],
  start: 'needs',
  takesOver: { isolated: isolatedAt('takenOver'), 'case open': caseOpenAt('takenOpen') },
  safe: [...SAFE_AT, ...CASE_SAFE_AT],
  steps: {
    ...frontOf({
      bring: BRING,
      next: 'markCase',
    }),
    takenOver: takeOver({
      phase: 'isolate',
      title: 'Go on with {tag} as it stands: its diaphragm',
      bring: BRING,
      next: 'markCase',
      makeSafe: 'haltIsolating',
    }),
    takenOpen: takeOver({
      phase: 'case',
      title: 'Go on with {tag} as it stands, its cover off: its diaphragm',
      bring: BRING,
      next: 'holdCase',
      makeSafe: 'unsignedCase',
    }),
    ...caseJob({
      inside: 'diaphragmOut',
      windBack: 'springBack',
      whereInside: {
        out: ['Plate and diaphragm: take them out', 'diaphragmOut'],
        look: ['The diaphragm is out: look at it', 'diaphragmLook'],
        parts: ['Look at everything beside it', 'caseParts'],
        fit: ['The new one goes in', 'diaphragmNew'],
      },
    }),
    ...renewDiaphragm({ phase: 'inside', next: 'closeCase', makeSafe: 'haltCase', toSpring: 'toSpring' }),
    ...springBack({ phase: 'inside', next: 'connectLeft', makeSafe: 'haltShut', stopLoaded: 'ventNow' }),
    toSpring: handedTo({
      phase: 'inside',
      title: 'It goes on as the job of the spring',
      procedure: 'spring-change',
      as: 'case open',
    }),
    ...giveBack({ done: 'done', isolateAgain: ISOLATE_AGAIN }),
    done: { kind: 'end', phase: 'return', title: 'The valve is back', closes: 'done' },
  },
});
