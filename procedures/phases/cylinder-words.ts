/** What the shared cards say on a cylinder without a spring: tie rods, two tubes, two open ports, no case and no bench set. */
import type { Words } from './reword.ts';

const SHUT = 'Cylinder, bonnet and gland shut, every tie rod and bolt in and tight';
const HOW_AIR_STAYS =
  'A regulator that does not bleed keeps air in the cylinder. Crack the joint at the cylinder and watch it twice.';

/** Getting ready and isolating. */
export const CYLINDER_FRONT = {
  needs: {
    how: 'A cylinder without a spring: without air {tag} {failPosition}, unless weight or flow moves the stem.',
    why: 'Nothing but air holds it: each end counts by itself.',
    shows: ['energySupply', 'energyWeight', 'testAirLimit', 'soapPressure', 'travel'],
  },
  rigGauges: { how: 'Rig in your hand, connected to nothing. Set {soapPressure}.' },
  rigFalls: { how: 'Soap every joint of hose and gauge. A leaking rig looks like leaking seals.' },
  breakSignalLine: {
    title: 'Take both tubes off the cylinder and cap them',
    how: 'Marks first: crossed tubes drive the valve the wrong way. Loosen each joint slowly and let it bleed. At most {signalSafeLimit} left at either end.',
    do: [
      'Mark both tubes and their ports.',
      'Loosen the joint at the top.',
      'Loosen the joint at the bottom.',
      'Cap both tubes.',
      'Fit the signal gauge to the top of the cylinder.',
    ],
    labels: { lineCapped: 'Both tubes marked, off and capped' },
  },
  signalNotShown: { title: 'The air in the cylinder is not shown gone' },
  benchRecord: {
    how: 'No pipe, no supply, no tube; both ports of the cylinder are open to the air.',
    labels: {
      noLines: 'No supply, no second feed and no tube from a positioner is connected',
      portOpen: 'Both ports of the cylinder are open, nothing hisses, the stem rests',
    },
  },
  springLook: {
    title: 'Look at cylinder, bonnet and gland',
    how: 'Write the exposed stem thread as found: the next person wants it.',
    why: 'Test air goes on it next: a tie rod that is slack lets the cap go.',
    labels: { caseTight: 'All shut, every tie rod and bolt in and tight' },
  },
  springNotShut: {
    title: 'Cylinder, bonnet or gland is not shut and tight',
    how: 'A slack tie rod lets its cap go under air. Rods and bolts are tightened evenly, crosswise.',
  },
} as const satisfies Readonly<Record<string, Words>>;

/** Test air that passes its limit, and where work under it stops. */
export const CYLINDER_LIMITS = {
  ventFirst: {
    title: 'Vent the cylinder now, and read zero',
    how: 'At most {testAirLimit} may stand in this cylinder: {testAirBecause}.',
    caution: {
      hazard: 'More air is in the cylinder than it may have.',
      consequence: 'An end cap that lets go kills.',
      avoid: 'Shut the regulator and vent; stay away from both caps until the gauge reads zero.',
    },
  },
  ventNow: { how: 'Shown by the gauge, or by the joint at the cylinder cracked and watched twice.' },
  haltAir: { title: 'Stopped: no air in the cylinder, locks stay on' },
} as const satisfies Readonly<Record<string, Words>>;

export const CYLINDER_AIR_STAYS = {
  title: 'The air in the cylinder is not shown gone',
  how: HOW_AIR_STAYS,
} as const satisfies Words;

/** The way back. */
export const CYLINDER_BACK = {
  airNotGone: CYLINDER_AIR_STAYS,
  disconnectAir: {
    title: 'Take the test air off the cylinder',
    do: ['Disconnect the test air.', 'Take the gauge off.'],
  },
  finalCheck: { labels: { caseStillTight: SHUT } },
  nextPerson: { labels: { nextNotes: 'Seals and parts used, where the points are, what to watch' } },
  signBench: {
    criterion:
      'No air in the cylinder, every tie rod in and tight, and what was found and left is in the record.',
  },
  backCheck: {
    title: 'Look at the tubes of the cylinder',
    choices: { off: 'They are off and capped', connected: 'They were never taken off' },
  },
  zeroBeforeBack: {
    title: 'Show that no air is in the cylinder',
    labels: { flowFirst: 'Both ports, first look', flowAgain: 'Both ports, second look' },
  },
  lookBeforeBack: {
    title: 'Look at the cylinder before the air comes back',
    labels: { caseStillTight: SHUT },
  },
  haltReturn: { choices: { goOn: 'Go on: look at the tubes' } },
  reconnect: {
    title: 'Connect both tubes to the cylinder again',
    how: 'Each to the end that it was marked for: crossed tubes drive the valve the wrong way.',
    do: ['Take the caps off.', 'Connect the tubes to their marks.', 'Tighten the joints.'],
    labels: { lineBack: 'Both tubes on, each to its own end, joints tight', caseStillTight: SHUT },
  },
  signReturn: {
    criterion:
      'Every tie rod in and tight, both tubes back on to their marks, the block valves still locked, people clear.',
  },
  lookAgain: { labels: { caseStillTight: SHUT } },
  signAgain: {
    criterion: 'Every tie rod in and tight, both tubes back on, people clear of yoke and body.',
  },
} as const satisfies Readonly<Record<string, Words>>;
