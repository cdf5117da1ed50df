import { airStays, bleedCase, connectCase } from '../phases/case-air.ts';
import { caseAirAgain } from '../phases/case-air-again.ts';
import { connectorOff, connectorOn, joinOnAir } from '../phases/connector.ts';
import { freeSpring, springBack } from '../phases/free-spring.ts';
import { giveBack, ISOLATE_AGAIN } from '../phases/give-back.ts';
import { heldConnector, TAKE_APART, TAKE_APART_AFTER_STOP } from '../phases/held-connector.ts';
import { hotCheck } from '../phases/hot-check.ts';
import { openLine } from '../phases/open-line.ts';
import { frontOf, isolatedControl, SAFE_AT } from '../phases/overhaul-frame.ts';
import { packingIn, packingOut } from '../phases/packing.ts';
import { settleGland } from '../phases/settle-gland.ts';
import { strokeAsFound, strokeAsLeft } from '../phases/stroke-proof.ts';
import { handedTo, isolatedAt, takeOver } from '../phases/taken-over.ts';
import { openHalt, unsignedHalt, whereOn, workHold } from '../phases/work-hold.ts';
import { procedure } from '../vocabulary.ts';

const BRING = [
  'Bring the packing set of this valve, hook, tamper and torque wrench.',
  'Bring a regulator that bleeds, its gauge, a second gauge and a dial indicator.',
  'Bring lifting gear for {actuatorMass}, a light, and caps for the ends.',
  'Bring a clamp for the plug stem and penetrating oil.',
] as const;

const ALLOWS = [
  'connectTestAir',
  'strokeByTestAir',
  'backOffAdjuster',
  'releaseStemConnector',
  'releaseHeldConnector',
  'liftActuator',
  'removePacking',
  'joinStemConnector',
] as const;

/** Packing renewed on an isolated valve: as found, spring, connector, rings, box, new rings, load, stroke, hot look. */
export const packingRenewal = procedure({
  id: 'packing-renewal',
  title: 'Packing renewed',
  energyControl: isolatedControl(
    'To renew the packing of a spring-and-diaphragm valve, in the line or on the bench. It opens the gland; the bonnet stays shut.',
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
        'It may go on where another job left the valve locked out. A stem that is spent is changed with the gland apart as it is. The port of the case stays open while the spring is freed; stems held by too little thread stop the work.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'Where the case holds the spring, the connector is released only on held air that has taken its load; a stem that no air moves keeps its connector on, and its case is let off first. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop. A clamp for the plug stem and penetrating oil are at hand.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change:
        'Ease the gland to the friction that the sheet allows, where that is less than its hysteresis leaves.',
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
      change:
        'The stem is warned of as new rings are settled. Cards that gave no reason say why they stand open.',
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
    { id: 'asFound', title: 'As found' },
    { id: 'apart', title: 'Spring and connector' },
    { id: 'packing', title: 'Packing' },
    { id: 'together', title: 'Together' },
    { id: 'asLeft', title: 'As left' },
    { id: 'airAway', title: 'Air away' },
    { id: 'return', title: 'Return to service' },
    { id: 'hot', title: 'Next shift' },
  ],
  start: 'needs',
  takesOver: { isolated: isolatedAt('takenOver') },
  safe: [...SAFE_AT, 'haltOpen', 'unsignedOpen', 'unsignedAir', 'haltGland'],
  steps: {
    ...frontOf({
      bring: BRING,
      next: 'markFirst',
    }),
    takenOver: takeOver({
      phase: 'isolate',
      title: 'Go on with {tag} as it stands: its packing',
      bring: BRING,
      next: 'markFirst',
      makeSafe: 'haltIsolating',
    }),
    ...openLine({ next: 'holdWork' }),
    holdWork: workHold({
      phase: 'isolate',
      title: 'Before spring, connector and gland are let off',
      allows: ALLOWS,
      next: 'connectAir',
      halt: 'haltIsolating',
    }),
    connectAir: connectCase({
      phase: 'asFound',
      title: 'Connect one regulator and its gauge to the case',
      do: ['Set the regulator to zero.', 'Connect it to the case.', 'Fit the dial indicator to the stem.'],
      next: 'contactFound',
      ventNow: 'ventNow',
    }),
    ...strokeAsFound({
      inside: TAKE_APART,
      outside: TAKE_APART,
      stuck: TAKE_APART,
      danger: 'ventFirst',
      makeSafe: 'ventNow',
    }),
    bleedForWork: bleedCase({
      phase: 'apart',
      title: 'Bleed the air off before anything else is touched',
      next: 'rigOff',
      notGone: 'workAirStays',
      ventNow: 'ventNow',
    }),
    workAirStays: airStays({ phase: 'apart', again: 'bleedForWork', ventNow: 'ventNow' }),
    rigOff: {
      kind: 'instruction',
      phase: 'apart',
      title: 'Take the test air off the case',
      action: 'disconnectTestAir',
      do: [
        'Disconnect the test air.',
        'Take the dial indicator off.',
        'Leave the port of the case open, so that no air is shut in.',
      ],
      next: {
        to: { by: 'springHeldBy', ways: { adjuster: 'freeSpring', case: 'howFar' } },
        sets: { testAir: 'off' },
      },
      makeSafe: 'ventNow',
    },
    ...heldConnector({
      phase: 'apart',
      next: 'bleedForWork',
      cannot: 'airOff',
      danger: 'ventFirst',
      makeSafe: 'ventNow',
    }),
    ...freeSpring({ phase: 'apart', next: 'connectorOff', makeSafe: 'haltAirAway' }),
    ...connectorOff({ phase: 'apart', next: 'packingOut', makeSafe: 'haltOpen' }),
    ...packingOut({ phase: 'packing', next: 'ringsIn', makeSafe: 'haltOpen', toTrim: 'toTrim' }),
    toTrim: handedTo({
      phase: 'packing',
      title: 'It goes on as the job of seat and plug',
      procedure: 'seat-and-plug',
      as: 'gland open',
    }),
    ...packingIn({ phase: 'packing', next: 'actuatorBack', makeSafe: 'haltOpen' }),
    ...connectorOn({
      phase: 'together',
      makeSafe: 'haltOpen',
      springBack: 'springBack',
      onAir: 'connectJoin',
    }),
    ...springBack({ phase: 'together', next: 'connectLeft', makeSafe: 'haltOpen', stopLoaded: 'ventNow' }),
    connectJoin: connectCase({
      phase: 'together',
      title: 'Connect the test air, to join the stems on it',
      do: ['Set the regulator to zero.', 'Connect it to the case.'],
      next: 'holdJoin',
      ventNow: 'ventNow',
    }),
    ...joinOnAir({ phase: 'together', next: 'settleStem', danger: 'ventFirst', makeSafe: 'ventNow' }),
    haltOpen: openHalt({
      phase: 'packing',
      title: 'Stopped: connector or gland is apart, locks stay on',
      goOn: 'whereOpen',
      signAgain: 'holdOpen',
      self: 'haltOpen',
    }),
    holdOpen: workHold({
      phase: 'packing',
      title: 'Before work at the open gland goes on',
      allows: ALLOWS,
      next: 'whereOpen',
      halt: 'unsignedOpen',
    }),
    unsignedOpen: unsignedHalt({ phase: 'packing', hold: 'holdOpen', self: 'unsignedOpen' }),
    whereOpen: whereOn({
      phase: 'packing',
      choices: {
        out: ['The packing is still in: take it out', 'packingOut'],
        look: ['The packing is out: look at stem and box', 'stemLook'],
        rings: ['The new rings go in', 'ringsIn'],
        load: ['The gland is to be loaded', 'glandLoad'],
        back: ['The gland is done: actuator and connector', 'actuatorBack'],
        shut: ['The actuator is on: check that all is shut', 'bodyShut'],
      },
      makeSafe: 'haltOpen',
    }),
    connectLeft: connectCase({
      phase: 'asLeft',
      title: 'Connect one regulator and its gauge to the case again',
      do: ['Set the regulator to zero.', 'Connect it to the case.', 'Fit the dial indicator to the stem.'],
      next: 'settleStem',
      ventNow: 'ventNow',
    }),
    ...settleGland({ next: 'contactLeft', ventNow: 'ventNow' }),
    ...strokeAsLeft({
      inside: 'airOff',
      outside: 'leftOutside',
      stuck: 'leftOutside',
      danger: 'ventFirst',
      makeSafe: 'ventNow',
    }),
    leftOutside: {
      kind: 'question',
      phase: 'asLeft',
      title: 'As left is not inside its limits',
      how: 'New packing costs friction: {packingFriction} each way by the sheet, at most {frictionLimit} by friction and hysteresis allowed, whichever is less. A shift of both ends is the adjuster, not the packing.',
      choices: {
        ease: { label: 'Too much friction: the gland', to: 'bleedForGland' },
        again: { label: 'Stroke it more and read again', to: 'settleStem' },
        leave: { label: 'Leave it so; a stroke check follows', to: 'airOff', reason: true },
      },
      makeSafe: 'ventNow',
    },
    ...caseAirAgain({
      allows: ALLOWS,
      choices: {
        found: ['The stroke as found', 'contactFound'],
        apart: ['As found is done: take it apart', TAKE_APART_AFTER_STOP],
        gland: ['The new packing: bleed off and look at the gland', 'bleedForGland'],
        left: ['The stroke as left', 'contactLeft'],
      },
    }),
    ...giveBack({ done: 'done', inLine: 'hotCheck', isolateAgain: ISOLATE_AGAIN }),
    ...hotCheck({ done: 'done' }),
    done: { kind: 'end', phase: 'return', title: 'The valve is back', closes: 'done' },
  },
});
