import { airLimits } from '../phases/air-limits.ts';
import { airStays, bleedCase } from '../phases/case-air.ts';
import { openCylinder } from '../phases/cylinder.ts';
import { blowBy, connectEnd, STANDS, strokeOneEnd } from '../phases/cylinder-air.ts';
import { renewRod } from '../phases/cylinder-rod.ts';
import {
  CYLINDER_AIR_STAYS,
  CYLINDER_BACK,
  CYLINDER_FRONT,
  CYLINDER_LIMITS,
} from '../phases/cylinder-words.ts';
import { giveBack, ISOLATE_AGAIN } from '../phases/give-back.ts';
import { frontOf, isolatedControl, SAFE_AT } from '../phases/overhaul-frame.ts';
import { reworded } from '../phases/reword.ts';
import { isolatedAt, takeOver } from '../phases/taken-over.ts';
import { openHalt, unsignedHalt, whereOn, workHold } from '../phases/work-hold.ts';
import type { Step } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const ALLOWS = [
  'connectTestAir',
  'strokeByTestAir',
  'openPistonCylinder',
  'workInCylinder',
  'releaseStemConnector',
] as const;

const BRING = [
  'Bring the seal set of this cylinder, its grease and a soft drift, and rod with bushing where they are likely spent.',
  'Bring a torque wrench, spanners for the tie rods and lifting gear for the end cap.',
  'Bring a regulator that bleeds, its gauge and a second gauge.',
  'Bring a marker, caps for both tubes, a light and lint-free cloth.',
] as const;

/** The seals of a double-acting cylinder: blow-by as found, tie rods evenly, seals, blow-by as left, both strokes. */
export const pistonSeals = procedure({
  id: 'piston-seals',
  title: 'Cylinder seals renewed',
  energyControl: isolatedControl(
    'To renew the seals of a double-acting cylinder without spring, in the line or on the bench. It opens the cylinder; the body stays shut. The stem stays joined, but where its rod is renewed.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-25',
      change: 'The stroke is read on the scale from the mark of the far end, wherever the stem began.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'Both tubes are marked before they come off and go back to their marks; the cushion screw is set by its turns from shut; a bent rod is not renewed in this job. Where it stays on hand operation, operations agree.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'Look for kept air on the other side of the actuator too, on a cylinder at its other end. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop. A spent rod may be renewed with cap and piston off: no spring seen, stems parted, joined to their mark.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change: 'It may go on where a job that looked for the fault left the valve locked out.',
    },
    { letter: 'F', date: '2026-11-26', change: 'Hands stay out of the yoke while the air is bled off.' },
    { letter: 'G', date: '2026-11-26', change: 'Cards say why they stand open; plain ones go together.' },
    { letter: 'H', date: '2026-11-26', change: 'Eye protection on where air is let off.' },
  ],
  phases: [
    { id: 'ready', title: 'Get ready' },
    { id: 'bypass', title: 'Onto the bypass' },
    { id: 'isolate', title: 'Take off line' },
    { id: 'asFound', title: 'Where it leaks' },
    { id: 'cylinder', title: 'Cylinder open' },
    { id: 'asLeft', title: 'As left' },
    { id: 'airAway', title: 'Air away' },
    { id: 'return', title: 'Return to service' },
  ],
  start: 'needs',
  takesOver: { isolated: isolatedAt('takenOver') },
  safe: [...SAFE_AT, 'haltOpen', 'unsignedOpen', 'unsignedAir'],
  steps: {
    ...reworded(
      frontOf({
        bring: BRING,
        next: 'standsFound',
      }),
      CYLINDER_FRONT,
    ),
    takenOver: takeOver({
      phase: 'isolate',
      title: 'Go on with {tag} as it stands: its cylinder seals',
      bring: BRING,
      next: 'standsFound',
      makeSafe: 'haltIsolating',
    }),
    standsFound: {
      kind: 'reading',
      phase: 'isolate',
      title: 'Look how handwheel and equalising valve stand',
      how: 'An equalising valve left open lets the air by just as worn seals do.',
      asks: STANDS,
      judge: { rule: 'forAir' },
      ways: {
        'for air': { to: 'holdWork' },
        'equaliser open': { to: 'standsWrong' },
        'handwheel in': { to: 'standsWrong' },
      },
      makeSafe: 'haltIsolating',
    },
    standsWrong: {
      kind: 'question',
      phase: 'isolate',
      title: 'It stands for hand operation',
      how: 'That alone makes a cylinder weak or still. Neutral and shut first, then see what the test says.',
      choices: {
        again: { label: 'Neutral and shut now: look again', to: 'standsFound' },
        stop: { label: 'It does not move there: leave it and stop', to: 'haltIsolating' },
      },
      makeSafe: 'haltIsolating',
    },
    holdWork: workHold({
      phase: 'isolate',
      title: 'Before test air and before the cylinder is opened',
      allows: ALLOWS,
      next: 'connectFound',
      halt: 'haltIsolating',
    }),
    connectFound: connectEnd({
      phase: 'asFound',
      title: 'Connect the test air to the top of the cylinder',
      next: 'blowByFound',
      ventNow: 'ventNow',
    }),
    blowByFound: blowBy({
      phase: 'asFound',
      title: 'Look what passes, as found',
      ways: {
        passes: { to: 'bleedForOpen' },
        'rod seal': { to: 'bleedForOpen' },
        'end cap': { to: 'bleedForOpen' },
        tight: { to: 'tightFound' },
        equaliser: { to: 'equaliserFirst' },
        'too little air': { to: 'airNotReached' },
        'above limit': { to: 'ventFirst' },
      },
      ventNow: 'ventNow',
    }),
    tightFound: {
      kind: 'question',
      phase: 'asFound',
      title: 'Nothing passes',
      how: 'Tried from one end only: seals with a lip each way may hold one way. Tubes and positioner leak as well.',
      choices: {
        other: { label: 'Bleed off, and try it from the other end', to: 'bleedForOther' },
        open: { label: 'Open it all the same', to: 'bleedForOpen', reason: true },
        leave: { label: 'The cylinder is tight: give it back', to: 'forAir' },
        fault: {
          label: 'The cylinder is tight: give it back; its fault is looked for next',
          to: 'forAir',
          comesNext: 'find-the-fault',
        },
      },
      makeSafe: 'ventNow',
    },
    equaliserFirst: {
      kind: 'question',
      phase: 'asFound',
      title: 'The equalising valve is not shut',
      how: 'One that is shut and still passes looks like a worn seal: cap its tube and try again.',
      choices: {
        again: { label: 'Shut or capped: look again', to: 'blowByFound' },
        leave: { label: 'It passes: it is renewed, not the seals', to: 'forAir', reason: true },
      },
      makeSafe: 'ventNow',
    },
    airNotReached: {
      kind: 'question',
      phase: 'asFound',
      title: 'The air does not come up to {soapPressure}',
      how: 'Rig first: regulator, supply, hose. Else it is a large leak that was not seen.',
      choices: {
        again: { label: 'Rig put right: look again', to: 'blowByFound' },
        open: { label: 'It is the cylinder: bleed off and open it', to: 'bleedForOpen' },
      },
      makeSafe: 'ventNow',
    },
    bleedForOther: bleedCase({
      phase: 'asFound',
      title: 'Bleed the air off before the hose changes ends',
      next: 'otherEnd',
      notGone: 'otherAirStays',
      ventNow: 'ventNow',
    }),
    otherAirStays: {
      ...airStays({ phase: 'asFound', again: 'bleedForOther', ventNow: 'ventNow' }),
      ...CYLINDER_AIR_STAYS,
    },
    otherEnd: connectEnd({
      phase: 'asFound',
      title: 'Connect the test air to the other end',
      next: 'blowByFound',
      ventNow: 'ventNow',
    }),
    bleedForOpen: bleedCase({
      phase: 'asFound',
      title: 'Bleed the air off before the cylinder is opened',
      next: 'rigOff',
      notGone: 'foundAirStays',
      ventNow: 'ventNow',
    }),
    foundAirStays: {
      ...airStays({ phase: 'asFound', again: 'bleedForOpen', ventNow: 'ventNow' }),
      ...CYLINDER_AIR_STAYS,
    },
    rigOff: {
      kind: 'instruction',
      phase: 'asFound',
      title: 'Take the test air off the cylinder',
      action: 'disconnectTestAir',
      do: ['Disconnect the test air.', 'Leave both ports open.'],
      next: { to: 'tieRods', sets: { testAir: 'off' } },
      makeSafe: 'ventNow',
    },
    ...openCylinder({ next: 'connectLeft', makeSafe: 'haltOpen', newRod: 'rodFree' }),
    ...renewRod({ next: 'sealsIn', makeSafe: 'haltOpen' }),
    haltOpen: openHalt({
      phase: 'cylinder',
      title: 'Stopped: the cylinder is open, locks stay on',
      goOn: 'whereOpen',
      signAgain: 'holdOpen',
      self: 'haltOpen',
    }),
    holdOpen: workHold({
      phase: 'cylinder',
      title: 'Before work in the open cylinder goes on',
      allows: ALLOWS,
      next: 'whereOpen',
      halt: 'unsignedOpen',
    }),
    unsignedOpen: unsignedHalt({ phase: 'cylinder', hold: 'holdOpen', self: 'unsignedOpen' }),
    whereOpen: whereOn({
      phase: 'cylinder',
      choices: {
        rods: ['The tie rods: loosen them evenly', 'tieRods'],
        look: ['The cap is off: take the piston out and look', 'pistonOut'],
        rod: ['The rod is renewed: the stems', 'rodFree'],
        rodIn: ['The old rod is out: the new one', 'rodNew'],
        join: ['The new rod goes in, or is in: the stems', 'rodIn'],
        seals: ['The new seals go in', 'sealsIn'],
        close: ['The piston is in: close the cylinder', 'cylinderClose'],
        shut: ['The cylinder is closed: check that all is shut', 'cylinderShut'],
      },
      makeSafe: 'haltOpen',
    }),
    connectLeft: connectEnd({
      phase: 'asLeft',
      title: 'Connect the test air to the top of the cylinder again',
      next: 'blowByLeft',
      ventNow: 'ventNow',
    }),
    blowByLeft: leftTest('Look what passes, as left', 'strokeTop'),
    strokeTop: strokeOneEnd({
      phase: 'asLeft',
      title: 'Read the stroke that the top makes',
      whole: 'bleedToSwap',
      short: 'strokeShort',
      danger: 'ventFirst',
      ventNow: 'ventNow',
    }),
    bleedToSwap: bleedCase({
      phase: 'asLeft',
      title: 'Bleed the air off before the hose changes ends',
      next: 'connectBottom',
      notGone: 'leftAirStays',
      ventNow: 'ventNow',
    }),
    leftAirStays: {
      ...airStays({ phase: 'asLeft', again: 'bleedToSwap', ventNow: 'ventNow' }),
      ...CYLINDER_AIR_STAYS,
    },
    connectBottom: connectEnd({
      phase: 'asLeft',
      title: 'Connect the test air to the bottom of the cylinder',
      next: 'blowByBottom',
      ventNow: 'ventNow',
    }),
    blowByBottom: leftTest('Look what passes from the other end, as left', 'strokeBottom'),
    strokeBottom: strokeOneEnd({
      phase: 'asLeft',
      title: 'Read the stroke that the bottom makes',
      whole: 'forAir',
      short: 'strokeShort',
      danger: 'ventFirst',
      ventNow: 'ventNow',
    }),
    stillPasses: {
      kind: 'question',
      phase: 'asLeft',
      title: 'It still leaks',
      how: 'A lip that turned over on the way in, a nick in the bore, a cap that is not drawn down, or the equalising valve.',
      choices: {
        open: { label: 'Bleed off and open it again', to: 'bleedForOpen' },
        again: { label: 'Tube or equalising valve put right: look again', to: 'blowByLeft' },
        leave: { label: 'Leave it so; parts are ordered', to: 'forAir', reason: true },
      },
      makeSafe: 'ventNow',
    },
    strokeShort: {
      kind: 'question',
      phase: 'asLeft',
      title: 'It does not make its whole stroke',
      how: 'Handwheel, stops, cushion screw shut too far, a piston nut that stands proud, or the valve itself. At {soapPressure} a tight packing stops it as well.',
      choices: {
        again: { label: 'Put right from outside: from the top again', to: 'blowByLeft' },
        open: { label: 'It is inside: bleed off and open it again', to: 'bleedForOpen' },
        leave: { label: 'Leave it so', to: 'forAir', reason: true },
      },
      makeSafe: 'ventNow',
    },
    forAir: {
      kind: 'reading',
      phase: 'asLeft',
      title: 'Look that handwheel and equalising valve stand for air',
      how: 'Neutral, and shut. A tag says so to the next person.',
      why: 'An engaged handwheel blocks the stroke; through an equalising valve that is not shut both sides have the same air, and nothing moves.',
      asks: STANDS,
      judge: { rule: 'forAir' },
      ways: {
        'for air': { to: 'airOff' },
        'equaliser open': { to: 'notForAir' },
        'handwheel in': { to: 'notForAir' },
      },
      makeSafe: 'ventNow',
    },
    notForAir: {
      kind: 'question',
      phase: 'asLeft',
      title: 'It does not stand for air',
      how: 'With the handwheel in or the equalising valve open the air cannot move it: the operator has to know.',
      choices: {
        again: { label: 'Neutral and shut now: look again', to: 'forAir' },
        hand: { label: 'It stays on hand operation; operations agree', to: 'airOff', reason: true },
      },
      makeSafe: 'ventNow',
    },
    ...reworded(
      airLimits({ connect: 'connectAgain', signAgain: 'holdAir', giveBack: 'disconnectAir' }),
      CYLINDER_LIMITS,
    ),
    holdAir: workHold({
      phase: 'asFound',
      title: 'Before test air goes on again',
      allows: ALLOWS,
      next: 'connectAgain',
      halt: 'unsignedAir',
    }),
    unsignedAir: unsignedHalt({ phase: 'asFound', hold: 'holdAir', self: 'unsignedAir' }),
    connectAgain: connectEnd({
      phase: 'asFound',
      title: 'Check that one regulator and its gauge are on the top of the cylinder',
      next: 'whereAir',
      ventNow: 'ventNow',
    }),
    whereAir: whereOn({
      phase: 'asFound',
      choices: {
        found: ['What passes, as found', 'blowByFound'],
        open: ['As found is done: bleed off and open it', 'bleedForOpen'],
        left: ['The new seals: what passes, as left', 'blowByLeft'],
      },
      makeSafe: 'ventNow',
    }),
    ...reworded(giveBack({ done: 'done', isolateAgain: ISOLATE_AGAIN }), CYLINDER_BACK),
    done: { kind: 'end', phase: 'return', title: 'The valve is back', closes: 'done' },
  },
});

function leftTest<const Id extends string>(
  title: string,
  tight: Id,
): Step<Id | 'stillPasses' | 'ventFirst' | 'ventNow'> {
  return blowBy<Id | 'stillPasses' | 'ventFirst' | 'ventNow'>({
    phase: 'asLeft',
    title,
    ways: {
      tight: { to: tight },
      passes: { to: 'stillPasses' },
      'rod seal': { to: 'stillPasses' },
      'end cap': { to: 'stillPasses' },
      equaliser: { to: 'stillPasses' },
      'too little air': { to: 'stillPasses' },
      'above limit': { to: 'ventFirst' },
    },
    ventNow: 'ventNow',
  });
}
