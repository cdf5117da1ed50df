export type FluidHarm = 'none' | 'scalding' | 'flammable' | 'toxic' | 'corrosive';

/** Blank or disconnected; two valves and a bleed; one valve and a bleed; one valve that nobody has tried. */
export type ProcessIsolation = 'positive' | 'double block and bleed' | 'block and bleed' | 'block only';

/**
 * The valve sheet: the specification of one valve, SI inside. The parser, the defaults and the checks
 * against contradiction stand beside it.
 */
export interface ValveSheet {
  readonly tag: string;
  readonly service: string;
  readonly location: string;
  /** Which units this plant's people read this valve in. */
  readonly units: 'us' | 'si';

  readonly actuatorKind: 'diaphragm' | 'piston';
  readonly plugCloses: 'down' | 'up';
  readonly airMovesStem: 'down' | 'up';
  /** As the plate says it; must agree with the two above. */
  readonly airAction: 'air-to-open' | 'air-to-close';
  /** Where the spring drives the valve on loss of air; `stays` for a piston without a spring. */
  readonly failPosition: 'shut' | 'open' | 'stays';
  readonly springHeldBy: 'adjuster' | 'case' | 'no spring';
  readonly positioner: 'none' | 'pneumatic' | 'electropneumatic';
  readonly positionerRisingSignalLoads: 'top' | 'bottom' | null;
  readonly positionerRelays: 'one' | 'one an end' | null;
  readonly bellowsSeal: boolean;
  readonly stemPinned: boolean;
  readonly handwheel: boolean;
  /** A tank or booster that keeps air after the supply is shut. */
  readonly volumeTank: boolean;
  readonly tankVolumeM3: number | null;
  /** A relay that shuts the air of the actuator in by design when the supply fails. */
  readonly lockUp: boolean;
  /** What hangs on the lifting gear when the actuator comes off; blank: not known. */
  readonly actuatorMassKg: number | null;

  readonly signalLowPa: number;
  readonly signalHighPa: number;
  readonly benchSetLowPa: number;
  readonly benchSetHighPa: number;
  readonly installedLowPa: number | null;
  readonly installedHighPa: number | null;
  readonly effectiveAreaM2: number;
  /** Blank: worked out from bench set, travel and area. */
  readonly springRateNPerM: number | null;
  readonly travelM: number;
  readonly portDiameterM: number;
  readonly stemDiameterM: number;
  /** Balanced plugs: diameter of the balance seal. */
  readonly balanceSealDiameterM: number | null;
  readonly ratedKv: number;
  readonly pressureDropRatioXt: number | null;
  readonly leakageClass: 'I' | 'II' | 'III' | 'IV' | 'V' | 'VI';
  /** Seat load wanted, force for each length of port circumference, by the table named beside it. */
  readonly seatLoadNPerM: number | null;
  readonly seatLoadSource: string | null;
  readonly flow: 'under' | 'over';
  readonly shutOffDropPa: number;

  /** Blank: at most 40 psi is put on the case (common practice, no source). */
  readonly caseRatingPa: number | null;
  readonly supplyLowPa: number | null;
  readonly supplyHighPa: number | null;
  /** A second air feed of its own, for booster, solenoid or positioner; blank where there is none. */
  readonly secondSupplyHighPa: number | null;

  /** As cut on the stem, for example `1/2-20`. */
  readonly stemThread: string;
  readonly stemThreadPitchM: number;
  /** Least length of thread that must grip when the plug stem has been turned; blank: not known. */
  readonly stemThreadEngagedMinM: number | null;
  readonly adjusterThread: string | null;
  readonly adjusterThreadPitchM: number | null;
  /** How many turns of the stem this valve wants after contact; blank: two (common practice). */
  readonly seatingTurns: number | null;

  readonly packingKind: 'ptfe-single' | 'ptfe-double' | 'graphite' | 'other';
  readonly packingRings: number | null;
  /** What the packing should cost the stem each way; blank: unknown. */
  readonly packingFrictionN: number | null;
  readonly packingFrictionSource: string | null;

  readonly errorTolerancePercent: number;
  readonly hysteresisTolerancePercent: number;
  readonly repeatabilityTolerancePercent: number;
  readonly benchSetTolerancePa: number;
  /** Blank: no limit. */
  readonly frictionMaxN: number | null;
  /** From end to end on the valve's own air; blank: no limit. */
  readonly strokeOpenMaxS: number | null;
  readonly strokeShutMaxS: number | null;

  readonly processFluid: string;
  readonly processInletPa: number;
  readonly processOutletPa: number;
  readonly processTemperatureC: number;
  /** What the fluid does to people. */
  readonly fluidHarm: FluidHarm;
  /** How the line is shut off from the valve, from the surest; blank: not known. */
  readonly processIsolation: ProcessIsolation | null;
  /** Number of the risk assessment that such a shut-off rests on. */
  readonly isolationReference: string | null;
  /** Tracing or a jacket that keeps the body hot after the process is gone. */
  readonly heatTracing: boolean;
  /** Highest voltage on positioner, solenoid, switches and heating; blank where there is nothing electrical. */
  readonly electricalV: number | null;
  /** The valve takes part in a trip. */
  readonly tripFunction: boolean;
  /** Tags of the isolation points; blank where the line has none. */
  readonly supplyPoint: string;
  /** Cock of the second air feed; blank where there is no second feed. */
  readonly secondSupplyPoint: string | null;
  /** Breaker or fuse of what is electrical. */
  readonly electricalPoint: string | null;
  readonly inletPoint: string | null;
  readonly outletPoint: string | null;
  readonly bypassPoint: string | null;

  readonly notes: string;
}
