import type { Build } from './build.ts';
import { bell, type Random } from './random.ts';

/** A reading from a gauge, as it is written down, with the standard uncertainty that its class gives. */
export interface Read {
  readonly value: number;
  readonly sigma: number;
}

export type Point = 'source' | 'signal' | 'actuator' | 'supply' | 'cylinderTop' | 'cylinderBottom' | 'nozzle';

/** Full scale of the gauge that suits the pressure: psi dials of the trade. */
const DIALS_PA = [206_843, 413_685, 1_103_161] as const;
/** Class 1: one per cent of full scale at most. A tenth of the finest division cannot be read. */
const CLASS_SHARE = 0.01;
const DIVISIONS = 150;

/** What stands on the dial. */
export function readPressure(
  build: Build,
  of: { readonly point: Point; readonly truePa: number; readonly mostPa: number; readonly random: Random },
): Read {
  const dialPa = dialFor(of.mostPa);
  const off = (build.gaugeOff[of.point] ?? 0) * dialOffPa(build);
  const sigma = (CLASS_SHARE * dialPa) / 3;
  const shownPa = Math.max(0, of.truePa + off + sigma * bell(of.random));
  const divisionPa = dialPa / DIVISIONS;
  return { value: Math.round(shownPa / divisionPa) * divisionPa, sigma };
}

/** Full scale of the gauge that somebody fits for the most that may come. @example dialFor(2e5) // 206843, 30 psi */
export function dialFor(mostPa: number): number {
  return DIALS_PA.find((one) => one >= mostPa) ?? DIALS_PA[2];
}

/** A wrong gauge is wrong by a share of the signal span, or of the supply on a cylinder. */
function dialOffPa(build: Build): number {
  const { frame } = build;
  return frame.doubleActing ? frame.supplyPa : frame.signalHighPa - frame.signalLowPa;
}

/** A travel scale read by eye: half a per cent of the travel. */
export function readTravel(build: Build, of: { readonly stemAt: number; readonly random: Random }): Read {
  const at = Math.round((of.stemAt + 0.005 * bell(of.random)) * 200) / 200;
  return { value: at * build.frame.travelM, sigma: 0.005 * build.frame.travelM };
}
