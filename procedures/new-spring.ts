import { testAirLimit } from '../safety/limits.ts';
import { installedRange } from './calculations/bench-set.ts';
import { shutEnd } from './calculations/force-balance.ts';
import type { Job } from './job.ts';
import { plugForceN } from './plug-force-of.ts';

/** A spring before it goes in, as the force balance tells what it will do on this valve. */
export interface NewSpring {
  readonly [name: string]: number | string | null;
  /** Bench set that it gives, set to the low end of the sheet. */
  readonly benchLowPa: number;
  readonly benchHighPa: number;
  /** Pressed together so far where the stroke begins. */
  readonly pressedM: number;
  /** Turns of the adjuster from where it touches the spring; null without an adjuster or its thread. */
  readonly turnsFromTouch: number | null;
  /** Over which signal it will stroke with the process on. */
  readonly installedLowPa: number;
  readonly installedHighPa: number;
  /** Load that holds the plug on its seat against the shut-off drop; negative: it does not hold. */
  readonly seatLoadN: number;
}

/**
 * The bench set that a new spring gives: its rate over the travel is the span; the low end is set by its adjuster, or
 * by how far the case presses it, free length less the room that it has.
 *
 * @returns null while rate, or for a case that holds it length and room, have not been read
 */
export function newSpringOf(job: Job): NewSpring | null {
  const { sheet, readings } = job;
  const rateNPerM = readings.newRateNPerM?.valueSi ?? 0;
  const areaM2 = sheet.effectiveAreaM2;
  const pressedM = pressedOf(job, rateNPerM);
  if (rateNPerM <= 0 || pressedM === null || pressedM <= 0) return null;
  const benchLowPa = (rateNPerM * pressedM) / areaM2;
  const benchHighPa = benchLowPa + (rateNPerM * sheet.travelM) / areaM2;
  const force = { airAction: sheet.airAction, effectiveAreaM2: areaM2, plugForceOpeningN: plugForceN(job) };
  const bench = { benchSetLowPa: benchLowPa, benchSetHighPa: benchHighPa };
  const installed = installedRange({ ...force, ...bench });
  const shut = shutEnd({
    ...force,
    ...bench,
    frictionN: sheet.packingFrictionN ?? 0,
    supplyPa: sheet.supplyLowPa ?? sheet.signalHighPa,
    portDiameterM: sheet.portDiameterM,
  });
  const pitchM = sheet.springHeldBy === 'adjuster' ? sheet.adjusterThreadPitchM : null;
  return {
    benchLowPa,
    benchHighPa,
    pressedM,
    turnsFromTouch: pitchM === null ? null : pressedM / pitchM,
    installedLowPa: installed.lowPa,
    installedHighPa: installed.highPa,
    seatLoadN: shut.seatLoadN,
  };
}

function pressedOf({ sheet, readings }: Job, rateNPerM: number): number | null {
  if (sheet.springHeldBy === 'adjuster')
    return rateNPerM <= 0 ? null : (sheet.benchSetLowPa * sheet.effectiveAreaM2) / rateNPerM;
  const length = readings.newLengthM?.valueSi;
  const room = readings.springRoomM?.valueSi;
  return length === undefined || room === undefined ? null : length - room;
}

/** Air that this spring wants for the whole stroke is more than the case may have. */
export function isTooMuch(job: Job, spring: NewSpring): boolean {
  const { caseRatingPa } = job.sheet;
  return (
    spring.benchHighPa > (caseRatingPa ?? Number.POSITIVE_INFINITY) ||
    spring.benchHighPa > testAirLimit(job.sheet).limitPa
  );
}
