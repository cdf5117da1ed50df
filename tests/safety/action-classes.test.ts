import { describe, expect, test } from 'vitest';
import { ACTION_CLASSES, type ActionClass, needsOf } from '../../safety/action-classes.ts';
import { type ConditionId, isStateOf, worstState } from '../../safety/conditions.ts';

const CLASSES = Object.keys(ACTION_CLASSES) as ActionClass[];

/** Classes after which nothing can be made good: skin, spring, line or case is open. */
const OPENS: readonly ActionClass[] = [
  'releaseStemConnector',
  'loosenCaseBolts',
  'loosenCaseHoldingSpring',
  'openPistonCylinder',
  'liftActuator',
  'removePacking',
  'breakBonnetJoint',
  'removeTrim',
  'takeOutOfLine',
];

describe('[SAF-03] Table D', () => {
  test('allows known states only, and at least one for each condition that it names', () => {
    for (const action of CLASSES)
      for (const [condition, states] of Object.entries(needsOf(action))) {
        expect(states.length, `${action} ${condition}`).toBeGreaterThan(0);
        for (const state of states) expect(isStateOf(condition as ConditionId, state)).toBe(true);
      }
  });

  test('says for every class what goes wrong, in whose words, and by what source', () => {
    for (const action of CLASSES) {
      const { name, danger, source } = ACTION_CLASSES[action];
      expect(name).not.toBe('');
      expect(danger).toMatch(/\.$/);
      expect(source).toMatch(/CFR|manual|common practice, no source/);
    }
  });

  test('holds nothing against making safe: air may be vented in every state', () => {
    expect(needsOf('ventCase')).toEqual({});
  });

  test.each(OPENS)('wants air off the case and its feed, and a signature, before: %s', (action) => {
    expect(needsOf(action)).toMatchObject({
      supplyAir: ['isolated', 'absent'],
      signalAir: ['isolated', 'absent'],
      trappedAir: ['isolated', 'absent'],
      workSignOff: ['given'],
    });
  });

  test('wants the plug off its seat on held air of one source before the stem is turned', () => {
    expect(needsOf('turnPlugStem')).toMatchObject({
      signalAir: ['held'],
      plug: ['off seat'],
      testAir: ['connected'],
      controllerLine: ['capped', 'absent'],
      supplyAir: ['isolated', 'absent'],
      processInlet: ['isolated', 'absent'],
      processOutlet: ['isolated', 'absent'],
      spring: ['contained', 'released', 'absent'],
      workSignOff: ['given'],
    });
  });

  test('lets no case with an adjuster be opened on a loaded or contained spring', () => {
    expect(needsOf('loosenCaseBolts').spring).toEqual(['released', 'absent']);
  });

  test('takes a bypass for no isolation: none that wants it open is content with a live body', () => {
    for (const action of CLASSES) {
      const needs = needsOf(action);
      expect(needs.bypass?.includes('open') && needs.processInlet?.includes('live')).not.toBe(true);
    }
  });

  test('never counts the worst state of an energy as enough, but where the process comes back', () => {
    const lax = CLASSES.filter((action) =>
      Object.entries(needsOf(action)).some(([id, states]) =>
        (states as readonly string[]).includes(worstState(id as ConditionId)),
      ),
    );
    // Test air off, locks off and process live are what these wait for.
    expect(lax).toEqual(['reconnectSignalLine', 'restoreSupply', 'restoreProcess', 'shutBypass']);
  });
});
