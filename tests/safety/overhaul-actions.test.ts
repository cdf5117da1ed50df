import { describe, expect, test } from 'vitest';
import { needsOf } from '../../safety/action-classes.ts';
import { OVERHAUL_ACTIONS } from '../../safety/overhaul-actions.ts';

const CLASSES = Object.keys(OVERHAUL_ACTIONS) as (keyof typeof OVERHAUL_ACTIONS)[];

describe('[SAF-03] Rows of table D for an opened valve', () => {
  test('let no hand into a case or between the stems, and no cover down, before its spring is free', () => {
    for (const action of ['workInCase', 'closeCase', 'joinFreeStems'] as const)
      expect(needsOf(action)).toMatchObject({
        spring: ['released', 'absent'],
        signalAir: ['isolated', 'absent'],
      });
  });

  test('let the spring be loaded again only under a shut case', () => {
    expect(needsOf('windAdjusterBack')).toMatchObject({
      closure: ['shut'],
      signalAir: ['isolated', 'absent'],
      springHolder: ['adjuster'],
    });
  });

  test('turn no case nut while air is on the case', () => {
    expect(needsOf('tightenCaseNuts')).toMatchObject({
      signalAir: ['isolated', 'absent'],
      controllerLine: ['capped', 'absent'],
    });
  });

  test('never hold the way back together up for a signature', () => {
    for (const action of [
      'tightenCaseNuts',
      'closeCase',
      'windAdjusterBack',
      'setActuatorOn',
      'closeBody',
    ] as const)
      expect(Object.keys(needsOf(action)), action).not.toContain('workSignOff');
  });

  test('keep the line isolated while the body is put together', () => {
    expect(needsOf('closeBody')).toMatchObject({
      processInlet: ['isolated', 'absent'],
      processOutlet: ['isolated', 'absent'],
      isolationGrade: ['enough', 'absent'],
    });
  });

  test('join stems on held air only, and count the air as moved afterwards', () => {
    expect(needsOf('joinStemConnector').signalAir).toEqual(['held']);
    expect(OVERHAUL_ACTIONS.joinStemConnector.leaves.signalAir).toBe('live');
  });

  test('all want the air off its feeds first', () => {
    for (const action of CLASSES)
      expect(needsOf(action), action).toMatchObject({
        supplyAir: ['isolated', 'absent'],
        secondSupply: ['isolated', 'absent'],
      });
  });
});
