import { deadBandPercent } from '../calculations/performance-terms.ts';
import { overshootPercent } from '../calculations/step-response.ts';
import { cylinderExpected, cylinderThrust } from '../cylinder-balance.ts';
import { deadBandLimit, OVERSHOOT_LIMIT_PERCENT, signalSpan } from '../positioner-figures.ts';
import { STEP_FROM_PERCENT, STEP_TO_PERCENT } from '../step-plan.ts';
import { type OwnStroke, ownStrokeOf, worstOf } from './own-stroke.ts';
import type { Judged, Rule, RuleInput } from './rule.ts';

/**
 * The stroke of a positioner with the name of what is off: up and down apart is cured by no screw and comes first, then
 * whichever of zero, span and line is off the most.
 */
export const positionerStrokeRule: Rule = {
  outcomes: [
    'inside',
    'zero off',
    'span off',
    'middle off',
    'apart up and down',
    'too close',
    'not all read',
  ],
  params: [],
  judge(input) {
    const stroke = ownStrokeOf(input);
    if (stroke === null) return { outcome: 'not all read', figures: {} };
    const verdict = worstOf([stroke.errorVerdict, stroke.hysteresisVerdict]);
    return { outcome: verdict === 'outside' ? nameOf(stroke) : verdict, figures: stroke };
  },
};

function nameOf(stroke: OwnStroke): string {
  if (stroke.hysteresisVerdict === 'outside') return 'apart up and down';
  const parts = [
    ['zero off', Math.abs(stroke.zeroErrorPercent)],
    ['span off', Math.abs(stroke.spanErrorPercent)],
    ['middle off', stroke.linearityPercent],
  ] as const;
  return parts.reduce((most, part) => (part[1] > most[1] ? part : most))[0];
}

/** The reversal read in the unit of this positioner's signal; the wider of the two ways counts. */
export const deadBandRule: Rule = {
  outcomes: ['inside', 'outside', 'not read'],
  params: [],
  judge({ job: { sheet }, readings }) {
    const ending = sheet.positioner === 'electropneumatic' ? 'A' : 'Pa';
    const [top, down, up] = ['turnedAt', 'movedDownAt', 'movedUpAt'].map((name) => readings[name + ending]);
    if (top === undefined || down === undefined || up === undefined)
      return { outcome: 'not read', figures: {} };
    const band = (other: number) =>
      deadBandPercent({
        lastMovementUp: other,
        firstMovementDown: down.valueSi,
        inputSpan: signalSpan(sheet),
      });
    const bandPercent = Math.max(band(top.valueSi), band(up.valueSi));
    const { percent: limitPercent } = deadBandLimit(sheet);
    // Read on one scale within a minute: what that scale is off by stands in both readings alike.
    const outcome = bandPercent <= limitPercent * (1 + 1e-9) ? 'inside' : 'outside';
    return { outcome, figures: { deadBandPercent: bandPercent, limitPercent } };
  },
};

/** A step of a tenth: how far it overshoots, how long it takes, how far it goes for it. */
export const positionerStepRule: Rule = {
  outcomes: ['settles', 'swings', 'creeps', 'times do not fit', 'not read'],
  params: [],
  judge({ job: { sheet }, readings, words }) {
    const { stepFromM, stepFurthestM, stepRestM, stepT63S, stepT86S } = readings;
    if (stepFromM === undefined || stepRestM === undefined) return { outcome: 'not read', figures: {} };
    const percent = (valueSi: number) => (100 * valueSi) / sheet.travelM;
    const wentPercent = percent(stepRestM.valueSi - stepFromM.valueSi);
    const figures = {
      stepPercent: wentPercent,
      stepGain: Math.abs(wentPercent) / (STEP_TO_PERCENT - STEP_FROM_PERCENT),
      t63S: stepT63S?.valueSi ?? null,
      t86S: stepT86S?.valueSi ?? null,
    };
    // A stem that did not stir has no step to overshoot.
    if (Math.abs(wentPercent) < 1e-6) return { outcome: 'creeps', figures };
    const overshoot =
      stepFurthestM === undefined
        ? null
        : overshootPercent({
            initialPercent: percent(stepFromM.valueSi),
            finalPercent: percent(stepRestM.valueSi),
            peakPercent: percent(stepFurthestM.valueSi),
          });
    const all = { ...figures, overshootPercent: overshoot };
    if (stepT63S !== undefined && stepT86S !== undefined && stepT86S.valueSi < stepT63S.valueSi)
      return { outcome: 'times do not fit', figures: all };
    if (words.stepSettles === 'swings' || (overshoot ?? 0) > OVERSHOOT_LIMIT_PERCENT)
      return { outcome: 'swings', figures: all };
    return { outcome: words.stepSettles === 'creeps' ? 'creeps' : 'settles', figures: all };
  },
};

/** Both sides of a cylinder by the force balance, moving and at rest in the middle. */
export const cylinderGaugesRule: Rule = {
  outcomes: [
    'as expected',
    'loaded side not higher',
    'a side is dead',
    'more load than expected',
    'too close',
    'not read',
  ],
  params: [],
  judge(input) {
    const { topMovingPa, bottomMovingPa, topRestPa, bottomRestPa } = input.readings;
    if (
      topMovingPa === undefined ||
      bottomMovingPa === undefined ||
      topRestPa === undefined ||
      bottomRestPa === undefined
    )
      return { outcome: 'not read', figures: {} };
    const moving = cylinderThrust(input.job, { top: topMovingPa, bottom: bottomMovingPa });
    const rest = cylinderThrust(input.job, { top: topRestPa, bottom: bottomRestPa });
    const dead = [topRestPa, bottomRestPa].some(
      ({ valueSi, uncertaintySi }) => valueSi <= (uncertaintySi ?? 0),
    );
    return balanced(input, { moving, rest, dead });
  },
};

type Thrust = ReturnType<typeof cylinderThrust>;

function balanced(
  { job, words }: RuleInput,
  { moving, rest, dead }: { readonly moving: Thrust; readonly rest: Thrust; readonly dead: boolean },
): Judged {
  const { restAllowedN, movingLeastN } = cylinderExpected(job);
  const loads = job.sheet.positionerRisingSignalLoads;
  const movingN = loads === 'bottom' ? -moving.downN : moving.downN;
  const figures = {
    movingN,
    movingLeastN,
    movingUncertaintyN: moving.uncertaintyN,
    restN: rest.downN,
    restAllowedN,
    restUncertaintyN: rest.uncertaintyN,
  };
  if (words.gaugesAnswer !== 'yes' || (dead && job.sheet.springHeldBy === 'no spring'))
    return { outcome: 'a side is dead', figures };
  // How much the packing takes is known to a half at best: only the wrong side clearly higher is a fault.
  const leastN = Math.min(0, movingLeastN);
  if (movingN + moving.uncertaintyN < leastN) return { outcome: 'loaded side not higher', figures };
  const restN = Math.abs(rest.downN);
  if (restN - rest.uncertaintyN > restAllowedN) return { outcome: 'more load than expected', figures };
  return { outcome: movingN - moving.uncertaintyN > leastN ? 'as expected' : 'too close', figures };
}
