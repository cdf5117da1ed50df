import { type CauseId, SOUND } from '../../troubleshooting/causes.ts';
import { modelOfValve } from '../../troubleshooting/engine/model-of-valve.ts';
import { valveFactsOf } from '../../troubleshooting/valve-facts.ts';
import type { ValveSheet } from '../../valve-sheet/sheet.ts';
import { FAULTS, type Given } from '../faults.ts';
import { between, type Random } from '../random.ts';

/** How bad a fault is, as somebody who sets one says it. Judgement. */
export const SEVERITIES = { slight: 0.25, plain: 0.6, bad: 0.95 } as const;
export type SeverityWord = keyof typeof SEVERITIES;

/** One valve in so many that is drawn has nothing wrong with it: to be found healthy is worth practising too. */
const SOUND_SHARE = 0.08;

/** The faults that such a valve can have on the bench. */
export function causesToPractise(sheet: ValveSheet): readonly CauseId[] {
  const { causes } = modelOfValve(valveFactsOf(sheet));
  return causes.filter((id) => id !== SOUND && FAULTS[id] !== undefined);
}

/**
 * Faults by draw: each fault of the valve as likely as the next, for what is rare wants practice most; a second one
 * among those that likely come with the first.
 * @example drawFaults(sheet, { count: 2, random: seeded(7) }).length // 2
 */
export function drawFaults(
  sheet: ValveSheet,
  of: { readonly count: 1 | 2; readonly random: Random },
): readonly Given[] {
  const { random } = of;
  if (of.count === 1 && random() < SOUND_SHARE) return [];
  const causes = causesToPractise(sheet);
  const first = causes[Math.floor(random() * causes.length)];
  if (first === undefined) return [];
  const second = of.count === 2 ? partnerOf(first, { sheet, random }) : null;
  return [first, ...(second === null ? [] : [second])].map((cause) => ({
    cause,
    severity: between(random, [SEVERITIES.slight, SEVERITIES.bad]),
  }));
}

function partnerOf(
  first: CauseId,
  of: { readonly sheet: ValveSheet; readonly random: Random },
): CauseId | null {
  const can = causesToPractise(of.sheet);
  const pairs = modelOfValve(valveFactsOf(of.sheet)).hypotheses.flatMap(({ causes, prior }) => {
    const [other] = causes.filter((id) => id !== first);
    const fits = causes.length === 2 && causes.includes(first) && other !== undefined && can.includes(other);
    return fits ? [{ other, prior }] : [];
  });
  let left = of.random() * pairs.reduce((sum, { prior }) => sum + prior, 0);
  for (const { other, prior } of pairs) {
    left -= prior;
    if (left <= 0) return other;
  }
  return pairs.at(-1)?.other ?? null;
}

/** Whether two faults can be in this valve at once. */
export function mayMeet(sheet: ValveSheet, [one, other]: readonly [CauseId, CauseId]): boolean {
  return modelOfValve(valveFactsOf(sheet)).hypotheses.some(
    ({ causes }) => causes.length === 2 && causes.includes(one) && causes.includes(other),
  );
}
