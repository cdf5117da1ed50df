import { preferredUnit, unitFor } from '../../../procedures/calculations/units.ts';
import {
  type CycleFigures,
  cycleFigures,
  cycleVerdict,
  frictionVerdict,
  type Guarded,
  guarded,
} from '../../../procedures/cycle-verdict.ts';
import type { Job } from '../../../procedures/job.ts';
import { signedPercent } from '../view/words.ts';
import { leakResults } from './leaks.ts';
import { ownResults } from './own-results.ts';
import { ownJudged, ownStrokeJob } from './own-stroke.ts';
import { number, type Result, verdictWords } from './result-row.ts';
import { seatResults } from './seat.ts';
import { timeResults } from './stroke-times.ts';

type When = 'asFound' | 'asLeft';

const STEPS = {
  asFound: { cycle: 'asFoundCycle', strokes: 'asFoundStrokes', verdict: 'asFoundVerdict' },
  asLeft: { cycle: 'asLeftCycle', strokes: 'asLeftStrokes', verdict: 'asLeftVerdict' },
} as const;

/**
 * What was judged of a cycle, as stored. A row corrected after that is judged again from the table that stands,
 * since a correction that changes no verdict does not go back to it.
 */
export function judged(job: Job, when: When): CycleFigures | null {
  const steps = STEPS[when];
  const answer = job.answers.findLast((one) => one.step === steps.verdict && !one.superseded);
  if (answer === undefined || typeof answer.figures.errorWorstPercent !== 'number')
    return ownJudged(job, when);
  const rows = [...(job.tables[steps.cycle] ?? []), ...(job.tables[steps.strokes] ?? [])];
  if (rows.every((row) => row.place < answer.place)) return answer.figures as CycleFigures;
  return cycleFigures(job, steps);
}

/** @example conclusionOf(job) // 'As left: inside its limits.' */
export function conclusionOf(job: Job): string {
  const left = judged(job, 'asLeft');
  const figures = left ?? judged(job, 'asFound');
  if (figures === null) return '';
  const words = {
    inside: 'inside its limits',
    outside: 'not inside its limits',
    'too close': 'too close to its limits for this gauge',
    'does not repeat': 'it does not repeat',
  };
  const beside = besideThem(figures, job.sheet);
  const more = beside.length === 0 ? '' : ` Outside its limit all the same: ${beside.join(', ')}.`;
  return `${left === null ? 'As found' : 'As left'}: ${words[cycleVerdict(figures)]}.${more}`;
}

/** What has a limit and is no part of the verdict on the cycle. */
function besideThem(figures: CycleFigures, sheet: Job['sheet']): readonly string[] {
  return [
    ...(frictionVerdict(figures, sheet) === 'outside' ? ['friction'] : []),
    ...(springVerdict(figures, sheet) === 'outside' ? ['spring against bench set'] : []),
  ];
}

/** As found and as left side by side, each against its limit with the uncertainty counted in. */
export function resultsOf(job: Job): Result[] {
  const found = judged(job, 'asFound');
  const left = judged(job, 'asLeft');
  // Error and hysteresis are all that a stroke by its own signal tells.
  if (ownStrokeJob(job) !== null)
    return [...percents(job, { found, left }).slice(0, 2), ...ownResults(job), ...leakResults(job)];
  return [
    ...percents(job, { found, left }),
    friction(job, { found, left }),
    spring(job, { found, left }),
    ...seatResults(job),
    ...leakResults(job),
    ...timeResults(job),
  ];
}

interface Both {
  readonly found: CycleFigures | null;
  readonly left: CycleFigures | null;
}

function percents({ sheet }: Job, { found, left }: Both): Result[] {
  const uncertainty = (left ?? found)?.errorUncertaintyPercent;
  const give = uncertainty === undefined ? '' : `; gauges give ${uncertainty.toFixed(1)} % either way`;
  const plain = (value: number | null | undefined) => (typeof value === 'number' ? value.toFixed(1) : '');
  const row = (
    label: string,
    limit: number,
    of: (figures: CycleFigures) => readonly [string, Guarded | null],
  ): Result => {
    const [asFound, foundVerdict] = found === null ? ['', null] : of(found);
    const [asLeft, leftVerdict] = left === null ? ['', null] : of(left);
    return {
      label,
      asFound,
      asLeft,
      foundOutside: foundVerdict === 'outside',
      leftOutside: leftVerdict === 'outside',
      limit: String(limit),
      verdict: verdictWords(foundVerdict, leftVerdict),
    };
  };
  const error = row('largest error, % of travel', sheet.errorTolerancePercent, (of) => [
    signedPercent(of.errorWorstPercent),
    of.errorVerdict,
  ]);
  return [
    { ...error, verdict: error.verdict === '' ? '' : `${error.verdict}${give}` },
    row('hysteresis and dead band, %', sheet.hysteresisTolerancePercent, (of) => [
      plain(of.hysteresisPercent),
      of.hysteresisVerdict,
    ]),
    row('repeatability at mid-range, %', sheet.repeatabilityTolerancePercent, (of) => [
      plain(of.repeatabilityPercent),
      of.repeatabilityVerdict,
    ]),
  ];
}

function friction(job: Job, { found, left }: Both): Result {
  const { sheet } = job;
  const unit = preferredUnit('force', sheet.units);
  const of = (figures: CycleFigures | null) => number(figures?.frictionN, { unit });
  const uncertaintyN = (left ?? found)?.frictionUncertaintyN;
  const give = typeof uncertaintyN === 'number' ? `, give or take ${number(uncertaintyN, { unit })}` : '';
  const packing =
    sheet.packingFrictionN === null
      ? 'what this packing should cost is not on the sheet'
      : `packing of this size and kind: ${number(sheet.packingFrictionN, { unit })}`;
  const [foundVerdict, leftVerdict] = [found, left].map((figures) =>
    figures === null ? null : frictionVerdict(figures, sheet),
  );
  const judgedAs = verdictWords(foundVerdict ?? null, leftVerdict ?? null);
  const said = [judgedAs, `${packing}${give}`].filter((words) => words !== '').join('; ');
  return {
    label: `friction each way, ${unitFor(unit).label}`,
    asFound: of(found),
    asLeft: of(left),
    foundOutside: foundVerdict === 'outside',
    leftOutside: leftVerdict === 'outside',
    limit: number(sheet.frictionMaxN, { unit }),
    verdict: found === null && left === null ? '' : said,
  };
}

function springVerdict(
  { benchSetShiftPa: value, benchSetShiftUncertaintyPa: uncertainty }: CycleFigures,
  { benchSetTolerancePa: limit }: Job['sheet'],
): Guarded | null {
  if (typeof value !== 'number' || typeof uncertainty !== 'number') return null;
  return guarded({ value, limit, uncertainty });
}

function spring({ sheet }: Job, { found, left }: Both): Result {
  const unit = preferredUnit('pressure', sheet.units);
  const of = (figures: CycleFigures | null) => number(figures?.benchSetShiftPa, { unit, signed: true });
  const [foundVerdict = null, leftVerdict = null] = [found, left].map((figures) =>
    figures === null ? null : springVerdict(figures, sheet),
  );
  return {
    label: `spring against bench set, ${unitFor(unit).label}`,
    asFound: of(found),
    asLeft: of(left),
    foundOutside: foundVerdict === 'outside',
    leftOutside: leftVerdict === 'outside',
    limit: number(sheet.benchSetTolerancePa, { unit }),
    verdict: verdictWords(foundVerdict, leftVerdict),
  };
}
