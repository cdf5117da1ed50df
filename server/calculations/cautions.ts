/** The cautions that follow from where stored energy sits, as they stand above a result. Common practice, no source. */
import type { CalcResult, Calculation } from '../../procedures/calculations/calculation-types.ts';
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

const TURNING: CautionView = {
  word: 'warning',
  hazard: 'Stem and spring move with the test air.',
  consequence: 'A finger in the yoke can be crushed, and a plug that is turned on its seat is scored.',
  avoid:
    'Turn only in a job that has shown the process isolated and the air in one hand, with the plug held off its seat.',
};
const GLAND: CautionView = {
  word: 'warning',
  hazard: 'The packing holds the process back.',
  consequence: 'A gland that is loosened under pressure lets it out, hot or harmful as it is.',
  avoid: 'Loosen a gland only in a job that has shown the body without pressure.',
};
const ADJUSTER: CautionView = {
  word: 'warning',
  hazard: 'The adjuster holds the force of the spring.',
  consequence: 'Turned out of its thread it lets the spring go.',
  avoid:
    'Count the turns, keep the thread that the maker’s manual asks for, and turn only in a job, with no more air on than its step says.',
};

/** What a result invites to do. */
const BY_CALCULATION: Readonly<Record<string, CautionView>> = {
  'seating-turns': TURNING,
  'seating-turns-wanted': TURNING,
  'seating-obstacles': TURNING,
  'adjuster-turns': ADJUSTER,
  'adjuster-turns-wanted': ADJUSTER,
  'gland-torque': GLAND,
};

/** In the order of the work; none where nothing that is asked about can hurt. */
export function cautionsOf({ id }: Pick<Calculation, 'id'>, result: CalcResult): readonly CautionView[] {
  const own = BY_CALCULATION[id];
  const { cautions } = result;
  const named = Array.isArray(cautions) ? cautions.filter(isCaution).map((name) => CAUTIONS[name]) : [];
  return own === undefined ? named : [own, ...named];
}

function isCaution(name: unknown): name is EnergyCaution {
  return typeof name === 'string' && Object.hasOwn(CAUTIONS, name);
}
