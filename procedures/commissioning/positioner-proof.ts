import { STEM_MOVES, yesNo } from '../phases/common.ts';
import type { QuantityField, QuestionStep, Step, Target } from '../vocabulary.ts';

const makeSafe = 'haltStroke' as const;
const phase = 'asLeft';

function onGauge(name: string, label: string): QuantityField {
  return { name, label, type: 'quantity', dimension: 'pressure', gauge: 'signalGauge', optional: true };
}

function travel(name: string, label: string): QuantityField {
  return { name, label, type: 'quantity', dimension: 'travel', gauge: 'travelIndicator', optional: true };
}

function seconds(name: string, label: string): QuantityField {
  return { name, label, type: 'quantity', dimension: 'time', optional: true };
}

/** A signal as its source shows it: a current where the positioner takes one, else a pressure. */
function signal(name: string, label: string): readonly QuantityField[] {
  return [
    {
      name: `${name}A`,
      label,
      type: 'quantity',
      dimension: 'current',
      optional: true,
      when: { fact: 'positioner', is: 'electropneumatic' },
    },
    {
      name: `${name}Pa`,
      label,
      type: 'quantity',
      dimension: 'pressure',
      optional: true,
      when: { fact: 'positioner', is: 'pneumatic' },
    },
  ];
}

/** A cylinder has its gauges read too, whether the step could be read or not. */
const AFTER_STEP = { by: 'actuator', ways: { diaphragm: 'nextPerson', piston: 'cylinderGauges' } } as const;

interface Unread<To extends string> {
  readonly title: string;
  readonly how?: string;
  readonly again: { readonly label: string; readonly to: To };
  /** Which part cannot be read here, and where it goes on without. */
  readonly leave: { readonly label: string; readonly to: Target<To> };
}

/** What was not read is read, or left with its reason. */
function unread<const To extends string>({
  title,
  how,
  again,
  leave,
}: Unread<To>): QuestionStep<To | 'haltStroke'> {
  return {
    kind: 'question',
    phase,
    title,
    ...(how === undefined ? {} : { how }),
    choices: { again, leave: { ...leave, reason: true } },
    makeSafe,
  };
}

type DeadBand = 'deadBand' | 'deadBandNotRead' | 'deadBandWide';

function deadBand(): Readonly<Record<DeadBand, Step<DeadBand | 'stepIt' | 'nextPerson' | 'haltStroke'>>> {
  return {
    deadBand: {
      kind: 'reading',
      phase,
      title: 'Find the dead band at the middle',
      how: 'Come up to {signalMiddle} from below and let it rest. Dial indicator on the stem: a hair of movement counts. Wait after each small change. At most {deadBandLimit} of the signal, {deadBandSignal}: {deadBandBecause}.',
      why: 'Inside the dead band the controller turns its output and nothing moves: the loop swings.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      do: [
        'Raise the signal until the stem stirs once more.',
        'Stop there.',
        'Lower it a little at a time until the stem stirs back.',
        'Raise it a little at a time until the stem stirs again.',
      ],
      asks: [
        ...signal('turnedAt', 'Signal where it stopped, after moving with a rising signal'),
        ...signal('movedDownAt', 'Signal where it first stirred, falling'),
        ...signal('movedUpAt', 'Signal where it first stirred, rising again'),
      ],
      judge: { rule: 'deadBand' },
      ways: {
        inside: { to: 'stepIt' },
        outside: { to: 'deadBandWide' },
        'not read': { to: 'deadBandNotRead' },
      },
      makeSafe,
    },
    deadBandNotRead: unread({
      title: 'The dead band was not read',
      again: { label: 'Read it', to: 'deadBand' },
      leave: { label: 'It cannot be read with this source: leave it', to: 'stepIt' },
    }),
    deadBandWide: {
      kind: 'question',
      phase,
      title: 'The dead band is too wide',
      how: 'Likely first: packing too tight or dry, slack in the feedback linkage, gain too low, a worn relay. Zero and span do not change it.',
      shows: ['deadBandFound', 'deadBandLimit', 'deadBandBecause'],
      choices: {
        again: { label: 'Gain set by its manual: find it again', to: 'deadBand' },
        goOn: { label: 'Write it down, and step it', to: 'stepIt', reason: true },
        leave: { label: 'It wants packing or linkage: give it back', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
  };
}

type StepTest = 'stepIt' | 'stepNotRead' | 'stepTimes' | 'stepBad';

function stepTest(): Readonly<
  Record<StepTest, Step<StepTest | 'nextPerson' | 'cylinderGauges' | 'haltStroke'>>
> {
  return {
    stepIt: {
      kind: 'reading',
      phase,
      title: 'Step the signal by a tenth, and watch how the stem settles',
      how: 'From {stepFrom} to {stepTo} at once: from {stepFromTravel} to {stepToTravel}. {firstTime} runs from the step until it passes {stepFirstTravel}, {secondTime} until {stepSecondTravel}; both hold the dead time. By a recorder, or a film of pointer and watch counted picture by picture: a hand on a stop watch is too slow for a quick valve.',
      why: 'Times belong to this step: a larger or smaller one gives others. Overshoot at most {overshootLimit} of the step, common practice.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      do: [
        'Come to {stepFrom} from below.',
        'Let the stem rest.',
        'Set {stepTo} in one go.',
        'Watch it until it rests again.',
      ],
      asks: [
        travel('stepFromM', 'Travel before the step'),
        travel('stepFurthestM', 'Furthest travel that it came to'),
        travel('stepRestM', 'Travel at rest after it'),
        seconds('stepT63S', '{firstTime}'),
        seconds('stepT86S', '{secondTime}'),
        {
          name: 'stepSettles',
          label: 'How it settled',
          type: 'choice',
          choices: [
            { value: 'at once', label: 'At once, or with one small overshoot' },
            { value: 'swings', label: 'It swung more than twice' },
            { value: 'creeps', label: 'It crept, or stopped and jumped' },
          ],
        },
      ],
      judge: { rule: 'positionerStep' },
      ways: {
        settles: { to: AFTER_STEP },
        swings: { to: 'stepBad' },
        creeps: { to: 'stepBad' },
        'times do not fit': { to: 'stepTimes' },
        'not read': { to: 'stepNotRead' },
      },
      makeSafe,
    },
    stepNotRead: unread({
      title: 'The step was not read',
      how: 'Travel before and after it is the least.',
      again: { label: 'Step it again, and read it', to: 'stepIt' },
      leave: { label: 'It cannot be stepped here: leave it', to: AFTER_STEP },
    }),
    stepTimes: {
      kind: 'question',
      phase,
      title: '{secondTime} is shorter than {firstTime}',
      how: 'It passes the one travel before the other: one of the two was misread.',
      choices: { again: { label: 'Step it again', to: 'stepIt' } },
      makeSafe,
    },
    stepBad: {
      kind: 'question',
      phase,
      title: 'It swings, creeps or goes too far',
      how: 'Swings: gain too high, a booster too lively. Creeps: gain too low, tight packing, a starved supply. Gain is set by the manual of the positioner, a little at a time, and stepped again.',
      shows: ['overshootFound', 'overshootLimit'],
      choices: {
        again: { label: 'Gain set: step it again', to: 'stepIt' },
        leave: {
          label: 'Leave it so',
          to: AFTER_STEP,
          reason: true,
        },
      },
      makeSafe,
    },
  };
}

type Cylinder = 'cylinderGauges' | 'cylinderNotRead' | 'cylinderClose' | 'cylinderLoad' | 'relayDead';

function cylinder(): Readonly<Record<Cylinder, Step<Cylinder | 'nextPerson' | 'haltStroke'>>> {
  return {
    cylinderGauges: {
      kind: 'reading',
      phase,
      title: 'Read both gauges of the cylinder, moving and at rest',
      how: 'A rising signal loads the {risingLoads}: while it moves that side stands higher, {cylinderMoving}. At rest in the middle they are alike only where nothing pushes the stem: packing and body pressure explain {cylinderRest} here; piston seals come on top.',
      why: 'A side that stays at zero though it should be loaded is that relay, most often its restriction.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      do: [
        'Raise the signal steadily through the middle.',
        'Read both gauges as it passes the middle.',
        'Stop at the middle.',
        'Let it rest.',
        'Read both gauges again.',
      ],
      asks: [
        onGauge('topMovingPa', 'Top, moving with a rising signal'),
        onGauge('bottomMovingPa', 'Bottom, at that moment'),
        onGauge('topRestPa', 'Top, at rest in the middle'),
        onGauge('bottomRestPa', 'Bottom, at rest in the middle'),
        yesNo('gaugesAnswer', 'Both answer a change of signal, each in its turn'),
      ],
      judge: { rule: 'cylinderGauges' },
      ways: {
        'as expected': { to: 'nextPerson' },
        'loaded side not higher': { to: 'relayDead' },
        'a side is dead': { to: 'relayDead' },
        'more load than expected': { to: 'cylinderLoad' },
        'too close': { to: 'cylinderClose' },
        'not read': { to: 'cylinderNotRead' },
      },
      makeSafe,
    },
    cylinderNotRead: {
      kind: 'question',
      phase,
      title: 'Not both gauges were read, moving and at rest',
      choices: {
        again: { label: 'Read them', to: 'cylinderGauges' },
        none: { label: 'A side has no gauge', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    cylinderClose: {
      kind: 'question',
      phase,
      title: 'These gauges cannot tell which side is the higher while it moves',
      how: 'Both answer. A valve that moves slowly needs little more on one side than on the other: a quicker ramp, or finer gauges.',
      shows: ['cylinderMovingFound', 'cylinderRestFound', 'cylinderRestAllowed'],
      choices: {
        goOn: { label: 'Both answer: go on', to: 'nextPerson' },
        again: { label: 'Read them again, on finer gauges', to: 'cylinderGauges' },
      },
      makeSafe,
    },
    cylinderLoad: {
      kind: 'question',
      phase,
      title: 'At rest the sides differ by more than packing and body pressure explain',
      how: 'Likely first: tight piston seals, packing too tight, a stem that binds. Then a plug on its seat or on a stop, or flow that is not shut off.',
      shows: ['cylinderRestFound', 'cylinderRestAllowed'],
      choices: {
        again: { label: 'Read them again, well off both ends', to: 'cylinderGauges' },
        leave: { label: 'Write it down for the overhaul', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    relayDead: {
      kind: 'question',
      phase,
      title: 'A side of the cylinder does not answer as it should',
      how: 'At zero though it should be loaded: the restriction of its relay is plugged; its clean-out plunger comes first, in the job of its relay. At full supply and stuck there: relay or nozzle. The wrong side higher: crossed tubes, or a gauge read on the way down.',
      shows: ['cylinderMovingFound', 'cylinderRestFound'],
      choices: {
        again: { label: 'Read both again', to: 'cylinderGauges' },
        leave: {
          label: 'Give it back; the job on its relay comes next',
          to: 'nextPerson',
          reason: true,
          comesNext: 'relay-restriction',
        },
      },
      makeSafe,
    },
  };
}

/** Dead band, step and both sides of a cylinder: what a positioner shows once its stroke is right. */
export function positionerProof() {
  return { ...deadBand(), ...stepTest(), ...cylinder() };
}
