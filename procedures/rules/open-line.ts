import type { FluidHarm, ProcessIsolation } from '../valve-sheet/sheet.ts';
import type { Rule } from './rule.ts';

/** How sure a shut-off is, from the surest (HSG253: positive, proved, proved with care, not proved). */
const GRADES: readonly ProcessIsolation[] = [
  'positive',
  'double block and bleed',
  'block and bleed',
  'block only',
];

/**
 * The least sure shut-off behind which a line with this fluid is opened; a lesser one rests on a risk assessment.
 * Guidance, not law (HSG253, as summarised); which fluid wants which is common practice, no source.
 */
const WANTED: Readonly<Record<FluidHarm, ProcessIsolation>> = {
  toxic: 'positive',
  flammable: 'positive',
  scalding: 'double block and bleed',
  corrosive: 'double block and bleed',
  none: 'block and bleed',
};

/** @example shutOffWanted('toxic') // 'positive' */
export function shutOffWanted(fluid: FluidHarm): ProcessIsolation {
  return WANTED[fluid];
}

/** Is the line shut off surely enough for what comes out of it? One valve that nobody has tried never is for harm. */
export const shutOffRule: Rule = {
  outcomes: ['enough', 'wants an assessment', 'not enough'],
  params: [],
  judge({ job, words }) {
    const { fluidHarm, isolationReference } = job.sheet;
    const found = GRADES.indexOf((words.shutOffBy ?? '') as ProcessIsolation);
    const wanted = GRADES.indexOf(WANTED[fluidHarm]);
    const figures = { wanted: WANTED[fluidHarm] };
    if (found === -1) return { outcome: 'not enough', figures };
    if (found <= wanted) return { outcome: 'enough', figures };
    if (GRADES[found] === 'block only' && fluidHarm !== 'none') return { outcome: 'not enough', figures };
    const reference = (words.assessment ?? '').trim() || isolationReference || '';
    return { outcome: reference === '' ? 'wants an assessment' : 'enough', figures };
  },
};

/** Before a pocket is opened: the gas test that this fluid wants, with its instrument. */
export const gasTestRule: Rule = {
  outcomes: ['may be opened', 'the fluid wants one', 'not said how', 'not clean'],
  params: [],
  judge({ job, words }) {
    const wants = ['toxic', 'flammable'].includes(job.sheet.fluidHarm);
    const outcome = () => {
      if (words.gasTest === 'none') return 'not clean';
      if (words.gasTest === 'absent') return wants ? 'the fluid wants one' : 'may be opened';
      return (words.gasTestBy ?? '').trim() === '' ? 'not said how' : 'may be opened';
    };
    return { outcome: outcome(), figures: {} };
  },
};
