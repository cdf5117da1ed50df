/** Sheets of valves that could stand in a plant: numbers drawn from what is built, those that contradict left out. */
import fc from 'fast-check';
import { readSheet } from '../../procedures/valve-sheet/read-sheet.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { FV_214 } from './sheets.ts';

const between = (min: number, max: number) =>
  fc.integer({ min: min * 100, max: max * 100 }).map((hundredths) => hundredths / 100);
const maybe = (numbers: fc.Arbitrary<number>) =>
  fc.option(numbers, { nil: null }).map((value) => (value === null ? '' : String(value)));

const texts = fc
  .record({
    lowPsi: between(2, 12),
    spanPsi: between(4, 30),
    positioner: fc.constantFrom('none', 'none', 'pneumatic', 'electropneumatic'),
    benchLowPsi: between(2, 30),
    benchSpanPsi: between(4, 40),
    supplyPsi: maybe(between(5, 120)),
    caseRatingPa: maybe(between(5, 100)),
    areaIn2: between(20, 300),
    travelIn: between(0.25, 4),
    springHeldBy: fc.constantFrom('adjuster', 'case'),
    adjusterThread: fc.constantFrom('5/8-18', 'M16x1.5', ''),
    airMovesStem: fc.constantFrom('up', 'down'),
    packingKind: fc.constantFrom('ptfe-single', 'ptfe-double', 'graphite', 'other'),
    packingFrictionN: maybe(between(10, 900)),
    hysteresisTolerancePercent: between(1, 20),
    processInletPa: between(0, 600),
  })
  .map((drawn) => {
    const { lowPsi, spanPsi, benchLowPsi, benchSpanPsi, supplyPsi, positioner, ...others } = drawn;
    const { areaIn2, travelIn, springHeldBy, airMovesStem, ...rest } = others;
    const highPsi = String(lowPsi + spanPsi);
    const opens = airMovesStem === 'up';
    // Only a positioner gives more air than the signal is: its spring may want other pressures.
    const [benchLow, benchHigh] =
      positioner === 'none'
        ? [String(lowPsi), highPsi]
        : [String(benchLowPsi), String(benchLowPsi + benchSpanPsi)];
    return {
      ...FV_214,
      ...Object.fromEntries(Object.entries(rest).map(([name, value]) => [name, String(value)])),
      signalLowPa: String(lowPsi),
      benchSetLowPa: benchLow,
      signalHighPa: highPsi,
      benchSetHighPa: benchHigh,
      positioner,
      positionerRisingSignalLoads: positioner === 'none' ? '' : opens ? 'bottom' : 'top',
      positionerRelays: positioner === 'none' ? '' : 'one',
      effectiveAreaM2: String(areaIn2),
      travelM: String(travelIn),
      springRateNPerM: '',
      springHeldBy,
      ...(springHeldBy === 'case' ? { adjusterThread: '' } : {}),
      airMovesStem,
      airAction: opens ? 'air-to-open' : 'air-to-close',
      failPosition: opens ? 'shut' : 'open',
      supplyHighPa: supplyPsi,
      supplyLowPa: '',
      processOutletPa: '0',
      shutOffDropPa: '10',
    };
  });

export const validSheets: fc.Arbitrary<ValveSheet> = texts
  .map((of) => readSheet({ texts: of }))
  .filter((read) => read.ok)
  .map((read) => {
    if (!read.ok) throw new Error('filtered');
    return read.sheet;
  });
