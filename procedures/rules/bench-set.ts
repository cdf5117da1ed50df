import { frictionFromPressures } from '../calculations/force-balance.ts';
import { type Guarded, guarded } from '../cycle-verdict.ts';
import type { Reading } from '../job.ts';
import { seatingFigures } from '../seating.ts';
import { springRateOf, stemMayTurn } from '../valve-sheet/derived.ts';
import { worstOf } from './own-stroke.ts';
import type { Rule, RuleInput } from './rule.ts';

/** Both ends of the bench set, going up and coming down, in the order in which they are met. */
const ENDS = ['benchLowUpPa', 'benchHighUpPa', 'benchHighDownPa', 'benchLowDownPa'] as const;

type Ends = Readonly<Record<(typeof ENDS)[number], Reading>>;

/**
 * Both ends of the bench set against the sheet, friction taken out by reading each end both ways. The span for a full
 * stroke belongs to spring and area; with the span right, the open end tells what the adjuster does, and what is left
 * at the shut end is the plug on its seat.
 */
export const benchSetRule: Rule = {
  outcomes: ['inside', 'both ends shifted', 'span differs', 'seat end off', 'too close', 'does not move'],
  params: [],
  judge(input) {
    const ends = endsOf(input.readings);
    const travelM = input.readings.benchTravelM;
    if (input.words.moves !== 'yes' || ends === null || travelM === undefined || travelM.valueSi <= 0)
      return { outcome: 'does not move', figures: {} };
    const found = foundFrom(input, { ends, travel: travelM });
    const { span, open, seat } = verdictsOf(input, found);
    return { outcome: outcomeOf({ span, open, seat }), figures: found };
  },
};

function outcomeOf(of: { readonly span: Guarded; readonly open: Guarded; readonly seat: Guarded }): string {
  if (of.span === 'outside') return 'span differs';
  if (of.open === 'outside') return 'both ends shifted';
  if (of.seat === 'outside') return 'seat end off';
  return worstOf([of.span, of.open, of.seat]);
}

function endsOf(readings: Readonly<Record<string, Reading>>): Ends | null {
  const read = ENDS.flatMap((name) => {
    const reading = readings[name];
    return reading === undefined ? [] : [[name, reading] as const];
  });
  return read.length === ENDS.length ? (Object.fromEntries(read) as Ends) : null;
}

function foundFrom(
  { job, words }: RuleInput,
  { ends, travel }: { readonly ends: Ends; readonly travel: Reading },
) {
  const { sheet } = job;
  const { effectiveAreaM2 } = sheet;
  const low = bothWays(ends.benchLowUpPa, ends.benchLowDownPa, effectiveAreaM2);
  const high = bothWays(ends.benchHighUpPa, ends.benchHighDownPa, effectiveAreaM2);
  const uncertaintyPa = Math.max(...ENDS.map((name) => ends[name].uncertaintySi ?? 0));
  const spanForStrokePa = ((high.balancedPa - low.balancedPa) * sheet.travelM) / travel.valueSi;
  const spanSheetPa = sheet.benchSetHighPa - sheet.benchSetLowPa;
  const opens = sheet.airAction === 'air-to-open';
  const shutEndPa = opens ? low.balancedPa : high.balancedPa;
  const openEndPa = opens ? high.balancedPa : low.balancedPa;
  return {
    benchLowFoundPa: low.balancedPa,
    benchHighFoundPa: high.balancedPa,
    frictionN: (low.frictionN + high.frictionN) / 2,
    springRateFoundNPerM: (spanForStrokePa * effectiveAreaM2) / sheet.travelM,
    springRateNPerM: springRateOf(sheet),
    spanDifferencePa: spanForStrokePa - spanSheetPa,
    spanUncertaintyPa: Math.hypot(
      (Math.SQRT2 * uncertaintyPa * sheet.travelM) / travel.valueSi,
      (spanSheetPa * (travel.uncertaintySi ?? 0)) / travel.valueSi,
    ),
    benchSetShiftPa: openEndPa - (opens ? sheet.benchSetHighPa : sheet.benchSetLowPa),
    seatEndDifferencePa: words.plugJoined === 'yes' ? shutEndPa - seatEndExpectedPa(job) : 0,
    uncertaintyPa,
  };
}

/** Where the plug meets its seat by the turns that this valve wants. */
function seatEndExpectedPa(job: RuleInput['job']): number {
  const { sheet } = job;
  const { signalShiftPa } = seatingFigures({ ...job, answers: [], figures: {} });
  return sheet.airAction === 'air-to-open'
    ? sheet.benchSetLowPa + signalShiftPa
    : sheet.benchSetHighPa - signalShiftPa;
}

function bothWays(rising: Reading, falling: Reading, effectiveAreaM2: number) {
  return frictionFromPressures({ effectiveAreaM2, risingPa: rising.valueSi, fallingPa: falling.valueSi });
}

function verdictsOf({ job: { sheet } }: RuleInput, found: ReturnType<typeof foundFrom>) {
  const { uncertaintyPa } = found;
  const limit = sheet.benchSetTolerancePa;
  // Each end may be off by the tolerance, in opposite ways.
  const span = guarded({
    value: found.spanDifferencePa,
    limit: 2 * limit,
    uncertainty: found.spanUncertaintyPa,
  });
  const open = guarded({ value: found.benchSetShiftPa, limit, uncertainty: uncertaintyPa });
  const seat = stemMayTurn(sheet)
    ? guarded({
        value: found.seatEndDifferencePa,
        limit: limit + quarterTurnPa(sheet),
        uncertainty: uncertaintyPa,
      })
    : ('inside' as const);
  return { span, open, seat };
}

/** What a quarter turn of the plug stem moves the contact by: no nearer are turns counted. */
function quarterTurnPa(sheet: RuleInput['job']['sheet']): number {
  return (0.25 * springRateOf(sheet) * sheet.stemThreadPitchM) / sheet.effectiveAreaM2;
}
