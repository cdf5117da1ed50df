import { airAway, airOffControl, airOnAgain } from '../phases/air-off.ts';
import { airOffFrame } from '../phases/air-off-frame.ts';
import { BLOWN_CLEAR } from '../phases/blow-down.ts';
import { bypassedAt, takeOverOnBypass } from '../phases/bypass-taken-over.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { strokeProves } from '../phases/live-positioner.ts';
import { takeForStroke } from '../phases/own-air.ts';
import { giveBackStroked } from '../phases/stroked-back.ts';
import type { Step } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const halt = 'haltStroke' as const;
const shut = 'haltIsolating' as const;
const HANDS = { clear: 'not looked at' } as const;

const BRING = [
  'Bring a coil of the same voltage and class, a repair set and gaskets.',
  'Bring a meter fit for the area, a supply gauge, a signal gauge and a travel indicator.',
  'Have somebody at hand who may work on this circuit.',
  'Have the override of the trip in hand, where it has one.',
  'Bring your locks and tags, soap and caps for the tubes.',
] as const;

/** The solenoid in the air of a valve: looked at and felt, then coil and air part with circuit and air off, then tried both ways. */
export const solenoid = procedure({
  id: 'solenoid',
  title: 'Solenoid valve mended',
  energyControl: airOffControl(
    'To mend a solenoid valve in the air of a control valve. Its circuit is locked off and tried dead by whoever may; its air part is opened with the air off.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'Wires that were taken off the coil are connected again and the housing is shut on a card of its own; the coil comes off its core before the air part is opened. After a stop the block valves are looked at again.',
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
      change: 'The core is looked at whatever the coil said; a coil is never switched on off its tube.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change: 'It may go on where a job that looked for the fault left the valve on its bypass.',
    },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'Plain cards that are done in one go may be entered together, each a line of its own; what is not as it should be is answered on its own card. Cards that gave no reason say why they stand open.',
    },
    {
      letter: 'G',
      date: '2026-11-26',
      change:
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back, and before circuits are switched on again. Eye protection on where ports are blown through; core and seats are entered by themselves.',
    },
  ],
  ...airOffFrame({
    airOn: [{ id: 'found', title: 'As found' }],
    airOff: { id: 'work', title: 'Coil and air part' },
    proof: 'Proof',
  }),
  takesOver: { bypassed: bypassedAt('takenOver') },
  steps: {
    ...takeForStroke({
      title: 'Get ready for the solenoid of {tag}',
      how: 'By the sheet: {energyElectrical}. Trip: {sheetTrip}. Without air {tag} {failWanted}.',
      bring: BRING,
      next: 'solenoidSeen',
    }),
    ...takeOverOnBypass({ what: 'its solenoid', bring: BRING }),
    solenoidSeen: {
      kind: 'reading',
      phase: 'found',
      title: 'Look at the solenoid, covers shut, hands off its terminals',
      how: 'Its exhaust tells most: it blows on and on where the seat leaks, it is still and plugged where paint or insects shut it.',
      why: 'Much of what ails it shows without a tool, before anything is switched.',
      asks: [
        yesNo('exhaustOpen', 'Exhaust free, with its screen, and silent'),
        yesNo('resetStands', 'Manual reset and override stand as they should'),
        yesNo('portsRight', 'Supply, output and exhaust on their marked ports'),
      ],
      judge: { rule: 'allYes', with: { fields: 'exhaustOpen resetStands portsRight' } },
      ways: { yes: { to: 'solenoidTried' }, no: { to: 'solenoidOdd' } },
      makeSafe: halt,
    },
    solenoidOdd: {
      kind: 'question',
      phase: 'found',
      title: 'Something is not as it should be from outside',
      how: 'A plugged exhaust holds the valve where it is; a reset that stands wrong keeps it tripped.',
      choices: {
        tried: { label: 'Exhaust cleared or reset put right: try it', to: 'solenoidTried' },
        open: { label: 'It blows, or ports are wrong: air and circuit off', to: 'airKnown' },
      },
      makeSafe: halt,
    },
    solenoidTried: trySolenoid({
      phase: 'found',
      title: 'Have it switched off and on, as found',
      works: 'solenoidWorks',
      fails: 'airKnown',
    }),
    solenoidWorks: {
      kind: 'question',
      phase: 'found',
      title: 'The solenoid works',
      how: 'Then what is slow or still lies before it or behind it: supply, tubes, positioner.',
      why: 'A part that works is not taken apart.',
      choices: {
        leave: { label: 'Not the solenoid: stroke it and give it back', to: 'strokeLeft' },
        again: { label: 'Try it again', to: 'solenoidTried' },
        supply: {
          label: 'Stroke it and give it back; the job on the air set comes next',
          to: 'strokeLeft',
          comesNext: 'air-set',
        },
        open: { label: 'It hums or runs hot: air and circuit off', to: 'airKnown' },
      },
      makeSafe: halt,
    },
    ...airAway({ next: 'coilRead' }),
    coilRead: {
      kind: 'reading',
      phase: 'work',
      title: 'Read the coil and its wires, the circuit dead',
      how: 'By whoever may, tried dead at the terminals first. Resistance against the plate of the coil; water and rust in the housing.',
      action: 'workOnDeadWires',
      caution: {
        word: 'danger',
        hazard: 'A circuit that was not tried dead at these very terminals may be live.',
        consequence: 'It kills, and its spark lights gas.',
        avoid: 'Meter proved on a known source, then these terminals, then the known source again.',
      },
      do: [
        'Show the terminals dead.',
        'Disconnect one wire of the coil.',
        'Read the coil.',
        'Look at terminals and housing.',
      ],
      asks: [
        {
          name: 'coilFound',
          label: 'The coil',
          type: 'choice',
          choices: [
            { value: 'right', label: 'Right by its plate' },
            { value: 'open', label: 'Open' },
            { value: 'shorted', label: 'Shorted, burnt or to earth' },
          ],
        },
      ],
      judge: { rule: 'oneOf', with: { field: 'coilFound', good: 'right' } },
      ways: { yes: { to: 'airPart', sets: HANDS }, no: { to: 'coilNew', sets: HANDS } },
      makeSafe: shut,
    },
    coilNew: {
      kind: 'reading',
      phase: 'work',
      title: 'Have a new coil fitted',
      how: 'Same voltage, same kind of current, same class for the area. Low-power trips want their own coil.',
      action: 'workOnDeadWires',
      do: ['Check the plate of the new coil.', 'Disconnect the old coil.'],
      asks: [yesNo('coilRight', 'Right voltage, current and class by its plate')],
      judge: { rule: 'allYes', with: { fields: 'coilRight' } },
      ways: { yes: { to: 'airPart', sets: HANDS }, no: { to: 'coilMissing', sets: HANDS } },
      makeSafe: shut,
    },
    coilMissing: {
      kind: 'question',
      phase: 'work',
      title: 'No right coil is fitted',
      how: 'A valve with a dead solenoid stands at its fail position: the operator has to know.',
      choices: {
        again: { label: 'The right one is here: fit it', to: 'coilNew' },
        leave: { label: 'None is here: close it, operator told', to: 'coilShut', reason: true },
      },
      makeSafe: shut,
    },
    airPart: {
      kind: 'reading',
      phase: 'work',
      title: 'Open the air part and look',
      how: 'The coil slides off its core tube with its wires dead; switched on off its tube it burns out. Spring and core fall out: a cloth under them.',
      why: 'A core that sticks burns a coil for alternating current: it is looked at whatever the coil said.',
      action: 'workOnAirParts',
      caution: BLOWN_CLEAR,
      do: [
        'Take the coil off the core tube.',
        'Mark the body on its ports.',
        'Take the core out with its spring.',
        'Look at core, seats and seals.',
        'Let clean dry air blow through the ports.',
      ],
      asks: [yesNo('airPartSound', 'Core free and bright, seats and seals whole, or renewed from the set')],
      judge: { rule: 'allYes', with: { fields: 'airPartSound' } },
      ways: { yes: { to: 'airPartIn', sets: HANDS }, no: { to: 'airPartNew', sets: HANDS } },
      makeSafe: shut,
    },
    airPartNew: {
      kind: 'question',
      phase: 'work',
      title: 'The air part is not sound',
      how: 'A core that sticks sticks again: seals and spring are renewed together, from one set.',
      choices: {
        renewed: { label: 'A whole new solenoid of the same type goes in', to: 'airPartIn' },
        leave: {
          label: 'None is here: it goes back as it was, one is ordered',
          to: 'airPartIn',
          reason: true,
        },
      },
      makeSafe: shut,
    },
    airPartIn: {
      kind: 'reading',
      phase: 'work',
      title: 'Put core, spring and seals back',
      action: 'workOnAirParts',
      do: [
        'Fit seals, core and spring in their order.',
        'Tighten its screws evenly.',
        'Check that the exhaust has its screen.',
      ],
      asks: [yesNo('solenoidShut', 'Together, ports to their marks, exhaust free')],
      judge: { rule: 'allYes', with: { fields: 'solenoidShut' } },
      ways: { yes: { to: 'coilShut', sets: HANDS }, no: { to: 'airPart', sets: HANDS } },
      makeSafe: shut,
    },
    coilShut: {
      kind: 'reading',
      phase: 'work',
      title: 'Have the coil put back, its wires connected and the housing shut',
      how: 'By whoever may. A housing that is not tight lets water in, and in a gas area the flame out.',
      action: 'workOnDeadWires',
      do: [
        'Put the coil on its core tube.',
        'Connect its wires.',
        'Tighten the terminals.',
        'Close the housing on its seal.',
      ],
      asks: [yesNo('housingShut', 'Coil on, wires tight, housing and gland shut')],
      judge: { rule: 'allYes', with: { fields: 'housingShut' } },
      ways: { yes: { to: 'lineLook', sets: HANDS }, no: { to: 'housingOpen', sets: HANDS } },
      makeSafe: shut,
    },
    housingOpen: {
      kind: 'question',
      phase: 'work',
      title: 'Coil, wires or housing are not right',
      how: 'An open housing is not switched on. A seal, a gland or a screw that is missing is fetched.',
      choices: { again: { label: 'Part fetched, put right: close it', to: 'coilShut' } },
      makeSafe: shut,
    },
    ...airOnAgain({ next: 'solenoidLeft' }),
    solenoidLeft: trySolenoid({
      phase: 'proof',
      title: 'Have it switched off and on, as left',
      works: 'strokeLeft',
      fails: 'solenoidStill',
    }),
    solenoidStill: {
      kind: 'question',
      phase: 'proof',
      title: 'It still does not do both',
      how: 'No click: circuit. A click and no air: core or ports. Slow: exhaust or a thin tube.',
      choices: {
        open: { label: 'Air and circuit off again', to: 'airKnown' },
        again: { label: 'Put right from outside: try it again', to: 'solenoidLeft' },
        leave: { label: 'Leave it so; operator told', to: 'nextPerson', reason: true },
      },
      makeSafe: halt,
    },
    ...strokeProves({ phase: 'proof', next: 'nextPerson', repair: 'airKnown', makeSafe: halt }),
    ...giveBackStroked(),
  },
});

function trySolenoid<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly works: Id;
  readonly fails: Id;
}): Step<Id | 'haltStroke'> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: step.title,
    how: 'From the control room. Off: {tag} {failWanted}. On again: it goes back to its signal.',
    action: 'strokeByOwnAir',
    caution: STEM_MOVES,
    do: ['Have the solenoid switched off.', 'Watch where the valve goes.', 'Have it switched on again.'],
    asks: [
      yesNo('offGoes', 'Off: it clicks, and the valve goes where the sheet says'),
      yesNo('onGoes', 'On: it clicks, and the valve comes back to its signal'),
    ],
    judge: { rule: 'allYes', with: { fields: 'offGoes onGoes' } },
    ways: { yes: { to: step.works }, no: { to: step.fails } },
    makeSafe: 'haltStroke',
  };
}
