import { CASE_PHASES, CASE_SAFE_AT, caseJob } from '../phases/case-job.ts';
import { changeSpring } from '../phases/change-spring.ts';
import { giveBack, ISOLATE_AGAIN } from '../phases/give-back.ts';
import { frontOf, isolatedControl, SAFE_AT } from '../phases/overhaul-frame.ts';
import { caseOpenAt, handedTo, isolatedAt, takeOver } from '../phases/taken-over.ts';
import { procedure } from '../vocabulary.ts';

const BRING = [
  'Bring the new spring with its paper: its rate is read before the case is opened.',
  'Bring the new valve sheet where the range changes: this job judges by the sheet that it was opened on.',
  'Bring a diaphragm in case the old one does not live through it.',
  'Bring two ring spanners, a torque wrench, and long bolts where the case holds the spring.',
  'Bring a regulator that bleeds, its gauge, a second gauge and a dial indicator.',
] as const;

/** The spring changed, for its own sake or for another range: foretold by the force balance, proved by the stroke. */
export const springChange = procedure({
  id: 'spring-change',
  title: 'Spring or range changed',
  energyControl: isolatedControl(
    'To change the spring of a spring-and-diaphragm actuator, in the line or on the bench. It opens the case; the body stays shut.',
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
        'It may go on where another job left the valve locked out, or its case open. A diaphragm that is spent is renewed with the case open as it is.',
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
      change: 'Hands stay out of the yoke while the air is bled off.',
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
      title: 'Go on with {tag} as it stands: its spring',
      bring: BRING,
      next: 'markCase',
      makeSafe: 'haltIsolating',
    }),
    takenOpen: takeOver({
      phase: 'case',
      title: 'Go on with {tag} as it stands, its cover off: its spring',
      bring: BRING,
      next: 'holdCase',
      makeSafe: 'unsignedCase',
    }),
    ...caseJob({
      inside: 'springOld',
      windBack: 'windNew',
      whereInside: {
        old: ['The old spring: look at it', 'springOld'],
        rate: ['The new spring: read its rate', 'springNew'],
        fit: ['The spring goes in', 'springIn'],
      },
    }),
    ...changeSpring({
      phase: 'inside',
      next: 'closeCase',
      connect: 'connectLeft',
      makeSafe: 'haltCase',
      haltShut: 'haltShut',
      toDiaphragm: 'toDiaphragm',
      stopLoaded: 'ventNow',
    }),
    toDiaphragm: handedTo({
      phase: 'inside',
      title: 'It goes on as the job of the diaphragm',
      procedure: 'diaphragm-renewal',
      as: 'case open',
    }),
    ...giveBack({ done: 'done', isolateAgain: ISOLATE_AGAIN }),
    done: { kind: 'end', phase: 'return', title: 'The valve is back', closes: 'done' },
  },
});
