import { airLimits } from '../phases/air-limits.ts';
import { connectCase } from '../phases/case-air.ts';
import { HAS_ADJUSTER, yesNo } from '../phases/common.ts';
import { giveBack, ISOLATE_AGAIN } from '../phases/give-back.ts';
import { frontOf, isolatedControl, SAFE_AT } from '../phases/overhaul-frame.ts';
import { isolatedAt, takeOver } from '../phases/taken-over.ts';
import { whereOn, workHold } from '../phases/work-hold.ts';
import { procedure } from '../vocabulary.ts';
import { readEnds } from './read-ends.ts';
import { windSpring } from './wind-spring.ts';

const makeSafe = 'ventNow' as const;

const BRING = [
  'Bring a regulator that bleeds, its gauge, a second gauge and a dial indicator.',
  'Bring a spanner for the adjuster and one for its lock nut, where it has them.',
] as const;

/** Only an adjuster moves both ends together; a case that holds its spring has none to wind. */
const SHIFTED = {
  asFound: { by: 'springHeldBy', ways: { adjuster: 'endsShifted', case: 'noAdjuster' } },
  asLeft: { by: 'springHeldBy', ways: { adjuster: 'leftShifted', case: 'noAdjuster' } },
} as const;

/** Both ends of the bench set read, the adjuster wound, and read against what the line will make of them. */
export const benchSetJob = procedure({
  id: 'bench-set',
  title: 'Bench set and spring adjuster',
  energyControl: isolatedControl(
    'To read both ends of the bench set of a spring-and-diaphragm valve and to set its spring adjuster, in the line or on the bench. It opens neither case nor body.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'The card after both ends says where they were found without friction, what friction took, and the spring rate that follows. With a positioner the test air may reach the end of the bench set.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'Look for kept air on the other side of the actuator too, on a cylinder at its other end. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change: 'Where the case holds the spring no adjuster is wound, after the second reading neither.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change: 'It may go on where a job that looked for the fault left the valve locked out.',
    },
    {
      letter: 'F',
      date: '2026-11-26',
      change: 'Hands stay out of the yoke while the air is bled off.',
    },
    {
      letter: 'G',
      date: '2026-11-26',
      change:
        'Where the case holds the spring, no card offers an adjuster; both ends shifted there lead to the job of the spring.',
    },
    { letter: 'H', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'J',
      date: '2026-11-26',
      change:
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back.',
    },
  ],
  phases: [
    { id: 'ready', title: 'Get ready' },
    { id: 'bypass', title: 'Onto the bypass' },
    { id: 'isolate', title: 'Take off line' },
    { id: 'asFound', title: 'Both ends' },
    { id: 'setPlug', title: 'Spring adjuster' },
    { id: 'airAway', title: 'Air away' },
    { id: 'return', title: 'Return to service' },
  ],
  start: 'needs',
  takesOver: { isolated: isolatedAt('takenOver') },
  safe: SAFE_AT,
  steps: {
    ...frontOf({
      bring: BRING,
      next: 'holdWork',
    }),
    takenOver: takeOver({
      phase: 'isolate',
      title: 'Go on with {tag} as it stands: its bench set',
      bring: BRING,
      next: 'holdWork',
      makeSafe: 'haltIsolating',
    }),
    holdWork: workHold({
      phase: 'isolate',
      title: 'Before test air goes on the case',
      allows: ['connectTestAir', 'strokeByTestAir', 'windAdjusterOnTestAir'],
      next: 'connectAir',
      halt: 'haltIsolating',
    }),
    connectAir: connectCase({
      phase: 'asFound',
      title: 'Connect one regulator and its gauge to the case',
      do: ['Set the regulator to zero.', 'Connect it to the case.', 'Fit the dial indicator to the stem.'],
      next: 'benchFound',
      ventNow: makeSafe,
    }),
    benchFound: readEnds('Read both ends of the bench set, as found', {
      inside: { to: 'lineExpected' },
      'both ends shifted': { to: SHIFTED.asFound },
      'span differs': { to: 'spanDiffers' },
      'seat end off': { to: 'seatEndOff' },
      'too close': { to: 'endsTooClose' },
      'does not move': { to: 'endsNotRead' },
      'above limit': { to: 'ventFirst' },
    }),
    endsNotRead: {
      kind: 'question',
      phase: 'asFound',
      title: 'The stem does not move from end to end',
      how: 'Look, hands off: gauge alive, tube open, handwheel in neutral, stop or block in the yoke. A spring wound solid is let off with the air off, in the overhaul. Bubbles at the adjuster or the vent: the diaphragm leaks.',
      choices: {
        again: { label: 'Found and put right from outside: read again', to: 'benchFound' },
        leave: { label: 'It wants an overhaul: give it back', to: 'airOff', reason: true },
      },
      makeSafe,
    },
    endsShifted: {
      kind: 'question',
      phase: 'asFound',
      title: 'Both ends are shifted together, and the span is right',
      shows: ['benchLowFound', 'benchHighFound', 'benchFriction', 'benchRateFound', 'sheetSpringRate'],
      how: 'That is the adjuster: turned in, both ends rise together, turned out, both fall. A seal or a bushing that binds parts up and down instead.',
      choices: {
        wind: { label: 'Wind the spring adjuster', to: 'adjusterNote' },
        again: { label: 'Read both ends again first', to: 'benchFound' },
        leave: { label: 'Leave it so', to: 'airOff', reason: true },
      },
      makeSafe,
    },
    spanDiffers: {
      kind: 'question',
      phase: 'asFound',
      title: 'The span is not that of the sheet: rate or area do not fit',
      shows: ['benchLowFound', 'benchHighFound', 'benchFriction', 'benchRateFound', 'sheetSpringRate'],
      how: 'The adjuster cannot cure it. Wider: a stiffer spring, a smaller case or plate, a spring that touches. Narrower: a weaker or broken spring, a larger case. Look at the plate on the case, and at the colour or number of the spring.',
      why: 'Span is rate over area: only another spring or another diaphragm changes it.',
      choices: {
        again: { label: 'Read both ends again, and the travel', to: 'benchFound' },
        sheet: {
          label: 'Plate and spring say other figures than the sheet: tell the engineer, give it back',
          to: 'airOff',
          reason: true,
        },
        spring: {
          label: 'The spring is wrong or broken: it wants an overhaul, give it back',
          to: 'airOff',
          reason: true,
        },
      },
      makeSafe,
    },
    seatEndOff: {
      kind: 'question',
      phase: 'asFound',
      title: 'Only the end at the seat is off',
      shows: ['benchLowFound', 'benchHighFound', 'benchFriction', 'benchRateFound', 'sheetSpringRate'],
      how: 'The spring is right. The plug meets its seat too early or too late: turns on the plug stem, never the adjuster. With {turnsWanted} it should be met {signalShift} early.',
      choices: {
        plug: {
          label: 'Give it back; the job that sets its plug comes next',
          to: 'airOff',
          reason: true,
          comesNext: 'stroke-check',
        },
        again: { label: 'Read both ends again', to: 'benchFound' },
        leave: { label: 'Leave it so', to: 'lineExpected', reason: true },
      },
      makeSafe,
    },
    endsTooClose: {
      kind: 'question',
      phase: 'asFound',
      title: 'Too close for this gauge to tell',
      shows: ['benchLowFound', 'benchHighFound', 'benchFriction', 'benchRateFound', 'sheetSpringRate'],
      how: 'It is no fault of the valve. A finer gauge or a finer indicator may tell.',
      choices: {
        again: { label: 'Read both ends again', to: 'benchFound' },
        goOn: { label: 'Leave it so', to: 'lineExpected', reason: true },
      },
      makeSafe,
    },
    adjusterNote: {
      kind: 'reading',
      phase: 'setPlug',
      title: 'Mark where the adjuster stands before it is touched',
      how: 'Height from a face that stays, and a mark of paint across it: turns are counted from there. Its lock nut is let off only once the air is held.',
      asks: [
        {
          name: 'adjusterHeightM',
          label: 'Adjuster height now',
          type: 'quantity',
          dimension: 'length',
          optional: true,
          carried: true,
        },
        yesNo('lockNutFree', 'Its lock nut and its thread are clean, and oiled'),
      ],
      judge: { rule: 'allYes', with: { fields: 'lockNutFree' } },
      ways: { yes: { to: 'holdForAdjuster' }, no: { to: 'adjusterStuck' } },
      makeSafe,
    },
    adjusterStuck: {
      kind: 'question',
      phase: 'setPlug',
      title: 'The adjuster is rusted or painted in',
      how: 'Forced, it shears or turns the spring with it. Brush, penetrating oil, time.',
      choices: {
        again: { label: 'It is free: go on', to: 'adjusterNote' },
        leave: {
          label: 'It does not come free: it wants an overhaul, give it back',
          to: 'airOff',
          reason: true,
        },
      },
      makeSafe,
    },
    ...windSpring({
      choose: 'endsShifted',
      contact: 'benchLeft',
      asLeft: 'benchLeft',
      leave: 'airOff',
      danger: 'ventFirst',
      stop: makeSafe,
    }),
    noAdjuster: {
      kind: 'question',
      phase: 'asFound',
      title: 'Both ends are shifted together, and the case holds this spring',
      shows: ['benchLowFound', 'benchHighFound', 'benchFriction', 'benchRateFound', 'sheetSpringRate'],
      how: 'It has no adjuster: the spring has set, or spring, seat or spacer are not those of the sheet. Only its room in the case changes that. A seal or a bushing that binds parts up and down instead.',
      choices: {
        again: { label: 'Read both ends again first', to: 'benchFound' },
        spring: {
          label: 'Give it back; the job that changes its spring comes next',
          to: 'airOff',
          reason: true,
          comesNext: 'spring-change',
        },
        leave: { label: 'Leave it so', to: 'airOff', reason: true },
      },
      makeSafe,
    },
    afterAdjuster: {
      kind: 'question',
      phase: 'setPlug',
      title: 'Is the lock nut of the adjuster tight again?',
      how: 'Hold the adjuster while it is tightened. Without lock nut it creeps, and the bench set with it.',
      choices: {
        tight: { label: 'Tight, or there is none: read both ends again', to: 'benchLeft' },
        stops: {
          label: 'The adjuster came to its end before the turns were made',
          to: 'adjusterAtEnd',
        },
      },
      makeSafe,
    },
    adjusterAtEnd: {
      kind: 'question',
      phase: 'setPlug',
      title: 'The adjuster is at its end',
      how: 'Never force it on: a spring wound solid stops the travel, one that is loose lets the plug rattle. Wrong spring, wrong diaphragm plate or wrong sheet.',
      choices: {
        left: { label: 'Read both ends as it stands', to: 'benchLeft' },
        leave: { label: 'It wants another spring: give it back', to: 'airOff', reason: true },
      },
      makeSafe,
    },
    benchLeft: readEnds('Read both ends of the bench set, as left', {
      inside: { to: 'lineExpected' },
      'both ends shifted': { to: SHIFTED.asLeft },
      'span differs': { to: 'spanDiffers' },
      'seat end off': { to: 'seatEndOff' },
      'too close': { to: 'endsTooClose' },
      'does not move': { to: 'endsNotRead' },
      'above limit': { to: 'ventFirst' },
    }),
    leftShifted: {
      kind: 'question',
      phase: 'asFound',
      title: 'Both ends are still shifted',
      shows: ['benchLowFound', 'benchHighFound', 'benchFriction', 'benchRateFound', 'sheetSpringRate'],
      how: 'The turns are worked out from the last reading: wind those, then read again.',
      choices: {
        wind: { label: 'Wind the adjuster again', to: 'holdForAdjuster' },
        again: { label: 'Read both ends again', to: 'benchLeft' },
        leave: { label: 'Leave it so', to: 'airOff', reason: true },
      },
      makeSafe,
    },
    lineExpected: {
      kind: 'instruction',
      phase: 'asFound',
      title: 'Compare it with what its line will make of it',
      how: '{airAction}, flow {flowOverPlug}: with {shutOffDrop} across it the plug {shutEndInLine} and is {seatHeldInLine}; {frictionCounted}. The open end stays where it is.',
      why: 'A bench set that is right without flow may still not shut, or not open, against it.',
      do: [
        'Read the figures of this card against the signal range of the loop.',
        'Tell the engineer where the plug is not held shut.',
      ],
      shows: [
        'benchLowFound',
        'benchHighFound',
        'benchFriction',
        'shutOffDrop',
        'shutEndInLine',
        'seatHeldInLine',
      ],
      next: { to: 'airOff' },
      makeSafe,
    },
    ...airLimits({ connect: 'connectAgain', signAgain: 'holdWork', giveBack: 'disconnectAir' }),
    connectAgain: connectCase({
      phase: 'asFound',
      title: 'Check that one regulator and its gauge are on the case',
      do: ['Set the regulator to zero.', 'Check the joint at the case.'],
      next: 'whereOn',
      ventNow: makeSafe,
    }),
    whereOn: whereOn({
      phase: 'asFound',
      choices: {
        found: ['Both ends, as found', 'benchFound'],
        adjuster: ['The adjuster: first how it stands', SHIFTED.asFound, HAS_ADJUSTER],
        left: ['Both ends, as left', 'benchLeft'],
      },
      makeSafe,
    }),
    ...giveBack({ done: 'done', isolateAgain: ISOLATE_AGAIN }),
    done: { kind: 'end', phase: 'return', title: 'The valve is back', closes: 'done' },
  },
});
