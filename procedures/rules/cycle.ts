import { cycleFigures, cycleVerdict } from '../cycle-verdict.ts';
import type { Rule } from './rule.ts';

/** A table is done when its last row is in. */
export const tableRule: Rule = {
  outcomes: ['more rows', 'complete', 'above limit'],
  params: ['rows'],
  judge({ job, step, params }) {
    const have = (job.tables[step] ?? []).length + 1;
    return { outcome: have >= Number(params.rows) ? 'complete' : 'more rows', figures: {} };
  },
};

/** Error, hysteresis, repeatability, friction and bench-set shift from the same table, and one verdict. */
export const cycleRule: Rule = {
  outcomes: ['inside', 'outside', 'too close', 'does not repeat', 'not enough readings'],
  params: ['cycle', 'strokes'],
  judge({ job, params }) {
    const analysis = cycleFigures(job, { cycle: params.cycle ?? '', strokes: params.strokes ?? '' });
    return analysis === null
      ? { outcome: 'not enough readings', figures: {} }
      : { outcome: cycleVerdict(analysis), figures: analysis };
  },
};
