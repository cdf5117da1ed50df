import { ABOVE_ZERO, ANY_NUMBER, oneOf, refuseOutside } from './checks.ts';
import { integrate, logGamma, normalBelow } from './probability.ts';
import { limitsOf } from './verdict.ts';

/** What is known of the items before they are measured. */
export type Prior =
  | { readonly kind: 'normal'; readonly mean: number; readonly standardDeviation: number }
  | { readonly kind: 'gamma'; readonly shape: number; readonly scale: number };

export interface RiskInput {
  readonly prior: Prior;
  readonly standardUncertainty: number;
  readonly lowerLimit?: number | null;
  readonly upperLimit?: number | null;
  /** Where acceptance ends; the limits themselves where left out. */
  readonly acceptLower?: number | null;
  readonly acceptUpper?: number | null;
}

export interface DecisionRisk {
  /** Share of all items that do not conform, before anything is measured. */
  readonly nonconforming: number;
  /** Share of all items that do not conform and are accepted. */
  readonly wrongAccept: number;
  /** Share of all items that conform and are rejected. */
  readonly wrongReject: number;
}

/**
 * Risks of a decision rule over all the items that come.
 *
 * Shape: prior, uncertainty, limits and acceptance limits of one unit in, three probabilities out.
 * Valid: normal measurement error; joint probabilities, of all items. No ratio makes them zero.
 * @param prior                normal (mean, standard deviation above 0) or gamma (shape from 1 to 1000, scale above 0)
 * @param standardUncertainty  of the measurement; above 0
 * @param lowerLimit           blank: none
 * @param upperLimit           blank: none; at least one
 * @param acceptLower          blank: the limit
 * @param acceptUpper          blank: the limit
 * @returns nonconforming before measuring, wrong accept and wrong reject
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-003 if there is no limit or they do not rise;
 *   CALC-005 if the prior is unknown
 * @source [S-08] clause 9, global risks
 * @example decisionRisk({ prior: { kind: 'normal', mean: 0, standardDeviation: 4 }, standardUncertainty: 1,
 *   lowerLimit: -8, upperLimit: 8 }).wrongAccept // 0.00800608
 */
export function decisionRisk(input: RiskInput): DecisionRisk {
  const { standardUncertainty } = input;
  refuseOutside({ standardUncertainty }, ABOVE_ZERO);
  const limits = limitsOf(input);
  const accept = limitsOf({
    lowerLimit: input.acceptLower ?? input.lowerLimit ?? null,
    upperLimit: input.acceptUpper ?? input.upperLimit ?? null,
  });
  const { density, from, to } = shapeOf(input.prior);
  const accepted = (value: number) =>
    below((accept.upper - value) / standardUncertainty) - below((accept.lower - value) / standardUncertainty);
  const inside = [
    Math.min(Math.max(limits.lower, from), to),
    Math.max(Math.min(limits.upper, to), from),
  ] as const;
  // The chance to be accepted turns over within a few uncertainties of an acceptance limit, however narrow that is.
  const turns = [accept.lower, accept.upper].flatMap((limit) =>
    [-8, 0, 8].map((times) => limit + times * standardUncertainty),
  );
  const over = (of: (value: number) => number, ends: readonly [number, number]) =>
    inPieces({ of, ends, cuts: turns });
  const outside = (of: (value: number) => number) => over(of, [from, inside[0]]) + over(of, [inside[1], to]);
  return {
    nonconforming: outside(density),
    wrongAccept: outside((value) => density(value) * accepted(value)),
    wrongReject: over((value) => density(value) * (1 - accepted(value)), inside),
  };
}

function inPieces(of: {
  readonly of: (value: number) => number;
  readonly ends: readonly [number, number];
  readonly cuts: readonly number[];
}): number {
  const [from, to] = of.ends;
  const inner = of.cuts.filter((cut) => cut > from && cut < to).sort((a, b) => a - b);
  const cuts = [from, ...inner, to];
  return cuts.slice(1).reduce((sum, end, at) => {
    const start = cuts[at] ?? from;
    return end > start ? sum + integrate({ of: of.of, from: start, to: end, parts: 40 }) : sum;
  }, 0);
}

function below(z: number): number {
  return normalBelow(Math.min(1e6, Math.max(-1e6, z)));
}

interface Shape {
  readonly density: (value: number) => number;
  /** Beyond these nothing is left that counts. */
  readonly from: number;
  readonly to: number;
}

function shapeOf(prior: Prior): Shape {
  const kind = oneOf({ name: 'prior', value: prior.kind, choices: ['normal', 'gamma'] });
  if (kind === 'normal' && prior.kind === 'normal') {
    const { mean, standardDeviation } = prior;
    refuseOutside({ mean }, ANY_NUMBER);
    refuseOutside({ standardDeviation }, ABOVE_ZERO);
    const top = 1 / (standardDeviation * Math.sqrt(2 * Math.PI));
    return {
      density: (value) => top * Math.exp(-0.5 * ((value - mean) / standardDeviation) ** 2),
      from: mean - 10 * standardDeviation,
      to: mean + 10 * standardDeviation,
    };
  }
  return gammaShape(prior as Extract<Prior, { kind: 'gamma' }>);
}

function gammaShape({ shape, scale }: { readonly shape: number; readonly scale: number }): Shape {
  refuseOutside({ shape }, { atLeast: 1, atMost: 1000 });
  refuseOutside({ scale }, ABOVE_ZERO);
  const logTop = -logGamma(shape) - Math.log(scale);
  return {
    density: (value) => Math.exp(logTop + (shape - 1) * Math.log(value / scale) - value / scale),
    from: 0,
    to: scale * (shape + 12 * Math.sqrt(shape) + 40),
  };
}
