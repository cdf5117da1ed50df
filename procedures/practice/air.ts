/**
 * Air through holes and along tubes, lean enough to be asked thousands of times in one stroke. The tests hold it
 * against the checked orifice of the calculations, which looks at every input and is too slow here.
 */
const ATMOSPHERE_PA_ABS = 101_325;
/** Gas constant of air times 293.15 K. */
export const AIR_J_PER_KG = 287.05 * 293.15;
const SPEED_M_PER_S = Math.sqrt(AIR_J_PER_KG);
/** Choked flow of air: sqrt(k) · (2 / (k + 1)) ^ ((k + 1) / (2 (k - 1))), with k = 1.4. */
const CHOKED = 0.6847;
const CRITICAL_RATIO = 0.528;
/** Closer than this to equal pressures the flow is taken as even with the difference, so that it never chatters. */
const NEARLY_EQUAL = 0.995;

/**
 * Mass flow through an opening, from the higher pressure to the lower.
 * @param of.areaM2  of the jet: hole times its discharge factor
 * @returns kg/s, positive from `fromPa` to `toPa`, both gauge
 * @example passKgPerS({ areaM2: 1e-6, fromPa: 1e5, toPa: 0 }) // 0.000475
 */
export function passKgPerS(of: {
  readonly areaM2: number;
  readonly fromPa: number;
  readonly toPa: number;
}): number {
  if (of.areaM2 <= 0) return 0;
  const forward = of.fromPa >= of.toPa;
  const high = (forward ? of.fromPa : of.toPa) + ATMOSPHERE_PA_ABS;
  const low = (forward ? of.toPa : of.fromPa) + ATMOSPHERE_PA_ABS;
  const ratio = Math.max(0, low) / high;
  const choked = (of.areaM2 * high * CHOKED) / SPEED_M_PER_S;
  const flow = choked * shareOfChoked(ratio);
  return forward ? flow : -flow;
}

/** The ellipse of ISO 6358 between choked and no flow. */
function shareOfChoked(ratio: number): number {
  if (ratio <= CRITICAL_RATIO) return 1;
  if (ratio > NEARLY_EQUAL) return ((1 - ratio) / (1 - NEARLY_EQUAL)) * ellipse(NEARLY_EQUAL);
  return ellipse(ratio);
}

function ellipse(ratio: number): number {
  return Math.sqrt(1 - ((ratio - CRITICAL_RATIO) / (1 - CRITICAL_RATIO)) ** 2);
}

/** Edges neither sharp nor round: judgement. */
const DISCHARGE_FACTOR = 0.7;

/** The jet of a round hole. */
export function jetM2(holeM: number): number {
  return DISCHARGE_FACTOR * (Math.PI / 4) * holeM * holeM;
}

const VISCOSITY_PA_S = 1.81e-5;

/**
 * What a tube costs a flow of air: pressure lost for each kg/s, at the flow that goes through it now.
 * Isothermal, smooth: laminar below Re 2300, Blasius above.
 * @example tubeLossPaSPerKg({ lengthM: 10, boreM: 0.0043, flowKgPerS: 3e-4, meanPa: 1e5 }) // about 8.6e6
 */
export function tubeLossPaSPerKg(of: {
  readonly lengthM: number;
  readonly boreM: number;
  readonly flowKgPerS: number;
  readonly meanPa: number;
}): number {
  const areaM2 = (Math.PI / 4) * of.boreM * of.boreM;
  const fluxKgPerM2S = Math.max(1e-3, Math.abs(of.flowKgPerS) / areaM2);
  const reynolds = (fluxKgPerM2S * of.boreM) / VISCOSITY_PA_S;
  const factor = reynolds < 2300 ? 64 / reynolds : 0.316 / reynolds ** 0.25;
  const densityKgPerM3 = (Math.max(0, of.meanPa) + ATMOSPHERE_PA_ABS) / AIR_J_PER_KG;
  const lossPa = (factor * (of.lengthM / of.boreM) * fluxKgPerM2S ** 2) / (2 * densityKgPerM3);
  return lossPa / (fluxKgPerM2S * areaM2);
}

export function massKg(of: { readonly pressurePa: number; readonly volumeM3: number }): number {
  return ((of.pressurePa + ATMOSPHERE_PA_ABS) * of.volumeM3) / AIR_J_PER_KG;
}

export function pressurePa(of: { readonly massKg: number; readonly volumeM3: number }): number {
  return (of.massKg * AIR_J_PER_KG) / of.volumeM3 - ATMOSPHERE_PA_ABS;
}
