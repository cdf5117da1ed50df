import type { UnitId } from '../../../procedures/calculations/unit-table.ts';
import { fromSi, preferredUnit, unitFor } from '../../../procedures/calculations/units.ts';
import {
  type CycleFigures,
  cycleFigures,
  cycleVerdict,
  type Guarded,
  guarded,
} from '../../../procedures/cycle-verdict.ts';
import type { Job } from '../../../procedures/job.ts';
import { say } from '../../../procedures/say.ts';
import { seatingFigures, seatLoadN, turnDirection } from '../../../procedures/seating.ts';
import { signedPercent } from '../view/words.ts';
import { leakResults } from './leaks.ts';
import { ownResults } from './own-results.ts';
import { ownJudged, ownStrokeJob } from './own-stroke.ts';
import type { JobRecord } from './schema.ts';
import { WORDS } from './verdict-words.ts';

type Result = JobRecord['results'][number];
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
  return `${left === null ? 'As found' : 'As left'}: ${words[cycleVerdict(figures)]}.`;
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
    ...seat(job),
    ...leakResults(job),
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

function verdictWords(found: Guarded | null, left: Guarded | null): string {
  if (found !== null && found === left) return `as found and as left ${WORDS[found]}`;
  const words = [
    ...(found === null ? [] : [`as found ${WORDS[found]}`]),
    ...(left === null ? [] : [`as left ${WORDS[left]}`]),
  ];
  return words.join(', ');
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
  return {
    ...unjudged(`friction each way, ${unitFor(unit).label}`),
    asFound: of(found),
    asLeft: of(left),
    verdict: found === null && left === null ? '' : `${packing}${give}`,
  };
}

function spring({ sheet }: Job, { found, left }: Both): Result {
  const unit = preferredUnit('pressure', sheet.units);
  const judge = (figures: CycleFigures | null): Guarded | null => {
    const value = figures?.benchSetShiftPa;
    const uncertainty = figures?.benchSetShiftUncertaintyPa;
    if (typeof value !== 'number' || typeof uncertainty !== 'number') return null;
    return guarded({ value, limit: sheet.benchSetTolerancePa, uncertainty });
  };
  const of = (figures: CycleFigures | null) => number(figures?.benchSetShiftPa, { unit, signed: true });
  const [foundVerdict, leftVerdict] = [judge(found), judge(left)];
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

/** Contact, seat load and lift: what the turns of the plug stem are for. */
function seat(job: Job): Result[] {
  const { sheet, figures } = job;
  const units = {
    pressure: preferredUnit('pressure', sheet.units),
    force: preferredUnit('force', sheet.units),
    length: preferredUnit('length', sheet.units),
  };
  const foundPa = numberOf(figures.contactFound?.contactPa);
  const leftPa = numberOf(figures.contactLeft?.contactPa);
  const needN = sheet.seatLoadNPerM === null ? null : sheet.seatLoadNPerM * Math.PI * sheet.portDiameterM;
  const loads = [foundPa, leftPa].map((contactPa) => (contactPa === null ? null : seatLoadN(job, contactPa)));
  const [foundN = null, leftN = null] = loads;
  const uncertaintyN = sheet.effectiveAreaM2 * (job.readings.contactLeavesPa?.uncertaintySi ?? 0);
  const [foundLoad, leftLoad] = loads.map((loadN) => loadVerdict({ loadN, needN, uncertaintyN }));
  const lift = (contactAfterPa: number | null) =>
    contactAfterPa === null
      ? ''
      : number(seatingFigures(job, { contactAfterPa }).liftLeftM, { unit: units.length });
  const expectedPa = numberOf(figures.contactLeft?.expectedContactPa);
  return [
    {
      ...unjudged(`contact with the seat, ${unitFor(units.pressure).label}`),
      asFound: number(foundPa, { unit: units.pressure }),
      asLeft: number(leftPa, { unit: units.pressure }),
      verdict:
        expectedPa === null ? '' : `${number(expectedPa, { unit: units.pressure })} expected after the turns`,
    },
    {
      label: `seat load from the signal, ${unitFor(units.force).label}`,
      asFound: number(foundN, { unit: units.force }),
      asLeft: number(leftN, { unit: units.force }),
      foundOutside: foundLoad === 'outside',
      leftOutside: leftLoad === 'outside',
      limit: needN === null ? '' : `${number(needN, { unit: units.force })} or more`,
      verdict:
        needN === null
          ? 'what this seat wants is not on the sheet'
          : verdictWords(foundLoad ?? null, leftLoad ?? null),
    },
    {
      ...unjudged(`lift from seat to full travel, ${unitFor(units.length).label}`),
      asFound: lift(foundPa),
      asLeft: lift(leftPa),
      verdict: foundPa === null ? '' : `rated travel ${number(sheet.travelM, { unit: units.length })}`,
    },
  ];
}

function loadVerdict({
  loadN,
  needN,
  uncertaintyN,
}: {
  readonly loadN: number | null;
  readonly needN: number | null;
  readonly uncertaintyN: number;
}): Guarded | null {
  if (loadN === null || needN === null) return null;
  if (loadN - uncertaintyN >= needN) return 'inside';
  return loadN + uncertaintyN < needN ? 'outside' : 'too close';
}

/** How often the plug stem and the adjuster were turned, which way, and whether the contact came where it should. */
export function turnsOf(job: Job): JobRecord['turns'] {
  const { sheet, readings, figures } = job;
  const of = (valueSi: number, dimension: 'turns' | 'pressure') =>
    say({ valueSi, dimension, units: sheet.units });
  const turned = readings.turnsMade;
  const wound = readings.adjusterTurnsMade;
  const left = figures.contactLeft;
  const [contactPa, expectedPa, allowedPa] = [left?.contactPa, left?.expectedContactPa, left?.allowedPa].map(
    numberOf,
  );
  return [
    ...(turned === undefined
      ? []
      : [
          {
            label: 'plug stem turned',
            value: `${of(turned.valueSi, 'turns')} of ${sheet.stemThread}, screwed ${turnDirection(sheet)}`,
          },
        ]),
    ...(typeof contactPa === 'number' && typeof expectedPa === 'number' && typeof allowedPa === 'number'
      ? [
          {
            label: 'contact after it',
            value: `${of(contactPa, 'pressure')} found, ${of(expectedPa, 'pressure')} expected, ${of(allowedPa, 'pressure')} allowed either way`,
          },
        ]
      : []),
    ...(wound === undefined
      ? []
      : [
          {
            label: 'spring adjuster wound',
            value: `${of(wound.valueSi, 'turns')}${sheet.adjusterThread === null ? '' : ` of ${sheet.adjusterThread}`}`,
          },
        ]),
  ];
}

function unjudged(label: string): Result {
  return { label, asFound: '', asLeft: '', foundOutside: false, leftOutside: false, limit: '', verdict: '' };
}

function numberOf(value: number | string | null | undefined): number | null {
  return typeof value === 'number' ? value : null;
}

/** The number alone: its unit stands once, in the label. */
function number(
  valueSi: number | null | undefined,
  { unit, signed = false }: { readonly unit: UnitId; readonly signed?: boolean },
): string {
  if (typeof valueSi !== 'number') return '';
  const text = Math.abs(fromSi({ valueSi, unit })).toFixed(unitFor(unit).decimals);
  if (Number(text) === 0) return text;
  return valueSi < 0 ? `\u2212${text}` : signed ? `+${text}` : text;
}
