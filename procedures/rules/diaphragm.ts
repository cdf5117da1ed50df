import { guarded } from '../cycle-verdict.ts';
import type { Rule } from './rule.ts';

/** Everything but a diaphragm that shows nothing is damaged. */
export const diaphragmLookRule: Rule = {
  outcomes: ['damaged', 'sound'],
  params: [],
  judge: ({ words }) => ({ outcome: words.diaphragmFound === 'sound' ? 'sound' : 'damaged', figures: {} }),
};

/** The bench set as the stroke tells it, friction taken out, against the tolerance of the sheet. */
export const benchShiftRule: Rule = {
  outcomes: ['as the sheet', 'shifted', 'too close', 'not known'],
  params: ['verdict'],
  judge({ job, params }) {
    const said = job.figures[params.verdict ?? ''];
    const shiftPa = said?.benchSetShiftPa;
    const uncertaintyPa = said?.benchSetShiftUncertaintyPa;
    if (typeof shiftPa !== 'number') return { outcome: 'not known', figures: {} };
    const uncertainty = typeof uncertaintyPa === 'number' ? uncertaintyPa : 0;
    const verdict = guarded({ value: shiftPa, limit: job.sheet.benchSetTolerancePa, uncertainty });
    const words = { inside: 'as the sheet', outside: 'shifted', 'too close': 'too close' } as const;
    return { outcome: words[verdict], figures: { shiftPa, uncertaintyPa: uncertainty } };
  },
};
