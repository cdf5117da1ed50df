import { testAirLimit } from '../safety/limits.ts';
import { benchSet } from './calculations/bench-set.ts';
import { crossPattern } from './calculations/bolting.ts';
import type { Figure } from './figure.ts';
import type { Job } from './job.ts';
import { springRateOf } from './valve-sheet/derived.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';

/** The highest signal that this case may be given: enough to show a leak, never more than the case may have. */
export function soapPressurePa(sheet: ValveSheet): number {
  return Math.min(sheet.signalHighPa, testAirLimit(sheet).limitPa);
}

/** How far the signals up and down at one travel may differ, by the hysteresis that the sheet allows: twice the friction. */
export function frictionGapPa({
  hysteresisTolerancePercent,
  benchSetLowPa,
  benchSetHighPa,
}: ValveSheet): number {
  return (hysteresisTolerancePercent / 100) * (benchSetHighPa - benchSetLowPa);
}

/** Spring force while no air is on the case, by the bench set; null where there is no spring. */
export function springForceShutN(sheet: ValveSheet): number | null {
  return sheet.springHeldBy === 'no spring' ? null : benchSet(sheet).preloadN;
}

/**
 * Turns of the adjuster after which the spring can be free, by bench set, spring rate and thread: at the least, since
 * a plug that is screwed hard on its seat presses the spring further.
 */
export function turnsToFree(sheet: ValveSheet): number | null {
  const forceN = springForceShutN(sheet);
  if (forceN === null || sheet.springHeldBy !== 'adjuster' || sheet.adjusterThreadPitchM === null)
    return null;
  return forceN / (springRateOf(sheet) * sheet.adjusterThreadPitchM);
}

/** What the turns counted leave in the spring, by bench set, rate and thread; null where the thread is not known. */
export function springForceLeftN({ sheet, readings }: Job): number | null {
  const forceN = springForceShutN(sheet);
  const turns = readings.adjusterTurnsOff?.valueSi;
  if (forceN === null || turns === undefined || sheet.adjusterThreadPitchM === null) return null;
  return Math.max(0, forceN - springRateOf(sheet) * sheet.adjusterThreadPitchM * turns);
}

/** The crosswise order of so many nuts, numbered clockwise; nothing where they cannot be counted in pairs. */
function crossOrder(counted: string | undefined): string {
  const bolts = Number(counted);
  if (!Number.isInteger(bolts) || bolts < 4 || bolts % 2 !== 0) return 'opposite nuts in turn';
  return crossPattern({ bolts }).join(', ');
}

/** Numbers of an overhaul, which texts name by placeholder. */
export const OVERHAUL_FIGURES = {
  soapPressure: {
    label: 'test air for soap',
    dimension: 'pressure',
    of: ({ sheet }) => soapPressurePa(sheet),
  },
  frictionGap: {
    label: 'up and down may differ by',
    dimension: 'pressure',
    of: ({ sheet }) => frictionGapPa(sheet),
  },
  frictionLimit: {
    label: 'friction each way, at most',
    dimension: 'force',
    of: ({ sheet }) => (frictionGapPa(sheet) * sheet.effectiveAreaM2) / 2,
  },
  packingFriction: {
    label: 'friction that the packing should cost',
    dimension: 'force',
    of: ({ sheet }) => sheet.packingFrictionN,
  },
  processFluid: { label: 'fluid', dimension: 'text', of: ({ sheet }) => sheet.processFluid },
  caseNutOrder: {
    label: 'order of the case nuts, numbered clockwise',
    dimension: 'text',
    of: ({ words }) => crossOrder(words.caseBolts),
  },
  springForceShut: {
    label: 'spring force, no air on the case',
    dimension: 'force',
    of: ({ sheet }) => springForceShutN(sheet),
  },
  turnsToFree: {
    label: 'adjuster turns until the spring can be free',
    dimension: 'turns',
    of: ({ sheet }) => turnsToFree(sheet),
  },
  springForceLeft: { label: 'spring force left by the turns', dimension: 'force', of: springForceLeftN },
  adjusterTurnsOff: {
    label: 'adjuster turns that were backed off',
    dimension: 'turns',
    of: ({ readings }) => readings.adjusterTurnsOff?.valueSi ?? null,
  },
} as const satisfies Record<string, Figure>;
