/** 1 psi in Pa, exact (NIST SP 811): 0.45359237 kg x 9.80665 m/s2 / (0.0254 m)2. */
const PSI_PA = 6894.757293168361;

/**
 * The most that is put on a diaphragm case whose rating is not on the sheet: 40 psi (common practice, no source).
 */
export const BLANK_CASE_RATING_PA = 40 * PSI_PA;

/** How far test air may pass the highest signal: 5 psi (common practice, no source). */
export const MARGIN_OVER_SIGNAL_PA = 5 * PSI_PA;

/**
 * At most this much, gauge uncertainty included, counts as no pressure (common practice, no source). Test air
 * is read on a low-range gauge; supply and process gauges are coarser, and where a gauge cannot tell so little,
 * the vent is cracked and watched instead.
 */
export const SAFE_LIMIT_PA = {
  supplyAir: 3 * PSI_PA,
  secondSupply: 3 * PSI_PA,
  signalAir: 0.5 * PSI_PA,
  processInlet: 3 * PSI_PA,
  processOutlet: 3 * PSI_PA,
} as const;

/** A body that skin touches for a moment: at most 50 degrees Celsius (common practice, no source). */
export const SAFE_TOUCH_C = 50;

/** How long a sign-off for an adjustment lasts at most, in hours: the rest of one shift (common practice, no source). */
export const SIGN_OFF_HOURS = 8;

/** How old a zero reading may be before hands go in again, in hours (common practice, no source). */
export const PROOF_AGE_HOURS = 4;

/** How long test air counts as held after it was read steady, in minutes (common practice, no source). */
export const HELD_AIR_MINUTES = 30;

/** How old a gas test may be before a pocket is opened, in minutes (common practice, no source). */
export const GAS_TEST_MINUTES = 60;

/** How long drained sides are shut in before they are read again, in seconds (common practice, no source). */
export const DRAIN_HOLD_S = 300;

export interface CaseFacts {
  readonly caseRatingPa: number | null;
  readonly signalHighPa: number;
  readonly actuatorKind?: 'diaphragm' | 'piston';
  readonly positioner?: 'none' | 'pneumatic' | 'electropneumatic';
  readonly benchSetHighPa?: number;
  readonly supplyHighPa?: number | null;
}

export interface TestAirLimit {
  readonly limitPa: number;
  /** Which of the bounds is the lowest. */
  readonly because:
    | 'case rating'
    | 'blank case rating'
    | 'signal and margin'
    | 'bench set and margin'
    | 'supply';
}

/**
 * The most test air that this valve's case is given.
 *
 * Shape: the lower of the case rating (40 psi where the sheet is blank) and what the case sees in service. Without a
 *   positioner that is the highest signal, and 5 psi over it. A positioner gives a diaphragm whatever air its spring
 *   takes: there the end of the bench set and 5 psi over it, and never more than its supply, where the sheet names both.
 * @param caseRatingPa gauge pressure from the sheet; null where blank
 * @param signalHighPa upper end of the signal range, gauge
 * @param actuatorKind, positioner, benchSetHighPa, supplyHighPa  left out: the bound by the signal stands
 * @returns gauge pressure in Pa, and which bound it is
 * @source common practice, no source
 * @example testAirLimit({ caseRatingPa: null, signalHighPa: 103421.36 }) // 137895.15 Pa, 20 psi, 'signal and margin'
 */
export function testAirLimit(facts: CaseFacts): TestAirLimit {
  const { caseRatingPa } = facts;
  const service = inService(facts);
  const ratingPa = caseRatingPa ?? BLANK_CASE_RATING_PA;
  return ratingPa < service.limitPa
    ? { limitPa: ratingPa, because: caseRatingPa === null ? 'blank case rating' : 'case rating' }
    : service;
}

function inService(facts: CaseFacts): TestAirLimit {
  const bySignalPa = facts.signalHighPa + MARGIN_OVER_SIGNAL_PA;
  const bySignal = { limitPa: bySignalPa, because: 'signal and margin' } as const;
  const { actuatorKind, positioner = 'none', benchSetHighPa, supplyHighPa = null } = facts;
  if (actuatorKind !== 'diaphragm' || positioner === 'none') return bySignal;
  if (benchSetHighPa === undefined || supplyHighPa === null) return bySignal;
  const byBenchPa = benchSetHighPa + MARGIN_OVER_SIGNAL_PA;
  const limitPa = Math.min(byBenchPa, supplyHighPa);
  // A spring that the signal moves by itself wants no more than before.
  if (limitPa <= bySignalPa) return bySignal;
  return { limitPa, because: supplyHighPa < byBenchPa ? 'supply' : 'bench set and margin' };
}
