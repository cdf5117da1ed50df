import { GAS_CONSTANT_J_PER_MOL_K } from '../calculations/gas-states.ts';
import { pressureDecay } from '../calculations/pressure-decay.ts';
import { guarded } from '../cycle-verdict.ts';
import { ROOM } from '../seat-test.ts';
import { shutInLimitPa, shutInVolumeM3 } from '../shut-in-figures.ts';
import type { Rule, RuleInput } from './rule.ts';

/** How well the temperature of shut-in air is known, read at the case or not read at all (common practice, no source). */
const KNOWN_TO_K = { read: 0.5, unread: 3 } as const;

/**
 * An actuator shut in at the end of its stroke: the fall that is left when temperature is taken out, against what it may
 * lose in that time. At its stop the volume stays what it is; anywhere else the spring follows the air and hides most of
 * the leak. A cylinder has no limit here: each fall that the gauge can tell is told.
 */
export const shutInRule: Rule = {
  outcomes: ['holds', 'leaks', 'too close', 'stem moved', 'not read'],
  params: [],
  judge({ job, readings, words }) {
    const { shutInStartPa: start, shutInEndPa: end, shutInTimeS: time } = readings;
    if (words.stemStood !== 'yes') return { outcome: 'stem moved', figures: {} };
    if (start === undefined || end === undefined || time === undefined || time.valueSi <= 0)
      return { outcome: 'not read', figures: {} };
    const volumeM3 = shutInVolumeM3(job.sheet);
    const { startK, endK, uncertaintyK } = temperatures(readings);
    const decay = pressureDecay({
      volumeM3,
      startPa: start.valueSi,
      endPa: end.valueSi,
      startAtmospherePaAbs: ROOM.pressurePaAbs,
      endAtmospherePaAbs: ROOM.pressurePaAbs,
      startK,
      endK,
      elapsedS: time.valueSi,
      gaugeUncertaintyPa: Math.max(start.uncertaintySi ?? 0, end.uncertaintySi ?? 0),
      temperatureUncertaintyK: uncertaintyK,
    });
    const uncertaintyPa =
      (decay.leakUncertaintyMolPerS * time.valueSi * GAS_CONSTANT_J_PER_MOL_K * endK) / volumeM3;
    const limitPa = shutInLimitPa(job.sheet, time.valueSi);
    const value = Math.max(0, decay.fallByLeakPa);
    const told =
      limitPa === null
        ? value <= uncertaintyPa
          ? 'inside'
          : 'outside'
        : guarded({ value, limit: limitPa, uncertainty: uncertaintyPa });
    return {
      outcome: told === 'inside' ? 'holds' : told === 'outside' ? 'leaks' : 'too close',
      figures: {
        fallByLeakPa: decay.fallByLeakPa,
        fallByTemperaturePa: decay.fallByTemperaturePa,
        fallUncertaintyPa: uncertaintyPa,
        fallLimitPa: limitPa,
        leakMolPerS: decay.leakMolPerS,
        leakUncertaintyMolPerS: decay.leakUncertaintyMolPerS,
      },
    };
  },
};

function temperatures({ shutInStartK, shutInEndK }: RuleInput['readings']) {
  return shutInStartK === undefined || shutInEndK === undefined
    ? { startK: ROOM.temperatureK, endK: ROOM.temperatureK, uncertaintyK: KNOWN_TO_K.unread }
    : { startK: shutInStartK.valueSi, endK: shutInEndK.valueSi, uncertaintyK: KNOWN_TO_K.read };
}
