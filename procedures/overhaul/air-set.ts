import { airAway, airOffControl, airOnAgain } from '../phases/air-off.ts';
import { airOffFrame } from '../phases/air-off-frame.ts';
import { blowAirSetDown } from '../phases/blow-down.ts';
import { bypassedAt, takeOverOnBypass } from '../phases/bypass-taken-over.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { strokeProves } from '../phases/live-positioner.ts';
import { takeForStroke } from '../phases/own-air.ts';
import { giveBackStroked } from '../phases/stroked-back.ts';
import type { Step, Way } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const halt = 'haltStroke' as const;
const shut = 'haltIsolating' as const;
const HANDS = { clear: 'not looked at' } as const;

const BRING = [
  'Bring filter element, bowl seal, drain and regulator for this air set.',
  'Bring a supply gauge, a signal gauge and a travel indicator.',
  'Bring your locks and tags, soap, a white cloth and eye protection.',
] as const;

/** The air set of a valve: drain, filter, regulator and set pressure, on a gauge of its own. */
export const airSet = procedure({
  id: 'air-set',
  title: 'Air set: filter, regulator, drain',
  energyControl: airOffControl(
    'To put the air set of a valve right: drain and filter, the regulator, and its pressure on a gauge of its own. The set pressure is tried with the air on, the bowl is opened with it off.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'The bowl is emptied at its drain and silent before it is unscrewed; the regulator spring is let off before the air comes back. After a stop the block valves are looked at again.',
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
      change: 'It may go on where a job that looked for the fault left the valve on its bypass.',
    },
    { letter: 'E', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back, and before circuits are switched on again.',
    },
  ],
  ...airOffFrame({
    airOn: [{ id: 'found', title: 'As found' }],
    airOff: { id: 'work', title: 'Filter and regulator' },
    proof: 'Proof',
  }),
  takesOver: { bypassed: bypassedAt('takenOver') },
  steps: {
    ...takeForStroke({
      title: 'Get ready for the air set of {tag}',
      how: 'Supply wanted: {supplyWantedLow} to {supplyWantedHigh}, {supplyWantedBecause}.',
      bring: BRING,
      next: 'supplyFound',
    }),
    ...takeOverOnBypass({ what: 'its air set', bring: BRING }),
    supplyFound: supplyTwice({
      phase: 'found',
      title: 'Read the supply at rest and while the valve moves, as found',
      ways: {
        holds: { to: 'blowDown' },
        sags: { to: 'blowDown' },
        low: { to: 'setFound' },
        high: { to: 'setFound' },
      },
    }),
    setFound: {
      kind: 'reading',
      phase: 'found',
      title: 'Set the regulator on the gauge of its own',
      how: 'Between {supplyWantedLow} and {supplyWantedHigh}, {supplyWantedBecause}. Come up to it from below: down first where it stood too high. Never more than {supplyWantedHigh}.',
      action: 'setAirSet',
      caution: STEM_MOVES,
      do: [
        'Loosen the lock nut of the regulator.',
        'Set the pressure on the supply gauge.',
        'Tighten the lock nut.',
      ],
      asks: [yesNo('setsAndStays', 'It sets, and stays where it was set')],
      judge: { rule: 'allYes', with: { fields: 'setsAndStays' } },
      ways: { yes: { to: 'supplyFound' }, no: { to: 'doesNotSet' } },
      makeSafe: halt,
    },
    doesNotSet: {
      kind: 'question',
      phase: 'found',
      title: 'The regulator does not set, or creeps',
      how: 'It creeps up: its seat is dirty. It does not come up: the header is low, the filter is full, or a cock is part shut. Read ahead of it.',
      choices: {
        open: { label: 'Filter and regulator: drain first, then air off', to: 'blowDown' },
        header: {
          label: 'The header is low: give it back, tell whoever keeps the air',
          to: 'nextPerson',
          reason: true,
        },
      },
      makeSafe: halt,
    },
    ...blowAirSetDown({
      phase: 'found',
      next: 'openIt',
      makeSafe: halt,
      dirty: { label: 'Go on: filter and bowl are looked at' },
    }),
    openIt: {
      kind: 'question',
      phase: 'found',
      title: 'Is the air set opened?',
      how: 'A supply that sags while the valve moves wants its filter; one that creeps wants its regulator.',
      choices: {
        open: { label: 'Open it, air off', to: 'airKnown' },
        sound: { label: 'It holds and the drain is clean: leave it shut', to: 'strokeLeft' },
      },
      makeSafe: halt,
    },
    ...airAway({ next: 'bowlOut' }),
    bowlOut: {
      kind: 'reading',
      phase: 'work',
      title: 'Open the filter and look',
      how: 'A plastic bowl that is crazed bursts: it is renewed. Only soapy water cleans it, solvents craze it.',
      why: 'The gauge stands behind the regulator: with that shut or stuck, it reads zero and the bowl keeps its pressure.',
      action: 'workOnAirParts',
      caution: {
        word: 'warning',
        hazard: 'A bowl keeps the line pressure behind a regulator that is shut or stuck.',
        consequence: 'It is thrown into the face.',
        avoid: 'Drain open and silent before the bowl is turned; eye protection on.',
      },
      do: [
        'Open the drain of the bowl.',
        'Wait until nothing comes.',
        'Take the bowl off.',
        'Take the element out.',
        'Loosen the regulator spring by its screw.',
        'Take the valve of the regulator out.',
        'Look at bowl, drain, seat and diaphragm.',
      ],
      asks: [
        yesNo('bowlEmptied', 'The drain was silent before the bowl was turned'),
        yesNo('bowlSound', 'Bowl without cracks or crazing, drain works'),
        yesNo('regulatorClean', 'Regulator: seat and diaphragm clean and whole'),
      ],
      judge: { rule: 'allYes', with: { fields: 'bowlSound regulatorClean' } },
      ways: { yes: { to: 'elementIn', sets: HANDS }, no: { to: 'airSetNew', sets: HANDS } },
      makeSafe: shut,
    },
    airSetNew: {
      kind: 'question',
      phase: 'work',
      title: 'Bowl, drain or regulator is not sound',
      how: 'A bowl that is cracked or crazed never goes back under air: without a new one the air stays off.',
      choices: {
        fitted: { label: 'A new part of the same type is at hand', to: 'elementIn' },
        dirty: { label: 'It was dirt: cleaned, and sound', to: 'elementIn' },
        leave: {
          label: 'No regulator or drain is here: the bowl is sound, parts are ordered',
          to: 'elementIn',
          reason: true,
        },
      },
      makeSafe: shut,
    },
    elementIn: {
      kind: 'reading',
      phase: 'work',
      title: 'Fit regulator, element, seal and bowl',
      how: 'With the regulator spring free the air comes back at zero and is set from below.',
      action: 'workOnAirParts',
      do: [
        'Fit the valve of the regulator, or the new regulator.',
        'Check the arrow for the way of the air.',
        'Leave the regulator spring free.',
        'Fit the new element, the right way up.',
        'Fit the bowl on a sound seal.',
        'Shut the drain.',
      ],
      asks: [yesNo('bowlBack', 'Regulator spring free, bowl and guard on, drain shut, arrow right')],
      judge: { rule: 'allYes', with: { fields: 'bowlBack' } },
      ways: { yes: { to: 'lineLook', sets: HANDS }, no: { to: 'bowlOut', sets: HANDS } },
      makeSafe: shut,
    },
    ...airOnAgain({ next: 'setLeft' }),
    setLeft: {
      kind: 'instruction',
      phase: 'proof',
      title: 'Set the pressure on the gauge of its own',
      how: 'Between {supplyWantedLow} and {supplyWantedHigh}, {supplyWantedBecause}; from below. Never more than {supplyWantedHigh}.',
      action: 'setAirSet',
      caution: STEM_MOVES,
      do: ['Set the pressure on the supply gauge.', 'Tighten the lock nut.', 'Watch whether it creeps.'],
      next: { to: 'supplyLeft' },
      makeSafe: halt,
    },
    supplyLeft: supplyTwice({
      phase: 'proof',
      title: 'Read the supply at rest and while the valve moves, as left',
      ways: {
        holds: { to: 'strokeLeft' },
        sags: { to: 'supplyStill' },
        low: { to: 'supplyStill' },
        high: { to: 'supplyStill' },
      },
    }),
    supplyStill: {
      kind: 'question',
      phase: 'proof',
      title: 'The supply is still not as it should be',
      how: 'High: set it down first. Sagging with a new element: tube too thin, cock part shut, header low.',
      choices: {
        set: { label: 'Set it again', to: 'setLeft' },
        open: { label: 'Open it again, air off', to: 'airKnown' },
        tubes: {
          label: 'Leave it so; the job on the tubing comes next',
          to: 'strokeLeft',
          reason: true,
          comesNext: 'tubing',
        },
        leave: { label: 'Leave it so; it comes from ahead of the air set', to: 'strokeLeft', reason: true },
      },
      makeSafe: halt,
    },
    ...strokeProves({ phase: 'proof', next: 'nextPerson', repair: 'supplyLeft', makeSafe: halt }),
    ...giveBackStroked(),
  },
});

function supplyTwice<const Id extends string>({
  phase,
  title,
  ways,
}: {
  readonly phase: string;
  readonly title: string;
  readonly ways: Readonly<Record<'holds' | 'sags' | 'low' | 'high', Way<Id>>>;
}): Step<Id | 'haltStroke'> {
  return {
    kind: 'reading',
    phase,
    title,
    how: 'Supply gauge behind the regulator. Have the signal go from {signalLow} to {signalHigh} meanwhile and read the lowest. It sags by at most {supplySag}.',
    action: 'strokeByOwnAir',
    caution: STEM_MOVES,
    asks: [
      {
        name: 'supplyStillPa',
        label: 'Supply, nothing moving',
        type: 'quantity',
        dimension: 'pressure',
        gauge: 'supplyGauge',
      },
      {
        name: 'supplyMovingPa',
        label: 'Supply, lowest while it moves',
        type: 'quantity',
        dimension: 'pressure',
        gauge: 'supplyGauge',
      },
    ],
    judge: { rule: 'supplyHolds' },
    ways,
    makeSafe: 'haltStroke',
  };
}
