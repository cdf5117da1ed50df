/** What an apprentice did on the bench: each check with its minutes and with what it told about the truth. */
import type { Job, Answer as Line } from '../../job.ts';
import type { CauseId } from '../../troubleshooting/causes.ts';
import { FIT_GAUGE_MINUTES, type Hub, moveMinutes } from '../../troubleshooting/check.ts';
import { type CheckId, checkOf, isCheckId } from '../../troubleshooting/checks.ts';
import { believe, causeRanking } from '../../troubleshooting/engine/belief.ts';
import { modelOfValve } from '../../troubleshooting/engine/model-of-valve.ts';
import { evidenceOf } from '../../troubleshooting/job/evidence-of-job.ts';
import { factsOfJob } from '../../troubleshooting/job/facts-of-job.ts';
import { REPAIR_IDS, type RepairId, repairFor, repairOf } from '../../troubleshooting/repairs.ts';
import { HUB_TAIL } from '../../troubleshooting/steps/hub-choices.ts';
import { GAUGE_POINTS, type GaugePoint } from '../../troubleshooting/valve-facts.ts';
import { shareOf } from './search.ts';

/** One thing that was done; a gauge that was fitted tells nothing by itself. */
export interface Done {
  readonly kind: 'check' | 'mend' | 'gauge' | 'first line';
  readonly check: CheckId | null;
  readonly repair: RepairId | null;
  readonly point: GaugePoint | null;
  /** The word that it came to; "cannot tell" and "skip" are words too. */
  readonly found: string;
  readonly minutes: number;
  readonly beforeFraction: number;
  readonly afterFraction: number;
  /** What was wrong had been mended on the spot before it: there was nothing left to tell. */
  readonly isAfterCure: boolean;
}

/** What was done, in order, with minutes as the engine counts them: the check, and the way to where it is made. */
export function doneIn(job: Job, truth: readonly CauseId[]): readonly Done[] {
  const lines = job.answers.filter((one) => !one.superseded);
  let hub: Hub = 'in service';
  let before = rankingAfter(job, []);
  return lines.flatMap((line, at): readonly Done[] => {
    const what = whatOf(line);
    if (what === null) return [];
    const there = what.kind === 'first line' ? hub : hubOf(line, hub);
    const walked = what.minutes === 0 ? 0 : moveMinutes({ from: hub, to: there });
    hub = there;
    const left = leftOf(truth, { answers: lines.slice(0, at) });
    const isAfterCure = left.length === 0;
    const hidden = isAfterCure ? truth : left;
    const after = rankingAfter(job, lines.slice(0, at + 1));
    const shares = { beforeFraction: shareOf(hidden, before), afterFraction: shareOf(hidden, after) };
    before = after;
    return [{ ...what, ...shares, minutes: what.minutes + walked, isAfterCure }];
  });
}

/** What is still wrong with the valve after what was mended on the spot. */
export function leftOf(truth: readonly CauseId[], job: Pick<Job, 'answers'>): readonly CauseId[] {
  const mended = mendedIn(job);
  return truth.filter((cause) => !mended.includes(repairFor(cause)));
}

function rankingAfter(job: Job, answers: readonly Line[]): ReturnType<typeof causeRanking> {
  const facts = factsOfJob(job);
  const model = modelOfValve(facts);
  return causeRanking(model, believe(model, evidenceOf({ answers }, facts)));
}

type What = Omit<Done, 'beforeFraction' | 'afterFraction' | 'isAfterCure'>;

const NOTHING = { check: null, repair: null, point: null, found: '', minutes: 0 } as const;

function whatOf({ figures }: Line): What | null {
  const { evidence, check, found, repair, point } = figures;
  switch (evidence) {
    case 'first line':
      return { ...NOTHING, kind: 'first line' };
    case 'check': {
      if (typeof check !== 'string' || !isCheckId(check)) return null;
      const minutes = found === 'skip' ? 0 : checkOf(check).minutes;
      return { ...NOTHING, kind: 'check', check, found: String(found ?? ''), minutes };
    }
    case 'mended': {
      const made = REPAIR_IDS.find((id) => id === repair);
      if (made === undefined) return null;
      return { ...NOTHING, kind: 'mend', repair: made, minutes: repairOf(made).minutes };
    }
    case 'gauge fitted': {
      const at = Object.keys(GAUGE_POINTS).find((id): id is GaugePoint => id === point);
      return at === undefined
        ? null
        : { ...NOTHING, kind: 'gauge', point: at, minutes: FIT_GAUGE_MINUTES[at] };
    }
    default:
      return null;
  }
}

function hubOf({ step }: Line, now: Hub): Hub {
  return step === 'complaint' ? now : hubOfStep(step, now);
}

/** How the valve stands at a card, by the id of its step. @example hubOfStep('soapCaseJointOnBypass') // 'bypassed' */
export function hubOfStep(step: string, otherwise: Hub = 'in service'): Hub {
  if (step === 'fitGauge') return 'bypassed';
  if (step.endsWith('OnTestAir')) return 'isolated';
  const hubs = Object.entries(HUB_TAIL) as [Hub, string][];
  return hubs.find(([, tail]) => step.endsWith(tail))?.[0] ?? otherwise;
}

/** The repair that was named last, and how good a name it was. */
export interface Named {
  readonly repair: RepairId;
  readonly rightly: boolean;
}

/** @returns null before anything was named */
export function namedIn(job: Pick<Job, 'answers'>, truth: readonly CauseId[]): Named | null {
  const line = job.answers.findLast(({ superseded, step }) => !superseded && step.startsWith('nameCause'));
  const repair = REPAIR_IDS.find((id) => id === line?.figures.repair);
  if (repair === undefined) return null;
  return { repair, rightly: truth.some((cause) => repairFor(cause) === repair) };
}

/** Repairs that were made on the spot; what they put right is gone from the simulated valve. */
export function mendedIn(job: Pick<Job, 'answers'>): readonly RepairId[] {
  return job.answers.flatMap(({ superseded, figures }) => {
    const made = figures.evidence === 'mended' ? REPAIR_IDS.find((id) => id === figures.repair) : undefined;
    return superseded || made === undefined ? [] : [made];
  });
}
