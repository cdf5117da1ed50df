import { type Check, FIT_GAUGE, FIT_GAUGE_MINUTES, HUBS, type Hub, moveMinutes } from '../check.ts';
import type { CheckId } from '../checks.ts';
import type { GaugePoint } from '../valve-facts.ts';
import type { Evidence } from './evidence.ts';
import { bitsOf, jointOf, type Question } from './information.ts';
import { lookAgainJoint, looksToDoubt } from './look-again.ts';
import type { Model } from './model.ts';
import { settledIn } from './reopened.ts';

/** How the job stands, and what may be done about it. */
export interface Standing {
  readonly hub: Hub;
  readonly gaugesFitted: readonly GaugePoint[];
  /** The operator agrees to checks that move the process, or may. */
  readonly consent: boolean;
  /** May the valve be put on its bypass, may it be isolated; asked only for a hub that it is not in. */
  readonly mayBypass: boolean;
  readonly mayIsolate: boolean;
  /** A limited local source of air is at hand. */
  readonly testAir: boolean;
  /** The area allows an open cover with air on. */
  readonly coverMayOpen: boolean;
  /** Checks that nobody here makes, such as those that open what has a procedure of its own. */
  readonly without?: readonly CheckId[];
}

export interface Plan {
  readonly hub: Hub;
  readonly fit: readonly GaugePoint[];
  readonly moveMinutes: number;
  readonly fitMinutes: number;
  readonly minutes: number;
}

export interface Suggestion extends Plan {
  readonly check: CheckId;
  /** It was read already, and is looked at once more. */
  readonly again: boolean;
  readonly bits: number;
  readonly bitsPerMinute: number;
}

/** The checks worth making next, best expected information for its minutes first; nothing whose needs are not met. */
export function suggestions(
  model: Model,
  of: {
    readonly question: Question;
    readonly evidence: readonly Evidence[];
    readonly standing: Standing;
  },
): readonly Suggestion[] {
  const done = settledIn(model, of.evidence);
  const fresh = model.checks.flatMap((id) => {
    const table = model.tables.get(id);
    if (table === undefined || done.has(id)) return [];
    const plan = planOf(model, { id, standing: of.standing });
    return plan === null
      ? []
      : [suggested(id, { plan, again: false, joint: jointOf(of.question, table), of })];
  });
  const again = looksToDoubt(of.evidence).flatMap((looks) => {
    const [first] = looks;
    const plan = first === undefined ? null : planOf(model, { id: first.check, standing: of.standing });
    if (first === undefined || plan === null) return [];
    const joint = lookAgainJoint(model, { question: of.question, looks });
    return joint === null ? [] : [suggested(first.check, { plan, again: true, joint, of })];
  });
  return [...fresh, ...again].sort(
    (a, b) => b.bitsPerMinute - a.bitsPerMinute || (a.check < b.check ? -1 : 1),
  );
}

function suggested(
  check: CheckId,
  by: {
    readonly plan: Plan;
    readonly again: boolean;
    readonly joint: Float64Array;
    readonly of: { readonly question: Question };
  },
): Suggestion {
  const bits = bitsOf(by.joint, by.of.question.classes.length);
  return { check, again: by.again, ...by.plan, bits, bitsPerMinute: bits / by.plan.minutes };
}

/** How a check of this valve would be reached; null where nobody makes it here, or what it needs is not to be had. */
export function planOf(model: Model, of: { readonly id: CheckId; readonly standing: Standing }): Plan | null {
  const check = model.tables.get(of.id)?.check;
  if (check === undefined || check.broughtOnly === true || of.standing.without?.includes(of.id) === true)
    return null;
  return planFor(check, { standing: of.standing, gauges: check.gauges?.(model.facts) ?? [] });
}

/** Probability of each outcome of a suggested check together with each class. */
export function jointOfSuggested(
  model: Model,
  of: {
    readonly question: Question;
    readonly evidence: readonly Evidence[];
    readonly suggestion: Suggestion;
  },
): Float64Array | null {
  const { check, again } = of.suggestion;
  if (again) {
    const looks = looksToDoubt(of.evidence).find(([first]) => first?.check === check);
    return looks === undefined ? null : lookAgainJoint(model, { question: of.question, looks });
  }
  const table = model.tables.get(check);
  return table === undefined ? null : jointOf(of.question, table);
}

/** How a check would be reached from here, or null where something that it needs cannot be had. */
export function planFor(
  check: Check,
  of: { readonly standing: Standing; readonly gauges: readonly GaugePoint[] },
): Plan | null {
  const { standing } = of;
  if (check.consent === true && !standing.consent) return null;
  if (check.testAir === true && !standing.testAir) return null;
  if (check.coverOpen === true && !standing.coverMayOpen) return null;
  const fit = of.gauges.filter((point) => !standing.gaugesFitted.includes(point));
  // Fitting opens a live line: with consent, on the bypass.
  if (fit.length > 0 && !standing.consent) return null;
  const fitHubs = fit.length > 0 ? [FIT_GAUGE.hub] : [];
  const ways = check.hubs
    .map((hub) => ({ hub, move: movesBetween([standing.hub, ...fitHubs, hub]) }))
    .filter(({ hub }) => mayReach(standing, [...fitHubs, hub]))
    .sort((a, b) => a.move - b.move);
  const [way] = ways;
  if (way === undefined) return null;
  const fitMinutes = fit.reduce((sum, point) => sum + FIT_GAUGE_MINUTES[point], 0);
  return {
    hub: way.hub,
    fit,
    moveMinutes: way.move,
    fitMinutes,
    minutes: way.move + fitMinutes + check.minutes,
  };
}

function movesBetween(hubs: readonly Hub[]): number {
  return hubs.slice(1).reduce((sum, to, at) => sum + moveMinutes({ from: hubs[at] ?? to, to }), 0);
}

/** Going deeper needs leave; going back towards service does not. */
function mayReach(standing: Standing, hubs: readonly Hub[]): boolean {
  const here = HUBS.indexOf(standing.hub);
  return hubs.every((hub) => {
    const there = HUBS.indexOf(hub);
    if (there <= here) return true;
    const bypass = here >= 1 || standing.mayBypass;
    return bypass && standing.consent && (there < 2 || standing.mayIsolate);
  });
}
