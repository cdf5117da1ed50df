import { describe, expect, test } from 'vitest';
import { CAUSE_IDS } from '../../../procedures/troubleshooting/causes.ts';
import { HUBS, moveMinutes } from '../../../procedures/troubleshooting/check.ts';
import { CHECK_IDS, checkOf, checksFor } from '../../../procedures/troubleshooting/checks.ts';
import { modelOf } from '../../../procedures/troubleshooting/engine/model.ts';
import { planFor } from '../../../procedures/troubleshooting/engine/next-check.ts';
import { REPAIR_IDS, repairFor, repairOf } from '../../../procedures/troubleshooting/repairs.ts';
import { needsOf } from '../../../safety/action-classes.ts';
import { standingAtStart } from './simulate.ts';
import { BARE_DIAPHRAGM, VALVES } from './valves.ts';

describe('the checks', () => {
  test('are at least forty-five, each with minutes, a misread share and at least two outcomes', () => {
    expect(CHECK_IDS.length).toBeGreaterThanOrEqual(45);
    for (const id of CHECK_IDS) {
      const check = checkOf(id);
      expect(check.minutes).toBeGreaterThan(0);
      expect(check.misread).toBeGreaterThan(0);
      expect(check.misread).toBeLessThan(0.3);
      expect(Object.keys(check.outcomes).length).toBeGreaterThan(1);
      expect(check.hubs.length).toBeGreaterThan(0);
    }
  });

  test('that measure cover their axis without a gap, and put every band into a word of theirs', () => {
    for (const id of CHECK_IDS) {
      const { measured, outcomes } = checkOf(id);
      if (measured === undefined) continue;
      const bands = Object.entries(measured.bands).sort(([, a], [, b]) => a[0] - b[0]);
      expect(Object.keys(outcomes)).toEqual(expect.arrayContaining(bands.map(([word]) => word)));
      bands.slice(1).forEach(([, [low]], at) => {
        expect(low).toBe(bands[at]?.[1][1]);
      });
      expect(Object.keys(outcomes)).toEqual(expect.arrayContaining(Object.keys(measured.typical)));
    }
  });

  test('that open something that must be locked off are never done in service or on the bypass', () => {
    for (const facts of Object.values(VALVES))
      for (const id of checksFor(facts)) {
        const check = checkOf(id);
        const classes = check.exposes?.(facts) ?? [];
        const signed = classes.some((one) => 'workSignOff' in needsOf(one));
        if (signed) expect(check.hubs).toEqual(['isolated']);
        if (classes.length > 0) expect(check.hubs).not.toContain('in service');
      }
  });

  test('with the cover open name that class, its bypass and the consent', () => {
    for (const id of CHECK_IDS) {
      const check = checkOf(id);
      if (check.coverOpen !== true) continue;
      expect(check.exposes?.(BARE_DIAPHRAGM)).toContain('openPneumaticCover');
      expect(check.consent).toBe(true);
      expect(check.hubs).toEqual(['bypassed']);
    }
  });

  test('cost the way to the hub that they need, and are not to be had without leave', () => {
    const standing = standingAtStart(modelOf(BARE_DIAPHRAGM));
    const check = checkOf('openActuator');
    expect(planFor(check, { standing, gauges: [] })?.minutes).toBe(75 + check.minutes);
    expect(planFor(check, { standing: { ...standing, mayIsolate: false }, gauges: [] })).toBeNull();
    expect(planFor(check, { standing: { ...standing, consent: false }, gauges: [] })).toBeNull();
    const bare = { ...standing, gaugesFitted: [] };
    expect(
      planFor(checkOf('valveAgainstSource'), { standing: bare, gauges: ['source', 'signal'] }),
    ).toMatchObject({
      fit: ['source', 'signal'],
      fitMinutes: 16,
      moveMinutes: 30,
    });
    expect(
      planFor(checkOf('valveAgainstSource'), { standing: { ...bare, mayBypass: false }, gauges: ['source'] }),
    ).toBeNull();
  });

  test('are reached by minutes that add up along the hubs', () => {
    expect(moveMinutes({ from: 'in service', to: 'isolated' })).toBe(75);
    for (const hub of HUBS) expect(moveMinutes({ from: hub, to: hub })).toBe(0);
  });
});

describe('the repairs', () => {
  test('put right every cause, each by one of them', () => {
    for (const cause of CAUSE_IDS) expect(repairOf(repairFor(cause)).cures).toContain(cause);
    const cured = REPAIR_IDS.flatMap((id) => repairOf(id).cures);
    expect(new Set(cured).size).toBe(cured.length);
  });

  test('end with a check that proves it, on every valve that has such a cause', () => {
    for (const facts of Object.values(VALVES)) {
      const model = modelOf(facts);
      const unproven = model.repairs.filter(
        (id) => !repairOf(id).proof.some((check) => model.checks.includes(check)),
      );
      expect(unproven).toEqual([]);
    }
  });
});
