import { moreSeatTurns } from '../seat-turns.ts';
import { RUN_OUT_USUAL_M, TORQUE_WITHIN_PERCENT } from '../trim-limits.ts';
import { stemMayTurn } from '../valve-sheet/derived.ts';
import type { Rule } from './rule.ts';

const SPENT: readonly string[] = ['grooved', 'pitted'];

/** Trim by eye and by measure, what lapping cannot cure first. */
export const trimLookRule: Rule = {
  outcomes: ['lap', 'sound', 'seat or plug spent', 'stem bent', 'guides worn', 'plug loose'],
  params: [],
  judge({ readings, words }) {
    const runOutM = readings.runOutM?.valueSi ?? Number.NaN;
    const runOutMaxM = readings.runOutMaxM?.valueSi ?? RUN_OUT_USUAL_M;
    const clearanceM =
      (readings.guideBoreM?.valueSi ?? Number.NaN) - (readings.guidePlugM?.valueSi ?? Number.NaN);
    const clearanceMaxM = readings.clearanceMaxM?.valueSi ?? null;
    const outcome = () => {
      if (words.pinTight !== 'yes') return 'plug loose';
      if (!(runOutM <= runOutMaxM)) return 'stem bent';
      if (clearanceMaxM !== null && !(clearanceM <= clearanceMaxM)) return 'guides worn';
      if (SPENT.includes(words.seatFace ?? '') || SPENT.includes(words.plugFace ?? ''))
        return 'seat or plug spent';
      return words.seatFace === 'bright' && words.plugFace === 'bright' ? 'sound' : 'lap';
    };
    return { outcome: outcome(), figures: { runOutMaxM, clearanceM, clearanceMaxM } };
  },
};

/** Nuts at the torque wanted, and the stem still free in its guides. */
export const torquedRule: Rule = {
  outcomes: ['as wanted', 'less', 'more', 'stem not free'],
  params: [],
  judge({ job, readings, words }) {
    const wantedNm = job.readings.bonnetTorqueNm?.valueSi ?? Number.NaN;
    const leftNm = readings.bonnetTorqueLeftNm?.valueSi ?? Number.NaN;
    const within = (TORQUE_WITHIN_PERCENT / 100) * wantedNm;
    const outcome = () => {
      if (words.stemFree !== 'yes') return 'stem not free';
      if (leftNm > wantedNm + within) return 'more';
      return leftNm >= wantedNm - within ? 'as wanted' : 'less';
    };
    return { outcome: outcome(), figures: { wantedNm } };
  },
};

/** Load on the seat by the contact found, against what the sheet wants. */
export const seatLoadRule: Rule = {
  outcomes: ['enough', 'too little', 'must not be turned', 'not on the sheet'],
  params: ['contact'],
  judge({ job }) {
    const more = moreSeatTurns(job);
    if (more === null) return { outcome: 'not on the sheet', figures: {} };
    const figures = { seatLoadN: more.hasN, seatLoadNeedN: more.neededN, turns: more.turns };
    if (more.turns === 0) return { outcome: 'enough', figures };
    return { outcome: stemMayTurn(job.sheet) ? 'too little' : 'must not be turned', figures };
  },
};
