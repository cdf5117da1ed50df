import { describe, expect, test } from 'vitest';
import { FAULT_RULE_NAMES } from '../../../../procedures/rules/find-the-fault.ts';
import { RULE_NAMES, RULES } from '../../../../procedures/rules/registry.ts';
import { singleLines } from '../../../../server/jobs/view/lines.ts';
import { markOf, OUTCOMES_SAID, sayOutcome } from '../../../../server/jobs/view/verdicts.ts';
import { es } from '../../../../views/language/es.ts';
import { wordsOf } from '../../../../views/language/words.ts';
import { jobOn, play } from '../../../builders/answers.ts';
import { AIR_AS_IT_SHOULD, POSITIONER_SHEET, repairNamed } from '../../../builders/own-air-valve.ts';

const SEARCH: readonly string[] = FAULT_RULE_NAMES;
/** Those of a search name a check, a repair or a procedure, which the line says itself. */
const plain = RULE_NAMES.filter(
  (name) => !SEARCH.includes(name) || ['faultMended', 'gaugeFitted'].includes(name),
);

describe('how a line came out', () => {
  test('is said for every outcome of every rule, with a mark', () => {
    const missing = plain.flatMap((name) =>
      RULES[name].outcomes
        .filter((outcome) => outcome !== 'more rows' && markOf(outcome, name) === null)
        .map((outcome) => `${name}: ${outcome}`),
    );
    expect(missing).toEqual([]);
  });

  test('is said for nothing that no rule finds, and for each one way', () => {
    const found = new Set(RULE_NAMES.flatMap((name) => RULES[name].outcomes));
    expect(OUTCOMES_SAID.filter((outcome) => !found.has(outcome))).toEqual([]);
    expect(new Set(OUTCOMES_SAID).size).toBe(OUTCOMES_SAID.length);
  });

  test('is said in Spanish as well', () => {
    const spanish = wordsOf({ language: 'es', catalogue: es });
    const words = OUTCOMES_SAID.map((outcome) => sayOutcome(outcome));
    expect(words.filter((word) => word !== 'no' && spanish.say(word).text === word)).toEqual([]);
  });

  test('names what was found amiss: a supply that sags is no “told”', () => {
    const sags = { supplyStillPa: '20 psi', supplyMovingPa: '14 psi' };
    const sound = { supplyStillPa: '20 psi', supplyMovingPa: '19.5 psi' };
    const run = play(jobOn(repairNamed('air-set'), { sheet: POSITIONER_SHEET, place: 'line' }), {
      overrides: { ...AIR_AS_IT_SHOULD, supplyFound: [sags, sound], supplyLeft: sound },
    });
    const lines = singleLines(run.job, run.compiled);
    const verdicts = (step: string) =>
      lines.filter((line) => line.step === step).map(({ verdict }) => verdict);
    expect(verdicts('supplyFound')[0]).toEqual({ mark: 'outside', word: 'sags' });
    expect(verdicts('openIt')[0]).toEqual({ mark: 'record', word: 'chosen' });
    expect(lines.filter(({ verdict }) => verdict.word === 'told').map(({ step }) => step)).toEqual([]);
  });

  test('means the contrary where a current is wanted and there is none', () => {
    expect([markOf('none', 'noneOf'), markOf('none', 'loopCurrent')]).toEqual(['inside', 'outside']);
  });
});
