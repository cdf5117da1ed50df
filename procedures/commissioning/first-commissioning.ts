import { yesNo } from '../phases/common.ts';
import { CONSENT_SAFE_AT, consentControl, lookIsOver, takeForLook } from '../phases/consent-only.ts';
import type { Step } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const makeSafe = 'haltLook' as const;

/** What stands in the way is named, and the way on is chosen. */
function differs<const Id extends string>(step: {
  readonly title: string;
  readonly how: string;
  readonly again: Id;
  readonly next: Id;
  readonly makeSafe: Id;
}): Step<Id | 'nextPerson'> {
  return {
    kind: 'question',
    phase: 'look',
    title: step.title,
    how: step.how,
    choices: {
      again: { label: 'Put right: look again', to: step.again },
      sheet: {
        label: 'The valve is right and the sheet wrong: have it put right, go on',
        to: step.next,
        reason: true,
      },
      stop: { label: 'It must not go into service so', to: 'nextPerson', reason: true },
    },
    makeSafe: step.makeSafe,
  };
}

/** A new or changed valve before it first sees process: plate, flow, handwheel, stops, accessories. */
export const firstCommissioning = procedure({
  id: 'first-commissioning',
  title: 'First commissioning of a valve',
  energyControl: consentControl(
    'To look a new, moved or rebuilt valve over before it first goes into service. What has to be stroked, set or tested is a job of its own afterwards.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change: 'Bench set and calibration stand among the jobs that come next.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'On a cylinder hold signal, travel and supply against the plates: no bench set is asked of it. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'Plain cards that are done in one go may be entered together, each a line of its own; what is not as it should be is answered on its own card. Cards that gave no reason say why they stand open.',
    },
  ],
  phases: [
    { id: 'ready', title: 'Get ready' },
    { id: 'look', title: 'Valve against sheet' },
    { id: 'return', title: 'What comes next' },
  ],
  start: 'needs',
  safe: CONSENT_SAFE_AT,
  steps: {
    ...takeForLook({
      title: 'Get ready to look {tag} over',
      bring: ['Bring the sheet, the order and the piping drawing.', 'Bring a lamp and a mirror.'],
      next: 'plate',
    }),
    plate: {
      kind: 'reading',
      phase: 'look',
      title: 'Read the plates of valve, actuator and positioner against the sheet',
      how: 'Bench set {benchSetLow} to {benchSetHigh}, travel {travel}, {airAction}.',
      why: 'A valve of another rating or range fits the same flanges.',
      onCylinder: {
        how: 'Signal {signalLow} to {signalHigh}, travel {travel}, {airAction}; a spring only where the sheet has one.',
        labels: { rangeRight: 'Signal, travel and supply on the plates are those of the sheet' },
      },
      asks: [
        yesNo('tagRight', 'Tag and serial number are those of the order'),
        yesNo('ratingRight', 'Pressure class, body, trim and packing are those of the sheet'),
        yesNo('rangeRight', 'Bench set, travel and supply on the plates are those of the sheet'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'tagRight ratingRight rangeRight' } },
      ways: { yes: { to: 'flow' }, no: { to: 'plateDiffers' } },
      makeSafe,
    },
    plateDiffers: differs({
      title: 'A plate says otherwise than the sheet',
      how: 'A valve of the wrong rating kills. Nobody rates it up by memory: engineer and maker say which is right.',
      again: 'plate',
      next: 'flow',
      makeSafe,
    }),
    flow: {
      kind: 'reading',
      phase: 'look',
      title: 'Look which way it stands in the line',
      how: 'Arrow on the body against the flow of the drawing; by the sheet it flows {flowSide}. Wrong way round it slams on its seat or will not shut.',
      why: 'Flow from the wrong side turns round the force on the plug that spring and air were sized for.',
      asks: [
        yesNo('arrowRight', 'The arrow points with the flow'),
        yesNo('pipeFree', 'Flanges without strain, supports on, line flushed and strainer in'),
        yesNo('shippingOut', 'Shipping plugs, blocks and desiccant are out'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'arrowRight pipeFree shippingOut' } },
      ways: { yes: { to: 'actuator' }, no: { to: 'flowDiffers' } },
      makeSafe,
    },
    flowDiffers: differs({
      title: 'It does not stand in the line as it should',
      how: 'Turning it round or easing a flange is work on an isolated line: a job of its own.',
      again: 'flow',
      next: 'actuator',
      makeSafe,
    }),
    actuator: {
      kind: 'reading',
      phase: 'look',
      title: 'Look at handwheel, travel stops and indicator',
      why: 'Left as shipped, a handwheel or a stop holds the valve against every signal.',
      asks: [
        yesNo('handwheelNeutral', 'Handwheel in neutral and locked there, or there is none'),
        yesNo('stopsSet', 'Travel stops as the sheet wants them, lock nuts tight'),
        yesNo('indicatorRight', 'Indicator stands at the end where the valve rests without air'),
        yesNo('ventsDown', 'Vents open, pointing down, with their caps'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'handwheelNeutral stopsSet indicatorRight ventsDown' } },
      ways: { yes: { to: 'tubing' }, no: { to: 'actuatorDiffers' } },
      makeSafe,
    },
    actuatorDiffers: differs({
      title: 'Handwheel, stop, indicator or vent is not right',
      how: 'A handwheel out of neutral is the commonest stuck valve of a start-up.',
      again: 'actuator',
      next: 'tubing',
      makeSafe,
    }),
    tubing: {
      kind: 'reading',
      phase: 'look',
      title: 'Follow every tube and wire from end to end',
      how: 'Supply {supplyPoint}; second feed {secondSupplyPoint}. A rising signal {risingSignal} the valve.',
      why: 'A crossed or crushed tube shows only when the valve is asked to move.',
      asks: [
        yesNo('tubesRight', 'Each tube goes where the drawing says, none crossed, none bent flat'),
        yesNo('airBlown', 'The air header was blown out before it was connected'),
        yesNo('wiresRight', 'Wiring, glands and earth are as the drawing says, or there is none'),
        yesNo('accessoriesRight', 'Booster, lock-up, tank, solenoid and switches are those of the sheet'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'tubesRight airBlown wiresRight accessoriesRight' } },
      ways: { yes: { to: 'points' }, no: { to: 'tubingDiffers' } },
      makeSafe,
    },
    tubingDiffers: differs({
      title: 'A tube, a wire or an accessory is not right',
      how: 'Crossed tubes run a valve to the wrong end at full speed.',
      again: 'tubing',
      next: 'points',
      makeSafe,
    }),
    points: {
      kind: 'reading',
      phase: 'look',
      title: 'Read the labels of its isolation points',
      how: 'Supply {supplyPoint}, inlet {inletPoint}, outlet {outletPoint}, bypass {bypassPoint}.',
      why: 'Whoever isolates this valve trusts these labels with their hands inside.',
      asks: [
        yesNo('labelsRight', 'Each is there, labelled as the sheet says, and can be locked'),
        yesNo('drainsThere', 'Each side has a drain that can be reached and rodded'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'labelsRight drainsThere' } },
      ways: { yes: { to: 'comesNext' }, no: { to: 'pointsDiffer' } },
      makeSafe,
    },
    pointsDiffer: differs({
      title: 'An isolation point is missing or wrongly labelled',
      how: 'Somebody will trust that label with their hands inside.',
      again: 'points',
      next: 'comesNext',
      makeSafe,
    }),
    comesNext: {
      kind: 'instruction',
      phase: 'return',
      title: 'Have the jobs planned that come next',
      how: 'In this order, each a job of its own on this valve.',
      why: 'A look proves nothing of how it moves, shuts and fails: these jobs do.',
      do: [
        'Have the air supply read at the valve.',
        'Have the bench set read, where it has a spring.',
        'Have converter and positioner calibrated, where it has them.',
        'Have the stroke checked.',
        'Have the fail action shown.',
        'Have the seat tested by its class where the sheet wants it.',
        'Have the loop checked with the operator.',
      ],
      onCylinder: {
        do: [
          'Have the air supply read at the valve.',
          'Have converter and positioner calibrated, where it has them.',
          'Have the stroke checked.',
          'Have the fail action shown.',
          'Have the seat tested by its class where the sheet wants it.',
          'Have the loop checked with the operator.',
        ],
      },
      next: { to: 'nextPerson' },
      makeSafe,
    },
    ...lookIsOver(),
  },
});
