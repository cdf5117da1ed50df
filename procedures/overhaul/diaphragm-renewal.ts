import { CASE_PHASES, CASE_SAFE_AT, caseJob } from '../phases/case-job.ts';
import { renewDiaphragm } from '../phases/diaphragm.ts';
import { springBack } from '../phases/free-spring.ts';
import { giveBack } from '../phases/give-back.ts';
import { frontOf, isolatedControl, SAFE_AT } from '../phases/overhaul-frame.ts';
import { procedure } from '../vocabulary.ts';

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
  safe: [...SAFE_AT, ...CASE_SAFE_AT],
  steps: {
    ...frontOf({
      bring: [
        'Bring the diaphragm of this actuator, seal and bolts, by their part numbers.',
        'Bring two ring spanners, a torque wrench, and long bolts where the case holds the spring.',
        'Bring a regulator that bleeds, its gauge, a second gauge and a dial indicator.',
      ],
      next: 'markCase',
    }),
    ...caseJob({
      inside: 'diaphragmLook',
      windBack: 'springBack',
      whereInside: {
        look: ['The diaphragm is out: look at it', 'diaphragmLook'],
        parts: ['Look at everything beside it', 'caseParts'],
        fit: ['The new one goes in', 'diaphragmNew'],
      },
    }),
    ...renewDiaphragm({ phase: 'inside', next: 'closeCase', makeSafe: 'haltCase' }),
    ...springBack({ phase: 'inside', next: 'connectLeft', makeSafe: 'haltShut', stopLoaded: 'ventNow' }),
    ...giveBack({ done: 'done', isolateAgain: 'shutInlet' }),
    done: { kind: 'end', phase: 'return', title: 'The valve is back', closes: 'done' },
  },
});
