import { testAirLimit } from '../safety/limits.ts';
import { shutEnd } from './calculations/force-balance.ts';
import { plugForce } from './calculations/plug-force.ts';
import type { UnitId } from './calculations/unit-table.ts';
import { format, preferredUnit } from './calculations/units.ts';
import type { Figure } from './figure.ts';
import type { Job } from './job.ts';
import { noSeatTest, type SeatTest, seatTestOf } from './seat-test.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';

/** Air that the case has at most in service: the signal itself, or what a positioner passes on of its supply. */
function airInServicePa({ positioner, signalHighPa, supplyLowPa }: ValveSheet): number {
  return positioner === 'none' ? signalHighPa : (supplyLowPa ?? signalHighPa);
}

/**
 * The shut end in its line at the shut-off drop: where the plug meets or leaves its seat, and how hard it is held. The
 * outlet is taken as vented, which is the worst for a plug that the flow pushes.
 */
export function shutEndInLine(sheet: ValveSheet) {
  const { flow, shutOffDropPa: inletPa, portDiameterM, stemDiameterM, balanceSealDiameterM } = sheet;
  const { openingN } = plugForce({
    flow,
    inletPa,
    outletPa: 0,
    portDiameterM,
    stemDiameterM,
    balanceSealDiameterM,
  });
  return shutEnd({
    ...sheet,
    plugForceOpeningN: openingN,
    frictionN: sheet.packingFrictionN ?? 0,
    supplyPa: airInServicePa(sheet),
  });
}

function inLine(job: Job): string {
  const { sheet } = job;
  const { contactPa, firstLiftPa } = shutEndInLine(sheet);
  const at = say(job, { valueSi: contactPa ?? firstLiftPa ?? 0, dimension: 'pressure' });
  return contactPa === null ? `lifts off its seat at ${at}` : `meets its seat at ${at}`;
}

function seatHeld(job: Job): string {
  const { seatLoadN, heldShut } = shutEndInLine(job.sheet);
  const load = say(job, { valueSi: Math.abs(seatLoadN), dimension: 'force' });
  return heldShut ? `held on it with ${load}` : `not held shut: ${load} are missing`;
}

function frictionCounted({ sheet }: Job): string {
  return sheet.packingFrictionN === null
    ? 'without friction: the sheet has none'
    : `friction of the packing counted in, ${sheet.packingFrictionSource ?? 'by the sheet'}`;
}

function say(
  { sheet }: Job,
  { valueSi, dimension }: { readonly valueSi: number; readonly dimension: 'pressure' | 'force' },
): string {
  return format({ valueSi, unit: preferredUnit(dimension, sheet.units) });
}

/** Numbers of a seat test; null for a valve that has none. */
function ofSeat<T>(take: (test: SeatTest, job: Job) => T): (job: Job) => T | null {
  return (job) => (noSeatTest(job.sheet) === null ? take(seatTestOf(job.sheet), job) : null);
}

function allowedLeak({ allowedM3PerS, medium }: SeatTest): string {
  const unit: UnitId = allowedM3PerS < 1e-3 / 60 ? 'ml/min' : 'l/min';
  return `${format({ valueSi: allowedM3PerS, unit })} of ${medium}`;
}

const MEASURED_BY: Readonly<Record<string, string>> = {
  glass: 'in a glass',
  bubbles: 'by bubbles',
  meter: 'by a meter',
  'shut in': 'by the outlet side shut in',
};

/** What the seat let through by the newest measurement, how it was measured, and the verdict on it. */
function leakFound(job: Job): string | null {
  const measured = job.answers.findLast((one) => one.step === 'measure' && !one.superseded);
  if (measured === undefined) return null;
  const { leakM3PerS, uncertaintyM3PerS, bubblesPerMin } = measured.figures;
  const flow = (valueSi: number) => format({ valueSi, unit: valueSi < 1e-3 / 60 ? 'ml/min' : 'l/min' });
  const much =
    typeof leakM3PerS === 'number'
      ? `${flow(leakM3PerS)} ± ${flow(Number(uncertaintyM3PerS))}`
      : `${Number(Number(bubblesPerMin).toFixed(1))} bubbles a minute`;
  const by = MEASURED_BY[measured.words.leakBy ?? ''] ?? '';
  const found = [
    typeof leakM3PerS === 'number' || typeof bubblesPerMin === 'number' ? `${much} ${by}` : '',
    measured.readings.find(({ field }) => field === 'leakTimeS')?.typed ?? '',
    measured.outcome,
  ];
  return found.filter((part) => part !== '').join(', ');
}

function seatShutBy(job: Job): string {
  const { airAction, signalHighPa } = job.sheet;
  if (airAction === 'air-to-open') return 'no air on the case: its spring shuts it';
  const valueSi = Math.min(signalHighPa, testAirLimit(job.sheet).limitPa);
  return `${say(job, { valueSi, dimension: 'pressure' })} on the case, which shuts it`;
}

/** What the newest reading of both ends gave, as left before as found. */
function ofBenchSet(name: string): Figure['of'] {
  return ({ figures }) => (figures.benchLeft ?? figures.benchFound)?.[name] ?? 'not read';
}

const text = (label: string, of: Figure['of']): Figure => ({ label, dimension: 'text', of });

const pressure = (label: string, of: Figure['of']): Figure => ({ label, dimension: 'pressure', of });

/** Numbers of bench set, positioner, seat and joints, which texts name by placeholder. */
export const SETTING_FIGURES = {
  flowOverPlug: text('flow', ({ sheet }) => `${sheet.flow} the plug`),
  benchLowFound: pressure('starts to move at, friction taken out', ofBenchSet('benchLowFoundPa')),
  benchHighFound: pressure('travel ends at, friction taken out', ofBenchSet('benchHighFoundPa')),
  benchFriction: { label: 'friction, each way', dimension: 'force', of: ofBenchSet('frictionN') },
  benchRateFound: {
    label: 'spring rate that follows',
    dimension: 'forcePerLength',
    of: ofBenchSet('springRateFoundNPerM'),
  },
  shutOffDrop: { label: 'drop when shut', dimension: 'pressure', of: ({ sheet }) => sheet.shutOffDropPa },
  shutEndInLine: text('in its line the plug', inLine),
  seatHeldInLine: text('and is', seatHeld),
  frictionCounted: text('friction', frictionCounted),
  benchSetTolerance: {
    label: 'each end may be off by',
    dimension: 'pressure',
    of: ({ sheet }) => sheet.benchSetTolerancePa,
  },
  leakageClass: text('leakage class', ({ sheet }) => sheet.leakageClass),
  seatStandard: text(
    'by',
    ofSeat(({ standard }) => standard),
  ),
  seatMedium: text(
    'tested with',
    ofSeat(({ medium }) => medium),
  ),
  seatTestPressure: pressure(
    'test pressure',
    ofSeat(({ pressurePa }) => pressurePa),
  ),
  seatTestMost: pressure(
    'test pressure, at most',
    ofSeat(({ mostPa }) => mostPa),
  ),
  allowedLeak: text('it may leak', ofSeat(allowedLeak)),
  bubblesAllowed: text(
    'bubbles a minute, with the tube of the standard',
    ofSeat(({ bubblesPerMin }) => (bubblesPerMin === null ? 'none given' : String(bubblesPerMin))),
  ),
  leakFound: text('found', leakFound),
  seatShutBy: text('held shut by', seatShutBy),
} as const satisfies Record<string, Figure>;
