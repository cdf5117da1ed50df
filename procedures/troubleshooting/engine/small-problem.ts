/** What is left of a search once few causes are likely, in plain arrays: small enough to be thought through. */
import type { Hub } from '../check.ts';
import type { Evidence } from './evidence.ts';
import type { Question } from './information.ts';
import { lookAgainShares, looksToDoubt } from './look-again.ts';
import { type Model, sharesOf } from './model.ts';
import { planOf, type Standing, type Suggestion } from './next-check.ts';
import { amissOf } from './reader.ts';
import { repairCosts } from './repair-cost.ts';

/** So many hypotheses are thought through at most, and they must hold so much of what is likely. */
const HYPOTHESES_MOST = 40;
const HOLD_FRACTION = 0.9;
/** So many checks, those that tell most for their minutes. */
const OFFERS_MOST = 12;

/** A check that may be made, now or later, and what it would show. */
export interface Offer {
  readonly suggestion: Suggestion;
  readonly width: number;
  /** Share of each word under each hypothesis, slips counted in: hypothesis by hypothesis, words in a row. */
  readonly shares: Float64Array;
}

/** Where the valve stands and which gauges are on it; what each offer costs from there, and where it leads. */
export interface Stance {
  readonly hub: Hub;
  readonly offers: readonly ({
    readonly minutes: number;
    /** Null where the valve stands as before. */
    readonly to: (() => Stance) | null;
  } | null)[];
}

export interface ClassCosts {
  readonly minutes: Float64Array;
  /** Beside the minutes, where it was not this. */
  readonly inVainMinutes: Float64Array;
}

export interface SmallProblem {
  readonly offers: readonly Offer[];
  readonly weights: Float64Array;
  /** Two classes for each hypothesis, the same one twice where it is alone; numbered without gaps. */
  readonly members: Uint8Array;
  readonly classes: number;
  /** Of each class, from each hub. */
  readonly costs: Readonly<Record<Hub, ClassCosts>>;
  readonly start: Stance;
}

interface Of {
  readonly question: Question;
  readonly evidence: readonly Evidence[];
  readonly standing: Standing;
  readonly all: readonly Suggestion[];
}

/** @returns null where so much is likely still that its heaviest part says too little of it */
export function smallProblem(model: Model, of: Of): SmallProblem | null {
  const heavy = heaviest(of.question.weights);
  if (heavy === null) return null;
  const { members, rows, weights, extraMisread } = of.question;
  const part = {
    rows: {
      one: Int32Array.from(heavy, (n) => rows.one[n] ?? 0),
      other: Int32Array.from(heavy, (n) => rows.other[n] ?? -1),
    },
    weights: Float64Array.from(heavy, (n) => weights[n] ?? 0),
    extraMisread,
  };
  const offers = of.all
    .slice(0, OFFERS_MOST)
    .flatMap((suggestion) => offerOf(model, { suggestion, part, evidence: of.evidence }) ?? []);
  const mine = heavy.flatMap((n) => [members[2 * n] ?? 0, members[2 * n + 1] ?? 0]);
  const used = [...new Set(mine)];
  return {
    offers,
    weights: part.weights,
    members: Uint8Array.from(mine, (one) => used.indexOf(one)),
    classes: used.length,
    costs: costsByHub(model, { question: of.question, used }),
    start: stances(model, offers)(of.standing),
  };
}

function heaviest(weights: Float64Array): readonly number[] | null {
  const order = [...weights.keys()].sort((a, b) => (weights[b] ?? 0) - (weights[a] ?? 0));
  const heavy = order.slice(0, HYPOTHESES_MOST);
  const held = heavy.reduce((sum, n) => sum + (weights[n] ?? 0), 0);
  return held >= HOLD_FRACTION * weights.reduce((sum, one) => sum + one, 0) ? heavy : null;
}

function offerOf(
  model: Model,
  of: {
    readonly suggestion: Suggestion;
    readonly part: Pick<Question, 'rows' | 'weights' | 'extraMisread'>;
    readonly evidence: readonly Evidence[];
  },
): Offer | null {
  const { suggestion, part } = of;
  const table = model.tables.get(suggestion.check);
  if (table === undefined) return null;
  const width = table.codes.length;
  if (suggestion.again) {
    const looks = looksToDoubt(of.evidence).find(([first]) => first?.check === suggestion.check);
    const shares = looks === undefined ? null : lookAgainShares(model, { question: part, looks });
    return shares === null ? null : { suggestion, width, shares };
  }
  const misread = amissOf([table.check.misread, part.extraMisread]);
  const { one, other } = part.rows;
  const shares = new Float64Array(width * one.length);
  one.forEach((first, n) => {
    const second = other[n] ?? -1;
    const bare = sharesOf(table, second < 0 ? [first] : [first, second]);
    for (let k = 0; k < width; k++) shares[n * width + k] = (1 - misread) * (bare[k] ?? 0) + misread / width;
  });
  return { suggestion, width, shares };
}

function costsByHub(
  model: Model,
  of: { readonly question: Question; readonly used: readonly number[] },
): SmallProblem['costs'] {
  const at = (hub: Hub) => {
    const all = repairCosts(model, { question: of.question, hub });
    const used = of.used.flatMap((one) => all[one] ?? []);
    return {
      minutes: Float64Array.from(used, ({ minutes }) => minutes),
      inVainMinutes: Float64Array.from(used, ({ inVainMinutes }) => inVainMinutes),
    };
  };
  return { 'in service': at('in service'), bypassed: at('bypassed'), isolated: at('isolated') };
}

/** Each way in which the valve may stand is worked out once. */
function stances(model: Model, offers: readonly Offer[]): (standing: Standing) => Stance {
  const known = new Map<string, Stance>();
  const stance = (standing: Standing): Stance => {
    const key = `${standing.hub} ${[...standing.gaugesFitted].sort().join()}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const made: Stance = {
      hub: standing.hub,
      offers: offers.map(({ suggestion }) => {
        const plan = planOf(model, { id: suggestion.check, standing });
        if (plan === null) return null;
        if (plan.hub === standing.hub && plan.fit.length === 0) return { minutes: plan.minutes, to: null };
        const gaugesFitted = [...standing.gaugesFitted, ...plan.fit];
        let there: Stance | null = null;
        const to = () => {
          there ??= stance({ ...standing, hub: plan.hub, gaugesFitted });
          return there;
        };
        return { minutes: plan.minutes, to };
      }),
    };
    known.set(key, made);
    return made;
  };
  return stance;
}
