import { soapPressurePa } from '../overhaul-figures.ts';
import type { Rule } from './rule.ts';

/** Less than this share of the air wanted shows no leak that is there (common practice, no source). */
const ENOUGH = 0.95;

/**
 * Where air leaves a diaphragm actuator under test air. Air at the adjuster or at the vent of the spring side has come
 * through the diaphragm, whatever the joint does; it is told first, because tight nuts do not cure it.
 */
export const soapCaseRule: Rule = {
  outcomes: ['tight', 'case joint', 'diaphragm', 'stem seal', 'too little air'],
  params: [],
  judge({ job, readings, words }) {
    const wantedPa = soapPressurePa(job.sheet);
    const soapPa = readings.soapPa?.valueSi ?? Number.NaN;
    const figures = { wantedPa };
    if (!(soapPa >= ENOUGH * wantedPa)) return { outcome: 'too little air', figures };
    if (words.springSideAir === 'yes') return { outcome: 'diaphragm', figures };
    if (words.stemSealAir === 'yes') return { outcome: 'stem seal', figures };
    return { outcome: words.caseJointAir === 'no' ? 'tight' : 'case joint', figures };
  },
};
