import type { ChoiceField, Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';

type Own =
  | 'diaphragmLook'
  | 'diaphragmSound'
  | 'caseParts'
  | 'casePartsBad'
  | 'diaphragmNew'
  | 'diaphragmWrong'
  | 'diaphragmIn';

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

/** The diaphragm looked at, everything beside it looked at, the new one fitted on its plate. */
export function renewDiaphragm<const Next extends string>({
  phase,
  next,
  makeSafe,
}: {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
}): Readonly<Record<Own, Step<Own | Next>>> {
  return { ...looks({ phase, makeSafe }), ...fits({ phase, next, makeSafe }) } as Readonly<
    Record<Own, Step<Own | Next>>
  >;
}

function looks<const Next extends string>({
  phase,
  makeSafe,
}: {
  readonly phase: string;
  readonly makeSafe: Next;
}): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
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
    caseParts: {
      kind: 'reading',
      phase,
      title: 'Look at everything beside it',
      asks: [
        yesNo('springWhole', 'Spring: no broken coil, no rust that eats it, ends flat'),
        yesNo('plateSound', 'Plate: no sharp edge, no crack; its nut was tight'),
        yesNo('stemSealSound', 'Seal at the stem, where there is one: whole and soft'),
        yesNo('flangesSound', 'Case: faces clean and flat, no rust hole, vent free'),
        yesNo('boltsSound', 'Bolts: straight, full thread'),
      ],
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
}: {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
}): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    diaphragmNew: {
      kind: 'reading',
      phase,
      title: 'Lay the new diaphragm on the old one',
      how: 'Same holes, same depth, fabric on the same side, not aged on its shelf.',
      asks: [
        { name: 'diaphragmPart', label: 'Part number, and its date', type: 'text' },
        yesNo('diaphragmSame', 'Same holes, same depth, and within its date'),
      ],
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
      how: 'Dry, without jointing or grease, where the manual does not say otherwise. The nut of the plate by the manual, the stem held against it.',
      action: 'workInCase',
      do: [
        'Fit it between plate and washer.',
        'Tighten the nut of the plate.',
        'Lay the rim flat, holes in line.',
      ],
      asks: [yesNo('rimFlat', 'The rim lies flat, no fold, all holes in line; nothing is left in the case')],
      judge: { rule: 'allYes', with: { fields: 'rimFlat' } },
      ways: { yes: { to: next }, no: { to: makeSafe } },
      makeSafe,
    },
  };
}
