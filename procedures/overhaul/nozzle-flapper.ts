import { airAway, airOffControl, airOnAgain } from '../phases/air-off.ts';
import { airOffFrame } from '../phases/air-off-frame.ts';
import { BLOWN_CLEAR, blowAirSetDown } from '../phases/blow-down.ts';
import { bypassedAt, takeOverOnBypass } from '../phases/bypass-taken-over.ts';
import { yesNo } from '../phases/common.ts';
import {
  putCoverOn,
  setZeroAndSpan,
  strokeProves,
  swingRelay,
  takeCoverOff,
  VALVE_JUMPS,
} from '../phases/live-positioner.ts';
import { takeForStroke } from '../phases/own-air.ts';
import { supplyFirst } from '../phases/own-stroke.ts';
import { giveBackStroked } from '../phases/stroked-back.ts';
import { procedure } from '../vocabulary.ts';

const halt = 'haltStroke' as const;
const shut = 'haltIsolating' as const;
const HANDS = { clear: 'not looked at' } as const;

const BRING = [
  'Bring two gauges of the range of the supply, for supply and output, and a travel indicator.',
  'Bring a soft stick, a soft wood pick, a light, a magnifying glass and a clean cloth.',
  'Bring the nozzle wire of its maker, a flapper and gaskets.',
  'Bring your locks and tags, soap and eye protection.',
] as const;

/** Nozzle and flapper of a pneumatic positioner: cleaned with air on, or taken out with it off; then zero and span. */
export const nozzleFlapper = procedure({
  id: 'nozzle-flapper',
  title: 'Nozzle and flapper of the positioner',
  energyControl: airOffControl(
    'To clean the nozzle and set the flapper of a pneumatic positioner square, air on for what only air shows, air off for what is taken out.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'Turns of the nozzle are written into the card as it comes out; after a stop the block valves are looked at again before the valve moves.',
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
    {
      letter: 'E',
      date: '2026-11-26',
      change:
        'Plain cards that are done in one go may be entered together, each a line of its own; what is not as it should be is answered on its own card. Cards that gave no reason say why they stand open.',
    },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back, and before circuits are switched on again. Eye protection on where the nozzle is blown through; nozzle and flapper are entered out and in by themselves.',
    },
  ],
  ...airOffFrame({
    airOn: [
      { id: 'found', title: 'As found' },
      { id: 'nozzle', title: 'Nozzle, air on' },
    ],
    airOff: { id: 'flapper', title: 'Flapper, air off' },
    proof: 'Zero, span and proof',
  }),
  takesOver: { bypassed: bypassedAt('takenOver') },
  steps: {
    ...takeForStroke({
      title: 'Get ready for nozzle and flapper of {tag}',
      how: 'By the sheet: {relaysFitted}. A gap as thin as a hair decides the whole stroke: nothing is scraped, nothing is bent by guess.',
      bring: BRING,
      next: 'supplyRead',
    }),
    ...takeOverOnBypass({ what: 'nozzle and flapper', bring: BRING }),
    ...supplyFirst({ phase: 'found', next: 'coverOff', makeSafe: halt }),
    ...takeCoverOff({ phase: 'found', next: 'swingFound', leave: 'coverOn', makeSafe: halt }),
    swingFound: swingRelay({
      phase: 'found',
      title: 'Try the nozzle, as found',
      ways: {
        'dead high': { to: 'flapperSeen' },
        answers: { to: 'flapperSeen' },
        'in part': { to: 'flapperSeen' },
        'dead low': { to: 'restrictionFirst' },
        'no supply': { to: 'supplyOut' },
      },
      makeSafe: halt,
    }),
    restrictionFirst: {
      kind: 'question',
      phase: 'found',
      title: 'The output is empty both ways: the restriction, not the nozzle',
      how: 'No air comes through the restriction to build up behind a covered nozzle. A flapper that does not reach it looks the same.',
      choices: {
        leave: {
          label: 'Cover on; the job on the restriction comes next',
          to: 'coverOn',
          reason: true,
          comesNext: 'relay-restriction',
        },
        look: { label: 'The flapper does not reach its nozzle: look at it', to: 'flapperSeen' },
      },
      makeSafe: halt,
    },
    flapperSeen: {
      kind: 'reading',
      phase: 'found',
      title: 'Look at nozzle and flapper against the light',
      picture: 'flapper',
      how: 'With the glass, the flapper brought to the nozzle by the signal: light that stays on one side shows a flapper that is not square.',
      action: 'workAtLivePositioner',
      caution: VALVE_JUMPS,
      do: [
        'Look at the rim of the nozzle.',
        'Look at the flapper from the side.',
        'Look at its pivot as the signal moves it.',
      ],
      asks: [
        yesNo('flapperSquare', 'The flapper is straight and meets the nozzle square'),
        yesNo('nozzleClean', 'The nozzle is clean, its rim flat, no oil film on the flapper'),
        yesNo('pivotTight', 'The pivot has no play and moves freely'),
      ],
      judge: { rule: 'flapperLook' },
      ways: {
        dirty: { to: 'cleanNozzle' },
        bent: { to: 'airKnown' },
        loose: { to: 'airKnown' },
        sound: { to: 'flapperSound' },
      },
      makeSafe: halt,
    },
    flapperSound: {
      kind: 'question',
      phase: 'found',
      title: 'Nozzle and flapper look sound',
      how: 'Full both ways all the same: dirt inside the nozzle, or a relay that sticks. Answering: linkage, zero or span.',
      choices: {
        set: { label: 'It answers: check zero and span', to: 'zeroSpan' },
        bellows: {
          label: 'It answers; check zero and span, the job on the input bellows comes next',
          to: 'zeroSpan',
          comesNext: 'positioner-bellows',
        },
        clean: { label: 'Full both ways: clean the nozzle', to: 'cleanNozzle' },
        out: { label: 'Take them out, air off', to: 'airKnown' },
      },
      makeSafe: halt,
    },
    cleanNozzle: {
      kind: 'instruction',
      phase: 'nozzle',
      title: 'Clean the nozzle with the air on',
      how: 'The air blows the dirt out. A soft wood pick for the rim, the maker’s own wire for the bore. Steel scratches the rim, and a scratched rim never seals again.',
      action: 'workAtLivePositioner',
      caution: VALVE_JUMPS,
      do: [
        'Hold the flapper clear with the soft stick.',
        'Move the wood pick once round the rim.',
        'Put the right wire through the bore, where it is plugged.',
        'Remove the film from the flapper with a clean cloth.',
      ],
      next: { to: 'swingLeft' },
      makeSafe: halt,
    },
    swingLeft: swingRelay({
      phase: 'nozzle',
      title: 'Try the nozzle again',
      ways: {
        answers: { to: 'zeroSpan' },
        'dead high': { to: 'nozzleStill' },
        'dead low': { to: 'nozzleStill' },
        'in part': { to: 'nozzleStill' },
        'no supply': { to: 'supplyOut' },
      },
      makeSafe: halt,
    }),
    nozzleStill: {
      kind: 'question',
      phase: 'nozzle',
      title: 'It does not answer as it should yet',
      how: 'Empty both ways now: dirt was pushed into the restriction. Full: the bore is still shut, or the relay sticks.',
      choices: {
        out: { label: 'Take nozzle and flapper out, air off', to: 'airKnown' },
        again: { label: 'Clean once more', to: 'cleanNozzle' },
        leave: {
          label: 'Give it back; the job on the relay comes next',
          to: 'blowDown',
          reason: true,
          comesNext: 'relay-restriction',
        },
      },
      makeSafe: halt,
    },
    ...airAway({ next: 'flapperOut' }),
    flapperOut: {
      kind: 'reading',
      phase: 'flapper',
      title: 'Take flapper and nozzle out',
      how: 'The nozzle comes out only where it is screwed in: zero comes back to its turns.',
      action: 'workOnAirParts',
      caution: BLOWN_CLEAR,
      do: [
        'Mark flapper and pivot.',
        'Take the flapper off.',
        'Count the turns of the nozzle as it comes out.',
        'Let clean dry air blow through the nozzle.',
        'Look at the rim with the glass.',
      ],
      asks: [
        {
          name: 'nozzleTurns',
          label: 'Turns of the nozzle; blank where it stayed in',
          type: 'quantity',
          dimension: 'turns',
          optional: true,
        },
        yesNo('rimFlat', 'Rim flat and without a nick, bore round and free'),
        yesNo('flapperStraight', 'Flapper straight and smooth where it meets the nozzle'),
        yesNo('pivotSound', 'Pivot and its spring without play'),
      ],
      judge: { rule: 'allYes', with: { fields: 'rimFlat flapperStraight pivotSound' } },
      ways: { yes: { to: 'flapperIn', sets: HANDS }, no: { to: 'flapperNew', sets: HANDS } },
      makeSafe: shut,
    },
    flapperNew: {
      kind: 'question',
      phase: 'flapper',
      title: 'Nozzle, flapper or pivot is not sound',
      how: 'A bent flapper is renewed, not straightened in the fingers; a nicked nozzle is renewed, never filed.',
      choices: {
        fitted: { label: 'New parts of the same type are at hand', to: 'flapperIn' },
        leave: {
          label: 'None are here: put the old ones back and order them',
          to: 'flapperIn',
          reason: true,
        },
      },
      makeSafe: shut,
    },
    flapperIn: {
      kind: 'reading',
      phase: 'flapper',
      title: 'Fit nozzle and flapper, square to each other',
      picture: 'flapper',
      action: 'workOnAirParts',
      do: [
        'Screw the nozzle in by the turns that were counted.',
        'Fit the flapper to its mark.',
        'Look against the light as they meet.',
      ],
      asks: [yesNo('meetSquare', 'They meet square all round, and the flapper swings freely')],
      judge: { rule: 'allYes', with: { fields: 'meetSquare' } },
      ways: { yes: { to: 'lineLook', sets: HANDS }, no: { to: 'flapperOut', sets: HANDS } },
      makeSafe: shut,
    },
    ...airOnAgain({ next: 'swingLeft' }),
    zeroSpan: setZeroAndSpan({ phase: 'proof', next: 'blowDown', makeSafe: halt }),
    ...blowAirSetDown({ phase: 'proof', next: 'coverOn', makeSafe: halt }),
    coverOn: putCoverOn({ phase: 'proof', next: 'strokeLeft', again: 'coverOff', makeSafe: halt }),
    ...strokeProves({ phase: 'proof', next: 'nextPerson', repair: 'coverOff', makeSafe: halt }),
    ...giveBackStroked(),
  },
});
