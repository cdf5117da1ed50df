import { forcesAtLift } from '../../calculations/force-balance.ts';
import { uncertaintyBudget } from '../../calculations/uncertainty.ts';
import { signalOpens, type ValveFacts } from '../valve-facts.ts';

/**
 * From what a gauge said to the axis of a check: how far off this valve's own expectation, in percent, with the
 * standard uncertainty of that. `Measured.axis` of each check says which of these it takes.
 */
export interface OnAxis {
  readonly value: number;
  readonly readSigma: number;
}

/** A reading with its standard uncertainty, in the same SI unit. */
export interface Read {
  readonly value: number;
  readonly sigma: number;
}

/** Sum of readings, each times its factor; uncertainties add in squares. */
function combined(parts: readonly { readonly read: Read; readonly factor: number }[]): OnAxis {
  const { combined: readSigma } = uncertaintyBudget({
    influences: parts.map(({ read, factor }, at) => ({
      name: `part ${at}`,
      size: Math.abs(read.sigma),
      distribution: 'normal, k = 1',
      sensitivity: factor,
    })),
  });
  return { value: parts.reduce((sum, { read, factor }) => sum + factor * read.value, 0), readSigma };
}

function signalSpanPa(v: ValveFacts): number {
  return v.numbers.signalHighPa - v.numbers.signalLowPa;
}

/**
 * Current against the output: 4 mA and 0.16 mA for each percent.
 * @returns mA
 * @example currentOff({ currentA: { value: 0.0118, sigma: 2e-5 }, outputPercent: 50 }).value // -0.2
 */
export function currentOff(of: { readonly currentA: Read; readonly outputPercent: number }): OnAxis {
  const { value, readSigma } = combined([{ read: of.currentA, factor: 1000 }]);
  return { value: value - (4 + 0.16 * of.outputPercent), readSigma };
}

/**
 * A pressure against what the command asks, in percent of the signal span.
 * @example 12 psi at the valve for 15 sent, 3 to 15 psi: -25
 */
export function againstCommand(
  v: ValveFacts,
  of: { readonly pressurePa: Read; readonly signalPercent: number },
): OnAxis {
  const spanPa = signalSpanPa(v);
  const { value, readSigma } = combined([{ read: of.pressurePa, factor: 100 / spanPa }]);
  const asked = (100 * (v.numbers.signalLowPa + (of.signalPercent / 100) * spanPa)) / spanPa;
  return { value: value - asked, readSigma };
}

/** One pressure less another, in percent of the signal span. */
export function lessOther(v: ValveFacts, of: { readonly pressurePa: Read; readonly otherPa: Read }): OnAxis {
  const factor = 100 / signalSpanPa(v);
  return combined([
    { read: of.pressurePa, factor },
    { read: of.otherPa, factor: -factor },
  ]);
}

/**
 * Supply past the range that the sheet allows, in percent of its nearer end; 0 inside it.
 * @returns null where the sheet has no set value
 */
export function againstSetSupply(v: ValveFacts, supplyPa: Read): OnAxis | null {
  const setPa = v.numbers.supplyPa;
  if (setPa === null || setPa <= 0) return null;
  const nearestPa = Math.min(Math.max(supplyPa.value, v.numbers.supplyLowPa ?? setPa), setPa);
  const { value, readSigma } = combined([{ read: supplyPa, factor: 100 / nearestPa }]);
  return { value: value - 100, readSigma };
}

/** A pressure in percent of the supply read beside it. */
export function percentOfSupply(of: { readonly pressurePa: Read; readonly supplyPa: Read }): OnAxis | null {
  const { pressurePa, supplyPa } = of;
  if (supplyPa.value <= 0) return null;
  const ratio = pressurePa.value / supplyPa.value;
  const { readSigma } = combined([
    { read: pressurePa, factor: 100 / supplyPa.value },
    { read: supplyPa, factor: (-100 * ratio) / supplyPa.value },
  ]);
  return { value: 100 * ratio, readSigma };
}

/**
 * How much more open the stem stands than the output asks, in percent of travel.
 * @param openedM  travel from shut
 * @param outputPercent  opening asked; 0 is shut
 */
export function travelOff(
  v: ValveFacts,
  of: { readonly openedM: Read; readonly outputPercent: number },
): OnAxis {
  const { value, readSigma } = combined([{ read: of.openedM, factor: 100 / v.numbers.travelM }]);
  return { value: value - of.outputPercent, readSigma };
}

export interface AirAtTravel {
  readonly pressurePa: Read;
  /** Travel from shut; from 0 to the rated travel. */
  readonly openedM: Read;
  /** Force of the flow on the plug; positive opens. 0 on the bypass without a pressure drop. */
  readonly plugForceOpeningN?: number;
  /** Which way the stem came there; blank: not known, then friction widens the uncertainty. */
  readonly came?: 'opening' | 'shutting';
}

/**
 * Actuator air against what spring, area and plug force ask at this travel, in percent of the bench set range.
 *
 * Checked by the balance of the force page: friction is taken against the way the stem came, or spread over both
 * where nobody knows (half width, rectangular).
 */
export function airAtTravelOff(v: ValveFacts, of: AirAtTravel): OnAxis {
  const { numbers } = v;
  const rangePa = numbers.benchSetHighPa - numbers.benchSetLowPa;
  const liftM = Math.min(numbers.travelM, Math.max(0, of.openedM.value));
  const frictionN = numbers.packingFrictionN ?? 0;
  const forces = forcesAtLift({
    airAction: signalOpens(v) ? 'air-to-open' : 'air-to-close',
    effectiveAreaM2: numbers.effectiveAreaM2,
    benchSetLowPa: numbers.benchSetLowPa,
    benchSetHighPa: numbers.benchSetHighPa,
    travelM: numbers.travelM,
    liftM,
    pressurePa: Math.max(0, of.pressurePa.value),
    plugForceOpeningN: of.plugForceOpeningN ?? 0,
    frictionN,
  });
  const wantedPa =
    of.came === 'opening' ? forces.openingPa : of.came === 'shutting' ? forces.closingPa : forces.balancedPa;
  const eitherWayPa = of.came === undefined ? frictionN / numbers.effectiveAreaM2 / Math.sqrt(3) : 0;
  const { value, readSigma } = combined([
    { read: of.pressurePa, factor: 100 / rangePa },
    { read: { value: 0, sigma: of.openedM.sigma }, factor: 100 / numbers.travelM },
    { read: { value: 0, sigma: eitherWayPa }, factor: 100 / rangePa },
  ]);
  return { value: value - (100 * wantedPa) / rangePa, readSigma };
}

/** Difference of the two pressures at one travel, coming from below and from above, in percent of the range. */
export function upLessDown(v: ValveFacts, of: { readonly upPa: Read; readonly downPa: Read }): OnAxis {
  const rangePa = v.spring
    ? v.numbers.benchSetHighPa - v.numbers.benchSetLowPa
    : (v.numbers.supplyPa ?? signalSpanPa(v));
  const factor = 100 / rangePa;
  const { value, readSigma } = combined([
    { read: of.upPa, factor },
    { read: of.downPa, factor: -factor },
  ]);
  return { value: Math.abs(value), readSigma };
}

/** What a shut-in space loses, in percent of its first gauge pressure a minute. */
export function lostAMinute(of: {
  readonly firstPa: Read;
  readonly lastPa: Read;
  readonly elapsedS: number;
}): OnAxis | null {
  const { firstPa, lastPa, elapsedS } = of;
  if (firstPa.value <= 0 || elapsedS <= 0) return null;
  const factor = (100 * 60) / (firstPa.value * elapsedS);
  return combined([
    { read: firstPa, factor },
    { read: lastPa, factor: -factor },
  ]);
}
