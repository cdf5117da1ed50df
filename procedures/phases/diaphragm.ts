import type { ChoiceField, Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';
import { handsOnOpen } from './taken-over.ts';

type Own =
  | 'diaphragmOut'
  | 'diaphragmLook'
  | 'diaphragmSound'
  | 'caseParts'
  | 'casePartsBad'
  | 'diaphragmNew'
  | 'diaphragmWrong'
  | 'diaphragmIn'
  | 'diaphragmNotIn';

const FOUND: ChoiceField = {
  name: 'diaphragmFound',
  label: 'What the diaphragm shows',
  type: 'choice',
  choices: [
    { value: 'split', label: 'A split or a hole' },
    { value: 'cracked', label: 'Cracks when it is bent, or hard' },
    { value: 'torn', label: 'Torn at a bolt hole or squeezed out at the rim' },
    { value: 'fabric', label: 'The fabric shows, or the rubber peels' },
    { value: 'sound', label: 'Nothing: it is sound' },
  ],
};

interface Ways<Next extends string> {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
  /** Where a broken spring is changed, the case open as it is; else one of the same kind is put in here. */
  readonly toSpring?: Next;
}

/** The diaphragm looked at, everything beside it looked at, the new one fitted on its plate. */
export function renewDiaphragm<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return { ...looks(ways), ...besides(ways), ...fits(ways) } as Readonly<Record<Own, Step<Own | Next>>>;
}

function looks<const Next extends string>({
  phase,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    diaphragmOut: {
      kind: 'instruction',
      phase,
      title: 'Take plate and diaphragm out',
      how: 'The stem is held on its flats or at the connector: a plug that turns on its seat is scored. A diaphragm that clings to the case is eased off, never pried.',
      action: 'workInCase',
      do: [
        'Mark the side of the diaphragm that faces the air.',
        'Hold the stem so that it cannot turn.',
        'Take the nut of the plate off.',
        'Take washer, diaphragm and plate out.',
        'Lay them in their order.',
      ],
      next: { to: 'diaphragmLook' },
      makeSafe,
    },
    diaphragmLook: {
      kind: 'reading',
      phase,
      title: 'Look at the diaphragm, bent over and against the light',
      how: 'At the fold where it moves, round the plate, at every bolt hole, on the air side and behind.',
      why: 'Where it broke says why: the fold is age, the plate is a sharp edge, the rim is uneven nuts.',
      asks: [
        FOUND,
        { name: 'diaphragmWhere', label: 'Where, and what may have done it', type: 'text', optional: true },
      ],
      judge: { rule: 'diaphragmLook' },
      ways: {
        damaged: { to: 'caseParts' },
        sound: { to: 'diaphragmSound' },
      },
      makeSafe,
    },
    diaphragmSound: {
      kind: 'question',
      phase,
      title: 'The diaphragm is sound',
      how: 'Then the air came by elsewhere: under the plate where its nut is slack, or at the seal of the stem.',
      choices: {
        renew: { label: 'The case is open: renew it all the same', to: 'caseParts' },
        again: { label: 'Look again, against the light', to: 'diaphragmLook' },
      },
      makeSafe,
    },
  };
}

function besides<const Next extends string>({
  phase,
  makeSafe,
  toSpring,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    caseParts: {
      kind: 'reading',
      phase,
      title: 'Look at everything beside it',
      why: 'What spoiled the old diaphragm spoils the new one.',
      asks: [
        yesNo('springWhole', 'Spring: no broken coil, no rust that eats it, ends flat'),
        yesNo('plateSound', 'Plate: no sharp edge, no crack; its nut was tight'),
        yesNo('stemSealSound', 'Seal at the stem, where there is one: whole and soft'),
        yesNo('flangesSound', 'Case: faces clean and flat, no rust hole, vent free'),
        yesNo('boltsSound', 'Bolts: straight, full thread'),
      ],
      oneGo: true,
      judge: {
        rule: 'allYes',
        with: { fields: 'springWhole plateSound stemSealSound flangesSound boltsSound' },
      },
      ways: { yes: { to: 'diaphragmNew' }, no: { to: 'casePartsBad' } },
      makeSafe,
    },
    casePartsBad: {
      kind: 'question',
      phase,
      title: 'A part beside the diaphragm is not sound',
      how: 'Seal, bolts, plate and nut are renewed now. A broken spring wants one of the same rate, by its part number. A case with a rust hole is not used again.',
      choices: {
        renewed: { label: 'Renewed: look again', to: 'caseParts' },
        ...(toSpring === undefined
          ? {}
          : { spring: handsOnOpen('The spring is changed: go on as that job, the case open', toSpring) }),
        goOn: { label: 'Put together until the part is here', to: 'diaphragmNew', reason: true },
      },
      makeSafe,
    },
  };
}

function fits<const Next extends string>({
  phase,
  next,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    diaphragmNew: {
      kind: 'reading',
      phase,
      title: 'Lay the new diaphragm on the old one',
      how: 'Same holes, same depth, fabric on the same side, not aged on its shelf.',
      why: 'With one hole out of line the rim tears as the bolts go in.',
      asks: [
        { name: 'diaphragmPart', label: 'Part number, and its date', type: 'text' },
        yesNo('diaphragmSame', 'Same holes, same depth, and within its date'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'diaphragmSame' } },
      ways: { yes: { to: 'diaphragmIn' }, no: { to: 'diaphragmWrong' } },
      makeSafe,
    },
    diaphragmWrong: {
      kind: 'question',
      phase,
      title: 'It is not the right diaphragm',
      how: 'A deeper or a flatter one changes the area, and with it the bench set. Another hole pattern tears.',
      choices: {
        again: { label: 'The right one is here: look again', to: 'diaphragmNew' },
        old: { label: 'The old one goes back until it is here', to: 'diaphragmIn', reason: true },
      },
      makeSafe,
    },
    diaphragmIn: {
      kind: 'reading',
      phase,
      title: 'Fit it on its plate, and lay it into the case',
      how: 'The marked side to the air. Dry, without jointing or grease, where the manual does not say otherwise. The nut of the plate by the manual; the stem does not turn with it.',
      action: 'workInCase',
      do: [
        'Fit it between plate and washer.',
        'Hold the stem so that it cannot turn.',
        'Tighten the nut of the plate.',
        'Lay the rim flat, holes in line.',
      ],
      asks: [yesNo('rimFlat', 'The rim lies flat, no fold, all holes in line; nothing is left in the case')],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'rimFlat' } },
      ways: { yes: { to: next }, no: { to: 'diaphragmNotIn' } },
      makeSafe,
    },
    diaphragmNotIn: {
      kind: 'question',
      phase,
      title: 'The rim does not lie flat',
      how: 'A fold under the bolts leaks on the first day. A rim that is too wide or too narrow is another diaphragm.',
      choices: {
        again: { label: 'Laid flat, nothing left inside: look again', to: 'diaphragmIn' },
        other: { label: 'It does not lie: hold it against the old one', to: 'diaphragmNew' },
      },
      makeSafe,
    },
  };
}
