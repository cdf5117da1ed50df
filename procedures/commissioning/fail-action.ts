import { anywhereControl, anywhereFrame, giveBackAnywhere, takeAnywhere } from '../phases/bench-air.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { putRight } from '../phases/finding.ts';
import type { ChoiceField, QuantityField } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const makeSafe = 'haltStroke' as const;

function went(name: string, label: string): ChoiceField {
  return {
    name,
    label,
    type: 'choice',
    choices: [
      { value: 'shut', label: 'To shut, all the way' },
      { value: 'open', label: 'To open, all the way' },
      { value: 'stays', label: 'It stayed where it stood' },
      { value: 'part way', label: 'Part way, or it crept' },
    ],
  };
}

function seconds(name: string, label: string): QuantityField {
  return { name, label, type: 'quantity', dimension: 'time', optional: true };
}

/** What a valve does without signal, without air, and how long it takes. */
export const failAction = procedure({
  id: 'fail-action',
  title: 'Fail action and stroking time',
  energyControl: anywhereControl(
    'To show where a valve goes when signal or supply fails, how long a stroke takes each way, and whether lock-up, tank and solenoid do their part.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'After a stop the block valves are looked at again before the valve moves; what is not right on the way back is decided on a card of its own.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'It is done on the bench as well. Lock-up and tank are watched on a card of their own, and the solenoid is tripped on one of its own.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'On the bench let off both ends of a cylinder before a hose comes off. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change:
        'The times are held against the limits of the sheet, where it has them. A stroke that is slower is decided on a card of its own.',
    },
    { letter: 'F', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'G',
      date: '2026-11-26',
      change:
        'Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back.',
    },
  ],
  ...anywhereFrame(
    [
      { id: 'time', title: 'Stroking time' },
      { id: 'fail', title: 'Fail action' },
    ],
    ['haltNoAir'],
  ),
  steps: {
    ...takeAnywhere({
      title: 'Get ready to take air and signal from {tag}',
      how: 'By its sheet it {failWanted} without air.',
      bring: ['Bring a stop watch.', 'Bring a signal source, where the operator does not set the output.'],
      next: 'strokeTime',
    }),
    strokeTime: {
      kind: 'reading',
      phase: 'time',
      title: 'Step the output from end to end, each way, and take the time',
      how: 'The operator or the source steps it. From the step to the last of the travel, each way. Watch the stem: it should run evenly to its end.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        seconds('strokeOpenS', 'Time to open'),
        seconds('strokeShutS', 'Time to shut'),
        yesNo('runsEvenly', 'It runs evenly, all the way to both ends'),
      ],
      shows: ['strokeOpenMax', 'strokeShutMax'],
      judge: { rule: 'strokeTimes' },
      ways: {
        'even, in time': { to: 'signalLost' },
        uneven: { to: 'strokeUneven' },
        'too slow': { to: 'strokeSlow' },
      },
      makeSafe,
    },
    strokeSlow: {
      kind: 'question',
      phase: 'time',
      title: 'It is slower than its sheet allows',
      how: 'At most, opening: {strokeOpenMax}; shutting: {strokeShutMax}. Slow one way: a plugged vent, a choked booster or relay. Slow both ways: a supply that sags, a filter or tube that is choked, a stem that drags.',
      choices: {
        again: { label: 'Step it again', to: 'strokeTime' },
        goOn: { label: 'Write it down, and try the fail action', to: 'signalLost', reason: true },
        leave: { label: 'Give it back, and find the fault', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    strokeUneven: {
      kind: 'question',
      phase: 'time',
      title: 'It does not run evenly to its ends',
      how: 'Jumps: packing. Stops short: supply, spring, travel stop, handwheel. Slow one way: a plugged vent, a choked booster or relay.',
      choices: {
        goOn: { label: 'Write it down, and try the fail action', to: 'signalLost', reason: true },
        again: { label: 'Step it again', to: 'strokeTime' },
        leave: { label: 'Give it back, and find the fault', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    signalLost: {
      kind: 'reading',
      phase: 'fail',
      title: 'Take the signal away at half travel',
      how: 'The operator or the source takes the signal to nothing; the supply stays on.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [went('wentWithoutSignal', 'Where it went')],
      judge: { rule: 'failAction', with: { field: 'wentWithoutSignal' } },
      ways: {
        'as the sheet says': { to: 'supplyLost' },
        otherwise: { to: 'signalOther' },
        'not all the way': { to: 'signalOther' },
      },
      makeSafe,
    },
    signalOther: {
      kind: 'question',
      phase: 'fail',
      title: 'Without signal it does not do what the sheet says of no air',
      how: 'A reverse-acting positioner or a converter with a fail setting may drive it the other way: the loop sheet decides. Part way: bench set, packing or a positioner that holds air.',
      onCylinder: {
        how: 'A reverse-acting positioner or a converter with a fail setting may drive it the other way: the loop sheet decides. Part way: packing, rod seal, or a positioner that holds air.',
      },
      choices: {
        meant: { label: 'It is meant so: go on', to: 'supplyLost', reason: true },
        again: { label: 'Try it again', to: 'signalLost' },
        leave: { label: 'It is wrong: give it back, tell the operator', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    supplyLost: {
      kind: 'reading',
      phase: 'fail',
      title: 'Take the supply away at half travel: {supplyShutAt}',
      how: 'Shut it, then let off what stands behind it. A lock-up relay holds the valve, a tank strokes it once more: both are meant. By the sheet it {failWanted}; lock-up: {sheetLockUp}, tank: {sheetTank}.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        {
          name: 'supplyTag',
          label: 'Tag on the cock',
          type: 'text',
          mustBe: 'supplyPoint',
          when: { fact: 'place', is: 'line' },
        },
        went('wentWithoutSupply', 'Where it went'),
        seconds('failStrokeS', 'Time it took'),
      ],
      judge: { rule: 'failAction', with: { field: 'wentWithoutSupply' } },
      ways: {
        'as the sheet says': { to: 'keptAirDoes', sets: { clear: 'not looked at' } },
        otherwise: { to: 'failsWrong', sets: { clear: 'not looked at' } },
        'not all the way': { to: 'failsWrong', sets: { clear: 'not looked at' } },
      },
      makeSafe: 'haltNoAir',
    },
    keptAirDoes: {
      kind: 'reading',
      phase: 'fail',
      title: 'Watch what lock-up relay and tank make of it, where it has them',
      how: 'Five minutes with the supply off, hands out of the yoke: what creeps now will not be there when it is needed.',
      why: 'Stored air is what moves or holds the valve once its supply has failed.',
      asks: [
        {
          name: 'keptAirDid',
          label: 'Lock-up relay and tank',
          type: 'choice',
          choices: [
            { value: 'none', label: 'It has neither' },
            { value: 'held', label: 'Lock-up: the stem stands where it stood, without creeping' },
            { value: 'stroked', label: 'Tank: it made the whole stroke, and stays there' },
            { value: 'crept', label: 'It creeps, or stopped part way' },
          ],
        },
      ],
      judge: { rule: 'oneOf', with: { field: 'keptAirDid', good: 'none,held,stroked' } },
      ways: { yes: { to: 'airAgain' }, no: { to: 'keptAirFails' } },
      makeSafe: 'haltNoAir',
    },
    keptAirFails: {
      kind: 'question',
      phase: 'fail',
      title: 'Lock-up or tank does not do its part',
      how: 'Soap first: tube, tank, drain and check valve. Then the relay, set by its manual, and the actuator itself. The operator counts on it: say so now.',
      choices: {
        again: { label: 'Watched too short, or a joint made tight: watch it again', to: 'keptAirDoes' },
        known: { label: 'Operator told; give the air back', to: 'airAgain', reason: true },
      },
      makeSafe: 'haltNoAir',
    },
    failsWrong: {
      kind: 'question',
      phase: 'fail',
      title: 'It does not fail as its sheet says',
      how: 'Part way: spring, bench set, packing, or air that is shut in. The other way: the air action on the sheet or the build is wrong. The operator has to know now.',
      onCylinder: {
        how: 'Part way: packing, rod seal, or air that is shut in. The other way: the air action on the sheet or the build is wrong. The operator has to know now.',
      },
      choices: {
        known: { label: 'Operator told; give the air back', to: 'airAgain', reason: true },
      },
      makeSafe: 'haltNoAir',
    },
    haltNoAir: {
      kind: 'question',
      phase: 'fail',
      title: 'Stopped: the supply is shut, the air may come back',
      how: 'Hands out of the yoke. Nothing is locked, and nothing is opened.',
      choices: { goOn: { label: 'Go on: give the air back', to: 'airAgain' } },
      makeSafe: 'haltNoAir',
    },
    airAgain: {
      kind: 'reading',
      phase: 'fail',
      title: 'Look that everybody is clear before the air comes back',
      why: 'The stem runs to where the signal wants it as soon as air is there.',
      asks: [yesNo('toolsOut', 'Hands and tools out of the yoke, people clear and told')],
      judge: { rule: 'allYes', with: { fields: 'toolsOut' } },
      ways: { yes: { to: 'openSupply', sets: { clear: 'clear' } }, no: { to: 'notClearForAir' } },
      makeSafe: 'haltNoAir',
    },
    notClearForAir: putRight({
      phase: 'fail',
      title: 'Somebody is in the way of the air that comes back',
      how: 'The stem runs to where its signal asks. Whoever is in the way is waited for.',
      again: ['Out of the yoke, clear and told: look again', 'airAgain'],
      stop: ['Leave the supply shut and stop', 'haltNoAir'],
      makeSafe: 'haltNoAir',
    }),
    openSupply: {
      kind: 'reading',
      phase: 'fail',
      title: 'Bring the supply back, slowly: {supplyBackAt}',
      how: 'It goes to where the signal asks. A lock-up relay is reset as its maker says.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [yesNo('followsAgain', 'It follows its signal again')],
      judge: { rule: 'allYes', with: { fields: 'followsAgain' } },
      ways: { yes: { to: 'solenoidTrip' }, no: { to: 'notFollowing' } },
      makeSafe,
    },
    notFollowing: {
      kind: 'question',
      phase: 'fail',
      title: 'It does not follow its signal again',
      how: 'A lock-up relay that is not reset, a cock that is not wide open, a solenoid that has dropped out. Hands stay out of the yoke.',
      choices: {
        again: { label: 'Found: look again', to: 'openSupply' },
        leave: { label: 'Give it back as it is, and find the fault', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    solenoidTrip: {
      kind: 'reading',
      phase: 'fail',
      title: 'Trip the solenoid, where it has one, by what trips it in service',
      how: 'Whoever owns the trip agrees first, and trips it from where it is tripped: the coil pulled by hand proves the coil alone. On the bench its voltage is taken away.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        {
          name: 'solenoid',
          label: 'Solenoid',
          type: 'choice',
          choices: [
            { value: 'none', label: 'It has none' },
            { value: 'tripped', label: 'Tripped: it went to its fail position, and came back when reset' },
            { value: 'not tried', label: 'Its owner does not want it tripped today' },
            { value: 'failed', label: 'Tripped: it did not' },
          ],
        },
        seconds('tripStrokeS', 'Time from the trip to the end of the travel'),
      ],
      judge: { rule: 'oneOf', with: { field: 'solenoid', good: 'none,tripped,not tried' } },
      ways: { yes: { to: 'nextPerson' }, no: { to: 'solenoidFails' } },
      makeSafe,
    },
    solenoidFails: {
      kind: 'question',
      phase: 'fail',
      title: 'The solenoid does not trip the valve',
      how: 'A trip that does not trip is no trip: the operator and whoever owns the trip have to know now.',
      choices: {
        again: { label: 'Have it tripped again', to: 'solenoidTrip' },
        leave: {
          label: 'Told; give the valve back as they decide; the job on its solenoid comes next',
          to: 'nextPerson',
          reason: true,
          comesNext: 'solenoid',
        },
      },
      makeSafe,
    },
    ...giveBackAnywhere(),
  },
});
