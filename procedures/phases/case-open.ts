import type { Step } from '../vocabulary.ts';
import { closeFindings, openFindings } from './case-findings.ts';
import { tightenNuts } from './case-nuts.ts';
import { yesNo } from './common.ts';
import { putRight } from './finding.ts';

type Follows = 'coverFollows' | 'freeAgain' | 'notFreeAgain' | 'haltFollows';
type Open =
  | Follows
  | 'loosenCase'
  | 'shortBolts'
  | 'longNotSound'
  | 'longBolts'
  | 'longBoltsNotFree'
  | 'coverOff';
type Mark = 'markCase' | 'benchFree' | 'benchNotHeld';
type Close =
  | 'closeCase'
  | 'notSeated'
  | 'drawUneven'
  | 'drawDown'
  | 'tightenCase'
  | 'caseUneven'
  | 'haltShut';
type Loaded = 'haltLoaded' | 'runDown' | 'runDownUneven';

interface Ways<Next extends string> {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
}

/** Marks across the joint, and on the bench the record that no process hangs on this valve. */
export function markCase<const Next extends string>({
  phase,
  next,
  makeSafe,
}: Ways<Next>): Readonly<Record<Mark, Step<Mark | Next>>> {
  return {
    markCase: {
      kind: 'reading',
      phase,
      title: 'Mark the case across its joint, and count its bolts',
      how: 'Long bolts among short ones hold the spring: write down where they sit. What is asked below is measured before anything is turned.',
      why: 'A case that goes back turned by one hole has its air port where no tube reaches.',
      asks: [
        {
          name: 'caseBolts',
          label: 'Case bolts, counted',
          type: 'choice',
          choices: ['6', '8', '10', '12', '16', '20', '24', 'other'].map((value) => ({
            value,
            label: value === 'other' ? 'another count' : value,
          })),
        },
        yesNo('marked', 'Marked across the joint; long bolts marked where there are any'),
        {
          name: 'adjusterHeightM',
          label: 'Adjuster height, as found',
          type: 'quantity',
          dimension: 'length',
          optional: true,
          when: { fact: 'springHeldBy', is: 'adjuster' },
        },
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: { by: 'place', ways: { bench: 'benchFree', line: next } } } },
      makeSafe,
    },
    benchFree: {
      kind: 'reading',
      phase,
      title: 'Record that no process hangs on this valve',
      how: 'On the bench nothing is upset when the stem moves.',
      why: 'On the bench these energies are absent only where somebody has looked.',
      asks: [yesNo('noProcessHere', 'The valve is on the bench, held so that it cannot roll')],
      judge: { rule: 'allYes', with: { fields: 'noProcessHere' } },
      ways: { yes: { to: next, sets: { processFlow: 'absent' } }, no: { to: 'benchNotHeld' } },
      makeSafe,
    },
    benchNotHeld: putRight<Mark | Next>({
      phase,
      title: 'The valve is not held fast on the bench',
      how: 'Chained or clamped at its body, so that neither it nor a cover that comes free rolls.',
      again: ['Held fast now: record it', 'benchFree'],
      stop: ['Leave it and stop', makeSafe],
      makeSafe,
    }),
  } as Readonly<Record<Mark, Step<Mark | Next>>>;
}

const THROWN = {
  word: 'danger',
  hazard: 'A spring that is still loaded throws the cover.',
  consequence: 'It kills whoever stands over it.',
  avoid: 'Stand beside the case, never over it. When the cover follows the nuts up, stop.',
} as const;

/** On long bolts the cover is meant to follow: it is let up level, and every bolt holds until the last. */
const LET_UP = {
  ...THROWN,
  avoid: 'Stand beside the case, never over it. Every nut stays on its bolt until nothing pushes the cover.',
} as const;

/** A cover that follows its nuts stands on a spring that is not free: run down, and the adjuster turned back further. */
function stillLoaded(
  phase: string,
): Readonly<Record<Exclude<Follows, 'notFreeAgain'>, Step<Follows | 'loosenCase'>>> {
  return {
    coverFollows: {
      kind: 'question',
      phase,
      title: 'The cover follows the nuts: the spring is not free',
      how: 'Stand beside it. The nuts are run down again evenly, crosswise, before anything else. Then the adjuster is turned back further.',
      choices: {
        down: {
          label: 'Nuts run down and tight: back to the adjuster',
          to: 'freeAgain',
          sets: { closure: 'shut' },
        },
      },
      makeSafe: 'haltFollows',
    },
    freeAgain: {
      kind: 'reading',
      phase,
      title: 'Back off the spring adjuster further, until the spring is free',
      how: 'All turns counted from the first; by them it still pushed {springForceLeft}. A screw that only feels slack has a nut that turns along.',
      action: 'backOffAdjuster',
      caution: THROWN,
      asks: [
        {
          name: 'adjusterTurnsOff',
          label: 'Turns backed off, all together',
          type: 'quantity',
          dimension: 'turns',
          wanted: 'turnsToFree',
        },
        yesNo('springSlack', 'The screw turns by hand and the spring button is loose'),
      ],
      judge: { rule: 'springFree' },
      ways: {
        free: { to: 'loosenCase', sets: { spring: 'released' } },
        'not free': { to: 'notFreeAgain' },
        'too few turns': { to: 'notFreeAgain' },
      },
      makeSafe: 'haltFollows',
    },
    haltFollows: {
      kind: 'question',
      phase,
      title: 'Stopped: the case stands on a spring that is not free',
      how: 'Every case nut is run down and tight, the locks stay on. An actuator that cannot be freed goes to its maker as it is.',
      choices: { goOn: { label: 'Go on: the nuts first, then the adjuster', to: 'coverFollows' } },
      makeSafe: 'haltFollows',
    },
  };
}

/**
 * The case opened in the order that its spring asks for. With an adjuster the spring is free before the first bolt;
 * where the case holds it, short bolts come first and the long ones let it off evenly, last.
 */
export function openCase<const Next extends string>({
  phase,
  inside = phase,
  next,
  makeSafe,
  stopLoaded,
  notOpened,
}: Ways<Next> & {
  /** The phase that begins as the cover comes off. */
  readonly inside?: string;
  readonly stopLoaded: Next;
  readonly notOpened: Next;
}): Readonly<Record<Open, Step<Open | Next>>> {
  return {
    loosenCase: {
      kind: 'reading',
      phase,
      title: 'Loosen the case bolts evenly',
      how: 'A turn each, crosswise, far side first. The cover must not follow: the spring is free.',
      action: 'loosenCaseBolts',
      caution: THROWN,
      do: ['Loosen each nut by a turn.', 'Watch whether the cover follows.', 'Take the bolts out.'],
      asks: [yesNo('coverStill', 'The cover did not follow, all bolts are out')],
      judge: { rule: 'allYes', with: { fields: 'coverStill' } },
      ways: {
        yes: { to: 'coverOff', sets: { closure: 'open' } },
        no: { to: 'coverFollows', sets: { closure: 'open', spring: 'contained' } },
      },
      makeSafe,
    },
    ...stillLoaded(phase),
    shortBolts: {
      kind: 'reading',
      phase,
      title: 'Loosen the short case bolts and take them out',
      how: 'The long ones stay as they are, with their nuts. With no air the spring pushes {springForceShut}, more where it was set higher.',
      action: 'loosenShortCaseBolts',
      caution: THROWN,
      do: [
        'Leave every long bolt as it is.',
        'Loosen the short nuts crosswise.',
        'Take the short bolts out.',
      ],
      shows: ['springForceShut'],
      asks: [
        yesNo(
          'longStay',
          'The long bolts stand tight, opposite each other, with thread enough for the spring',
        ),
      ],
      judge: { rule: 'allYes', with: { fields: 'longStay' } },
      ways: {
        yes: { to: 'longBolts', sets: { closure: 'open', shortBolts: 'out', spring: 'loaded' } },
        no: { to: 'longNotSound', sets: { closure: 'open', shortBolts: 'out', spring: 'loaded' } },
      },
      makeSafe: notOpened,
    },
    ...openFindings({ phase, stopLoaded }),
    longBolts: {
      kind: 'reading',
      phase,
      title: 'Loosen the long case bolts evenly, a turn each, until the cover lies loose',
      how: 'Round and round, so that the cover comes up level. Where it is free before thread runs out, the spring is free.',
      action: 'loosenLongCaseBolts',
      caution: LET_UP,
      do: ['Loosen each long nut by one turn, in turn.', 'Check that the cover comes up level.'],
      asks: [yesNo('coverLoose', 'The cover is loose on all long bolts, nothing pushes it')],
      judge: { rule: 'allYes', with: { fields: 'coverLoose' } },
      ways: {
        yes: { to: 'coverOff', sets: { closure: 'open', spring: 'released' } },
        no: { to: 'longBoltsNotFree', sets: { closure: 'open' } },
      },
      makeSafe: stopLoaded,
    },
    longBoltsNotFree: {
      kind: 'question',
      phase,
      title: 'The spring still pushes the cover',
      how: 'Where thread runs out before the spring is free, the bolts are too short: longer ones go in one at a time, tightened first.',
      choices: {
        again: { label: 'There is thread left: go on, a turn each', to: 'longBolts' },
        longer: { label: 'Longer bolts are in, one at a time', to: 'longBolts' },
        stop: { label: 'Stop: the nuts are run down again, evenly', to: stopLoaded },
      },
      makeSafe: stopLoaded,
    },
    coverOff: {
      kind: 'instruction',
      phase: inside,
      title: 'Take the cover off',
      how: 'The spring stands free. One that stands in the yoke, below the diaphragm, stays where it is until plate and diaphragm are out. A heavy cover is hung.',
      action: 'workInCase',
      do: [
        'Take the cover off.',
        'Take the spring out where it stands under the cover.',
        'Lay them where they cannot roll.',
      ],
      next: { to: next },
      makeSafe,
    },
  } as Readonly<Record<Open, Step<Open | Next>>>;
}

/** Where work stops while the long bolts hold a loaded spring: on, or run down again and shut. */
export function loadedHalt<const Next extends string>({
  phase,
  next,
  goOn,
}: Omit<Ways<Next>, 'makeSafe'> & { readonly goOn: Next }): Readonly<Record<Loaded, Step<Loaded | Next>>> {
  return {
    haltLoaded: {
      kind: 'question',
      phase,
      title: 'Stopped: the long bolts hold a loaded spring',
      how: 'Stand beside the case, never over it. Nobody leaves it so: the nuts are run down evenly before a break.',
      choices: {
        runDown: { label: 'Run the long nuts down again', to: 'runDown' },
        goOn: { label: 'Go on letting the long bolts off', to: goOn },
      },
      makeSafe: 'haltLoaded',
    },
    runDown: {
      kind: 'reading',
      phase,
      title: 'Tighten the long bolts again evenly, and fit the short ones',
      how: 'A turn each, round and round, until the halves meet; then every short bolt.',
      action: 'drawCaseDown',
      caution: THROWN,
      asks: [yesNo('halvesMeet', 'The halves meet all round, every bolt is in and tight')],
      judge: { rule: 'allYes', with: { fields: 'halvesMeet' } },
      ways: {
        yes: { to: next, sets: { spring: 'contained', closure: 'shut', shortBolts: 'in' } },
        no: { to: 'runDownUneven', sets: { spring: 'loaded' } },
      },
      makeSafe: 'haltLoaded',
    },
    runDownUneven: {
      kind: 'question',
      phase,
      title: 'The cover does not come down evenly',
      how: 'The low side waits until the high side has followed. A spring that stands askew wants the cover let off again.',
      choices: {
        again: { label: 'The high side followed: go on', to: 'runDown' },
        off: { label: 'The spring stands askew: let the long bolts off', to: goOn },
      },
      makeSafe: 'haltLoaded',
    },
  };
}

/** The case brought together: cover to its mark, nuts crosswise; where the case holds the spring, drawn down evenly. */
export function closeCase<const Next extends string>({
  phase,
  next,
  makeSafe,
  stopLoaded,
  letOff,
}: Ways<Next> & {
  readonly stopLoaded: Next;
  /** Where the long bolts are let off. */
  readonly letOff: Next;
}): Readonly<Record<Close, Step<Close | Next>>> {
  return {
    closeCase: {
      kind: 'reading',
      phase,
      title: 'Set the cover on its mark, the spring on its seat',
      how: 'Holes of diaphragm and case in line before a bolt goes in: a bolt that is forced through tears the rim.',
      action: 'closeCase',
      do: [
        'Set the spring on its seat where it came out.',
        'Lower the cover to its mark.',
        'Fit the bolts by hand.',
      ],
      asks: [yesNo('springSeated', 'The spring stands in both of its seats; the rim is flat, no fold')],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'springSeated' } },
      ways: {
        yes: { to: { by: 'springHeldBy', ways: { adjuster: 'tightenCase', case: 'drawDown' } } },
        no: { to: 'notSeated' },
      },
      makeSafe,
    },
    drawDown: {
      kind: 'reading',
      phase,
      title: 'Draw the cover down on the long bolts, evenly',
      how: 'A turn each, round and round, until the halves meet. Then the short bolts go in.',
      action: 'drawCaseDown',
      caution: {
        word: 'danger',
        hazard: 'The spring is loaded again as the cover comes down.',
        consequence: 'A cover that slips is thrown, and kills.',
        avoid: 'Level all the while; stand beside it, never over it.',
      },
      do: ['Tighten each long nut by one turn, in turn.', 'Fit the short bolts by hand.'],
      asks: [yesNo('halvesMeet', 'The halves meet all round, every bolt is in')],
      judge: { rule: 'allYes', with: { fields: 'halvesMeet' } },
      ways: {
        yes: { to: 'tightenCase', sets: { spring: 'contained', shortBolts: 'in' } },
        no: { to: 'drawUneven', sets: { spring: 'loaded' } },
      },
      makeSafe: stopLoaded,
    },
    ...closeFindings({ phase, makeSafe, stopLoaded, letOff }),
    tightenCase: {
      ...tightenNuts<Close | Next>({
        phase,
        title: 'Tighten the case nuts crosswise',
        next,
        broken: 'caseUneven',
        makeSafe: 'haltShut',
      }),
      ways: { yes: { to: next, sets: { closure: 'shut' } }, no: { to: 'caseUneven' } },
    } as Step<Close | Next>,
    caseUneven: {
      kind: 'question',
      phase,
      title: 'The nuts do not come up evenly',
      how: 'A nut that turns without end has a stripped bolt: it is replaced by itself, the others left tight.',
      choices: { again: { label: 'Put right: go round again', to: 'tightenCase' } },
      makeSafe: 'haltShut',
    },
    haltShut: {
      kind: 'question',
      phase,
      title: 'Stopped: the cover is on, its nuts may be slack',
      how: 'Locks stay on, no air on the case. Stand beside it, not over it.',
      choices: { goOn: { label: 'Go on: tighten the case nuts', to: 'tightenCase' } },
      makeSafe: 'haltShut',
    },
  } as Readonly<Record<Close, Step<Close | Next>>>;
}
