import { describe, expect, test } from 'vitest';
import { ACTION_CLASSES, type ActionClass, needsOf } from '../../safety/action-classes.ts';
import {
  type AnyState,
  CONDITION_IDS,
  CONDITIONS,
  type ConditionId,
  everythingLive,
  type States,
} from '../../safety/conditions.ts';
import { lacks, type Standing, sayLack } from '../../safety/interlock.ts';
import type { PointState } from '../../safety/isolation-points.ts';

const CLASSES = Object.keys(ACTION_CLASSES) as ActionClass[];
const NOW_MS = 1000;
type Needs = { readonly [C in ConditionId]?: readonly AnyState[] };

function locked(tag: string): PointState {
  return { tag, position: 'shut', locks: [{ lock: '15', owner: 't1', job: '7' }] };
}

const POINTS = {
  supplyLock: locked('IA-1'),
  secondSupplyLock: locked('IA-2'),
  inletLock: locked('HV-A'),
  outletLock: locked('HV-B'),
};

/** Everything that an action needs stands in the first state that it allows, signed and locked. */
function ready(action: ActionClass, change: Partial<Record<ConditionId, AnyState>> = {}): Standing {
  const needs = Object.entries(needsOf(action) as Needs).map(([id, states]) => [id, states?.[0]]);
  const states = { ...everythingLive(), ...Object.fromEntries(needs), ...change } as States;
  return {
    job: '7',
    situation: { states, lapsed: {} },
    envelope: {
      hold: 'h',
      work: [action],
      testAirPaMax: 1,
      untilMs: NOW_MS + 1,
      signedBy: 's',
      shownDigest: 'd',
    },
    points: POINTS,
    nowMs: NOW_MS,
  };
}

const conditionsOf = (action: ActionClass, standing: Standing) =>
  lacks(action, standing).map((lack) => lack.condition);

/** Every class with every condition that it needs. */
const NEEDED = CLASSES.flatMap((action) =>
  (Object.keys(needsOf(action)) as ConditionId[]).map((condition) => ({ action, condition })),
);

describe('[SAF-03] The interlock', () => {
  test.each(CLASSES)('lets %s go ahead where all that it needs is shown', (action) => {
    expect(lacks(action, ready(action))).toEqual([]);
  });

  test.each(NEEDED)('refuses $action for every other state of $condition', ({ action, condition }) => {
    const allowed = (needsOf(action) as Needs)[condition] ?? [];
    const others = CONDITIONS[condition].states.filter((state) => !allowed.includes(state));
    expect(others.length).toBeGreaterThan(0);
    for (const state of CONDITIONS[condition].states) {
      const found = conditionsOf(action, ready(action, { [condition]: state }));
      expect(found).toEqual(allowed.includes(state) ? [] : [condition]);
    }
  });

  test.each(NEEDED)('counts $condition as worst for $action once it has lapsed', ({ action, condition }) => {
    const standing = ready(action);
    const lapsed = {
      ...standing,
      situation: { ...standing.situation, lapsed: { [condition]: 'age' as const } },
    };
    const allowed = (needsOf(action) as Needs)[condition] ?? [];
    const worst = CONDITIONS[condition].states[0];
    expect(conditionsOf(action, lapsed)).toEqual(allowed.includes(worst) ? [] : [condition]);
  });

  test('refuses everything but venting, and leaving the valve as it is, while all is live', () => {
    const live: Standing = {
      job: '7',
      situation: { states: everythingLive(), lapsed: {} },
      envelope: null,
      points: {},
      nowMs: NOW_MS,
    };
    expect(CLASSES.filter((action) => lacks(action, live).length === 0)).toEqual([
      'readGauge',
      'ventCase',
      'shutBypass',
      'ventShopAir',
      'ventTestPressure',
    ]);
  });

  test('says what stands, why it counts no more, and what it must be', () => {
    const standing = ready('turnPlugStem', { signalAir: 'live' });
    const [lack] = lacks('turnPlugStem', standing);
    expect(lack && sayLack(lack, 'turnPlugStem')).toBe(
      'Signal or test air counts as live; to turn the plug stem it must be held.',
    );
    const aged = {
      ...ready('turnPlugStem'),
      situation: { ...ready('turnPlugStem').situation, lapsed: { signalAir: 'age' as const } },
    };
    const [old] = lacks('turnPlugStem', aged);
    expect(old && sayLack(old, 'turnPlugStem')).toContain('counts as live, because of age;');
  });

  test('asks for no condition that the class does not name', () => {
    for (const action of CLASSES)
      for (const id of CONDITION_IDS.filter((one) => !(one in needsOf(action))))
        for (const state of CONDITIONS[id].states)
          expect(lacks(action, ready(action, { [id]: state }))).toEqual([]);
  });
});

const BEHIND_LOCKS = NEEDED.filter(
  ({ action, condition }) =>
    ['supplyAir', 'secondSupply', 'processInlet', 'processOutlet'].includes(condition) &&
    ((needsOf(action) as Needs)[condition] ?? []).includes('isolated'),
).map((one) => ({
  ...one,
  lock: {
    supplyAir: 'supplyLock',
    secondSupply: 'secondSupplyLock',
    processInlet: 'inletLock',
    processOutlet: 'outletLock',
  }[one.condition as 'supplyAir'] as keyof typeof POINTS,
}));

describe('[SAF-04] The word of the job does not count against the site', () => {
  test.each(BEHIND_LOCKS)('$action: $condition is live without this job’s lock on its point', (of) => {
    const with_ = (point: PointState | undefined) => {
      const { [of.lock]: _, ...others } = POINTS;
      const points = point === undefined ? others : { ...others, [of.lock]: point };
      return lacks(of.action, { ...ready(of.action), points });
    };
    const lack = { condition: of.condition, state: 'live' };
    expect(with_(locked('X'))).toEqual([]);
    expect(with_(undefined)).toMatchObject([lack]);
    expect(with_({ tag: 'X', position: 'shut', locks: [] })).toMatchObject([lack]);
    expect(with_({ ...locked('X'), position: 'open' })).toMatchObject([lack]);
    expect(
      with_({ tag: 'X', position: 'shut', locks: [{ lock: '9', owner: 't1', job: '8' }] }),
    ).toMatchObject([lack]);
  });

  test('asks no point for what is recorded absent: on a bench there is no lock', () => {
    const bench = {
      supplyAir: 'absent',
      secondSupply: 'absent',
      processInlet: 'absent',
      processOutlet: 'absent',
    } as const;
    expect(lacks('turnPlugStem', { ...ready('turnPlugStem', bench), points: {} })).toEqual([]);
  });
});

const SIGNED = CLASSES.filter((action) => needsOf(action).workSignOff?.includes('given') === true);

describe('[SAF-06] A signature counts', () => {
  test.each([...SIGNED, 'unlockProcess' as const, 'restoreProcess' as const])(
    'for %s only inside its hours and its work',
    (action) => {
      const standing = ready(action);
      const { envelope } = standing;
      if (envelope === null) throw new Error('ready() signs');
      const signature = SIGNED.includes(action) ? 'workSignOff' : 'returnSignOff';
      expect(conditionsOf(action, { ...standing, nowMs: envelope.untilMs })).toEqual([signature]);
      expect(conditionsOf(action, { ...standing, envelope: { ...envelope, work: ['ventCase'] } })).toEqual([
        signature,
      ]);
      expect(conditionsOf(action, { ...standing, envelope: null })).toEqual([signature]);
    },
  );
});
