import { massKg } from './air.ts';
import { type Both, type Build, ENDS, type Frame } from './build.ts';

/** How a simulated valve stands at one moment. Changed in place by `step`: a stroke is some thousand of them. */
export interface State {
  timeS: number;
  supplyPa: number;
  sourcePa: number;
  /** At the end of the signal tube: at the positioner, or in the actuator where there is none. */
  signalPa: number;
  /** Nozzle pressures as shares of their supply, after the lag of the pilot. */
  readonly nozzle: Both;
  readonly massKg: Both;
  readonly endPa: Both;
  /** Behind diaphragm or piston of a spring actuator. */
  ventSidePa: number;
  /** Where the stem stood when that pressure was worked out. */
  ventAt: number;
  /** Flow in the tube one step before: its loss is taken at it. */
  tubeKgPerS: number;
  /** Opened share of the travel: of the actuator, of the stem, and as a lagging feedback sees it. */
  actuatorAt: number;
  stemAt: number;
  feedbackAt: number;
  moving: boolean;
  /** Air used and air blown off just now. */
  usedKgPerS: number;
  blownKgPerS: number;
}

export function volumeM3(frame: Frame, of: { readonly end: keyof Both; readonly at: number }): number {
  const at = of.end === 'opens' ? of.at : 1 - of.at;
  return frame.areaM2 * (frame.deadStrokeM + frame.travelM * at);
}

/** Without air, the stem where spring or chance left it. */
export function stateAt(build: Build, at: number): State {
  const { frame } = build;
  const mass = { opens: 0, shuts: 0 };
  for (const end of ENDS) mass[end] = massKg({ pressurePa: 0, volumeM3: volumeM3(frame, { end, at }) });
  return {
    timeS: 0,
    supplyPa: Math.min(build.headerPa, build.supplySetPa),
    sourcePa: 0,
    signalPa: 0,
    nozzle: { opens: 0.5, shuts: 0.5 },
    massKg: mass,
    endPa: { opens: 0, shuts: 0 },
    ventSidePa: 0,
    ventAt: at,
    tubeKgPerS: 0,
    actuatorAt: at,
    stemAt: at,
    feedbackAt: at,
    moving: false,
    usedKgPerS: 0,
    blownKgPerS: 0,
  };
}
