import { describe, expect, test } from 'vitest';
import {
  againstCommand,
  againstSetSupply,
  airAtTravelOff,
  currentOff,
  lessOther,
  lostAMinute,
  percentOfSupply,
  travelOff,
  upLessDown,
} from '../../../../procedures/troubleshooting/readings/axis.ts';
import { AIR_TO_CLOSE, BARE_DIAPHRAGM } from '../valves.ts';

const PSI_PA = 6894.757;
const psi = (value: number, sigma = 0.05) => ({
  value: value * PSI_PA,
  sigma: sigma * PSI_PA,
});

describe('a reading on the axis of its check', () => {
  test('12 psi at the valve for 15 sent is a quarter of the span low', () => {
    const off = againstCommand(BARE_DIAPHRAGM, { pressurePa: psi(12), signalPercent: 100 });
    expect(off.value).toBeCloseTo(-25, 6);
    // 0.05 psi of 12 psi of span.
    expect(off.readSigma).toBeCloseTo(0.4167, 3);
  });

  test('two gauges of 0.05 psi are 0.071 psi uncertain together', () => {
    const off = lessOther(BARE_DIAPHRAGM, { pressurePa: psi(12), otherPa: psi(15) });
    expect(off.value).toBeCloseTo(-25, 6);
    expect(off.readSigma).toBeCloseTo((100 * 0.05 * Math.SQRT2) / 12, 6);
  });

  test('11.8 mA for half output is 0.2 mA low', () => {
    const off = currentOff({ currentA: { value: 0.0118, sigma: 2e-5 }, outputPercent: 50 });
    expect(off.value).toBeCloseTo(-0.2, 9);
    expect(off.readSigma).toBeCloseTo(0.02, 9);
  });

  test('half travel at 9 psi is what spring and area ask, whichever way the air acts', () => {
    const openedM = { value: 0.01905 / 2, sigma: 0 };
    for (const facts of [BARE_DIAPHRAGM, AIR_TO_CLOSE]) {
      expect(airAtTravelOff(facts, { pressurePa: psi(9), openedM }).value).toBeCloseTo(0, 6);
      expect(airAtTravelOff(facts, { pressurePa: psi(10.2), openedM }).value).toBeCloseTo(10, 6);
    }
  });

  test('friction moves what is expected by the way it came, and widens it where nobody knows', () => {
    const frictionN = 0.6 * PSI_PA * BARE_DIAPHRAGM.numbers.effectiveAreaM2;
    const facts = { ...BARE_DIAPHRAGM, numbers: { ...BARE_DIAPHRAGM.numbers, packingFrictionN: frictionN } };
    const of = { pressurePa: psi(9, 0), openedM: { value: 0.01905 / 2, sigma: 0 } };
    expect(airAtTravelOff(facts, { ...of, came: 'opening' }).value).toBeCloseTo(-5, 6);
    expect(airAtTravelOff(facts, { ...of, came: 'shutting' }).value).toBeCloseTo(5, 6);
    expect(airAtTravelOff(facts, of).readSigma).toBeCloseTo(5 / Math.sqrt(3), 6);
  });

  test('flow under the plug lets less air lift it: a plug force is taken off', () => {
    // 393 N on 0.029 m² are 13.55 kPa, as in the table of bench set against installed range.
    const facts = { ...BARE_DIAPHRAGM, numbers: { ...BARE_DIAPHRAGM.numbers, effectiveAreaM2: 0.029 } };
    const of = { pressurePa: psi(3, 0), openedM: { value: 0, sigma: 0 } };
    const shift =
      airAtTravelOff(facts, { ...of, plugForceOpeningN: 393 }).value - airAtTravelOff(facts, of).value;
    expect(shift).toBeCloseTo((100 * 13_551.724) / (12 * PSI_PA), 3);
  });

  test('travel, supply and decay are percent of what they should be', () => {
    const openedM = { value: 0.01905 * 0.4, sigma: 0.0001 };
    expect(travelOff(BARE_DIAPHRAGM, { openedM, outputPercent: 50 }).value).toBeCloseTo(-10, 6);
    expect(againstSetSupply(BARE_DIAPHRAGM, psi(18))?.value).toBeCloseTo(-10, 6);
    expect(percentOfSupply({ pressurePa: psi(40), supplyPa: psi(80) })?.value).toBeCloseTo(50, 6);
    expect(lostAMinute({ firstPa: psi(10), lastPa: psi(9), elapsedS: 120 })?.value).toBeCloseTo(5, 6);
    expect(upLessDown(BARE_DIAPHRAGM, { upPa: psi(9.6), downPa: psi(8.4) }).value).toBeCloseTo(10, 6);
  });

  test('is nothing for a supply anywhere inside what the sheet allows, and counts from its nearer end outside', () => {
    const numbers = { ...BARE_DIAPHRAGM.numbers, supplyPa: psi(30).value, supplyLowPa: psi(25).value };
    const off = (shown: number) => againstSetSupply({ ...BARE_DIAPHRAGM, numbers }, psi(shown))?.value;
    expect([25, 27, 30].map(off)).toEqual([25, 27, 30].map(() => expect.closeTo(0, 6)));
    expect([off(20), off(33), off(0)]).toEqual([-20, 10, -100].map((one) => expect.closeTo(one, 6)));
  });

  test('is none where there is nothing to hold it against', () => {
    const numbers = { ...BARE_DIAPHRAGM.numbers, supplyPa: null };
    expect(againstSetSupply({ ...BARE_DIAPHRAGM, numbers }, psi(18))).toBeNull();
    expect(percentOfSupply({ pressurePa: psi(40), supplyPa: psi(0) })).toBeNull();
    expect(lostAMinute({ firstPa: psi(0), lastPa: psi(0), elapsedS: 60 })).toBeNull();
  });
});
