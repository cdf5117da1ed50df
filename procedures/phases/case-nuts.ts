import type { Caution, ChoiceField, Field, Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';

const COUNTS = ['6', '8', '10', '12', '14', '16', '18', '20', '22', '24', '28', '32', 'other'] as const;

/** How many bolts the case has: the sheet does not say, the person counts. */
export const CASE_BOLTS: ChoiceField = {
  name: 'caseBolts',
  label: 'Case bolts, counted',
  type: 'choice',
  choices: COUNTS.map((value) => ({ value, label: value === 'other' ? 'another count' : value })),
};

/** What the manual says of the case nuts; blank where it says nothing. */
const CASE_TORQUE: Field = {
  name: 'caseTorqueNm',
  label: 'Torque of the case nuts by the maker’s manual',
  type: 'quantity',
  dimension: 'torque',
  optional: true,
};

const NUT_BREAKS: Caution = {
  word: 'caution',
  hazard: 'An old case bolt can break under the spanner.',
  consequence: 'A hand that slips is cut on the case.',
  avoid: 'Ring spanner, pulled and not pushed; stand so that a slip goes into the air.',
};

/** The case nuts tightened in rounds, opposite ones in turn, the air off the case. */
export function tightenNuts<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly next: Id;
  readonly broken: Id;
  readonly makeSafe: Id;
}): Step<Id> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: step.title,
    how: 'Order, counted clockwise: {caseNutOrder}. To the torque of the manual; where it gives none, the same small part of a turn on each nut (common practice, no source).',
    why: 'Nuts drawn down on one side squeeze the bead out on the other.',
    action: 'tightenCaseNuts',
    caution: NUT_BREAKS,
    do: [
      'Hold the bolt head with a second spanner.',
      'Tighten the nuts in that order, a part of a turn each.',
      'Check all of them once around in a circle, until no nut moves.',
    ],
    asks: [
      CASE_TORQUE,
      yesNo('nutsEven', 'Every nut at the same torque, or the same feel; the gap is even all round'),
    ],
    judge: { rule: 'allYes', with: { fields: 'nutsEven' } },
    ways: { yes: { to: step.next }, no: { to: step.broken } },
    makeSafe: step.makeSafe,
  };
}
