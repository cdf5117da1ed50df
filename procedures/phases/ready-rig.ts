import type { Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';

type Own =
  | 'needs'
  | 'knowEnergies'
  | 'energyUnknown'
  | 'rigGauges'
  | 'rigDiffers'
  | 'rigShutIn'
  | 'rigHold'
  | 'rigFalls'
  | 'rigBleed'
  | 'rigDoesNotBleed';

/** How long the rig's dead end is watched, in seconds. */
const DEAD_END_S = 20;

interface Ends<Next extends string> {
  readonly next: { readonly bench: Next; readonly line: Next };
  readonly stopped: Next;
}

/** Gathers what is needed and tries the rig by itself: a rig that sticks or leaks makes a good valve look bad. */
export function readyRig<const Next extends string>(
  ends: Ends<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return { ...gather(ends), ...energies(ends), ...gauges(ends), ...deadEnd(ends) } as Readonly<
    Record<Own, Step<Own | Next>>
  >;
}

const phase = 'ready';
const rig = { type: 'quantity', dimension: 'pressure' } as const;

function gather<Next extends string>({
  stopped,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  const makeSafe = stopped;
  return {
    needs: {
      kind: 'instruction',
      phase,
      title: 'Get ready for {tag}',
      how: '{airAction}, {failPosition} on loss of air; air moves the stem {airMoves}. Process flow would move {rangeMoved} of its range by {rangeMovedBy}; without flow the bench set alone counts.',
      why: 'With flow the plug force would shift one end; without it the bench set alone counts.',
      do: [
        'Read the maker’s manual for this valve: it outranks this card.',
        'Bring a regulator that bleeds, its gauge, a second gauge and a dial indicator.',
        'Bring your locks and tags, soap, spanners for the lock nuts, face shield and gloves.',
        'Have the site permit in hand: local rules and the site lockout come first.',
      ],
      shows: [
        'benchSetLow',
        'benchSetHigh',
        'rangeMoved',
        'rangeMovedBy',
        'testAirLimit',
        'travel',
        'stemThread',
      ],
      next: { to: 'knowEnergies' },
      makeSafe,
    },
  };
}

/** Before anything is shut: each energy with its size, what it does and how it is controlled. */
function energies<Next extends string>({
  stopped,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  const makeSafe = stopped;
  return {
    knowEnergies: {
      kind: 'reading',
      phase,
      title: 'Read what can hurt on {tag}, before anything is shut',
      how: 'From the sheet. What it does not say you find out first, and write down.',
      why: 'Whoever isolates knows each energy, how big it is and how it is controlled.',
      shows: [
        'energySupply',
        'energySecond',
        'energySignal',
        'energyKept',
        'energySpring',
        'energyInlet',
        'energyOutlet',
        'energyTemperature',
        'energyWeight',
        'energyResidue',
        'energyElectrical',
        'energyCommands',
        'energySafety',
      ],
      asks: [
        {
          name: 'energiesFound',
          label: 'What the sheet does not say, with its unit',
          type: 'text',
          optional: true,
        },
        yesNo('energiesKnown', 'I know each of them, its size and how it is controlled'),
      ],
      judge: { rule: 'energiesKnown' },
      ways: {
        known: { to: 'rigGauges' },
        'not known': { to: 'energyUnknown' },
        'size missing': { to: 'energyUnknown' },
      },
      makeSafe,
    },
    energyUnknown: {
      kind: 'question',
      phase,
      title: 'An energy is not known, or its size is not',
      how: 'Missing on the sheet: {energiesMissing}. Find it on the plate, in the manual or from the operator.',
      choices: {
        again: { label: 'Found: read the list again', to: 'knowEnergies' },
        stop: { label: 'Stop', to: stopped },
      },
      makeSafe,
    },
  };
}

function gauges<Next extends string>({
  stopped,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  const makeSafe = stopped;
  return {
    rigGauges: {
      kind: 'reading',
      phase,
      title: 'Read both gauges of the rig on one pressure',
      how: 'Rig in your hand, connected to nothing. Set {benchSetMid}.',
      why: 'Two gauges that agree are believed.',
      asks: [
        { ...rig, name: 'rigGaugePa', label: 'Signal gauge', gauge: 'signalGauge' },
        { ...rig, name: 'rigCheckPa', label: 'Second gauge', gauge: 'checkGauge' },
      ],
      judge: { rule: 'gaugesAgree', with: { one: 'rigGaugePa', other: 'rigCheckPa' } },
      ways: { agree: { to: 'rigShutIn' }, differ: { to: 'rigDiffers' } },
      makeSafe,
    },
    rigDiffers: {
      kind: 'question',
      phase,
      title: 'The two gauges do not agree',
      how: 'One of them is wrong by more than both may be. Nothing is measured until it is known which.',
      choices: {
        again: { label: 'Read both again', to: 'rigGauges' },
        stop: { label: 'Stop, and open the job again with other gauges', to: stopped },
      },
      makeSafe,
    },
  };
}

function deadEnd<Next extends string>({
  next,
  stopped,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  const makeSafe = stopped;
  return {
    rigShutIn: {
      kind: 'wait',
      phase,
      title: 'Shut the rig in at its dead end and watch it',
      how: 'Cap the end, shut the regulator, then wait.',
      waitS: DEAD_END_S,
      next: { to: 'rigHold' },
      makeSafe,
    },
    rigHold: {
      kind: 'reading',
      phase,
      title: 'Read whether the dead end held',
      asks: [
        { ...rig, name: 'rigStartPa', label: 'Before the wait', gauge: 'signalGauge' },
        { ...rig, name: 'rigEndPa', label: 'After it', gauge: 'signalGauge' },
      ],
      judge: { rule: 'steady', with: { first: 'rigStartPa', again: 'rigEndPa' } },
      ways: { steady: { to: 'rigBleed' }, falls: { to: 'rigFalls' } },
      makeSafe,
    },
    rigFalls: {
      kind: 'question',
      phase,
      title: 'The rig leaks',
      how: 'Soap every joint of hose and gauge. A leaking rig looks like a leaking diaphragm.',
      choices: {
        again: { label: 'Joints tightened: watch it again', to: 'rigShutIn' },
        stop: { label: 'Stop', to: stopped },
      },
      makeSafe,
    },
    rigBleed: {
      kind: 'reading',
      phase,
      title: 'Set the regulator back and watch the gauge follow it down',
      why: 'A regulator that does not bleed holds the air up and looks like a sticking valve.',
      asks: [yesNo('bleeds', 'The gauge follows the regulator down to zero')],
      judge: { rule: 'allYes', with: { fields: 'bleeds' } },
      ways: { yes: { to: { by: 'place', ways: next } }, no: { to: 'rigDoesNotBleed' } },
      makeSafe,
    },
    rigDoesNotBleed: {
      kind: 'question',
      phase,
      title: 'The regulator does not bleed',
      how: 'Take one that does: this one would imitate hysteresis.',
      choices: {
        again: { label: 'Another regulator is on: try it', to: 'rigGauges' },
        stop: { label: 'Stop', to: stopped },
      },
      makeSafe,
    },
  };
}
