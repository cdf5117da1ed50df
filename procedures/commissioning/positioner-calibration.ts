import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { OWN_AIR_FRONT, OWN_AIR_SAFE_AT, ownAirControl, takeForStroke } from '../phases/own-air.ts';
import { readSupply, strokeBySignal, supplyWrong } from '../phases/own-stroke.ts';
import { giveBackStroked, OWN_AIR_RETURN } from '../phases/stroked-back.ts';
import type { QuantityField } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const makeSafe = 'haltStroke' as const;

function onGauge(name: string, label: string): QuantityField {
  return { name, label, type: 'quantity', dimension: 'pressure', gauge: 'signalGauge', optional: true };
}

function percent(name: string, label: string): QuantityField {
  return { name, label, type: 'quantity', dimension: 'percent', optional: true };
}

/** Zero, span, dead band, gain and the gauges of a positioner, in its place. */
export const positionerCalibration = procedure({
  id: 'positioner-calibration',
  title: 'Positioner calibration',
  energyControl: ownAirControl(
    'To set zero and span of a positioner in its place, and to see its dead band, its step and its gauges. A pneumatic positioner is set with its cover off and its air on: hands stay clear of the yoke, and a touched flapper makes the valve jump.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'After a stop the block valves are looked at again before the valve moves; what is not right on the way back is decided on a card of its own.',
    },
  ],
  phases: [
    ...OWN_AIR_FRONT,
    { id: 'air', title: 'Air' },
    { id: 'asFound', title: 'As found' },
    { id: 'set', title: 'Setting' },
    { id: 'asLeft', title: 'As left' },
    OWN_AIR_RETURN,
  ],
  start: 'needs',
  safe: OWN_AIR_SAFE_AT,
  steps: {
    ...takeForStroke({
      title: 'Get ready to calibrate the positioner of {tag}',
      how: 'Rising signal loads {risingLoads} and {risingSignal} the valve.',
      bring: [
        'Bring a signal source for this positioner, or have the operator on the radio.',
        'Bring a supply gauge, a gauge for the output and a travel indicator.',
        'Bring a small screwdriver: nothing else goes near nozzle or flapper.',
      ],
      next: 'supplyRead',
    }),
    supplyRead: readSupply({
      phase: 'air',
      ways: {
        inside: { to: 'linkage' },
        low: { to: 'supplyOut' },
        high: { to: 'supplyOut' },
        'no range': { to: 'linkage' },
      },
      makeSafe,
    }),
    supplyOut: supplyWrong({
      phase: 'air',
      again: 'supplyRead',
      goOn: 'linkage',
      leave: 'nextPerson',
      makeSafe,
    }),
    linkage: {
      kind: 'reading',
      phase: 'asFound',
      title: 'Look at feedback linkage and mounting, hands off',
      how: 'Slack here is hysteresis that no screw cures.',
      asks: [
        yesNo('linkageTight', 'Arm, pin and bracket without slack, spring of the pin on'),
        yesNo('linkageSquare', 'The arm stands level at half travel'),
      ],
      judge: { rule: 'allYes', with: { fields: 'linkageTight linkageSquare' } },
      ways: { yes: { to: 'strokeFound' }, no: { to: 'linkageSlack' } },
      makeSafe,
    },
    linkageSlack: {
      kind: 'question',
      phase: 'asFound',
      title: 'The linkage is slack or stands askew',
      how: 'It is put right with the air off: that is an isolated job of its own. Calibrating over it hides it until the next shift.',
      choices: {
        leave: { label: 'Give it back, and open that job', to: 'nextPerson', reason: true },
        goOn: { label: 'Read it as found all the same', to: 'strokeFound', reason: true },
      },
      makeSafe,
    },
    strokeFound: strokeBySignal({
      phase: 'asFound',
      title: 'Stroke it by its signal, as found',
      ways: {
        inside: { to: 'deadBand' },
        outside: { to: 'howItIsSet' },
        'too close': { to: 'howItIsSet' },
        'not all read': { to: 'foundNotRead' },
      },
      makeSafe,
    }),
    foundNotRead: {
      kind: 'question',
      phase: 'asFound',
      title: 'Not every setting was read',
      choices: {
        again: { label: 'Read the cycle again', to: 'strokeFound' },
        set: { label: 'It does not reach them: set it', to: 'howItIsSet' },
      },
      makeSafe,
    },
    howItIsSet: {
      kind: 'question',
      phase: 'set',
      title: 'How this positioner is set',
      how: 'All points off alike is zero; more off with travel is span; off in the middle only is linkage or cam, and no screw cures it.',
      choices: {
        set: {
          label: 'Set zero and span',
          to: {
            by: 'positioner',
            ways: { pneumatic: 'coverOff', electropneumatic: 'byKeys', none: 'byKeys' },
          },
        },
        leave: { label: 'Leave it as found', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    coverOff: {
      kind: 'reading',
      phase: 'set',
      title: 'Open the cover of the positioner, air on, hands out of the yoke',
      how: 'From here on every touch may move the valve. Nobody else is near it.',
      action: 'openPneumaticCover',
      caution: {
        word: 'warning',
        hazard: 'A touched flapper makes the valve jump at once.',
        consequence: 'A finger in the yoke is crushed.',
        avoid: 'One hand at the screw, the other at your side; look where both are.',
      },
      asks: [yesNo('coverOffClear', 'Cover off, nobody in the yoke')],
      judge: { rule: 'allYes', with: { fields: 'coverOffClear' } },
      ways: { yes: { to: 'setZeroSpan' }, no: { to: makeSafe } },
      makeSafe,
    },
    setZeroSpan: {
      kind: 'reading',
      phase: 'set',
      title: 'Set zero at {signalLow}, then span at {signalHigh}, in turn',
      how: 'One moves the other: go round until both stand. Zero is the travel end where the valve begins to move.',
      action: 'openPneumaticCover',
      caution: STEM_MOVES,
      asks: [yesNo('zeroSpanStand', 'Both ends stand without another touch')],
      judge: { rule: 'allYes', with: { fields: 'zeroSpanStand' } },
      ways: { yes: { to: 'coverOn' }, no: { to: 'doesNotSet' } },
      makeSafe,
    },
    coverOn: {
      kind: 'instruction',
      phase: 'set',
      title: 'Put the cover back before it is read',
      how: 'A cover that is off lets wind and dirt at the flapper.',
      do: ['Fit the cover.', 'Tighten its screws.'],
      next: { to: 'strokeLeft' },
      makeSafe,
    },
    byKeys: {
      kind: 'reading',
      phase: 'set',
      title: 'Set both ends by the keys of the positioner',
      how: 'By its manual. A run of self-setting strokes the valve from end to end by itself: people clear for all of it. Its electric cover stays shut.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [yesNo('zeroSpanStand', 'It says that it is set, and shows no fault')],
      judge: { rule: 'allYes', with: { fields: 'zeroSpanStand' } },
      ways: { yes: { to: 'strokeLeft' }, no: { to: 'doesNotSet' } },
      makeSafe,
    },
    doesNotSet: {
      kind: 'question',
      phase: 'set',
      title: 'Zero or span does not stand',
      how: 'Air leaking at the bellows, a partly plugged restriction, a worn nozzle, a slack linkage, a supply too low. Setting over a fault makes two.',
      choices: {
        again: { label: 'Try once more', to: 'howItIsSet' },
        leave: { label: 'Cover on; give it back, and find the fault', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    strokeLeft: strokeBySignal({
      phase: 'asLeft',
      title: 'Stroke it by its signal, as left',
      ways: {
        inside: { to: 'deadBand' },
        outside: { to: 'leftOutside' },
        'too close': { to: 'deadBand' },
        'not all read': { to: 'leftNotRead' },
      },
      makeSafe,
    }),
    leftNotRead: {
      kind: 'question',
      phase: 'asLeft',
      title: 'Not every setting was read as left',
      choices: {
        again: { label: 'Read the cycle again', to: 'strokeLeft' },
        set: { label: 'It does not reach them: set it again', to: 'howItIsSet' },
      },
      makeSafe,
    },
    leftOutside: {
      kind: 'question',
      phase: 'asLeft',
      title: 'As left it is still outside',
      how: 'Ends right and the middle off: linkage, cam or characteristic. Apart up and down: packing, slack or gain.',
      choices: {
        again: { label: 'Set it again', to: 'howItIsSet' },
        leave: { label: 'Leave it so', to: 'deadBand', reason: true },
      },
      makeSafe,
    },
    deadBand: {
      kind: 'reading',
      phase: 'asLeft',
      title: 'Find the smallest change of signal that moves the stem',
      how: 'At the middle, after a move up: creep the signal up until the indicator stirs, then down until it stirs back. The way between is the dead band.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        percent('deadBandUpPercent', 'Change up that moves it, in percent of the signal'),
        percent('deadBandDownPercent', 'Change back down that moves it back'),
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'stepIt' } },
      makeSafe,
    },
    stepIt: {
      kind: 'reading',
      phase: 'asLeft',
      title: 'Step the signal by a tenth, up and back, and watch how it settles',
      how: 'Swings: gain too high, or a booster that is too lively. Creeps: gain too low, tight packing, a starved supply.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        {
          name: 'stepSettles',
          label: 'How it settles',
          type: 'choice',
          choices: [
            { value: 'at once', label: 'At once, or with one small overshoot' },
            { value: 'swings', label: 'It swings more than twice' },
            { value: 'creeps', label: 'It creeps, or stops and jumps' },
          ],
        },
      ],
      judge: { rule: 'oneOf', with: { field: 'stepSettles', good: 'at once' } },
      ways: {
        yes: { to: { by: 'actuator', ways: { diaphragm: 'nextPerson', piston: 'cylinderGauges' } } },
        no: { to: 'stepBad' },
      },
      makeSafe,
    },
    stepBad: {
      kind: 'question',
      phase: 'asLeft',
      title: 'It swings or creeps',
      how: 'Gain is set by the manual of the positioner, a little at a time, and stepped again.',
      choices: {
        again: { label: 'Gain set: step it again', to: 'stepIt' },
        leave: { label: 'Leave it so', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    cylinderGauges: {
      kind: 'reading',
      phase: 'asLeft',
      title: 'Read both gauges of the cylinder, moving and at rest',
      how: 'The loaded side stands higher while it moves. At rest they are alike only where nothing pushes the stem: plug, flow and weight want a difference.',
      why: 'A side that stays at zero though it should be loaded is that relay, most often its restriction.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        onGauge('topMovingPa', 'Top, while the loaded side drives it'),
        onGauge('bottomMovingPa', 'Bottom, at that moment'),
        onGauge('topRestPa', 'Top, at rest in the middle'),
        onGauge('bottomRestPa', 'Bottom, at rest in the middle'),
        yesNo('gaugesAnswer', 'Both answer a change of signal, each in its turn'),
      ],
      judge: { rule: 'allYes', with: { fields: 'gaugesAnswer' } },
      ways: { yes: { to: 'nextPerson' }, no: { to: 'relayDead' } },
      makeSafe,
    },
    relayDead: {
      kind: 'question',
      phase: 'asLeft',
      title: 'One side of the cylinder does not answer',
      how: 'At zero though it should be loaded: the restriction of its relay is plugged; its clean-out plunger comes first. At full supply and stuck there: relay or nozzle.',
      choices: {
        again: { label: 'Plunger worked: read both again', to: 'cylinderGauges' },
        leave: {
          label: 'Give it back, and open the relay on an isolated valve',
          to: 'nextPerson',
          reason: true,
        },
      },
      makeSafe,
    },
    ...giveBackStroked(),
  },
});
