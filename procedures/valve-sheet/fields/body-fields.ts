import { POSSIBLE, type Section } from '../field.ts';

export const trimSection: Section = {
  id: 'trim',
  title: 'Body and trim',
  fields: [
    {
      kind: 'quantity',
      name: 'portDiameterM',
      label: 'Port diameter',
      dimension: 'length',
      possible: POSSIBLE.diameter,
      required: true,
      help: 'Of the seat, not the size of the pipe.',
    },
    {
      kind: 'quantity',
      name: 'stemDiameterM',
      label: 'Stem diameter',
      dimension: 'length',
      possible: POSSIBLE.diameter,
      required: true,
    },
    {
      kind: 'quantity',
      name: 'balanceSealDiameterM',
      label: 'Balance seal diameter',
      dimension: 'length',
      possible: POSSIBLE.diameter,
      help: 'Blank: the plug is not balanced.',
    },
    {
      kind: 'quantity',
      name: 'ratedKv',
      label: 'Rated flow coefficient',
      dimension: 'flowCoefficient',
      possible: POSSIBLE.flowCoefficient,
      required: true,
      help: 'Cv or Kv, fully open.',
    },
    {
      kind: 'quantity',
      name: 'pressureDropRatioXt',
      label: 'Pressure drop ratio xT',
      dimension: 'ratio',
      possible: POSSIBLE.ratio,
      help: 'For gas. Blank: not known.',
    },
    {
      kind: 'choice',
      name: 'flow',
      label: 'Flow comes from',
      choices: [
        { value: 'under', label: 'under the plug' },
        { value: 'over', label: 'over the plug' },
      ],
    },
    {
      kind: 'choice',
      name: 'leakageClass',
      label: 'Leakage class',
      choices: ['I', 'II', 'III', 'IV', 'V', 'VI'].map((value) => ({ value, label: value })),
    },
    {
      kind: 'quantity',
      name: 'shutOffDropPa',
      label: 'Shut-off pressure drop',
      dimension: 'pressure',
      possible: POSSIBLE.drop,
      required: true,
      help: 'The most that it must hold shut against.',
    },
    {
      kind: 'quantity',
      name: 'seatLoadNPerM',
      label: 'Seat load wanted',
      dimension: 'forcePerLength',
      possible: POSSIBLE.seatLoad,
      help: 'Force for each length of seat edge. Makers’ tables differ by a factor of two.',
    },
    { kind: 'text', name: 'seatLoadSource', label: 'Seat load by', help: 'The table or manual it is from.' },
  ],
};

export const stemSection: Section = {
  id: 'stem',
  title: 'Stem and adjuster',
  fields: [
    {
      kind: 'thread',
      name: 'stemThread',
      pitchName: 'stemThreadPitchM',
      label: 'Plug stem thread',
      required: true,
      help: 'As cut, with its pitch: 1/2-20 or M12x1.25. Read it off the part.',
    },
    {
      kind: 'quantity',
      name: 'stemThreadEngagedMinM',
      label: 'Thread that must grip, at least',
      dimension: 'length',
      possible: POSSIBLE.diameter,
      help: 'Blank: not known.',
    },
    {
      kind: 'quantity',
      name: 'seatingTurns',
      label: 'Seating turns',
      dimension: 'turns',
      possible: POSSIBLE.turns,
      help: 'By the maker’s instruction. Blank: by the seat load, or two (common practice, no source).',
    },
    {
      kind: 'yes or no',
      name: 'bellowsSeal',
      label: 'Bellows seal',
      help: 'The stem is never turned: the bellows would tear.',
    },
    { kind: 'yes or no', name: 'stemPinned', label: 'Stem pinned', help: 'The stem is never turned.' },
    {
      kind: 'thread',
      name: 'adjusterThread',
      pitchName: 'adjusterThreadPitchM',
      label: 'Adjuster thread',
      help: 'As cut, with its pitch. Blank: not known, or no adjuster.',
    },
  ],
};

export const packingSection: Section = {
  id: 'packing',
  title: 'Packing',
  fields: [
    {
      kind: 'choice',
      name: 'packingKind',
      label: 'Packing',
      choices: [
        { value: 'ptfe-single', label: 'PTFE, single' },
        { value: 'ptfe-double', label: 'PTFE, double' },
        { value: 'graphite', label: 'graphite' },
        { value: 'other', label: 'other' },
      ],
    },
    { kind: 'count', name: 'packingRings', label: 'Rings', atMost: 40, help: 'Blank: not counted yet.' },
    {
      kind: 'quantity',
      name: 'packingFrictionN',
      label: 'Packing friction, each way',
      dimension: 'force',
      possible: POSSIBLE.force,
      help: 'What it should cost the stem. Blank: not known.',
    },
    {
      kind: 'text',
      name: 'packingFrictionSource',
      label: 'Friction by',
      help: 'The table or manual it is from.',
    },
  ],
};
