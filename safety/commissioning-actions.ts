import { type ActionClassRow, B, NO_CASE_AIR, PRACTICE, SHUT } from './need-sets.ts';

/**
 * Rows of table D for a valve that is set and tried on its own air, in its line or on shop air on the bench: nothing of
 * it is opened, so that it wants consent and, in the line, a process that bears its moving, and no lock.
 */
export const COMMISSIONING_ACTIONS = {
  strokeByOwnAir: {
    name: 'stroke the valve on its own air, hands clear',
    danger: 'The stem moves without warning; a finger in the yoke is crushed.',
    needs: { ...B, ...SHUT, consent: ['given'], clear: ['clear'] },
    source: `EI-13, ${PRACTICE}`,
  },
  openBlocksUnopened: {
    name: 'open the block valves of a valve that was only stroked',
    danger: 'The process comes through the valve as it stands.',
    needs: { ...SHUT, inletLock: ['off'], outletLock: ['off'], clear: ['clear'], told: ['told'] },
    source: `EI-55, ${PRACTICE}`,
  },
  blowAirLineDown: {
    name: 'blow the drain of the air set down',
    danger: 'Air at line pressure throws oil, water and scale into the eyes.',
    needs: { consent: ['given'] },
    source: PRACTICE,
  },
  connectShopAir: {
    name: 'connect shop air and a signal to a valve on the bench',
    danger: 'Air that is on already drives the stem and whips the hose.',
    needs: { processInlet: ['absent'], processOutlet: ['absent'], supplyAir: ['absent'], ...NO_CASE_AIR },
    leaves: { testAir: 'connected', signalAir: 'live', clear: 'not looked at' },
    source: PRACTICE,
  },
  ventShopAir: {
    name: 'let the shop air off a valve on the bench',
    danger: 'The stem moves as the air leaves. Never held back: this is the way to safe.',
    needs: {},
    source: PRACTICE,
  },
  ventTestPressure: {
    name: 'let the test pressure off a seat',
    danger: 'Air or water jets out where it is let off. Never held back: this is the way to safe.',
    needs: {},
    source: PRACTICE,
  },
} as const satisfies Record<string, ActionClassRow>;
