import { FULL_CYCLE, MID_STROKES } from '../cycle-verdict.ts';
import { airLimits } from '../phases/air-limits.ts';
import { HAS_ADJUSTER, STEM_MOVES, yesNo } from '../phases/common.ts';
import { giveBack, ISOLATE_AGAIN } from '../phases/give-back.ts';
import { isolate } from '../phases/isolate.ts';
import { ontoBypass } from '../phases/onto-bypass.ts';
import { readyRig } from '../phases/ready-rig.ts';
import { airAwayFor, handedTo, handsOn } from '../phases/taken-over.ts';
import { findContact } from '../phases/test-air.ts';
import { procedure } from '../vocabulary.ts';
import { setPlug } from './set-plug.ts';
import { strokeTables } from './stroke-tables.ts';
import { windSpring } from './wind-spring.ts';

/** Air may come on at any moment from here: what hands and tools do in the yoke is looked at afresh afterwards. */
const AIR_ON = { testAir: 'connected', signalAir: 'live', clear: 'not looked at' } as const;

const WORK_CHOICE = {
  kind: 'question',
  phase: 'asFound',
  title: 'What this valve wants now',
  how: 'The plug is set where contact or seat load is wrong; the adjuster is wound where both ends of the bench set are shifted.',
  makeSafe: 'ventNow',
} as const;

const WORK_CHOICES = {
  setPlug: {
    label: 'Set the plug on its seat',
    to: { by: 'stemMayTurn', ways: { yes: 'threadLook', no: 'mustNotTurn' } },
  },
  adjuster: {
    label: 'Wind the spring adjuster',
    to: { by: 'springHeldBy', ways: { adjuster: 'holdForAdjuster', case: 'noAdjuster' } },
    when: HAS_ADJUSTER,
  },
} as const;

/** Friction that no setting cures: the air comes off, the locks stay. */
const PACKING = { label: 'Friction too high: the packing', to: 'bleedForNext' } as const;

/** Operational check and stroke adjustment of a spring-and-diaphragm valve, on the bench or in the line. */
export const strokeCheck = procedure({
  id: 'stroke-check',
  title: 'Stroke check and plug adjustment',
  energyControl: {
    use: 'To check the stroke of a spring-and-diaphragm valve and to set its plug or its adjuster, in the line or on the bench. It opens neither case nor body.',
    isolation:
      'Loop in manual, flow on the bypass or the plant state agreed; both block valves and every air feed shut, each by its own point; sides drained, air vented, kept air vented at its own vent.',
    locks:
      'Who shuts a point hangs their own lock and tag there and writes its number; the same person takes it off. Another person takes over with a lock of their own on first. Local rules and the site lockout come first.',
    verification:
      'Each pressure on a gauge that was seen alive there and reads at most the stated limit, or by a vent watched twice; the process once more after it was shut in. Another person signs over it.',
  },
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-25',
      change: 'Each hold says when it is acceptable; one that goes back says what is done about it.',
    },
    {
      letter: 'C',
      date: '2026-11-25',
      change:
        'Read what can hurt before anything is shut. Name a watcher and write where loop and bypass stand. Shut a second feed by itself, look for kept air, read the drains again after they were shut in. Say how each energy was made safe. Take the locks off first, then tell people, then open.',
    },
    {
      letter: 'D',
      date: '2026-11-25',
      change:
        'A yes on the card of the second feed says that nothing else feeds air. A valve that is left as found though it is not inside wants the reason.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change:
        'Look for kept air on the other side of the actuator too, on a cylinder at its other end. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop. Friction that no setting cures may go on as the packing job, with the locks as they hang.',
    },
    {
      letter: 'F',
      date: '2026-11-26',
      change: 'Hands stay out of the yoke while the air is bled off.',
    },
    {
      letter: 'G',
      date: '2026-11-26',
      change: 'Where the case holds the spring, no card offers an adjuster.',
    },
    {
      letter: 'H',
      date: '2026-11-26',
      change:
        'The pointer is set under a warning of its own. Cards that gave no reason say why they stand open.',
    },
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
    { id: 'asFound', title: 'As found' },
    { id: 'setPlug', title: 'Set the plug' },
    { id: 'asLeft', title: 'As left' },
    { id: 'airAway', title: 'Air away' },
    { id: 'return', title: 'Return to service' },
  ],
  start: 'needs',
  safe: [
    'haltBypass',
    'haltIsolating',
    'ventNow',
    'haltAirAway',
    'haltReturn',
    'haltOnAir',
    'haltProcess',
    'haltUnsigned',
  ],
  steps: {
    ...readyRig({ next: { bench: 'benchRecord', line: 'consent' }, stopped: 'notStarted' }),
    ...ontoBypass({ next: 'shutInlet', notStarted: 'notStarted' }),
    ...isolate({ next: 'holdWork', giveBack: { bench: 'airOff', line: 'backCheck' } }),

    holdWork: {
      kind: 'hold',
      phase: 'isolate',
      title: 'Before plug stem or adjuster is turned',
      how: 'Work stops here. Each energy is shown safe by a reading. Somebody who did none of this work signs, or sends it back.',
      point: 'hold',
      criterion:
        'Each energy is absent, or shown safe by a reading inside its limit or by a vent without flow, tried twice.',
      evidence: [
        'supplyAir',
        'secondSupply',
        'signalAir',
        'spring',
        'processInlet',
        'processOutlet',
        'bypass',
        'trappedAir',
        'lockUpAir',
        'oppositeAir',
        'temperature',
        'weight',
        'residue',
        'electrical',
        'commands',
        'safetyFunction',
        'closure',
      ],
      allows: [
        'connectTestAir',
        'strokeByTestAir',
        'turnPlugStem',
        'windAdjusterOnTestAir',
        'setIndicatorOnTestAir',
      ],
      signed: { to: 'connectAir', sets: { workSignOff: 'given' } },
      sentBack: { to: 'haltIsolating' },
      makeSafe: 'haltIsolating',
    },

    connectAir: {
      kind: 'reading',
      phase: 'asFound',
      title: 'Connect one regulator and its gauge to the case',
      how: 'One source, in your hand. At most {testAirLimit} goes on this case: {testAirBecause}.',
      action: 'connectTestAir',
      caution: STEM_MOVES,
      do: ['Set the regulator to zero.', 'Connect it to the case.', 'Fit the dial indicator to the stem.'],
      asks: [yesNo('peopleClear', 'Tools out of the yoke, people clear and told')],
      judge: { rule: 'allYes', with: { fields: 'peopleClear' } },
      ways: { yes: { to: 'contactFound', sets: AIR_ON }, no: { to: 'ventNow', sets: AIR_ON } },
      makeSafe: 'ventNow',
    },
    contactFound: findContact({
      phase: 'asFound',
      title: 'Find the contact with the seat, as found',
      rule: 'contact',
      ways: {
        found: { to: 'asFoundCycle' },
        'does not move': { to: 'doesNotMove' },
        'above limit': { to: 'ventFirst' },
      },
      makeSafe: 'ventNow',
    }),
    doesNotMove: {
      kind: 'question',
      phase: 'asFound',
      title: 'The stem does not move',
      how: 'Look, hands off: gauge alive, tube open, handwheel in neutral, stop or block in the yoke, packing dry and tight.',
      choices: {
        again: { label: 'Found and put right from outside: try again', to: 'contactFound' },
        packing: PACKING,
        stop: { label: 'Stop: this valve wants an overhaul', to: 'ventNow', reason: true },
      },
      makeSafe: 'ventNow',
    },
    ...strokeTables(
      {
        cycle: 'asFoundCycle',
        strokes: 'asFoundStrokes',
        verdict: 'asFoundVerdict',
        phase: 'asFound',
        danger: 'ventFirst',
        makeSafe: 'ventNow',
      },
      { rows: FULL_CYCLE, strokes: MID_STROKES },
    ),
    asFoundVerdict: {
      kind: 'judgement',
      phase: 'asFound',
      title: 'What the stroke says, as found',
      judge: { rule: 'cycle', with: { cycle: 'asFoundCycle', strokes: 'asFoundStrokes' } },
      ways: {
        inside: { to: 'chooseWork' },
        outside: { to: 'chooseWorkOutside' },
        'too close': { to: 'chooseWorkOutside' },
        'does not repeat': { to: 'notRepeating' },
        'not enough readings': { to: 'asFoundCycle' },
      },
      makeSafe: 'ventNow',
    },
    notRepeating: {
      kind: 'question',
      phase: 'asFound',
      title: 'The stroke does not repeat',
      how: 'Likely first: packing too tight or dry. Then a bent or rough stem, a slack connector, a regulator that does not bleed.',
      choices: {
        again: { label: 'Read the cycle again', to: 'asFoundCycle' },
        goOn: { label: 'Go on all the same', to: 'chooseWorkOutside', reason: true },
        packing: PACKING,
        leave: { label: 'Leave it for an overhaul', to: 'airOff', reason: true },
      },
      makeSafe: 'ventNow',
    },
    chooseWork: {
      ...WORK_CHOICE,
      choices: { ...WORK_CHOICES, leave: { label: 'Leave it as found', to: 'airOff' } },
    },
    chooseWorkOutside: {
      ...WORK_CHOICE,
      choices: {
        ...WORK_CHOICES,
        packing: PACKING,
        leave: { label: 'Leave it as found though it is not inside', to: 'airOff', reason: true },
      },
    },

    ...setPlug({
      choose: 'chooseWork',
      contact: 'contactFound',
      stuck: 'doesNotMove',
      asLeft: 'asLeftCycle',
      leave: 'airOff',
      danger: 'ventFirst',
      stop: 'ventNow',
    }),
    ...windSpring({
      choose: 'chooseWork',
      contact: 'contactFound',
      asLeft: 'asLeftCycle',
      leave: 'airOff',
      danger: 'ventFirst',
      stop: 'ventNow',
    }),

    ...strokeTables(
      {
        cycle: 'asLeftCycle',
        strokes: 'asLeftStrokes',
        verdict: 'asLeftVerdict',
        phase: 'asLeft',
        danger: 'ventFirst',
        makeSafe: 'ventNow',
      },
      { rows: FULL_CYCLE, strokes: MID_STROKES },
    ),
    asLeftVerdict: {
      kind: 'judgement',
      phase: 'asLeft',
      title: 'What the stroke says, as left',
      judge: { rule: 'cycle', with: { cycle: 'asLeftCycle', strokes: 'asLeftStrokes' } },
      ways: {
        inside: { to: 'airOff' },
        outside: { to: 'asLeftNotInside' },
        'too close': { to: 'asLeftNotInside' },
        'does not repeat': { to: 'asLeftNotInside' },
        'not enough readings': { to: 'asLeftCycle' },
      },
      makeSafe: 'ventNow',
    },
    asLeftNotInside: {
      kind: 'question',
      phase: 'asLeft',
      title: 'As left is not inside its limits',
      how: 'Too close for the gauge is no fault of the valve: a finer gauge may tell. What does not repeat is packing first.',
      choices: {
        again: { label: 'Read the cycle again', to: 'asLeftCycle' },
        work: { label: 'Adjust again', to: 'chooseWork' },
        packing: PACKING,
        leave: { label: 'Leave it so', to: 'airOff', reason: true },
      },
      makeSafe: 'ventNow',
    },

    ...airAwayFor({ phase: 'airAway', next: 'toPackingNow', ventNow: 'ventNow' }),
    toPackingNow: {
      kind: 'question',
      phase: 'airAway',
      title: 'The packing grips: does it go on now?',
      how: 'Friction that no setting cures is the packing first. Every lock stays where it hangs, and what was read goes along.',
      choices: {
        on: handsOn('Packing is at hand: go on as the packing job', 'toPacking'),
        back: {
          label: 'Not now: it goes back so',
          to: 'finalCheck',
          reason: true,
          comesNext: 'packing-renewal',
        },
      },
      makeSafe: 'haltAirAway',
    },
    toPacking: handedTo({
      phase: 'airAway',
      title: 'It goes on as the packing job',
      procedure: 'packing-renewal',
      as: 'isolated',
    }),
    ...airLimits({ connect: 'connectAgain', signAgain: 'holdWork', giveBack: 'disconnectAir' }),
    connectAgain: {
      kind: 'reading',
      phase: 'asFound',
      title: 'Check that one regulator and its gauge are on the case',
      action: 'connectTestAir',
      caution: STEM_MOVES,
      do: ['Set the regulator to zero.', 'Check the joint at the case.'],
      asks: [yesNo('peopleClear', 'Tools out of the yoke, people clear and told')],
      judge: { rule: 'allYes', with: { fields: 'peopleClear' } },
      ways: { yes: { to: 'whereOn', sets: AIR_ON }, no: { to: 'ventNow', sets: AIR_ON } },
      makeSafe: 'ventNow',
    },
    whereOn: {
      kind: 'question',
      phase: 'asFound',
      title: 'Where the work goes on',
      choices: {
        contact: { label: 'The contact, as found', to: 'contactFound' },
        cycle: { label: 'The cycle, as found', to: 'asFoundCycle' },
        work: { label: 'Setting plug or adjuster', to: 'chooseWork' },
        asLeft: { label: 'The cycle, as left', to: 'asLeftCycle' },
      },
      makeSafe: 'ventNow',
    },

    ...giveBack({ done: 'done', isolateAgain: ISOLATE_AGAIN }),
    done: { kind: 'end', phase: 'return', title: 'The valve is back', closes: 'done' },
    notStarted: {
      kind: 'end',
      phase: 'ready',
      title: 'Stopped before anything was changed',
      closes: 'stopped',
    },
  },
});
