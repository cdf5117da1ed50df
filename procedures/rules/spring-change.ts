import { isTooMuch, newSpringOf } from '../new-spring.ts';
import type { Rule } from './rule.ts';

/** Does a new spring give the bench set of the sheet, and does it hold the valve shut? Said before it goes in. */
export const springFitsRule: Rule = {
  outcomes: [
    'fits',
    'wrong span',
    'wrong low end',
    'too much for the case',
    'does not hold shut',
    'not read',
  ],
  params: [],
  judge(input) {
    const job = { ...input.job, readings: { ...input.job.readings, ...input.readings } };
    const { sheet } = job;
    const spring = newSpringOf(job);
    if (spring === null) return { outcome: 'not read', figures: {} };
    const off = (value: number) => Math.abs(value) > sheet.benchSetTolerancePa;
    const wantedSpanPa = sheet.benchSetHighPa - sheet.benchSetLowPa;
    const outcome = () => {
      if (isTooMuch(job, spring)) return 'too much for the case';
      if (off(spring.benchHighPa - spring.benchLowPa - wantedSpanPa)) return 'wrong span';
      if (off(spring.benchLowPa - sheet.benchSetLowPa)) return 'wrong low end';
      return spring.seatLoadN < 0 ? 'does not hold shut' : 'fits';
    };
    return { outcome: outcome(), figures: spring };
  },
};
