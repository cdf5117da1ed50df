/** The cautions that follow from where stored energy sits, as they stand above a result. Common practice, no source. */
import type { CalcResult } from '../../procedures/calculations/calculation-types.ts';
import type { EnergyCaution } from '../../procedures/calculations/spring-energy.ts';

export interface CautionView {
  readonly word: 'danger' | 'warning' | 'caution' | 'notice';
  readonly hazard: string;
  readonly consequence: string;
  readonly avoid: string;
}

const CAUTIONS: Readonly<Record<EnergyCaution, CautionView>> = {
  'air stored': {
    word: 'warning',
    hazard: 'Air is stored under pressure.',
    consequence: 'A joint that opens under it can throw parts.',
    avoid:
      'Shut the supply off, lock it, vent, and see a gauge that was alive there stand at zero before anything is loosened.',
  },
  'spring loaded by the stroke': {
    word: 'warning',
    hazard: 'The stroke has pressed the spring together.',
    consequence: 'Stem and plug follow it at once when the air goes, and can crush a hand.',
    avoid: 'Hands stay outside the yoke while air is on and while it is vented.',
  },
  'spring loaded when vented': {
    word: 'danger',
    hazard: 'The spring stays loaded when the air is gone: the case alone holds it.',
    consequence: 'Case bolts that are loosened under it throw the cover and kill.',
    avoid: 'Release the spring first, by its adjuster or the way that the maker’s manual says.',
  },
};

/** In the order of the work; none for a result that names none. */
export function cautionsOf(result: CalcResult): readonly CautionView[] {
  const { cautions } = result;
  if (!Array.isArray(cautions)) return [];
  return cautions.flatMap((name) => (isCaution(name) ? [CAUTIONS[name]] : []));
}

function isCaution(name: unknown): name is EnergyCaution {
  return typeof name === 'string' && Object.hasOwn(CAUTIONS, name);
}
