import type { Caution, ChoiceField, Field } from '../vocabulary.ts';

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

export const OPERATOR = 'Name the operator by role';
