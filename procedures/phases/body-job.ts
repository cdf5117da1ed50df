import type { Step } from '../vocabulary.ts';
import { benchUncoupled, seatPlug } from './bench-and-seat.ts';
import { closeBonnet, openBonnet, takeTrimOut } from './body-open.ts';
import { airStays, bleedCase, connectCase } from './case-air.ts';
import { caseAirAgain } from './case-air-again.ts';
import { actuatorOff, actuatorOn, joinOnAir } from './connector.ts';
import { freeSpring, springBack } from './free-spring.ts';
import { heldConnector, TAKE_APART, TAKE_APART_AFTER_STOP } from './held-connector.ts';
import { openLine } from './open-line.ts';
import { packingIn, packingOut } from './packing.ts';
import { sealRingsOff, sealRingsOn, TRIM_IN_FIRST, TRIM_OUT_NEXT } from './seal-rings.ts';
import { seatWork } from './seat-work.ts';
import { settleGland } from './settle-gland.ts';
import { strokeAsFound, strokeAsLeft } from './stroke-proof.ts';
import { openHalt, unsignedHalt, whereOn, workHold } from './work-hold.ts';

const ALLOWS = [
  'connectTestAir',
  'strokeByTestAir',
  'windAdjusterOnTestAir',
  'backOffAdjuster',
  'releaseStemConnector',
  'releaseHeldConnector',
  'liftActuator',
  'loosenCaseBolts',
  'loosenShortCaseBolts',
  'loosenLongCaseBolts',
  'workInCase',
  'breakBonnetJoint',
  'removePacking',
  'removeTrim',
  'workInBody',
  'joinStemConnector',
  'turnPlugStem',
] as const;

/** Where nothing more has to be done to be safe, in a job that opens the body. */
export const BODY_SAFE_AT = ['haltOpen', 'unsignedOpen', 'unsignedAir', 'haltGland'] as const;

/** Phases of a job that opens the body, between isolation and return. */
export const BODY_PHASES = [
  { id: 'asFound', title: 'As found' },
  { id: 'apart', title: 'Spring and actuator' },
  { id: 'body', title: 'Body and trim' },
  { id: 'packing', title: 'Packing' },
  { id: 'together', title: 'Together' },
  { id: 'asLeft', title: 'As left' },
] as const;

interface Body<Next extends string> {
  /** What is done with the actuator once it lies there: the bonnet, or its case first. */
  readonly actuatorLies: Next | 'bonnetCrack';
  /** What comes first with air on, the stems apart: the bench set, or soap on a case that was open. */
  readonly firstAir: Next | 'benchFound';
  /** Cards that work may go on from besides those of the body: with something open, and with air on. */
  readonly where?: Readonly<Record<string, readonly [label: string, to: Next]>>;
  readonly whereOnAir?: Readonly<Record<string, readonly [label: string, to: Next]>>;
}

type Ids =
  | keyof ReturnType<typeof apart>
  | keyof ReturnType<typeof inBody>
  | keyof ReturnType<typeof together>
  | keyof ReturnType<typeof halts>;
type Outer = 'bleedForNext' | 'haltIsolating' | 'haltAirAway' | 'disconnectAir';

/** A job that opens the body: as found, actuator off, bonnet, packing, trim, seat; and all of it back, to the stroke as left. */
export function bodyJob<const Next extends string>(
  body: Body<Next>,
): Readonly<Record<Ids, Step<Ids | Next | Outer>>> {
  return { ...apart(body), ...inBody(), ...together(body), ...halts(body) } as Readonly<
    Record<Ids, Step<Ids | Next | Outer>>
  >;
}

function apart({ actuatorLies }: Body<string>) {
  return {
    ...openLine<string>({ next: 'holdWork' }),
    holdWork: workHold<string>({
      phase: 'isolate',
      title: 'Before spring, actuator and bonnet are let off',
      allows: ALLOWS,
      next: 'connectAir',
      halt: 'haltIsolating',
      // A drain that is misread here throws a bonnet.
      readTwice: ['processInlet', 'processOutlet'],
    }),
    connectAir: connectCase<string>({
      phase: 'asFound',
      title: 'Connect one regulator and its gauge to the case',
      do: ['Set the regulator to zero.', 'Connect it to the case.', 'Fit the dial indicator to the stem.'],
      next: 'contactFound',
      ventNow: 'ventNow',
    }),
    ...strokeAsFound<string>({
      inside: TAKE_APART,
      outside: TAKE_APART,
      stuck: TAKE_APART,
      danger: 'ventFirst',
      makeSafe: 'ventNow',
    }),
    bleedForWork: bleedCase<string>({
      phase: 'apart',
      title: 'Bleed the air off before anything else is touched',
      next: 'rigOff',
      notGone: 'workAirStays',
      ventNow: 'ventNow',
    }),
    workAirStays: airStays<string>({ phase: 'apart', again: 'bleedForWork', ventNow: 'ventNow' }),
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
        to: { by: 'springHeldBy', ways: { adjuster: 'freeSpring', case: 'hangActuator' } },
        sets: { testAir: 'off' },
      },
      makeSafe: 'ventNow',
    } as Step<string>,
    ...heldConnector<string>({
      phase: 'apart',
      next: 'bleedForWork',
      cannot: 'bleedForNext',
      danger: 'ventFirst',
      makeSafe: 'ventNow',
    }),
    ...freeSpring<string>({ phase: 'apart', next: 'connectorOff', makeSafe: 'haltAirAway' }),
    ...actuatorOff<string>({ phase: 'apart', next: actuatorLies, makeSafe: 'haltOpen' }),
  };
}

function inBody() {
  const makeSafe = 'haltOpen';
  return {
    ...openBonnet<string>({ phase: 'body', next: 'packingOut', makeSafe }),
    ...packingOut<string>({ phase: 'packing', next: 'trimWay', makeSafe }),
    trimWay: {
      kind: 'instruction',
      phase: 'body',
      title: 'Make trim and body ready to be parted',
      how: 'A cage that goes back turned chokes the flow. A screwed seat that is forced dry tears its thread.',
      why: 'What goes back as it stood needs no second fitting, and a soaked thread comes without force.',
      do: [
        'Mark the cage to the body.',
        'Put penetrating oil on the thread of a screwed seat.',
        'Let it soak.',
      ],
      next: { to: { by: 'place', ways: { bench: 'trimOut', line: 'gasTest' } } },
      makeSafe,
    } as Step<string>,
    ...takeTrimOut<string>({ phase: 'body', next: TRIM_OUT_NEXT, makeSafe }),
    ...sealRingsOff<string>({ phase: 'body', next: 'trimLook', makeSafe }),
    ...seatWork<string>({ phase: 'body', next: TRIM_IN_FIRST, makeSafe }),
    ...sealRingsOn<string>({ phase: 'body', next: 'trimIn', makeSafe }),
    ...closeBonnet<string>({ phase: 'body', next: 'ringsIn', makeSafe }),
    ...packingIn<string>({ phase: 'packing', next: 'actuatorOn', makeSafe }),
  };
}

function together({ firstAir }: Body<string>) {
  const air = { danger: 'ventFirst', makeSafe: 'ventNow' };
  return {
    ...actuatorOn<string>({
      phase: 'together',
      makeSafe: 'haltOpen',
      springBack: 'springBack',
      onAir: 'connectJoin',
    }),
    ...springBack<string>({
      phase: 'together',
      next: 'connectJoin',
      makeSafe: 'haltOpen',
      stopLoaded: 'ventNow',
    }),
    connectJoin: connectCase<string>({
      phase: 'together',
      title: 'Connect the test air, the stems still apart',
      do: [
        'Set the regulator to zero.',
        'Connect it to the case.',
        'Fit the dial indicator to the actuator stem.',
      ],
      next: firstAir,
      ventNow: 'ventNow',
    }),
    ...benchUncoupled<string>({ phase: 'together', next: 'holdJoin', ...air }),
    ...joinOnAir<string>({ phase: 'together', next: 'seatContact', ...air }),
    ...seatPlug<string>({ phase: 'together', next: 'settleStem', ...air }),
    ...settleGland<string>({ next: 'contactLeft', ventNow: 'ventNow' }),
    ...strokeAsLeft<string>({
      inside: 'bleedForNext',
      outside: 'leftOutside',
      stuck: 'leftOutside',
      ...air,
    }),
    leftOutside: {
      kind: 'question',
      phase: 'asLeft',
      title: 'As left is not inside its limits',
      how: 'New packing costs friction: {packingFriction} each way by the sheet, at most {frictionLimit}. It comes down as the rings settle: stroke it a few times. What does not repeat is packing or guides.',
      choices: {
        again: { label: 'Stroked a few times: read the cycle again', to: 'asLeftCycle' },
        gland: { label: 'Too much friction: the gland', to: 'bleedForGland' },
        seat: { label: 'The seat: find the contact again', to: 'seatContact' },
        leave: { label: 'Leave it so, or go on as another job', to: 'bleedForNext', reason: true },
      },
      makeSafe: 'ventNow',
    } as Step<string>,
  };
}

function halts({ where = {}, whereOnAir = {} }: Body<string>) {
  return {
    haltOpen: openHalt<string>({
      phase: 'body',
      title: 'Stopped: actuator or bonnet is off, locks stay on',
      goOn: 'whereOpen',
      signAgain: 'holdOpen',
      self: 'haltOpen',
    }),
    holdOpen: workHold<string>({
      phase: 'body',
      title: 'Before work at the open valve goes on',
      allows: ALLOWS,
      next: 'whereOpen',
      halt: 'unsignedOpen',
    }),
    unsignedOpen: unsignedHalt<string>({ phase: 'body', hold: 'holdOpen', self: 'unsignedOpen' }),
    whereOpen: whereOn<string>({
      phase: 'body',
      choices: {
        ...where,
        actuator: ['The actuator still stands: hang it', 'hangActuator'],
        bonnet: ['The bonnet: crack it', 'bonnetCrack'],
        packing: ['The packing: take it out', 'packingOut'],
        trim: ['The trim: to it', 'trimWay'],
        seat: ['The trim is out: look at it', TRIM_OUT_NEXT],
        lap: ['Lapping', 'lap'],
        clean: ['Cleaning out', 'cleanOut'],
        back: ['The trim goes in', TRIM_IN_FIRST],
        torque: ['The bonnet nuts', 'bonnetTorque'],
        rings: ['The new rings', 'ringsIn'],
        on: ['The actuator goes on', 'actuatorOn'],
        shut: ['The actuator is on: check that all is shut', 'bodyShut'],
      },
      makeSafe: 'haltOpen',
    }),
    ...caseAirAgain<string>({
      allows: ALLOWS,
      choices: {
        ...whereOnAir,
        found: ['The stroke as found', 'contactFound'],
        apart: ['As found is done: take it apart', TAKE_APART_AFTER_STOP],
        bench: ['The bench set, the stems apart', 'benchFound'],
        join: ['Joining the stems', 'holdJoin'],
        seat: ['The contact, the stems joined', 'seatContact'],
        gland: ['The new packing: bleed off and look at the gland', 'bleedForGland'],
        left: ['The stroke as left', 'contactLeft'],
      },
    }),
  };
}
