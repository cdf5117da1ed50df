import { describe, expect, test } from 'vitest';
import type { CheckId } from '../../../../../procedures/troubleshooting/checks.ts';
import { believe } from '../../../../../procedures/troubleshooting/engine/belief.ts';
import { decide } from '../../../../../procedures/troubleshooting/engine/decide.ts';
import type { Evidence } from '../../../../../procedures/troubleshooting/engine/evidence.ts';
import { modelOf } from '../../../../../procedures/troubleshooting/engine/model.ts';
import { footLines } from '../../../../../server/jobs/view/cards/fault-words.ts';
import { standingAtStart } from '../../../../procedures/troubleshooting/simulate.ts';
import { BARE_DIAPHRAGM } from '../../../../procedures/troubleshooting/valves.ts';

const model = modelOf(BARE_DIAPHRAGM);
const [suggested] = decide(model, {
  belief: believe(model, []),
  evidence: [],
  standing: standingAtStart(model),
}).checks;

/** What stands below the ranking where a torn diaphragm and a leaking seal of the case stem are alike. */
function saidBelow(again: readonly CheckId[], toldBy: readonly CheckId[] = []): string {
  if (suggested === undefined) throw new Error('nothing to check at the start');
  const checks = again.map((check) => ({ ...suggested, check, again: true }));
  const evidence: readonly Evidence[] = [];
  return footLines({
    alike: { causes: ['diaphragmTorn', 'caseStemSeal'], toldBy },
    evidence,
    model,
    checks,
  }).join(' ');
}

describe('Causes that cannot be told apart from outside any more', () => {
  test('are mended one after the other only where no second look would tell them apart', () => {
    expect(saidBelow([])).toContain('tried one after the other');
    expect(saidBelow(['fluidOutside'])).toContain('tried one after the other');
  });

  test('are looked at again first, where what was read of them may have been a slip', () => {
    const said = saidBelow(['soapAdjuster']);
    expect(said).not.toContain('tried one after the other');
    expect(said).toContain(
      'a second look may, where the first was a slip: soap test at the spring adjuster.',
    );
  });

  test('are told by what opens, where that would tell', () => {
    expect(saidBelow(['soapAdjuster'], ['openActuator'])).toContain('What would tell, once isolated:');
  });
});
