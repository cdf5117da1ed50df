import { seatingFigures } from '../seating.ts';
import type { Rule } from './rule.ts';

/**
 * Where the plug touches its seat, found going both ways with a dial indicator: friction makes the two
 * differ, and their middle is the contact without it.
 */
export const contactRule: Rule = {
  outcomes: ['found', 'does not move', 'above limit'],
  params: [],
  judge({ readings, words }) {
    const leaves = readings.contactLeavesPa?.valueSi;
    const touches = readings.contactTouchesPa?.valueSi;
    if (words.moves !== 'yes' || leaves === undefined || touches === undefined)
      return { outcome: 'does not move', figures: {} };
    return {
      outcome: 'found',
      figures: { contactPa: (leaves + touches) / 2, breakawayPa: Math.abs(leaves - touches) / 2 },
    };
  },
};

/** After turning: the contact against the one that the turns should give. */
export const contactAfterRule: Rule = {
  outcomes: ['as expected', 'not as expected', 'does not move', 'above limit'],
  params: [],
  judge(input) {
    const found = contactRule.judge(input);
    if (found.outcome !== 'found') return found;
    const contactPa = Number(found.figures.contactPa);
    const expected = seatingFigures(input.job, { contactAfterPa: contactPa });
    const outcome =
      Math.abs(contactPa - expected.expectedContactPa) <= expected.allowedPa
        ? 'as expected'
        : 'not as expected';
    return { outcome, figures: { ...found.figures, ...expected } };
  },
};
