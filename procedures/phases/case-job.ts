import { windSpring } from '../commissioning/wind-spring.ts';
import type { Step } from '../vocabulary.ts';
import { airStays, bleedCase, connectCase, soapCase } from './case-air.ts';
import { caseAirAgain } from './case-air-again.ts';
import { tightenNuts } from './case-nuts.ts';
import { closeCase, loadedHalt, markCase, openCase } from './case-open.ts';
import { HAS_ADJUSTER } from './common.ts';
import { freeSpring } from './free-spring.ts';
import { strokeAsLeft } from './stroke-proof.ts';
import { openHalt, unsignedHalt, whereOn, workHold } from './work-hold.ts';

const ALLOWS = [
  'backOffAdjuster',
  'loosenCaseBolts',
  'loosenShortCaseBolts',
  'loosenLongCaseBolts',
  'workInCase',
  'connectTestAir',
  'strokeByTestAir',
  'windAdjusterOnTestAir',
] as const;

/** Where nothing more has to be done to be safe, in a job that opens the case. */
export const CASE_SAFE_AT = [
  'haltCase',
  'haltLoaded',
  'haltShut',
  'haltFollows',
  'unsignedCase',
  'unsignedAir',
] as const;

/** Phases of a job that opens the case, between isolation and return. */
export const CASE_PHASES = [
  { id: 'case', title: 'Spring and case' },
  { id: 'inside', title: 'Inside the case' },
  { id: 'asFound', title: 'Test air' },
  { id: 'setPlug', title: 'Spring adjuster' },
  { id: 'asLeft', title: 'As left' },
] as const;

type Ids =
  | keyof ReturnType<typeof opening>
  | keyof ReturnType<typeof closing>
  | keyof ReturnType<typeof proving>;

interface Middle<Next extends string> {
  /** The first card inside the opened case. */
  readonly inside: Next;
  /** Where the adjuster is wound back. */
  readonly windBack: Next;
  /** Cards inside the case that work may go on from after a stop. */
  readonly whereInside: Readonly<Record<string, readonly [label: string, to: Next]>>;
}

/**
 * A job that opens the case: marked, signed, the spring freed first, the case opened and closed in its order, soaped, and
 * the bench set proved by the stroke. What is done inside is its own.
 */
export function caseJob<const Next extends string>(
  middle: Middle<Next>,
): Readonly<Record<Ids, Step<Ids | Next | 'airOff' | 'haltIsolating' | 'haltAirAway' | 'disconnectAir'>>> {
  return { ...opening(middle), ...closing(middle), ...proving() } as Readonly<
    Record<Ids, Step<Ids | Next | 'airOff' | 'haltIsolating' | 'haltAirAway' | 'disconnectAir'>>
  >;
}

function opening<const Next extends string>({ inside, whereInside }: Middle<Next>) {
  return {
    ...markCase<string>({ phase: 'case', next: 'holdWork', makeSafe: 'haltIsolating' }),
    holdWork: workHold<string>({
      phase: 'case',
      title: 'Before the spring is let off and the case is opened',
      allows: ALLOWS,
      next: 'springFirst',
      halt: 'haltIsolating',
    }),
    springFirst: {
      kind: 'question',
      phase: 'case',
      title: 'Look once more: what holds this spring?',
      how: 'An adjuster in the yoke or on top lets it off before a bolt is touched. Without one, long bolts among the short ones let it off, last of all.',
      why: 'Bolts taken in the wrong order let a loaded spring throw the cover.',
      choices: {
        asSheet: {
          label: 'As the sheet has it',
          to: { by: 'springHeldBy', ways: { adjuster: 'freeSpring', case: 'shortBolts' } },
        },
        other: {
          label: 'Another way than the sheet: stop, the sheet is put right first',
          to: 'haltAirAway',
          reason: true,
        },
      },
      makeSafe: 'haltAirAway',
    } as Step<string>,
    ...freeSpring<string>({ phase: 'case', next: 'loosenCase', makeSafe: 'haltAirAway' }),
    ...openCase<string>({
      phase: 'case',
      inside: 'inside',
      next: inside,
      makeSafe: 'haltCase',
      stopLoaded: 'haltLoaded',
      notOpened: 'haltAirAway',
    }),
    ...loadedHalt<string>({ phase: 'case', next: 'haltAirAway', goOn: 'longBolts' }),
    haltCase: openHalt<string>({
      phase: 'inside',
      title: 'Stopped: the case is open, its spring is free, locks stay on',
      goOn: 'whereCase',
      signAgain: 'holdCase',
      self: 'haltCase',
    }),
    holdCase: workHold<string>({
      phase: 'inside',
      title: 'Before work at the open case goes on',
      allows: ALLOWS,
      next: 'whereCase',
      halt: 'unsignedCase',
    }),
    unsignedCase: unsignedHalt<string>({ phase: 'inside', hold: 'holdCase', self: 'unsignedCase' }),
    whereCase: whereOn<string>({
      phase: 'inside',
      choices: {
        cover: ['The cover is still on: take it off', 'coverOff'],
        ...whereInside,
        close: ['Everything is in: bring the case together', 'closeCase'],
      },
      makeSafe: 'haltCase',
    }),
  };
}

function closing<const Next extends string>({ windBack }: Middle<Next>) {
  return {
    ...closeCase<string>({
      phase: 'inside',
      next: 'caseShut',
      makeSafe: 'haltCase',
      stopLoaded: 'haltLoaded',
      letOff: 'longBolts',
    }),
    caseShut: {
      kind: 'reading',
      phase: 'inside',
      title: 'Count bolts and tools',
      how: 'As many bolts in as came out; nothing left over but what was renewed.',
      asks: [
        {
          name: 'nothingLeft',
          label: 'All bolts in and tight, no tool missing',
          type: 'choice',
          choices: [
            { value: 'yes', label: 'Yes' },
            { value: 'no', label: 'No' },
          ],
        },
      ],
      judge: { rule: 'allYes', with: { fields: 'nothingLeft' } },
      ways: {
        yes: { to: { by: 'springHeldBy', ways: { adjuster: windBack, case: 'connectLeft' } } },
        no: { to: 'countWrong' },
      },
      makeSafe: 'haltShut',
    } as Step<string>,
    countWrong: {
      kind: 'question',
      phase: 'inside',
      title: 'A bolt is slack, or something is missing',
      how: 'What is missing may lie in the case: it holes the new diaphragm on its first stroke.',
      choices: {
        nuts: { label: 'A bolt: put in, and all of them gone round again', to: 'tightenCase' },
        found: { label: 'It was found outside: count again', to: 'caseShut' },
        open: {
          label: 'It may be inside: open the case again',
          to: { by: 'springHeldBy', ways: { adjuster: 'loosenCase', case: 'shortBolts' } },
        },
      },
      makeSafe: 'haltShut',
    } as Step<string>,
  };
}

function proving() {
  return { ...soaping(), ...judging(), ...stopping() };
}

function soaping() {
  return {
    connectLeft: connectCase<string>({
      phase: 'asFound',
      title: 'Connect one regulator and its gauge to the case',
      do: ['Set the regulator to zero.', 'Connect it to the case.', 'Fit the dial indicator to the stem.'],
      next: 'soapLeft',
      ventNow: 'ventNow',
    }),
    soapLeft: soapCase<string>({
      phase: 'asFound',
      title: 'Soap the case that was open',
      ways: {
        tight: { to: 'contactLeft' },
        'case joint': { to: 'bleedForNuts' },
        diaphragm: { to: 'stillLeaks' },
        'stem seal': { to: 'stillLeaks' },
        'too little air': { to: 'airNotReached' },
        'above limit': { to: 'ventFirst' },
      },
      ventNow: 'ventNow',
    }),
    airNotReached: {
      kind: 'question',
      phase: 'asFound',
      title: 'The air does not come up to {soapPressure}',
      how: 'Look first: regulator shut, supply of the rig, hose joint. A new diaphragm with a fold at its rim blows out at once.',
      choices: {
        again: { label: 'Rig put right: soap again', to: 'soapLeft' },
        leaks: { label: 'It blows somewhere at the case', to: 'stillLeaks' },
      },
      makeSafe: 'ventNow',
    } as Step<string>,
    stillLeaks: {
      kind: 'question',
      phase: 'asFound',
      title: 'Air still comes through',
      how: 'Rim folded, plate nut slack, the wrong side to the air, or the seal at the stem. The case is opened again, the spring first.',
      choices: {
        open: { label: 'Bleed off and open it again', to: 'bleedToOpen' },
        joint: { label: 'It is only the joint: its nuts', to: 'bleedForNuts' },
        leave: { label: 'Give it back as it is', to: 'airOff', reason: true },
      },
      makeSafe: 'ventNow',
    } as Step<string>,
    bleedForNuts: bleedCase<string>({
      phase: 'asFound',
      title: 'Bleed the air off before a nut is touched',
      next: 'nutsAgain',
      notGone: 'nutsAirStays',
      ventNow: 'ventNow',
    }),
    nutsAirStays: airStays<string>({ phase: 'asFound', again: 'bleedForNuts', ventNow: 'ventNow' }),
    nutsAgain: tightenNuts<string>({
      phase: 'asFound',
      title: 'Tighten the case nuts once more, crosswise',
      next: 'connectAgain',
      broken: 'stillLeaksNuts',
      makeSafe: 'ventNow',
    }),
    stillLeaksNuts: {
      kind: 'question',
      phase: 'asFound',
      title: 'The nuts do not come up evenly',
      choices: {
        again: { label: 'Bolt replaced by itself: go round again', to: 'nutsAgain' },
        open: { label: 'Open the case again, the spring first', to: 'bleedToOpen' },
      },
      makeSafe: 'ventNow',
    } as Step<string>,
    bleedToOpen: bleedCase<string>({
      phase: 'asFound',
      title: 'Bleed the air off before the spring is let off again',
      next: 'rigOff',
      notGone: 'openAirStays',
      ventNow: 'ventNow',
    }),
    openAirStays: airStays<string>({ phase: 'asFound', again: 'bleedToOpen', ventNow: 'ventNow' }),
    rigOff: {
      kind: 'instruction',
      phase: 'asFound',
      title: 'Take the test air off the case',
      action: 'disconnectTestAir',
      do: ['Disconnect the test air.', 'Take the dial indicator off.'],
      next: { to: 'springFirst', sets: { testAir: 'off' } },
      makeSafe: 'ventNow',
    } as Step<string>,
  };
}

function judging() {
  return {
    ...strokeAsLeft<string>({
      inside: 'benchSetLeft',
      outside: 'benchSetLeft',
      stuck: 'strokeOutside',
      danger: 'ventFirst',
      makeSafe: 'ventNow',
    }),
    benchSetLeft: {
      kind: 'judgement',
      phase: 'asLeft',
      title: 'Where the bench set stands, friction taken out',
      how: '{benchSetLow} to {benchSetHigh} by the sheet, each end within {benchSetTolerance}.',
      judge: { rule: 'benchShift', with: { verdict: 'asLeftVerdict' } },
      ways: {
        'as the sheet': { to: 'airOff' },
        shifted: { to: 'benchSetShifted' },
        'too close': { to: 'benchSetShifted' },
        'not known': { to: 'strokeOutside' },
      },
      makeSafe: 'ventNow',
    } as Step<string>,
    benchSetShifted: {
      kind: 'question',
      phase: 'asLeft',
      title: 'The bench set has shifted, or is too close to tell',
      how: 'Both ends move together with the adjuster: {adjusterTurns}, {adjusterDirection}. A case that holds its spring has none: its spring or its seat is not as before.',
      choices: {
        adjust: {
          label: 'Wind the spring adjuster',
          to: { by: 'springHeldBy', ways: { adjuster: 'holdForAdjuster', case: 'noAdjuster' } },
          when: HAS_ADJUSTER,
        },
        again: { label: 'Read the cycle again', to: 'asLeftCycle' },
        leave: { label: 'Leave it so', to: 'airOff', reason: true },
      },
      makeSafe: 'ventNow',
    } as Step<string>,
    strokeOutside: {
      kind: 'question',
      phase: 'asLeft',
      title: 'The bench set could not be told from the stroke',
      how: 'It takes a travel that was passed both ways. A stem that does not move: look what holds it.',
      choices: {
        again: { label: 'Read the cycle again', to: 'asLeftCycle' },
        open: { label: 'Open the case again, the spring first', to: 'bleedToOpen' },
        leave: { label: 'Leave it; a stroke check follows', to: 'airOff', reason: true },
      },
      makeSafe: 'ventNow',
    } as Step<string>,
    ...windSpring<string>({
      choose: 'benchSetShifted',
      contact: 'contactLeft',
      asLeft: 'asLeftCycle',
      leave: 'airOff',
      danger: 'ventFirst',
      stop: 'ventNow',
    }),
  };
}

function stopping() {
  return {
    ...caseAirAgain<string>({
      allows: ALLOWS,
      choices: {
        soap: ['Soap the case', 'soapLeft'],
        stroke: ['The stroke as left', 'contactLeft'],
        adjust: ['The adjuster, after the stroke was read', 'benchSetShifted', HAS_ADJUSTER],
        open: ['Open the case again, the spring first', 'bleedToOpen'],
      },
    }),
  };
}
