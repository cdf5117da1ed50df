import { describe, expect, test } from 'vitest';
import { COMMISSIONING_ACTIONS } from '../../safety/commissioning-actions.ts';

describe('[SAF-03] What is done to a valve on its own air', () => {
  test('moves it only with the operator’s consent, the process set up, everything shut and everybody clear', () => {
    expect(COMMISSIONING_ACTIONS.strokeByOwnAir.needs).toEqual({
      loop: ['manual', 'absent'],
      commands: ['isolated', 'absent'],
      bypass: ['open', 'absent'],
      processFlow: ['set up', 'absent'],
      closure: ['shut'],
      consent: ['given'],
      clear: ['clear'],
    });
  });

  test('opens no block valve over a lock, over an opened body, or before people are told', () => {
    expect(COMMISSIONING_ACTIONS.openBlocksUnopened.needs).toEqual({
      closure: ['shut'],
      inletLock: ['off'],
      outletLock: ['off'],
      clear: ['clear'],
      told: ['told'],
    });
  });

  test('blows nothing down that the operator does not know of', () => {
    expect(COMMISSIONING_ACTIONS.blowAirLineDown.needs).toEqual({ consent: ['given'] });
  });

  test('connects shop air on the bench only to a valve without pipe and without air, and says that it may move', () => {
    const { needs, leaves } = COMMISSIONING_ACTIONS.connectShopAir;
    expect(needs).toEqual({
      processInlet: ['absent'],
      processOutlet: ['absent'],
      supplyAir: ['absent'],
      signalAir: ['isolated', 'absent'],
    });
    expect(leaves).toEqual({ testAir: 'connected', signalAir: 'live', clear: 'not looked at' });
    expect(COMMISSIONING_ACTIONS.ventShopAir.needs).toEqual({});
  });

  test('lets test pressure off in every state: the way to safe is never held back', () => {
    expect(COMMISSIONING_ACTIONS.ventTestPressure.needs).toEqual({});
  });
});
