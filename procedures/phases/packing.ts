import type { Caution, Field, Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';
import { handsOnOpen } from './taken-over.ts';

export type PackingOut =
  | 'packingOut'
  | 'ringsDiffer'
  | 'stemLook'
  | 'stemScored'
  | 'stemBent'
  | 'boxNotClean';
export type PackingIn = 'ringsIn' | 'ringsInDiffer' | 'glandSize' | 'glandLoad' | 'glandAskew';

interface Ways<Next extends string> {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
  /** Where plug and stem are changed, the gland open as it is; else they are looked at in this job. */
  readonly toTrim?: Next;
}

const BLOWS: Caution = {
  word: 'warning',
  hazard: 'What is left behind the packing comes out when it is let off.',
  consequence: 'Hot or toxic fluid burns or poisons.',
  avoid: 'Stand aside, face shield down. Let the follower up a little and wait before it comes off.',
};

const GLAND_SIZE: readonly Field[] = [
  {
    name: 'glandMakerNm',
    label: 'Torque of each nut by the maker',
    type: 'quantity',
    dimension: 'torque',
    optional: true,
  },
  { name: 'boxBoreM', label: 'Bore of the box', type: 'quantity', dimension: 'length', optional: true },
  {
    name: 'glandStudM',
    label: 'Diameter of the gland studs',
    type: 'quantity',
    dimension: 'length',
    optional: true,
  },
  {
    name: 'glandStuds',
    label: 'Gland studs',
    type: 'choice',
    choices: ['2', '3', '4', '6', '8'].map((value) => ({ value, label: value })),
  },
];

const RINGS = { type: 'quantity', dimension: 'ratio' } as const;

/** The old packing out and counted, the stem and the box looked at. */
export function packingOut<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<PackingOut, Step<PackingOut | Next>>> {
  return { ...ringsOut(ways), ...stemLooks(ways), ...stemFindings(ways) } as Readonly<
    Record<PackingOut, Step<PackingOut | Next>>
  >;
}

function ringsOut<const Next extends string>({
  phase,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<PackingOut, Step<PackingOut | Next>>>> {
  return {
    packingOut: {
      kind: 'reading',
      phase,
      title: 'Loosen the gland, far side first, and take the packing out',
      how: 'By its hook, without touching stem or box. The sheet has {ringsWanted} rings. Lay them in the order in which they come: lantern ring and spacers too. Lock nuts come off the stem first.',
      why: 'A ring that is left in makes the new set too short, and it leaks.',
      action: 'removePacking',
      caution: BLOWS,
      do: [
        'Loosen both gland nuts a turn.',
        'Wait until nothing more comes.',
        'Take follower and rings out.',
        'Lay them in their order.',
      ],
      shows: ['ringsWanted', 'packingKind'],
      asks: [
        { ...RINGS, name: 'ringsOut', label: 'Rings that came out', wanted: 'ringsWanted' },
        yesNo('boxEmpty', 'Seen with a light down to the bottom: the box is empty'),
      ],
      judge: { rule: 'rings', with: { field: 'ringsOut' } },
      ways: {
        'as the sheet': { to: 'stemLook', sets: { closure: 'open' } },
        differs: { to: 'ringsDiffer', sets: { closure: 'open' } },
        'not on the sheet': { to: 'stemLook', sets: { closure: 'open' } },
      },
      makeSafe,
    },
    ringsDiffer: {
      kind: 'question',
      phase,
      title: 'Other rings came out than the sheet has',
      how: 'The sheet has {ringsWanted}. One may be left at the bottom, or somebody packed it another way.',
      choices: {
        found: { label: 'The rest found and taken out', to: 'stemLook' },
        sheet: { label: 'Box empty: the sheet is to be put right', to: 'stemLook', reason: true },
      },
      makeSafe,
    },
  };
}

function stemLooks<const Next extends string>({
  phase,
  next,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<PackingOut, Step<PackingOut | Next>>>> {
  return {
    stemLook: {
      kind: 'reading',
      phase,
      title: 'Look at the stem and the box',
      how: 'Draw a finger nail along the stem where the packing sits: what it catches on cuts the new rings. Roll a straight edge along it. Look at the bushing at the bottom.',
      why: 'A scored stem cuts new rings as it cut the old ones.',
      asks: [
        yesNo('stemSmooth', 'The nail catches on nothing'),
        yesNo('stemStraight', 'The stem is straight'),
        yesNo('boxClean', 'The box is clean and bright, its bushing not worn to one side'),
      ],
      judge: { rule: 'stemLook' },
      ways: {
        good: { to: next },
        bent: { to: 'stemBent' },
        scored: { to: 'stemScored' },
        'box not clean': { to: 'boxNotClean' },
      },
      makeSafe,
    },
  };
}

function stemFindings<const Next extends string>({
  phase,
  next,
  makeSafe,
  toTrim,
}: Ways<Next>): Readonly<Partial<Record<PackingOut, Step<PackingOut | Next>>>> {
  const trim =
    toTrim === undefined
      ? {}
      : { trim: handsOnOpen('Plug and stem are changed: go on as that job, the gland open', toTrim) };
  return {
    stemScored: {
      kind: 'question',
      phase,
      title: 'The stem is scored',
      how: 'Fine lines are drawn out lengthwise with fine cloth, never across. What the nail still catches on wants a new stem.',
      choices: {
        polished: { label: 'Drawn out: look at it again', to: 'stemLook' },
        ...trim,
        goOn: { label: 'Pack it all the same until a stem is here', to: next, reason: true },
      },
      makeSafe,
    },
    stemBent: {
      kind: 'question',
      phase,
      title: 'The stem is bent',
      how: 'It wears any packing to one side, and it is not straightened. Plug and stem are changed together.',
      choices: {
        ...trim,
        goOn: { label: 'Pack it all the same until plug and stem are here', to: next, reason: true },
        again: { label: 'It was the edge: look again', to: 'stemLook' },
      },
      makeSafe,
    },
    boxNotClean: {
      kind: 'question',
      phase,
      title: 'The box is not clean, or its bushing is worn',
      how: 'Rests of graphite are brushed out and blown out, eyes covered. A worn bushing is changed with the bonnet off.',
      choices: {
        cleaned: { label: 'Cleaned: look again', to: 'stemLook' },
        ...trim,
        goOn: { label: 'Pitted or worn, packed all the same', to: next, reason: true },
      },
      makeSafe,
    },
  };
}

/** New rings in and the gland loaded: the last thing before the stems are joined. */
export function packingIn<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<PackingIn, Step<PackingIn | Next>>> {
  return { ...rings(ways), ...glandLoad(ways) } as Readonly<Record<PackingIn, Step<PackingIn | Next>>>;
}

function rings<const Next extends string>({
  phase,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<PackingIn, Step<PackingIn | Next>>>> {
  return {
    ringsIn: {
      kind: 'reading',
      phase,
      title: 'Fit the new rings, one at a time',
      how: '{packingKind}, {ringsWanted} rings by the sheet, in the order of the maker. Cuts of split rings stand a quarter turn apart. Rings with a lip stand with the lip towards the pressure. Tape over the stem thread where rings go over it: it cuts them.',
      why: 'A ring that is pushed in with the next one never seats.',
      action: 'closeBody',
      do: [
        'Check that the rings are the right set, new and clean.',
        'Fit one ring.',
        'Put it down with the tamper before the next.',
        'Fit the follower level.',
      ],
      asks: [
        { ...RINGS, name: 'ringsPut', label: 'Rings put in', wanted: 'ringsWanted' },
        { name: 'ringsBatch', label: 'What they are, with the number on the bag', type: 'text' },
      ],
      judge: { rule: 'rings', with: { field: 'ringsPut' } },
      ways: {
        'as the sheet': { to: 'glandSize' },
        differs: { to: 'ringsInDiffer' },
        'not on the sheet': { to: 'glandSize' },
      },
      makeSafe,
    },
    ringsInDiffer: {
      kind: 'question',
      phase,
      title: 'Other rings were put in than the sheet has',
      how: 'The sheet has {ringsWanted}. Too many hold the follower out of the box; too few let it bottom before the packing is loaded.',
      choices: {
        again: { label: 'Put right: count again', to: 'ringsIn' },
        sheet: {
          label: 'It is the set of this maker: the sheet is to be put right',
          to: 'glandSize',
          reason: true,
        },
      },
      makeSafe,
    },
  };
}

function glandLoad<const Next extends string>({
  phase,
  next,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<PackingIn, Step<PackingIn | Next>>>> {
  return {
    glandSize: {
      kind: 'reading',
      phase,
      title: 'Read what the gland wants',
      how: 'The torque of the packing’s maker outranks all else. Without it the box is measured, and graphite is loaded by a published method; other packing by feel.',
      asks: GLAND_SIZE,
      judge: { rule: 'record' },
      ways: { kept: { to: 'glandLoad' } },
      makeSafe,
    },
    glandLoad: {
      kind: 'reading',
      phase,
      title: 'Tighten the gland evenly: {glandLoad}',
      how: 'In small equal steps, opposite nuts in turn, the follower level in its box. {glandLoadBecause}.',
      why: 'More than the packing wants costs friction for years; less leaks on the first day.',
      action: 'closeBody',
      asks: [
        {
          name: 'glandTorqueNm',
          label: 'Torque of each nut, as left',
          type: 'quantity',
          dimension: 'torque',
          optional: true,
        },
        {
          name: 'followerGapM',
          label: 'Gap left under the follower',
          type: 'quantity',
          dimension: 'length',
          optional: true,
        },
        yesNo('followerLevel', 'Follower level, with room left to go down'),
      ],
      judge: { rule: 'allYes', with: { fields: 'followerLevel' } },
      ways: { yes: { to: next }, no: { to: 'glandAskew' } },
      makeSafe,
    },
    glandAskew: {
      kind: 'question',
      phase,
      title: 'The follower is askew, or has no room left',
      how: 'Nothing is behind it now: it may be let off and set level. Without room a ring is missing.',
      choices: {
        level: { label: 'Let off and set level: load it again', to: 'glandLoad' },
        rings: { label: 'A ring is missing: count them', to: 'ringsIn' },
      },
      makeSafe,
    },
  };
}
