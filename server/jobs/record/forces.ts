import { forcesAtLift, shutEnd } from '../../../procedures/calculations/force-balance.ts';
import { plugForce } from '../../../procedures/calculations/plug-force.ts';
import type { UnitId } from '../../../procedures/calculations/unit-table.ts';
import { format, fromSi, preferredUnit, unitFor } from '../../../procedures/calculations/units.ts';
import type { Job } from '../../../procedures/job.ts';
import { forceBars } from '../../../views/pictures/force-bars.ts';
import { judged } from './results.ts';
import type { JobRecord } from './schema.ts';

/** Forces on the stem where it stands still at one end of its travel: plus pushes towards the seat. */
interface End {
  readonly airPa: number;
  readonly springN: number;
  readonly airN: number;
  /** Null where it is not counted. */
  readonly processN: number | null;
  readonly frictionN: number;
  readonly leftN: number;
}

interface Balance {
  readonly shut: End;
  readonly open: End;
  readonly frictionFrom: string;
  readonly heldShut: boolean;
  /** Where the plug leaves or meets its seat. */
  readonly atSeatPa: number;
}

/** Null for a cylinder without a spring, which has no bench set to reckon with. */
function balanceOf(job: Job): Balance | null {
  const { sheet } = job;
  if (sheet.springHeldBy === 'no spring') return null;
  const friction = frictionOf(job);
  const { frictionN } = friction;
  const plugForceOpeningN = plugForce({ ...sheet, inletPa: sheet.shutOffDropPa, outletPa: 0 }).openingN;
  const supplyPa = airOf(job);
  const end = shutEnd({ ...sheet, plugForceOpeningN, frictionN, supplyPa });
  const airShutN = sheet.airAction === 'air-to-close' ? sheet.effectiveAreaM2 * supplyPa : 0;
  const airOpenPa = sheet.airAction === 'air-to-close' ? 0 : supplyPa;
  const lifted = { liftM: sheet.travelM, pressurePa: airOpenPa, plugForceOpeningN: 0, frictionN };
  const { springN, airN, netN } = forcesAtLift({ ...sheet, ...lifted });
  return {
    shut: {
      airPa: end.seatLoadAtPa,
      springN: end.springOrAirN - airShutN,
      airN: airShutN,
      processN: end.plugForceN,
      frictionN: end.frictionN,
      leftN: end.seatLoadN,
    },
    open: {
      airPa: airOpenPa,
      springN: 0 - springN,
      airN: 0 - airN,
      processN: null,
      frictionN,
      leftN: frictionN - netN,
    },
    frictionFrom: friction.from,
    heldShut: end.heldShut,
    atSeatPa: end.firstLiftPa ?? end.contactPa ?? 0,
  };
}

/**
 * What holds this valve at either end of its travel, term by term: spring, air, process and friction, and what they leave
 * on the seat and on the open stop. Null without a spring.
 */
export function forcesOf(job: Job): JobRecord['forces'] {
  const balance = balanceOf(job);
  if (balance === null) return null;
  const { sheet } = job;
  const { shut, open, heldShut, frictionFrom, atSeatPa } = balance;
  const newtons = (valueSi: number) => signed(valueSi, preferredUnit('force', sheet.units));
  const pascals = (valueSi: number) => format({ valueSi, unit: preferredUnit('pressure', sheet.units) });
  const needN = sheet.seatLoadNPerM === null ? null : sheet.seatLoadNPerM * Math.PI * sheet.portDiameterM;
  return {
    shut: standing('shut', pascals(shut.airPa), shut.airPa),
    open: standing('open', pascals(open.airPa), open.airPa),
    rows: TERMS.map(({ label, of }) => {
      const [atShut, atOpen] = [of(shut), of(open)].map((valueN) =>
        valueN === null ? NOT_COUNTED : newtons(valueN),
      );
      return { label, shut: atShut ?? '', open: atOpen ?? '' };
    }),
    more: [
      { label: 'pressure across the shut plug', value: pascals(sheet.shutOffDropPa) },
      { label: 'friction counted', value: frictionFrom },
      { label: 'wanted by the seat', value: needN === null ? 'not on the sheet' : newtons(needN) },
      ...(heldShut ? [] : [{ label: 'at the shut end', value: 'NOT HELD SHUT' }]),
      ...(open.leftN < 0
        ? []
        : [{ label: 'at the open end', value: 'friction may hold it short of its stop' }]),
      {
        label:
          sheet.airAction === 'air-to-close' ? 'the plug meets its seat at' : 'the plug leaves its seat at',
        value: pascals(atSeatPa),
      },
    ],
    note: 'Worked out from the valve sheet, with the friction named here; not measured with the process on. Plus pushes towards the seat; what is left holds the seat when shut, and the stop when open. What the process does to the open plug fades as it opens, and is not counted.',
  };
}

/** The same as bars, on one scale for both ends. */
export function forcesDrawn(job: Job): string | null {
  const [balance, told] = [balanceOf(job), forcesOf(job)];
  if (balance === null || told === null) return null;
  const unit = preferredUnit('force', job.sheet.units);
  const ends = (['shut', 'open'] as const).map((end) => ({
    title: told[end],
    bars: TERMS.map(({ label, of }, at) => {
      const valueN = of(balance[end]);
      return {
        label,
        value: valueN === null ? null : fromSi({ valueSi: valueN, unit }),
        text: told.rows[at]?.[end] ?? '',
        isSum: label === LEFT,
      };
    }),
  }));
  const words = ends.map(
    ({ title, bars }) =>
      `${title}: ${bars.map(({ label, text, value }) => (value === null ? `${label} not counted` : `${label} ${text}`)).join('; ')}`,
  );
  return forceBars({
    axis: `${unitFor(unit).label}, plus towards the seat`,
    ends,
    sentence: `Forces on the stem at both ends of its travel. ${words.join('. ')}.`,
  });
}

const NOT_COUNTED = 'not counted';
const LEFT = 'left';

const TERMS: readonly { readonly label: string; of(end: End): number | null }[] = [
  { label: 'spring', of: ({ springN }) => springN },
  { label: 'air times area', of: ({ airN }) => airN },
  { label: 'process', of: ({ processN }) => processN },
  { label: 'friction', of: ({ frictionN }) => frictionN },
  { label: LEFT, of: ({ leftN }) => leftN },
];

function standing(end: 'shut' | 'open', air: string, airPa: number): string {
  const on = airPa === 0 ? 'no air' : air;
  return end === 'shut' ? `Shut, with ${on} on the case` : `Open, with ${on} on the case`;
}

/** As left before as found before the sheet; a valve of whose friction nothing is known is reckoned without. */
function frictionOf(job: Job): { readonly frictionN: number; readonly from: string } {
  for (const [when, from] of [
    ['asLeft', 'as left'],
    ['asFound', 'as found'],
  ] as const) {
    const frictionN = judged(job, when)?.frictionN;
    if (typeof frictionN === 'number') return { frictionN: Math.max(0, frictionN), from };
  }
  const { packingFrictionN } = job.sheet;
  return packingFrictionN === null
    ? { frictionN: 0, from: 'not known, and not counted' }
    : { frictionN: packingFrictionN, from: 'of this packing by the sheet' };
}

/** Without a positioner no more than its signal reaches the case. */
function airOf({ sheet: { positioner, signalHighPa, supplyLowPa } }: Job): number {
  return positioner === 'none' ? signalHighPa : (supplyLowPa ?? signalHighPa);
}

function signed(valueSi: number, unit: UnitId): string {
  const text = format({ valueSi: Math.abs(valueSi), unit });
  if (Number.parseFloat(text) === 0) return text;
  return valueSi < 0 ? `\u2212${text}` : `+${text}`;
}
