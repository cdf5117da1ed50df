import { describe, expect, test } from 'vitest';
import {
  ACTION_CLASSES,
  type ActionClass,
  type ActionClassRow,
  leavesOf,
  needsOf,
} from '../../safety/action-classes.ts';
import { type ConditionId, isStateOf, worstState } from '../../safety/conditions.ts';

const CLASSES = Object.keys(ACTION_CLASSES) as ActionClass[];

/** Classes after which nothing can be made good: skin, spring, line or case is open. */
const OPENS: readonly ActionClass[] = [
  'releaseStemConnector',
  'loosenCaseBolts',
  'loosenShortCaseBolts',
  'loosenLongCaseBolts',
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
      secondSupply: ['isolated', 'absent'],
      trappedAir: ['isolated', 'absent'],
      lockUpAir: ['isolated', 'absent'],
      oppositeAir: ['isolated', 'absent'],
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
      Object.entries(needsOf(action)).some(
        ([id, states]) =>
          // Who holds the spring is pinned as the job opens, and neither state is the worse.
          id !== 'springHolder' && (states as readonly string[]).includes(worstState(id as ConditionId)),
      ),
    );
    // Test air off, locks off and process live are what these wait for; a live gland is no isolated job.
    expect(lax).toEqual([
      'tightenLiveGland',
      'reconnectSignalLine',
      'restoreSupply',
      'restoreSecondSupply',
      'unlockProcess',
      'restoreProcess',
      'shutBypass',
      'openBlocksUnopened',
    ]);
  });
});

/** The letters of table D, each with what it stands for here. */
const LETTERS = {
  A: ['supplyAir', 'secondSupply'],
  T: ['trappedAir', 'lockUpAir', 'oppositeAir'],
  P: ['processInlet', 'processOutlet'],
  D: ['residue'],
  E: ['electrical'],
  G: ['weight'],
  H: ['temperature'],
  B: ['loop', 'commands', 'bypass', 'processFlow'],
} as const satisfies Readonly<Record<string, readonly ConditionId[]>>;

/** Rows of table D: what must be proven before which act, by the letters of the table. */
const ROWS: readonly (readonly [string, ActionClass, string])[] = [
  ['EI-40', 'breakSignalLine', 'BATE'],
  ['EI-41', 'openElectricCover', 'EA'],
  ['EI-42', 'backOffAdjuster', 'BATP'],
  ['EI-43', 'releaseStemConnector', 'ATPG'],
  ['EI-44', 'undoYokeNut', 'ATPEG'],
  ['EI-44', 'releaseHeldConnector', 'ATPEG'],
  ['EI-45', 'loosenCaseBolts', 'BAT'],
  ['EI-45', 'loosenShortCaseBolts', 'BAT'],
  ['EI-45', 'loosenLongCaseBolts', 'BAT'],
  ['EI-46', 'openPistonCylinder', 'AT'],
  ['EI-47', 'liftActuator', 'ATPEG'],
  ['EI-49', 'removePacking', 'ATPDH'],
  ['EI-50', 'breakBonnetJoint', 'ATPDH'],
  ['EI-51', 'removeTrim', 'ATPDH'],
  ['EI-52', 'takeOutOfLine', 'ATPDHGE'],
];

/** Needs that no letter stands for, beside those that a row has by its letters. */
function beyondLetters(action: ActionClass): object {
  const lettered: readonly string[] = Object.values(LETTERS).flat();
  return Object.fromEntries(Object.entries(needsOf(action)).filter(([id]) => !lettered.includes(id)));
}

describe('Each row of table D', () => {
  test.each(ROWS)(
    '%s: %s wants what its letters %s stand for, each instance by itself',
    (_, action, letters) => {
      const needs = needsOf(action);
      for (const [letter, ids] of Object.entries(LETTERS)) {
        const wanted = letters.includes(letter);
        for (const id of ids) if (wanted) expect(needs[id], `${action}: ${id}`).toBeDefined();
      }
    },
  );

  const SIGNED = { workSignOff: ['given'] };
  const SHUT_IN = { spring: ['contained', 'released', 'absent'] };
  const NO_AIR = { signalAir: ['isolated', 'absent'] };
  const OFF = { controllerLine: ['capped', 'absent'] };
  const HELD = {
    ...OFF,
    ...SHUT_IN,
    ...SIGNED,
    closure: ['shut'],
    signalAir: ['held'],
    testAir: ['connected'],
  };

  test('EI-40, EI-41, EI-42 and EI-43: air and adjuster', () => {
    expect(beyondLetters('breakSignalLine')).toEqual({});
    expect(beyondLetters('openElectricCover')).toEqual({});
    expect(beyondLetters('backOffAdjuster')).toEqual({
      ...NO_AIR,
      ...OFF,
      ...SIGNED,
      springHolder: ['adjuster'],
    });
    expect(beyondLetters('releaseStemConnector')).toEqual({
      ...NO_AIR,
      ...SIGNED,
      spring: ['released', 'absent'],
    });
  });

  test('EI-41: a pneumatic cover is another act: bypassed, agreed, the air may be on', () => {
    const needs = needsOf('openPneumaticCover');
    expect(needs).toMatchObject({ bypass: ['open', 'absent'], processFlow: ['set up', 'absent'] });
    expect(needs).toMatchObject({ loop: ['manual', 'absent'], consent: ['given'] });
    expect(needs.supplyAir).toBeUndefined();
    expect(ACTION_CLASSES.openPneumaticCover.danger).toContain('hands out of the yoke');
    expect(needsOf('openElectricCover').supplyAir).toEqual(['isolated', 'absent']);
  });

  test('EI-44: a yoke nut under a preloaded spring is undone on held air, and lifted with the air off again', () => {
    expect(needsOf('undoYokeNut').signalAir).toEqual(['held']);
    expect(needsOf('undoYokeNut').testAir).toEqual(['connected']);
    expect(leavesOf('undoYokeNut')).toMatchObject({ signalAir: 'live', closure: 'open' });
    expect(needsOf('liftActuator').signalAir).toEqual(['isolated', 'absent']);
  });

  test('EI-44: a connector that carries a preloaded spring comes off on held air, the plug off its seat, and on nothing else', () => {
    expect(needsOf('releaseHeldConnector')).toMatchObject({
      signalAir: ['held'],
      testAir: ['connected'],
      plug: ['off seat'],
      closure: ['shut'],
    });
    expect(leavesOf('releaseHeldConnector')).toEqual({ signalAir: 'live', plug: 'seat unknown' });
    expect(needsOf('releaseStemConnector').spring).not.toContain('contained');
  });

  test('EI-45: adjuster before case wherever there is an adjuster, short bolts before long where there is none', () => {
    expect(beyondLetters('loosenCaseBolts')).toEqual({
      ...NO_AIR,
      ...OFF,
      ...SIGNED,
      spring: ['released', 'absent'],
      springHolder: ['adjuster'],
    });
    const heldByCase = { ...NO_AIR, ...OFF, ...SIGNED, springHolder: ['case'] };
    expect(beyondLetters('loosenShortCaseBolts')).toEqual(heldByCase);
    expect(beyondLetters('loosenLongCaseBolts')).toEqual({ ...heldByCase, shortBolts: ['out'] });
    expect(leavesOf('loosenShortCaseBolts').shortBolts).toBe('out');
    // Until the log says otherwise, a valve has an adjuster: what asks for less is refused.
    expect(worstState('springHolder')).toBe('adjuster');
  });

  test('EI-46: a cylinder is opened with no air at either end', () => {
    expect(needsOf('openPistonCylinder')).toMatchObject({
      ...NO_AIR,
      oppositeAir: ['isolated', 'absent'],
      ...SIGNED,
    });
  });

  test('EI-47: an actuator is lifted with its spring released or shut in, and hung', () => {
    expect(beyondLetters('liftActuator')).toEqual({ ...NO_AIR, ...SHUT_IN, ...SIGNED });
  });

  test('EI-48: a live gland is tightened by its own class, which a locked valve can never be on', () => {
    expect(needsOf('tightenLiveGland')).toEqual({
      consent: ['given'],
      inletLock: ['off'],
      outletLock: ['off'],
      workSignOff: ['none'],
    });
  });

  test('EI-49, EI-50, EI-51 and EI-52: what opens the line wants a shut-off that is good enough for this fluid', () => {
    for (const action of ['removePacking', 'breakBonnetJoint', 'removeTrim', 'takeOutOfLine'] as const)
      expect(needsOf(action).isolationGrade, action).toEqual(['enough', 'absent']);
    expect(beyondLetters('breakBonnetJoint')).toMatchObject(SHUT_IN);
  });

  test('EI-51: trim comes out after all that the bonnet wants, and a fresh gas test', () => {
    const { gasTest, weight, ...asTheBonnet } = needsOf('removeTrim');
    expect(asTheBonnet).toEqual(needsOf('breakBonnetJoint'));
    expect({ gasTest, weight }).toEqual({ gasTest: ['fresh', 'absent'], weight: ['hung', 'absent'] });
  });

  test('EI-53: test air goes on a shut valve, alone, with nothing else that can move the stem', () => {
    for (const action of ['connectTestAir', 'strokeByTestAir'] as const)
      expect(beyondLetters(action), action).toMatchObject({
        ...OFF,
        ...SHUT_IN,
        ...SIGNED,
        closure: ['shut'],
      });
    expect(needsOf('connectTestAir').signalAir).toEqual(['isolated', 'absent']);
    // Nothing else that feeds air, keeps it, or pushes the plug.
    for (const id of [...LETTERS.A, ...LETTERS.T, ...LETTERS.P])
      expect(needsOf('strokeByTestAir')[id], id).toEqual(['isolated', 'absent']);
  });

  test('EI-54: test pressure goes on the body between locked block valves, and is live afterwards', () => {
    expect(needsOf('pressTest')).toMatchObject({
      processInlet: ['isolated', 'absent'],
      bypass: ['open', 'absent'],
      closure: ['shut'],
    });
    expect(leavesOf('pressTest').processInlet).toBe('live');
  });

  test('EI-55: the block valves come before the bypass is shut, the locks off by then, and signed', () => {
    expect(needsOf('restoreProcess')).toMatchObject({ inletLock: ['off'], returnSignOff: ['given'] });
    expect(needsOf('shutBypass')).toMatchObject({
      inletLock: ['off'],
      outletLock: ['off'],
      processInlet: ['live', 'absent'],
      processOutlet: ['live', 'absent'],
    });
  });

  test.each([
    ['turnPlugStem', { plug: ['off seat'] }],
    ['windAdjusterOnTestAir', { springHolder: ['adjuster'] }],
    ['setIndicatorOnTestAir', {}],
  ] as const)(
    '%s is done on held air and by its own class; the air counts as moved afterwards (EI-13)',
    (action, own) => {
      expect(beyondLetters(action)).toEqual({ ...HELD, ...own });
      expect(leavesOf(action)).toMatchObject({ signalAir: 'live', plug: 'seat unknown' });
    },
  );

  test('a gauge that is there is read at once; one is fitted into a live line only with the valve taken over', () => {
    expect(needsOf('readGauge')).toEqual({});
    expect(needsOf('fitGaugeIntoLiveLine')).toMatchObject({
      consent: ['given'],
      bypass: ['open', 'absent'],
      processFlow: ['set up', 'absent'],
    });
  });
});

describe('Table D as a whole', () => {
  test('lets no air go and no block valve shut before the process is set up for it (EI-04)', () => {
    for (const action of [
      'shutSupply',
      'shutBlockValves',
      'breakSignalLine',
      'fitGaugeIntoLiveLine',
    ] as const)
      expect(needsOf(action), action).toMatchObject({
        loop: ['manual', 'absent'],
        commands: ['isolated', 'absent'],
        processFlow: ['set up', 'absent'],
      });
  });

  test('wants tools out, people clear and every part shut before anything comes back (EI-10)', () => {
    for (const action of ['restoreSupply', 'restoreSecondSupply', 'unlockProcess', 'restoreProcess'] as const)
      expect(needsOf(action), action).toMatchObject({ clear: ['clear'], closure: ['shut'] });
    // Work begins: what was looked over before says nothing any more.
    expect(leavesOf('connectTestAir').clear).toBe('not looked at');
    expect(leavesOf('breakSignalLine').clear).toBe('not looked at');
  });

  test('opens no block valve before people were told, after the locks came off (EI-11)', () => {
    expect(needsOf('restoreProcess')).toMatchObject({
      told: ['told'],
      inletLock: ['off'],
      outletLock: ['off'],
    });
    expect(leavesOf('unlockProcess').told).toBe('nobody');
  });

  test('names the law for electrical work wherever hands go into something electrical (EI-20)', () => {
    const electric: ActionClassRow = ACTION_CLASSES.openElectricCover;
    expect(electric.electricalRule).toContain('29 CFR 1910 subpart S');
    for (const action of CLASSES) {
      const row: ActionClassRow = ACTION_CLASSES[action];
      if (/\belectric\b/.test(row.name)) expect(row.electricalRule, action).toBeDefined();
    }
  });

  test('never takes a command of the control system for an isolation (EI-23)', () => {
    for (const action of OPENS) {
      const needs = needsOf(action);
      expect(needs.supplyAir, action).toEqual(['isolated', 'absent']);
      expect(needs.signalAir, action).toEqual(['isolated', 'absent']);
    }
    // Loop and commands stand in no class without the energy itself, but where nothing is opened yet.
    const byCommand = CLASSES.filter((action) => {
      const { loop, commands, bypass, processFlow, consent, ...others } = needsOf(action);
      return loop !== undefined && Object.keys(others).length === 0;
    });
    expect(byCommand).toEqual([
      'shutSupply',
      'shutBlockValves',
      'openPneumaticCover',
      'fitGaugeIntoLiveLine',
    ]);
  });

  test('opens nothing while test air is on, held or not (EI-14)', () => {
    for (const action of OPENS) {
      expect(needsOf(action).signalAir, action).not.toContain('held');
      expect(needsOf(action).signalAir, action).not.toContain('live');
    }
  });
});
