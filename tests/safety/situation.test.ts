import { describe, expect, test } from 'vitest';
import { CONDITION_IDS, CONDITIONS, everythingLive, worstState } from '../../safety/conditions.ts';
import {
  applyEffects,
  lapse,
  lapseOnly,
  type Situation,
  situationAtOpening,
  stateThatCounts,
} from '../../safety/situation.ts';

const isolated: Situation = applyEffects(situationAtOpening(), {
  supplyAir: 'isolated',
  supplyLock: 'on',
  signalAir: 'held',
  weight: 'absent',
  workSignOff: 'given',
  plug: 'off seat',
  controllerLine: 'capped',
  testAir: 'connected',
});

describe('What a job knows about its valve', () => {
  test('begins with everything live and nothing lapsed', () => {
    expect(situationAtOpening()).toEqual({ states: everythingLive(), lapsed: {} });
  });

  test('changes only where an entry says so', () => {
    expect(isolated.states).toEqual({
      ...everythingLive(),
      supplyAir: 'isolated',
      supplyLock: 'on',
      signalAir: 'held',
      weight: 'absent',
      workSignOff: 'given',
      plug: 'off seat',
      controllerLine: 'capped',
      testAir: 'connected',
    });
  });
});

describe('[SAF-11] What has lapsed', () => {
  const parked = lapse(isolated, 'parked');

  test('counts as the worst state, for every condition', () => {
    for (const id of CONDITION_IDS) {
      const lapsed: Situation = { states: isolated.states, lapsed: { [id]: 'age' } };
      expect(stateThatCounts(lapsed, id)).toBe(worstState(id));
      expect(stateThatCounts(isolated, id)).toBe(isolated.states[id]);
    }
  });

  test('is what a person had shown, and the signatures over it', () => {
    expect(parked.lapsed).toEqual({
      supplyAir: 'parked',
      signalAir: 'parked',
      plug: 'parked',
      workSignOff: 'parked',
    });
  });

  test('is not the lock that hangs, the line that is capped or the test air that is on', () => {
    for (const id of ['supplyLock', 'controllerLine', 'testAir'] as const)
      expect(stateThatCounts(parked, id)).toBe(isolated.states[id]);
  });

  test('is not what is absent: nothing can build up where nothing is', () => {
    const absent: Situation = {
      states: { ...everythingLive(), supplyAir: 'absent', weight: 'absent', temperature: 'absent' },
      lapsed: {},
    };
    expect(lapse(absent, 'age').lapsed).toEqual({});
  });

  test('keeps its raw state beside the lapse', () => {
    expect(parked.states).toEqual(isolated.states);
  });

  test('counts again where it is shown afresh, and only there', () => {
    const again = applyEffects(parked, { supplyAir: 'isolated' });
    expect(stateThatCounts(again, 'supplyAir')).toBe('isolated');
    expect(stateThatCounts(again, 'signalAir')).toBe('live');
  });

  test('names only the conditions asked for', () => {
    const one = lapseOnly(isolated, { conditions: ['supplyAir', 'temperature'], reason: 'corrected' });
    expect(one.lapsed).toEqual({ supplyAir: 'corrected' });
  });

  test('leaves no energy above its worst state', () => {
    const best = Object.fromEntries(
      CONDITION_IDS.map((id) => [id, CONDITIONS[id].states.findLast((state) => state !== 'absent')]),
    );
    const all = lapse({ states: best as unknown as Situation['states'], lapsed: {} }, 'shift change');
    for (const id of CONDITION_IDS.filter((one) => CONDITIONS[one].group === 'energy'))
      expect(stateThatCounts(all, id)).toBe(worstState(id));
  });
});
