import { CONDITIONS, type ConditionId } from '../../safety/conditions.ts';
import { OPERATOR, yesNo } from '../phases/common.ts';
import { putRight } from '../phases/finding.ts';
import { liveGland } from '../phases/live-gland.ts';
import { LOOP_TAKES_IT } from '../phases/to-operator.ts';
import { procedure } from '../vocabulary.ts';

/** A valve that is back in its line, whatever was done before: in service, no lock, no test air, nothing signed. */
const IN_SERVICE = {
  ...(Object.fromEntries(Object.entries(CONDITIONS).map(([id, { states }]) => [id, states])) as {
    readonly [C in ConditionId]: (typeof CONDITIONS)[C]['states'];
  }),
  supplyLock: ['off'],
  secondSupplyLock: ['off'],
  inletLock: ['off'],
  outletLock: ['off'],
  bypass: ['shut', 'absent'],
  testAir: ['off'],
  workSignOff: ['none'],
} as const;

/** The gland of a valve in service, tightened and never loosened: the one job that is done with the line live. */
export const liveGlandJob = procedure({
  id: 'live-gland',
  title: 'Gland of a live valve tightened',
  energyControl: {
    use: 'To stop a weeping gland of a valve in service by tightening it. Nothing is opened and nothing is loosened.',
    isolation:
      'None: the line stays live, and that is why the gland is only ever tightened, a little at a time, with the operator’s consent and the loop in manual.',
    locks:
      'None are hung. A valve that stands locked out is never on this way: its packing is renewed instead. Local rules and the site permit come first.',
    verification:
      'Gland, studs and stem looked at before a nut is touched; the friction read both ways before and after each round.',
  },
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-25',
      change: 'It may go on from a job whose new packing weeps on the next shift.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change: 'Where the gland is left, the renewal of its packing is named as the next job.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    { letter: 'E', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'F',
      date: '2026-11-26',
      change: 'Hands and tools out of the yoke before the loop is given back.',
    },
  ],
  phases: [
    { id: 'ready', title: 'Get ready' },
    { id: 'gland', title: 'The gland' },
    { id: 'return', title: 'Back to the operator' },
  ],
  start: 'needs',
  takesOver: { hot: { at: 'consent', standing: IN_SERVICE } },
  safe: ['haltLive'],
  steps: {
    needs: {
      kind: 'instruction',
      phase: 'ready',
      title: 'Get ready for the gland of {tag}',
      how: 'The line is live all the while: {processFluid}.',
      why: 'What is missing is fetched later, with the work half done and the valve out of use.',
      do: [
        'Read the maker’s manual for this gland: its torque and its marks outrank this card.',
        'Bring two spanners that fit without play.',
        'Bring a face shield, gloves and clothing for this fluid, hot as it is.',
        'Have the site permit for work on a live line in hand: local rules come first.',
        'Have a second person stand where they can see you.',
      ],
      shows: ['energyInlet', 'energyTemperature', 'energyResidue', 'frictionGap', 'frictionLimit'],
      next: { to: 'knowLive' },
      makeSafe: 'notStarted',
    },
    knowLive: {
      kind: 'reading',
      phase: 'ready',
      title: 'Read what stands behind the gland',
      why: 'What comes out of a gland that gives is what stands behind it, at once.',
      shows: ['energyInlet', 'energyOutlet', 'energyTemperature', 'energyResidue', 'energySafety'],
      asks: [
        yesNo('liveKnown', 'I know pressure, temperature and fluid, and what they do to me'),
        yesNo('wayOut', 'The way out is free, and the second person is there'),
      ],
      judge: { rule: 'allYes', with: { fields: 'liveKnown wayOut' } },
      ways: { yes: { to: 'consent' }, no: { to: 'notKnown' } },
      makeSafe: 'notStarted',
    },
    notKnown: putRight({
      phase: 'ready',
      title: 'What stands behind the gland is not known, or nobody is there to help',
      how: 'Plate, sheet and operator say pressure, heat and fluid. Alone, or with the way out blocked, no hand goes to a live gland.',
      again: ['Known now, way free, second person here: read it again', 'knowLive'],
      stop: ['Not now: the gland is left alone', 'notStarted'],
      makeSafe: 'notStarted',
    }),
    consent: {
      kind: 'reading',
      phase: 'ready',
      title: 'Ask the operator to move the valve for you',
      how: 'After each round it is moved through half travel, in manual, as far as the process allows.',
      why: 'Only a stem that moves shows when its packing gets too tight.',
      asks: [
        { name: 'operator', label: OPERATOR, type: 'text' },
        yesNo('consentGiven', 'The operator agrees, and has the loop in manual'),
        yesNo('notLocked', 'No lock hangs on this valve’s points: it is in service'),
      ],
      judge: { rule: 'allYes', with: { fields: 'consentGiven notLocked' } },
      ways: {
        yes: { to: 'glandLook', sets: { consent: 'given', loop: 'manual' } },
        no: { to: 'notGiven' },
      },
      makeSafe: 'notStarted',
    },
    notGiven: putRight({
      phase: 'ready',
      title: 'The operator does not agree, or a lock hangs',
      how: 'A valve that is locked is somebody else’s work, and no live gland. The operator says when it may be moved.',
      again: ['Agreed, in manual, no lock: ask again', 'consent'],
      stop: ['Not now: the gland is left alone', 'notStarted'],
      makeSafe: 'notStarted',
    }),
    ...liveGland({ phase: 'gland', done: 'nextPerson', makeSafe: 'haltLive' }),
    haltLive: {
      kind: 'question',
      phase: 'gland',
      title: 'Stopped: the gland is left as it is, the line is live',
      how: 'Go back from the valve and tell the operator.',
      choices: {
        goOn: { label: 'Go on: look at the gland again', to: 'glandLook' },
        giveBack: { label: 'Give the valve back', to: 'nextPerson' },
      },
      makeSafe: 'haltLive',
    },
    nextPerson: {
      kind: 'reading',
      phase: 'return',
      title: 'Write down what the next person wants to know',
      why: 'Whoever opens the next job on this valve reads it first.',
      asks: [
        {
          name: 'followerGapM',
          label: 'Gap left under the follower',
          type: 'quantity',
          dimension: 'length',
          optional: true,
        },
        { name: 'nextNotes', label: 'What it leaks now, what to watch', type: 'text' },
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'loopBack' } },
      makeSafe: 'haltLive',
    },
    loopBack: {
      kind: 'reading',
      phase: 'return',
      title: 'Give the valve back to the operator',
      how: 'Say how freely it moves now, and that somebody looks at the gland again on the next shift.',
      caution: LOOP_TAKES_IT,
      why: 'A loop that is left in manual controls nothing, and nobody sees it until the process drifts.',
      asks: [
        { name: 'takenBackBy', label: OPERATOR, type: 'text' },
        yesNo('takenBack', 'The operator has the loop back and says that it controls'),
      ],
      judge: { rule: 'allYes', with: { fields: 'takenBack' } },
      ways: {
        yes: { to: 'done', sets: { loop: 'automatic', consent: 'none' } },
        no: { to: 'notTaken' },
      },
      makeSafe: 'haltLive',
    },
    notTaken: putRight({
      phase: 'return',
      title: 'The operator does not have control on {tag} yet',
      how: 'A gland that grips makes it stick: it is eased as it was tightened, a flat at a time, as this job says. The loop stays in manual.',
      again: ['It controls now: give it back', 'loopBack'],
      also: { gland: { label: 'It sticks: look at the gland again', to: 'glandLook' } },
      stop: ['It stays in manual, and operations know', 'haltLive'],
      makeSafe: 'haltLive',
    }),
    done: { kind: 'end', phase: 'return', title: 'The valve is back', closes: 'done' },
    notStarted: { kind: 'end', phase: 'ready', title: 'Stopped before a nut was touched', closes: 'stopped' },
  },
});
