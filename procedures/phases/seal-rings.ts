/** Seal rings of a balanced plug: off and looked at before the trim is lapped, new ones on before it goes in. */
import type { ChoiceField, Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';
import { finding } from './finding.ts';

type Off = 'sealRingsOff' | 'sealBoreBad';
type On = 'sealRingsOn' | 'sealRingsWrong';

interface Ways<Next extends string> {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
}

/** Where the trim goes on once it is out, and before it goes in: by its seal rings where its plug is balanced. */
export const TRIM_OUT_NEXT = { by: 'trim', ways: { plain: 'trimLook', balanced: 'sealRingsOff' } } as const;
export const TRIM_IN_FIRST = { by: 'trim', ways: { plain: 'trimIn', balanced: 'sealRingsOn' } } as const;

const FOUND: ChoiceField = {
  name: 'sealRingsFound',
  label: 'The old rings',
  type: 'choice',
  choices: [
    { value: 'worn', label: 'Worn to one side or flat' },
    { value: 'cut', label: 'Cut, nicked or broken' },
    { value: 'hard', label: 'Hard, swollen or stuck in their groove' },
    { value: 'sound', label: 'Sound' },
  ],
};

/** The rings off, groove and bore looked at: what they show says where a balanced plug leaks. */
export function sealRingsOff<const Next extends string>({
  phase,
  next,
  makeSafe,
}: Ways<Next>): Readonly<Record<Off, Step<Off | Next>>> {
  return {
    sealRingsOff: {
      kind: 'reading',
      phase,
      title: 'Take the seal rings off the balanced plug, and look',
      how: 'A balanced plug leaks past these as past its seat. They are renewed whatever they look like. No screwdriver in the groove: a burr there cuts the next ring.',
      action: 'workInBody',
      do: [
        'Mark which way each lip or spring looks.',
        'Take the rings off without touching groove and lands.',
        'Lay seal, spring and back-up ring in their order.',
        'Look at the grooves, and at the bore that they run in.',
      ],
      asks: [
        FOUND,
        yesNo('sealGrooves', 'Grooves clean to their corners, no burr on the lands'),
        yesNo('sealBore', 'Bore where they run: smooth, no line along it that a nail catches on'),
      ],
      judge: { rule: 'allYes', with: { fields: 'sealGrooves sealBore' } },
      ways: { yes: { to: next }, no: { to: 'sealBoreBad' } },
      makeSafe,
    },
    sealBoreBad: finding<Off | Next>({
      phase,
      title: 'Groove or bore is not sound',
      how: 'A burr is stoned off. Fine lines along the bore are polished by hand with fine cloth, round and round; what the nail still catches on leaks past any ring.',
      choices: {
        again: { label: 'Stoned or polished: look again', to: 'sealRingsOff' },
        part: { label: 'Another cage or plug is here: look at it', to: 'sealRingsOff' },
        goOn: {
          label: 'It stays so until the part is here: it will leak past the ring',
          to: next,
          reason: true,
        },
      },
      makeSafe,
    }),
  };
}

/** New rings on the clean plug, lips as the old ones stood. */
export function sealRingsOn<const Next extends string>({
  phase,
  next,
  makeSafe,
}: Ways<Next>): Readonly<Record<On, Step<On | Next>>> {
  return {
    sealRingsOn: {
      kind: 'reading',
      phase,
      title: 'Fit new seal rings on the balanced plug',
      how: 'Old and new side by side: same section, same lips. A ring of hard plastic is warmed as the manual says and drawn over a sleeve, then given time to shrink back. Only the lubricant that the manual allows for this fluid.',
      action: 'workInBody',
      do: [
        'Put the old rings beside the new ones.',
        'Fit each ring over its sleeve, its lip to its mark.',
        'Turn each ring in its groove.',
      ],
      asks: [
        { name: 'sealRingsPart', label: 'Seal rings, by their part numbers', type: 'text' },
        yesNo('sealRingsRight', 'Each turns in its groove, not nicked, its lip the right way'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'sealRingsRight' } },
      ways: { yes: { to: next }, no: { to: 'sealRingsWrong' } },
      makeSafe,
    },
    sealRingsWrong: finding<On | Next>({
      phase,
      title: 'A seal ring does not sit right, or is the wrong one',
      how: 'One that was nicked or stretched is not used. Lips the wrong way let the drop push the ring out of its groove.',
      choices: {
        again: { label: 'Another one, or set right: look again', to: 'sealRingsOn' },
        old: {
          label: 'The right one is not here: sound old ones go back, a set is ordered',
          to: next,
          reason: true,
        },
      },
      makeSafe,
    }),
  };
}
