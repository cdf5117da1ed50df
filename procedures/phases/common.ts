import type { Caution, ChoiceField, Field } from '../vocabulary.ts';

/** A case that holds its spring by its bolts has no adjuster to be wound. */
export const HAS_ADJUSTER = { fact: 'springHeldBy', is: 'adjuster' } as const;

export const YES_NO = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
] as const;

export function yesNo(name: string, label: string): ChoiceField {
  return { name, label, type: 'choice', choices: YES_NO };
}

/** How a zero is shown: on the gauge that was seen alive, or at a vent watched twice. */
export const SHOWN_BY: readonly Field[] = [
  {
    name: 'method',
    label: 'Shown by',
    type: 'choice',
    choices: [
      { value: 'gauge', label: 'The gauge that I saw alive' },
      { value: 'vent', label: 'The vent, cracked and watched twice' },
    ],
  },
  { name: 'flowFirst', label: 'Vent, first look', type: 'choice', optional: true, choices: flowChoices() },
  { name: 'flowAgain', label: 'Vent, second look', type: 'choice', optional: true, choices: flowChoices() },
];

function flowChoices() {
  return [
    { value: 'no flow', label: 'No flow' },
    { value: 'flow', label: 'It flows' },
  ] as const;
}

export const STEM_MOVES: Caution = {
  word: 'warning',
  hazard: 'Stem and plug move while air is on.',
  consequence: 'A finger in the yoke can be crushed.',
  avoid: 'Hands stay outside the yoke.',
};

/** Where a spring or the other end drives the stem as its air is let off. */
export const AIR_GOES = {
  word: 'warning',
  hazard: 'The stem moves as the air goes.',
  consequence: 'A finger in the yoke can be crushed.',
  avoid: 'Hands stay outside the yoke.',
} as const satisfies Caution;

/** Air let off at a vent, a port or a drain that somebody looks at: two ways to be hurt, under the word of the worse. */
export const AIR_LET_OFF = {
  word: 'warning',
  hazard: 'Air that is let off leaves in a jet, and the stem may move as it goes.',
  consequence: 'It can hurt eyes and ears, and crush a finger in the yoke.',
  avoid: 'Eye protection on, face beside the jet; let it off slowly, hands outside the yoke.',
} as const satisfies Caution;

/** Flow that passes from the valve to its bypass on a running process. */
export const BYPASS_OPENS = {
  word: 'warning',
  hazard: 'The flow changes as the bypass opens.',
  consequence: 'An upset process can hurt people elsewhere.',
  avoid: 'Stay on the radio with the operator all the while.',
} as const satisfies Caution;

/** The same flow on its way back. */
export const BYPASS_SHUTS = {
  ...BYPASS_OPENS,
  hazard: 'The flow changes as the bypass shuts, and stops where the valve does not take it.',
} as const satisfies Caution;

/** A tube that is taken off a place that had air. */
export const TUBE_WHIPS = {
  word: 'caution',
  hazard: 'A tube end under pressure whips.',
  consequence: 'It can cut or bruise.',
  avoid: 'Loosen until it hisses, wait, then take it off.',
} as const satisfies Caution;

/** Said of diaphragm case and cylinder alike. */
export const ACTUATOR_SHUT = 'Actuator, bonnet and gland shut, every bolt in and tight';

export const OPERATOR = 'Name the operator by role';

/** The air on the case read alive, then at zero: wherever it is bled off. */
export const AIR_TO_ZERO = {
  action: 'ventCase',
  caution: AIR_GOES,
  asks: [
    {
      name: 'lastAirPa',
      label: 'Signal gauge, before',
      type: 'quantity',
      dimension: 'pressure',
      gauge: 'signalGauge',
      optional: true,
    },
    {
      name: 'airZeroPa',
      label: 'Signal gauge, now',
      type: 'quantity',
      dimension: 'pressure',
      gauge: 'signalGauge',
      optional: true,
    },
    ...SHOWN_BY,
  ],
  judge: { rule: 'showSafe', with: { energy: 'signalAir', before: 'lastAirPa', after: 'airZeroPa' } },
} as const;

/** What is signed before the process comes back, the first time and each time that the signature has run out. */
export const PROCESS_BACK_HOLD = {
  kind: 'hold',
  point: 'hold',
  evidence: [
    'spring',
    'closure',
    'clear',
    'controllerLine',
    'supplyLock',
    'secondSupplyLock',
    'inletLock',
    'outletLock',
    'bypass',
  ],
  allows: ['unlockProcess', 'restoreProcess'],
} as const;
