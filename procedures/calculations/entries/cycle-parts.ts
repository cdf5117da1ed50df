import type { CycleAnalysis } from '../cycle-analysis.ts';
import { choice, results, usualNumbers } from '../specs.ts';

/** Which way the signal went, and in which cycle. */
export const DIRECTION = { ...choice('direction', ['up', 'down']), ...usualNumbers({ cycle: 1 }) };

/** What a table of readings up and down is judged by. */
export const TERMS = {
  ...results('errorMaxPercent', 'errorMinPercent', 'measuredErrorMaxPercent', 'measuredErrorMinPercent'),
  ...results(
    'hysteresisPercent',
    'hysteresisAtPercent',
    'hysteresisOfAveragesPercent',
    'repeatabilityPercent',
  ),
  ...results('independentPercent', 'terminalPercent', 'zeroBasedPercent'),
};

/** The terms beside each other; null for a linearity that too few rows do not give. */
export function terms<Analysis extends Pick<CycleAnalysis, 'linearity'>>({
  linearity,
  ...analysis
}: Analysis) {
  return {
    independentPercent: null,
    terminalPercent: null,
    zeroBasedPercent: null,
    ...analysis,
    ...linearity,
  };
}
