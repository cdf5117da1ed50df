import { describe, expect, test } from 'vitest';
import {
  alikeFromOutside,
  groupsAlike,
  tellingApart,
} from '../../../procedures/troubleshooting/engine/alike.ts';
import { believe } from '../../../procedures/troubleshooting/engine/belief.ts';
import type { Evidence } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { modelOf } from '../../../procedures/troubleshooting/engine/model.ts';
import { BARE_DIAPHRAGM } from './valves.ts';

const model = modelOf({ ...BARE_DIAPHRAGM, balancedPlug: true });

describe('causes that nobody can tell apart from outside', () => {
  test('are said to be so: a worn seat and a worn balance seal, once everything outside is looked at', () => {
    const found = { leakShut: 'passes', noise: 'hiss', flowAgainstTravel: 'more' } as Readonly<
      Record<string, string>
    >;
    const evidence = model.checks
      .filter((id) => id !== 'openBody' && id !== 'openActuator')
      .map((check): Evidence => {
        const [sound = ''] = model.tables.get(check)?.codes ?? [];
        return { kind: 'answer', check, outcome: found[check] ?? sound, gaugeAlive: true };
      });
    const alike = alikeFromOutside(model, { belief: believe(model, evidence), evidence });
    expect(alike?.causes).toEqual(expect.arrayContaining(['seatWorn', 'balanceSeal']));
    expect(alike?.toldBy).toContain('openBody');
  });

  test('are not said to be so while a look from outside is left', () => {
    expect(
      tellingApart(model, { one: 'diaphragmTorn', other: 'caseStemSeal', checks: ['soapAdjuster'] }),
    ).toEqual(['soapAdjuster']);
  });

  test('come apart with everything open', () => {
    const together = groupsAlike(model, model.checks).filter((group) => group.length > 1);
    expect(together.some((group) => group.includes('seatWorn') && group.includes('balanceSeal'))).toBe(false);
  });
});
