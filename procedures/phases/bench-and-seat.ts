import type { QuantityField, Step } from '../vocabulary.ts';
import { HAS_ADJUSTER, STEM_MOVES } from './common.ts';
import { findContact, holdAir } from './test-air.ts';

type Bench = 'benchFound' | 'benchOff' | 'benchHold' | 'benchNotHeld' | 'benchWind';
type Seat =
  | 'seatContact'
  | 'seatStuck'
  | 'seatLoad'
  | 'seatTooLittle'
  | 'seatNotTurned'
  | 'seatHold'
  | 'seatNotHeld'
  | 'seatTurn';

interface Ways<Next extends string> {
  readonly phase: string;
  readonly next: Next;
  readonly danger: Next;
  readonly makeSafe: Next;
}

const SIGNAL = { type: 'quantity', dimension: 'pressure', gauge: 'signalGauge', onCase: true } as const;

function end(name: string, label: string, wanted: 'benchSetLow' | 'benchSetHigh'): QuantityField {
  return { ...SIGNAL, name, label, wanted, optional: true };
}

/** The bench set read with the stems apart: spring and case alone, before anything is joined to them. */
export function benchUncoupled<const Next extends string>({
  phase,
  next,
  danger,
  makeSafe,
}: Ways<Next>): Readonly<Record<Bench, Step<Bench | Next>>> {
  return {
    benchFound: {
      kind: 'reading',
      phase,
      title: 'Read the bench set, the stems not joined yet',
      how: 'Dial indicator on the actuator stem. {benchSetLow} to {benchSetHigh} by the sheet, each end within {benchSetTolerance}. Read where it leaves each end, going up and coming down.',
      why: 'Joined to the plug, its seat and its packing would be read along.',
      action: 'strokeByTestAir',
      caution: STEM_MOVES,
      shows: ['benchSetLow', 'benchSetHigh', 'benchSetTolerance', 'travel'],
      asks: [
        {
          name: 'moves',
          label: 'The actuator stem',
          type: 'choice',
          choices: [
            { value: 'yes', label: 'Moves from end to end' },
            { value: 'no', label: 'Does not move up to the limit' },
          ],
        },
        end('benchLowUpPa', 'Starts to move, going up', 'benchSetLow'),
        end('benchHighUpPa', 'Has made its travel, going up', 'benchSetHigh'),
        end('benchHighDownPa', 'Starts back, coming down', 'benchSetHigh'),
        end('benchLowDownPa', 'Is back, coming down', 'benchSetLow'),
        {
          name: 'benchTravelM',
          label: 'Travel that it made',
          type: 'quantity',
          dimension: 'length',
          gauge: 'travelIndicator',
          wanted: 'travel',
          optional: true,
        },
      ],
      judge: { rule: 'benchSet' },
      ways: {
        inside: { to: next },
        'both ends shifted': { to: 'benchOff' },
        'span differs': { to: 'benchOff' },
        'seat end off': { to: 'benchOff' },
        'too close': { to: 'benchOff' },
        'does not move': { to: 'benchOff' },
        'above limit': { to: danger },
      },
      makeSafe,
    },
    benchOff: {
      kind: 'question',
      phase,
      title: 'The bench set is not that of the sheet',
      how: 'Both ends shifted: its adjuster, {adjusterTurns}, {adjusterDirection}; where the case holds the spring, the spring itself. Another span: spring or diaphragm, its own job. No movement: rig, tube, stop, case.',
      choices: {
        adjust: {
          label: 'Wind the adjuster',
          to: { by: 'springHeldBy', ways: { adjuster: 'benchHold', case: 'benchNotHeld' } },
          when: HAS_ADJUSTER,
        },
        again: { label: 'Read it again', to: 'benchFound' },
        leave: { label: 'Go on with it so', to: next, reason: true },
      },
      makeSafe,
    },
    benchHold: {
      kind: 'reading',
      phase,
      title: 'Hold {benchSetMid} while the adjuster is wound',
      action: 'strokeByTestAir',
      caution: STEM_MOVES,
      asks: [
        { ...SIGNAL, name: 'joinPa', label: 'Signal now' },
        { ...SIGNAL, name: 'joinAgainPa', label: 'Signal a minute later' },
      ],
      judge: { rule: 'steady', with: { first: 'joinPa', again: 'joinAgainPa' } },
      ways: {
        steady: { to: 'benchWind', sets: { signalAir: 'held' } },
        falls: { to: 'benchNotHeld' },
        'above limit': { to: danger },
      },
      makeSafe,
    },
    benchNotHeld: {
      kind: 'question',
      phase,
      title: 'The air is not held, or there is no adjuster',
      how: 'Look for the leak with soap: hose, joint, diaphragm. A case that holds its spring has no adjuster: its spring is changed instead.',
      choices: {
        again: { label: 'Read the bench set again', to: 'benchFound' },
        leave: { label: 'Go on with it so', to: next, reason: true },
      },
      makeSafe,
    },
    benchWind: {
      kind: 'reading',
      phase,
      title: 'Wind the spring adjuster {adjusterTurns}: {adjusterDirection}',
      how: 'Both ends move together.',
      action: 'windAdjusterOnTestAir',
      caution: {
        word: 'warning',
        hazard: 'The spring moves the stem as the adjuster turns.',
        consequence: 'A finger in the yoke can be crushed.',
        avoid: 'Spanner from outside the yoke; nobody touches the regulator.',
      },
      asks: [
        {
          name: 'adjusterTurnsMade',
          label: 'Turns made',
          type: 'quantity',
          dimension: 'turns',
          wanted: 'adjusterTurns',
        },
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'benchFound', sets: { signalAir: 'live', plug: 'seat unknown' } } },
      makeSafe,
    },
  } as Readonly<Record<Bench, Step<Bench | Next>>>;
}

/** The seat load told from the contact after the stems were joined, and the plug turned where it is too little. */
export function seatPlug<const Next extends string>({
  phase,
  next,
  danger,
  makeSafe,
}: Ways<Next>): Readonly<Record<Seat, Step<Seat | Next>>> {
  return {
    seatContact: findContact<Seat | Next>({
      phase,
      title: 'Find the contact with the seat, the stems joined',
      rule: 'contact',
      ways: {
        found: { to: 'seatLoad' },
        'does not move': { to: 'seatStuck' },
        'above limit': { to: danger },
      },
      makeSafe,
    }),
    seatStuck: {
      kind: 'question',
      phase,
      title: 'The stem does not move, or the contact was not read both ways',
      how: 'Look, hands off: gauge alive, connector joined, packing too tight, handwheel in neutral.',
      choices: {
        again: { label: 'Put right: find it again', to: 'seatContact' },
        on: { label: 'Go on to the stroke', to: next, reason: true },
      },
      makeSafe,
    },
    seatLoad: {
      kind: 'judgement',
      phase,
      title: 'What load the seat has',
      how: 'Wanted: {seatLoadNeed}. It follows from the contact and the area.',
      judge: { rule: 'seatLoad', with: { contact: 'seatContact' } },
      ways: {
        enough: { to: next },
        'too little': { to: 'seatTooLittle' },
        'must not be turned': { to: 'seatNotTurned' },
        'not on the sheet': { to: next },
      },
      makeSafe,
    },
    seatTooLittle: {
      kind: 'question',
      phase,
      title: 'The seat has too little load',
      how: '{seatTurnsSay}',
      choices: {
        turn: { label: 'The stem may be turned, thread enough stays in', to: 'seatHold' },
        leave: { label: 'It is not turned: leave it so', to: next, reason: true },
      },
      makeSafe,
    },
    seatNotTurned: {
      kind: 'question',
      phase,
      title: 'The seat has too little load, and this stem must not be turned',
      how: 'A bellows tears and a pin shears. {seatTurnsSay} The maker sets the seat load of such a valve another way: by the joint of the stems, or by the adjuster.',
      choices: {
        leave: { label: 'Leave it so, and say so', to: next, reason: true },
        again: { label: 'Find the contact again', to: 'seatContact' },
      },
      makeSafe,
    },
    seatHold: holdAir<Seat | Next>({
      phase,
      title: 'Hold the plug off its seat with {benchSetMid}',
      how: 'Then leave the regulator alone: the air stays as it is while the stem is turned.',
      held: 'seatTurn',
      notHeld: 'seatNotHeld',
      danger,
      makeSafe,
    }),
    seatNotHeld: {
      kind: 'question',
      phase,
      title: 'The air is not held, or the plug is too near its seat',
      how: 'Look for the leak with soap. The stem is not turned on such air.',
      choices: {
        again: { label: 'Set it again', to: 'seatHold' },
        leave: { label: 'Leave the plug so', to: next, reason: true },
      },
      makeSafe,
    },
    seatTurn: {
      kind: 'reading',
      phase,
      title: 'Turn the plug stem {seatTurns}, {turnDirection}',
      how: 'Never one with a bellows, and never one that is pinned. {seatTurnsSay}',
      why: 'How the plug closes gives the direction, not the air.',
      action: 'turnPlugStem',
      caution: {
        word: 'warning',
        hazard: 'The connector is between your hands and the spring.',
        consequence: 'If the air changes it drives the stem through them.',
        avoid: 'Nobody touches the regulator. Watch the gauge; let go at the first change.',
      },
      do: ['Loosen the lock nuts.', 'Turn the plug stem, counting.', 'Tighten the lock nuts.'],
      asks: [
        {
          name: 'seatTurnsMade',
          label: 'Turns made',
          type: 'quantity',
          dimension: 'turns',
          wanted: 'seatTurns',
        },
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'seatContact', sets: { signalAir: 'live', plug: 'seat unknown' } } },
      makeSafe,
    },
  };
}
