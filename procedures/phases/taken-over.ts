/** How a valve stands between two procedures of which the one goes on where the other found more than it can cure. */
import type { Facts } from '../facts.ts';
import type { EndStep, InstructionStep, Standing, Step, TakesOver } from '../vocabulary.ts';
import { airStays, bleedCase } from './case-air.ts';

/** The same everywhere: locked out, nothing under air, the case shut on its spring, nothing signed. */
const LOCKED_OUT: Standing = {
  signalAir: ['isolated'],
  spring: ['contained'],
  trappedAir: ['isolated', 'absent'],
  lockUpAir: ['isolated', 'absent'],
  oppositeAir: ['isolated', 'absent'],
  temperature: ['safe', 'absent'],
  weight: ['hung', 'absent'],
  residue: ['cleared', 'absent'],
  electrical: ['isolated', 'absent'],
  safetyFunction: ['overridden', 'absent'],
  testAir: ['off'],
  plug: ['seat unknown'],
  shortBolts: ['in'],
  closure: ['shut'],
  isolationGrade: ['not enough', 'enough', 'absent'],
  gasTest: ['none', 'fresh', 'absent'],
  clear: ['not looked at', 'clear'],
  told: ['nobody'],
  workSignOff: ['none'],
  returnSignOff: ['none'],
};

const IN_LINE: Standing = {
  supplyAir: ['isolated'],
  processInlet: ['isolated'],
  processOutlet: ['isolated'],
  commands: ['isolated'],
  supplyLock: ['on'],
  inletLock: ['on'],
  outletLock: ['on'],
  controllerLine: ['capped'],
  loop: ['manual'],
  processFlow: ['set up'],
  consent: ['given'],
};

const ON_BENCH: Standing = {
  supplyAir: ['absent'],
  secondSupply: ['absent'],
  processInlet: ['absent'],
  processOutlet: ['absent'],
  bypass: ['absent'],
  commands: ['absent'],
  controllerLine: ['absent'],
  loop: ['absent'],
  processFlow: ['needs the valve', 'absent'],
};

/** What differs from a valve that is only locked out, besides what its facts say of it. */
interface Differing {
  readonly standing?: Standing;
  readonly where?: readonly { readonly facts: Partial<Facts>; readonly standing: Standing }[];
}

/** A valve that is locked out in its line or stands on the bench, taken over at a step. */
export function isolatedAt<const Id extends string>(
  at: Id,
  { standing = {}, where = [] }: Differing = {},
): TakesOver<Id> {
  return {
    at,
    standing: { ...LOCKED_OUT, ...standing },
    where: [
      { facts: { place: 'line' }, standing: IN_LINE },
      {
        facts: { place: 'line', secondFeed: 'fitted' },
        standing: { secondSupply: ['isolated'], secondSupplyLock: ['on'] },
      },
      { facts: { place: 'line', secondFeed: 'none' }, standing: { secondSupply: ['absent'] } },
      { facts: { place: 'line', bypassLine: 'fitted' }, standing: { bypass: ['open'] } },
      { facts: { place: 'line', bypassLine: 'none' }, standing: { bypass: ['absent'] } },
      { facts: { place: 'bench' }, standing: ON_BENCH },
      ...where,
    ],
  };
}

/** On the bench it was recorded before anything was opened that no process is upset. */
const OPENED_ON_BENCH = { facts: { place: 'bench' }, standing: { processFlow: ['absent'] } } as const;

/** The same with its cover off: the spring is free, by its adjuster or by the long bolts. */
export function caseOpenAt<const Id extends string>(at: Id): TakesOver<Id> {
  return isolatedAt(at, {
    standing: { closure: ['open'], spring: ['released'] },
    where: [OPENED_ON_BENCH, { facts: { springHeldBy: 'case' }, standing: { shortBolts: ['out'] } }],
  });
}

/** The same with its gland apart and its stems parted: the case is shut, its spring free where an adjuster frees it. */
export function glandOpenAt<const Id extends string>(at: Id): TakesOver<Id> {
  return isolatedAt(at, {
    standing: { closure: ['open'], isolationGrade: ['enough', 'absent'] },
    where: [
      { facts: { place: 'bench' }, standing: { processFlow: ['absent'], gasTest: ['absent'] } },
      { facts: { springHeldBy: 'adjuster' }, standing: { spring: ['released'] } },
    ],
  });
}

/** What a job that goes on where another stopped has in hand before its first act. */
export function takeOver<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly bring: readonly string[];
  readonly next: Id;
  readonly makeSafe: Id;
}): InstructionStep<Id> {
  return {
    kind: 'instruction',
    phase: step.phase,
    title: step.title,
    how: 'Locks, isolation and readings go along as they stand. No signature does: this work is signed for by itself.',
    do: [
      'Read what the job before left in its record.',
      'Read the maker’s manual for this work: it outranks this card.',
      ...step.bring,
      'Check that each lock and tag hangs where this job says.',
      'Have the site permit name this work too.',
    ],
    next: { to: step.next },
    makeSafe: step.makeSafe,
  };
}

/** The job closes, and another goes on with everything as it stands. */
export function handedTo(end: {
  readonly phase: string;
  readonly title: string;
  readonly procedure: string;
  readonly as: 'isolated' | 'bypassed' | 'case open' | 'gland open';
}): EndStep {
  const { phase, title, procedure, as } = end;
  return { kind: 'end', phase, title, closes: 'handed over', handsOver: { procedure, as } };
}

/** A choice that hands the valve on: what was signed for this work ends with it. */
export function handsOn<const Id extends string>(label: string, to: Id) {
  return { label, to, sets: { workSignOff: 'none' } } as const;
}

/** The same with the valve apart, as everybody at it can see. */
export function handsOnOpen<const Id extends string>(label: string, to: Id) {
  return { label, to, sets: { workSignOff: 'none', closure: 'open' } } as const;
}

type Away = 'bleedForNext' | 'nextAirStays' | 'rigOffForNext';

/** Air off the case and the rig taken off, for a finding that another procedure cures with the locks as they hang. */
export function airAwayFor<const Next extends string>(step: {
  readonly phase: string;
  readonly next: Next;
  readonly ventNow: Next;
}): Readonly<Record<Away, Step<Away | Next>>> {
  const { phase, next, ventNow } = step;
  return {
    bleedForNext: bleedCase<Away | Next>({
      phase,
      title: 'Bleed the air off before the work goes on as another job',
      next: 'rigOffForNext',
      notGone: 'nextAirStays',
      ventNow,
    }),
    nextAirStays: airStays<Away | Next>({ phase, again: 'bleedForNext', ventNow }),
    rigOffForNext: {
      kind: 'instruction',
      phase,
      title: 'Take the test air off the case',
      action: 'disconnectTestAir',
      do: [
        'Disconnect the test air.',
        'Take off what was fitted for it: gauge, dial indicator.',
        'Leave the port of the case open.',
      ],
      next: { to: next, sets: { testAir: 'off' } },
      makeSafe: ventNow,
    },
  };
}
