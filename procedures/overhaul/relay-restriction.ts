import { airAway, airOffControl, airOnAgain } from '../phases/air-off.ts';
import { airOffFrame } from '../phases/air-off-frame.ts';
import { BLOWN_CLEAR, blowAirSetDown } from '../phases/blow-down.ts';
import { bypassedAt, takeOverOnBypass } from '../phases/bypass-taken-over.ts';
import { yesNo } from '../phases/common.ts';
import {
  pressPlunger,
  putCoverOn,
  strokeProves,
  swingRelay,
  takeCoverOff,
} from '../phases/live-positioner.ts';
import { takeForStroke } from '../phases/own-air.ts';
import { supplyFirst } from '../phases/own-stroke.ts';
import { giveBackStroked } from '../phases/stroked-back.ts';
import { procedure } from '../vocabulary.ts';

const halt = 'haltStroke' as const;
const shut = 'haltIsolating' as const;

const BRING = [
  'Bring two gauges of the range of the supply: one for it, one for the output in question.',
  'Bring a soft stick for the flapper, a light and a white cloth.',
  'Bring the cleaning wire of this relay’s maker, its gaskets and a spare restriction.',
  'Bring your locks and tags, soap and eye protection.',
  'Bring a travel indicator and a source for the signal.',
] as const;

/** A relay whose restriction is plugged: its plunger first, two minutes with air on; opened only where that does not do it. */
export const relayRestriction = procedure({
  id: 'relay-restriction',
  title: 'Relay restriction cleaned',
  energyControl: airOffControl(
    'To clear the plugged restriction of a relay in a pneumatic positioner: by its clean-out plunger with air on, or opened with the air off. Then what plugged it is looked for.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'The plunger is pressed first and the flapper held afterwards, with one hand; where the plunger is, is drawn. After a stop the block valves are looked at again before the valve moves.',
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
    airOn: [
      { id: 'found', title: 'Which relay' },
      { id: 'plunger', title: 'Plunger' },
    ],
    airOff: { id: 'relay', title: 'Relay opened' },
    proof: 'Dirt and proof',
  }),
  takesOver: { bypassed: bypassedAt('takenOver') },
  steps: {
    ...takeForStroke({
      title: 'Get ready for the relay of {tag}',
      how: 'By the sheet: {relaysFitted}. A rising signal loads the {risingLoads}. An output gauge at zero though the flapper is on the nozzle that loads it: the restriction of that relay.',
      bring: BRING,
      next: 'supplyRead',
    }),
    ...takeOverOnBypass({ what: 'its relay', bring: BRING }),
    ...supplyFirst({ phase: 'found', next: 'coverOff', makeSafe: halt }),
    ...takeCoverOff({ phase: 'found', next: 'swingFound', leave: 'coverOn', makeSafe: halt }),
    swingFound: swingRelay({
      phase: 'found',
      title: 'Try that relay, as found',
      ways: {
        'dead low': { to: 'plungerThere' },
        answers: { to: 'relayAnswers' },
        'dead high': { to: 'nozzlePlugged' },
        'in part': { to: 'answersInPart' },
        'no supply': { to: 'supplyLost' },
      },
      makeSafe: halt,
    }),
    relayAnswers: {
      kind: 'question',
      phase: 'found',
      title: 'This relay answers: its restriction is free',
      how: 'Look at the other relay, the linkage and the input bellows before anything is taken apart.',
      choices: {
        other: { label: 'Try another relay, or its gauge again', to: 'coverOff' },
        close: { label: 'It is none of them: cover on, stroke it', to: 'coverOn' },
        bellows: {
          label: 'Cover on; the job on the input bellows comes next',
          to: 'coverOn',
          comesNext: 'positioner-bellows',
        },
        linkage: {
          label: 'Cover on; the job on the feedback linkage comes next',
          to: 'coverOn',
          comesNext: 'feedback-linkage',
        },
      },
      makeSafe: halt,
    },
    nozzlePlugged: {
      kind: 'question',
      phase: 'found',
      title: 'The output is full both ways: the nozzle, not the restriction',
      how: 'Full though the flapper is clear: the nozzle is plugged, or the relay sticks.',
      choices: {
        leave: {
          label: 'Cover on; the job on nozzle and flapper comes next',
          to: 'coverOn',
          reason: true,
          comesNext: 'nozzle-flapper',
        },
        again: { label: 'Try it again: the flapper was not clear', to: 'swingFound' },
        open: { label: 'The relay sticks: open it, air off', to: 'airKnown' },
      },
      makeSafe: halt,
    },
    answersInPart: {
      kind: 'question',
      phase: 'found',
      title: 'The relay answers in part',
      how: 'Half plugged, a dirty nozzle, a flapper that is not square, or a leak behind it. Soap the output tube and the gauge first.',
      choices: {
        plunger: { label: 'Press its plunger', to: 'plungerThere' },
        again: { label: 'Flapper held better, leak cured: try it again', to: 'swingFound' },
        leave: {
          label: 'Cover on; the job on nozzle and flapper comes next',
          to: 'coverOn',
          reason: true,
          comesNext: 'nozzle-flapper',
        },
      },
      makeSafe: halt,
    },
    supplyLost: {
      kind: 'question',
      phase: 'found',
      title: 'The supply is not there while the relay is tried',
      how: 'A supply that sags as soon as air flows is a filter, a cock or a tube, and no relay answers without it.',
      choices: {
        again: { label: 'Cock opened, supply back: read it again', to: 'supplyRead' },
        leave: {
          label: 'Cover on; the job on the air set comes next',
          to: 'coverOn',
          reason: true,
          comesNext: 'air-set',
        },
      },
      makeSafe: halt,
    },
    plungerThere: {
      kind: 'question',
      phase: 'plunger',
      title: 'Has this relay a clean-out plunger?',
      picture: 'relay',
      how: 'A small button on a spring, in line with the restriction. Two minutes with it, the valve on the bypass and its air on; without it the air goes off.',
      why: 'Cleared so, a plugged restriction wants no air off and nothing taken apart.',
      choices: {
        has: { label: 'It has one', to: 'pressPlunger' },
        none: { label: 'It has none: open it, air off', to: 'airKnown' },
      },
      makeSafe: halt,
    },
    pressPlunger: pressPlunger({
      phase: 'plunger',
      ways: {
        answers: { to: 'blowDown' },
        'still dead': { to: 'plungerAgain' },
        'tries used up': { to: 'plungerFails' },
        'no supply': { to: 'supplyLost' },
      },
      makeSafe: halt,
    }),
    plungerAgain: {
      kind: 'question',
      phase: 'plunger',
      title: 'The gauge does not swing yet',
      how: 'See that the plunger goes to its stop and comes back, and that the flapper lies square on the nozzle.',
      choices: {
        again: { label: 'Press it again', to: 'pressPlunger' },
        open: { label: 'It sticks or does nothing: open the relay, air off', to: 'airKnown' },
      },
      makeSafe: halt,
    },
    plungerFails: {
      kind: 'question',
      phase: 'plunger',
      title: 'The plunger does not clear it',
      how: 'More presses do not help, and no drill does. The restriction is taken out with the air off.',
      choices: {
        open: { label: 'Open the relay, air off', to: 'airKnown' },
        leave: {
          label: 'It cannot be opened now: cover on, give it back as it is',
          to: 'coverOn',
          reason: true,
        },
      },
      makeSafe: halt,
    },
    ...airAway({ next: 'relayOut' }),
    relayOut: {
      kind: 'reading',
      phase: 'relay',
      title: 'Take the restriction out, or the relay that holds it',
      how: 'On a clean cloth, away from the wind. A gasket that is turned shuts a port.',
      action: 'workOnAirParts',
      do: [
        'Mark relay and gasket on their block.',
        'Loosen its screws evenly.',
        'Take it off with its gasket.',
        'Remove the restriction.',
        'Look through it against a light.',
      ],
      asks: [
        {
          name: 'restrictionFound',
          label: 'The hole',
          type: 'choice',
          choices: [
            { value: 'plugged', label: 'Plugged, or nearly' },
            { value: 'free', label: 'Free and round' },
            { value: 'spoiled', label: 'Scratched, out of round or enlarged' },
          ],
        },
        yesNo('relaySound', 'Diaphragms, seats and springs of the relay sound, no oil in it'),
      ],
      judge: { rule: 'restrictionLook' },
      ways: {
        plugged: { to: 'cleanRestriction', sets: { clear: 'not looked at' } },
        free: { to: 'restrictionFree', sets: { clear: 'not looked at' } },
        spoiled: { to: 'restrictionNew', sets: { clear: 'not looked at' } },
        'relay not sound': { to: 'relayNew', sets: { clear: 'not looked at' } },
      },
      makeSafe: shut,
    },
    cleanRestriction: {
      kind: 'reading',
      phase: 'relay',
      title: 'Clean the restriction with its own wire',
      how: 'The wire that the maker names, by hand, from the narrow side. Where no such wire is there, a solvent that its seals stand. Never a drill, never a thicker wire: an enlarged restriction spoils the relay.',
      action: 'workOnAirParts',
      caution: BLOWN_CLEAR,
      do: [
        'Put the right wire through the hole.',
        'Let clean dry air blow through it.',
        'Look through it against a light.',
      ],
      asks: [yesNo('holeRound', 'The hole is round and bright, its edge sharp')],
      judge: { rule: 'allYes', with: { fields: 'holeRound' } },
      ways: {
        yes: { to: 'relayIn', sets: { clear: 'not looked at' } },
        no: { to: 'restrictionNew', sets: { clear: 'not looked at' } },
      },
      makeSafe: shut,
    },
    restrictionFree: {
      kind: 'question',
      phase: 'relay',
      title: 'The restriction is free',
      how: 'Then the dirt sits in its passage or its screen, or the relay does not move. Passages are blown through both ways.',
      choices: {
        found: { label: 'Passages and screen cleaned: put it together', to: 'relayIn' },
        relay: { label: 'The relay itself: renew it', to: 'relayNew' },
      },
      makeSafe: shut,
    },
    restrictionNew: {
      kind: 'question',
      phase: 'relay',
      title: 'This restriction is not used again',
      how: 'One of the same mark goes in, never another size.',
      choices: {
        fitted: { label: 'A new one of the same mark is in', to: 'relayIn' },
        leave: {
          label: 'None is here: put it together as it was, and order one',
          to: 'relayIn',
          reason: true,
        },
      },
      makeSafe: shut,
    },
    relayNew: {
      kind: 'question',
      phase: 'relay',
      title: 'The relay is renewed whole',
      how: 'Torn diaphragms and oil are not cured by cleaning a hole. Same type, same action, new gasket.',
      choices: {
        fitted: { label: 'A new or rebuilt relay is at hand', to: 'relayIn' },
        leave: { label: 'None is here: put the old one back, and order one', to: 'relayIn', reason: true },
      },
      makeSafe: shut,
    },
    relayIn: {
      kind: 'reading',
      phase: 'relay',
      title: 'Put restriction, gasket and relay back',
      how: 'The restriction seals on its seat, not by force: a slot that tears stays in for good.',
      action: 'workOnAirParts',
      do: [
        'Screw the restriction in until it seats.',
        'Fit the gasket with its holes on the ports.',
        'Fit the relay to its mark.',
        'Tighten its screws evenly.',
      ],
      asks: [yesNo('relayBackIn', 'Gasket on its ports, mark on mark, no part left over')],
      judge: { rule: 'allYes', with: { fields: 'relayBackIn' } },
      ways: {
        yes: { to: 'lineLook', sets: { clear: 'not looked at' } },
        no: { to: 'relayOut', sets: { clear: 'not looked at' } },
      },
      makeSafe: shut,
    },
    ...airOnAgain({ next: 'swingLeft' }),
    swingLeft: swingRelay({
      phase: 'proof',
      title: 'Try that relay again, as left',
      ways: {
        answers: { to: 'blowDown' },
        'dead low': { to: 'stillDead' },
        'dead high': { to: 'stillDead' },
        'in part': { to: 'stillDead' },
        'no supply': { to: 'stillDead' },
      },
      makeSafe: halt,
    }),
    stillDead: {
      kind: 'question',
      phase: 'proof',
      title: 'The relay still does not swing as it should',
      how: 'Empty: gasket on the wrong hole, or dirt again. Full: the nozzle. Both sag: a leak behind it, or no supply.',
      choices: {
        open: { label: 'Open it again, air off', to: 'airKnown' },
        again: { label: 'Supply or leak put right from outside: try again', to: 'swingLeft' },
        nozzle: {
          label: 'Full both ways; the job on nozzle and flapper comes next',
          to: 'blowDown',
          comesNext: 'nozzle-flapper',
        },
        leave: {
          label: 'It wants a new relay, and none is here: go on, give it back',
          to: 'blowDown',
          reason: true,
        },
      },
      makeSafe: halt,
    },
    ...blowAirSetDown({ phase: 'proof', next: 'coverOn', makeSafe: halt }),
    coverOn: putCoverOn({ phase: 'proof', next: 'strokeLeft', again: 'coverOff', makeSafe: halt }),
    ...strokeProves({ phase: 'proof', next: 'nextPerson', repair: 'coverOff', makeSafe: halt }),
    ...giveBackStroked(),
  },
});
