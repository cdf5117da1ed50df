import { describe, expect, test } from 'vitest';
import { gearFaults, sharedGauges, type Wanted } from '../../../procedures/test-gear/fit.ts';
import { type GearItem, permittedErrorSi } from '../../../procedures/test-gear/gear.ts';
import { GEAR_ROLES } from '../../../procedures/test-gear/roles.ts';
import { gearItem, INCH_M, PSI_PA } from '../../builders/gear.ts';

const today = '2026-03-04';
const toSignal: Wanted = { kind: 'pressure gauge', lowSi: 0, highSi: 20 * PSI_PA };

function codesOf(item: GearItem, wanted: Wanted): readonly string[] {
  return gearFaults(item, { wanted, today }).map(({ code }) => code);
}

describe('a piece of gear against what a job wants of it', () => {
  test('a gauge of 0 to 30 psi in date is fit for 0 to 20 psi', () => {
    expect(gearFaults(gearItem('signalGauge'), { wanted: toSignal, today })).toEqual([]);
  });

  test('its error is a percent of the span, not of the reading: 0.25 % of 30 psi is 0.075 psi', () => {
    expect(permittedErrorSi(gearItem('signalGauge')) / PSI_PA).toBeCloseTo(0.075, 12);
  });

  test('on the day on which it is due it still counts; the day after it does not', () => {
    expect(codesOf(gearItem('signalGauge', { dueOn: '2026-03-04' }), toSignal)).toEqual(['GEA-107']);
    expect(gearFaults(gearItem('signalGauge', { dueOn: '2026-03-03' }), { wanted: toSignal, today })).toEqual(
      [{ code: 'GEA-102', stops: true, what: 'G-101 was due for calibration on 2026-03-03.' }],
    );
  });

  test('it says beforehand that it will be due', () => {
    const due = (dueOn: string) =>
      gearFaults(gearItem('signalGauge', { dueOn }), { wanted: toSignal, today })[0]?.what;
    expect(due('2026-03-04')).toBe('G-101 is due for calibration today.');
    expect(due('2026-03-05')).toBe('G-101 is due for calibration in 1 day.');
    expect(due('2026-03-18')).toBe('G-101 is due for calibration in 14 days.');
    expect(due('2026-03-19')).toBeUndefined();
  });

  test('a dial indicator is no gauge', () => {
    expect(gearFaults(gearItem('travelIndicator'), { wanted: toSignal, today })).toEqual([
      { code: 'GEA-101', stops: true, what: 'D-201 is a dial indicator; a pressure gauge is wanted.' },
    ]);
  });

  test('a scale that does not reach is refused, at either end', () => {
    const short = gearItem('signalGauge', { rangeHighSi: 15 * PSI_PA });
    expect(gearFaults(short, { wanted: toSignal, today })[0]).toMatchObject({
      code: 'GEA-103',
      what: 'G-101 shows 0.00 psi to 15.00 psi; 0.00 psi to 20.00 psi is to be read.',
    });
    expect(codesOf(gearItem('signalGauge', { rangeLowSi: 3 * PSI_PA }), toSignal)).toEqual(['GEA-103']);
    expect(codesOf(gearItem('signalGauge', { rangeHighSi: 20 * PSI_PA * (1 - 1e-12) }), toSignal)).toEqual(
      [],
    );
  });

  test('an accuracy that is coarse beside the tolerance is told, four to one is enough', () => {
    const wanted = { ...toSignal, toleranceSi: 0.3 * PSI_PA };
    expect(codesOf(gearItem('signalGauge'), wanted)).toEqual([]);
    expect(
      gearFaults(gearItem('signalGauge'), { wanted: { ...wanted, toleranceSi: 0.15 * PSI_PA }, today }),
    ).toEqual([
      {
        code: 'GEA-106',
        stops: false,
        what: 'Tolerance against the accuracy of G-101 is 2.0 to 1; 4 to 1 is usual. More verdicts will be too close for it.',
      },
    ]);
  });

  test('a scale that is much too wide is told', () => {
    expect(codesOf(gearItem('inletGauge'), toSignal)).toEqual(['GEA-108']);
    expect(
      codesOf(gearItem('travelIndicator'), { kind: 'dial indicator', lowSi: 0, highSi: 0.75 * INCH_M }),
    ).toEqual([]);
  });

  test('a regulator must bleed down, and must reach', () => {
    const wanted: Wanted = { ...toSignal, kind: 'regulator' };
    expect(codesOf(gearItem('regulator'), wanted)).toEqual([]);
    expect(codesOf(gearItem('regulator', { bleedsDown: false }), wanted)).toEqual(['GEA-104']);
    expect(codesOf(gearItem('regulator', { rangeHighSi: 10 * PSI_PA }), wanted)).toEqual(['GEA-103']);
  });

  test('supply pressure needs a gauge of its own', () => {
    const one = gearItem('signalGauge');
    expect(sharedGauges({ signalGauge: one, supplyGauge: one })).toEqual([
      {
        role: 'supplyGauge',
        code: 'GEA-105',
        stops: true,
        what: 'G-101 is chosen for “Signal gauge” and for “Supply gauge”: each needs a gauge of its own.',
      },
    ]);
    expect(
      sharedGauges({ signalGauge: one, supplyGauge: gearItem('supplyGauge'), checkGauge: undefined }),
    ).toEqual([]);
  });

  test('a gauge that is chosen twice is refused under the names that the form gives both', () => {
    const one = gearItem('signalGauge');
    const [said] = sharedGauges({ signalGauge: one, checkGauge: one });
    expect(said?.what).toContain(`“${GEAR_ROLES.signalGauge.label}”`);
    expect(said?.what).toContain(`“${GEAR_ROLES.checkGauge.label}”`);
  });
});
