/** How a pressure was shown to be gone. */
export interface GaugeEvidence {
  readonly method: 'gauge';
  /** What this gauge read in this job before the isolation. */
  readonly beforePa: number;
  readonly afterPa: number;
  /** Half width that covers the reading (95 %). */
  readonly uncertaintyPa: number;
}

export interface VentEvidence {
  readonly method: 'vent';
  readonly flowFirst: 'no flow' | 'flow';
  readonly flowAgain: 'no flow' | 'flow';
}

export type Evidence = GaugeEvidence | VentEvidence;

export type Shown = 'shown' | 'not shown' | 'gauge not seen alive' | 'gauge too coarse';

/**
 * Whether a pressure counts as shown safe.
 *
 * A zero means something only on a gauge that this job saw alive at that place, and only where reading plus
 * uncertainty is at most the stated safe limit. Where no gauge can tell, the vent is cracked and watched, twice.
 *
 * @returns `shown`; `not shown` where pressure is left or the vent flows; `gauge not seen alive` where the
 *   reading before cannot be told from zero; `gauge too coarse` where even a true zero could not be told
 * @example shownSafe({ method: 'gauge', beforePa: 427475, afterPa: 0, uncertaintyPa: 11032 }, 20684) // 'shown'
 */
export function shownSafe(evidence: Evidence, safeLimitPa: number): Shown {
  if (evidence.method === 'vent') {
    return evidence.flowFirst === 'no flow' && evidence.flowAgain === 'no flow' ? 'shown' : 'not shown';
  }
  const { beforePa, afterPa, uncertaintyPa } = evidence;
  if (uncertaintyPa > safeLimitPa) return 'gauge too coarse';
  if (!(Math.abs(afterPa) + uncertaintyPa <= safeLimitPa)) return 'not shown';
  return beforePa - uncertaintyPa > Math.abs(afterPa) + uncertaintyPa ? 'shown' : 'gauge not seen alive';
}
