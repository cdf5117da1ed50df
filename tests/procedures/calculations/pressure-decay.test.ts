import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  closedVolume,
  dropByLeakPa,
  pressureDecay,
  waitForLeak,
} from '../../../procedures/calculations/pressure-decay.ts';
import {
  between,
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const good = {
  volumeM3: 0.002,
  startPa: 140000,
  endPa: 130000,
  startAtmospherePaAbs: 101325,
  endAtmospherePaAbs: 101325,
  startK: 293.15,
  endK: 293.15,
  elapsedS: 300,
};

describe('block in and watch', () => {
  it('finds the leak that took the pressure', () => {
    fc.assert(
      fc.property(
        between(1e-4, 0.1),
        between(1e-8, 1e-5),
        between(10, 600),
        (volumeM3, leakMolPerS, elapsedS) => {
          const dropPa = dropByLeakPa({ volumeM3, leakMolPerS, temperatureK: 293.15, elapsedS });
          const { leakMolPerS: found } = pressureDecay({
            ...good,
            volumeM3,
            elapsedS,
            startPa: 2e5,
            endPa: 2e5 - dropPa,
          });
          expect(Math.abs(found / leakMolPerS - 1)).toBeLessThan(1e-5);
        },
      ),
    );
  });

  it('does not take cooling for a leak, nor warming for tightness', () => {
    const cooled = closedVolume({
      pressurePa: 140000,
      atmospherePaAbs: 101325,
      startK: 293.15,
      endK: 291.15,
    });
    const seen = pressureDecay({ ...good, endPa: cooled.endPa, endK: 291.15 });
    expect(Math.abs(seen.fallByLeakPa)).toBeLessThan(1e-6);
    expect(seen.fallByTemperaturePa).toBeCloseTo(-cooled.changePa, 6);
  });

  it('does not take the barometer for a leak', () => {
    const seen = pressureDecay({ ...good, endPa: 139600, endAtmospherePaAbs: 101725 });
    expect(seen.fallByBarometerPa).toBe(400);
    expect(Math.abs(seen.leakMolPerS)).toBeLessThan(1e-12);
  });

  it('splits the fall of the gauge into its three parts', () => {
    const all = pressureDecay({ ...good, endAtmospherePaAbs: 101000, endK: 294 });
    expectClose(all.fallByTemperaturePa + all.fallByBarometerPa + all.fallByLeakPa, all.gaugeFallPa);
  });

  it('counts gas that comes in as negative', () => {
    expect(pressureDecay({ ...good, startPa: -80000, endPa: -70000 })).toMatchObject({ leakSeen: 'in' });
    expect(pressureDecay(good)).toMatchObject({ leakSeen: 'out', leakUncertaintyMolPerS: 0 });
  });

  it('says that it sees nothing where the gauge cannot tell', () => {
    const coarse = pressureDecay({ ...good, gaugeUncertaintyPa: 10000 });
    expect(coarse.leakSeen).toBe('none that this gauge can tell');
    // Hand: √2 · 10 kPa over the 10 kPa that fell.
    expectClose(coarse.leakUncertaintyMolPerS / coarse.leakMolPerS, Math.SQRT2);
  });

  it('grows less sure with every reading that is less sure', () => {
    const of = (change: object) =>
      pressureDecay({ ...good, gaugeUncertaintyPa: 100, ...change }).leakUncertaintyMolPerS;
    const alone = of({});
    expect(of({ temperatureUncertaintyK: 0.5 })).toBeGreaterThan(alone);
    expect(of({ barometerUncertaintyPa: 50 })).toBeGreaterThan(alone);
    expect(of({ volumeUncertaintyM3: 1e-4 })).toBeGreaterThan(alone);
  });

  it('with impossible figures is refused by name', () => {
    expectRefused(() => pressureDecay({ ...good, endPa: -101325 }), { code: 'CALC-002', name: 'endPa' });
    expectRefused(() => pressureDecay({ ...good, gaugeUncertaintyPa: -1 }), {
      code: 'CALC-002',
      name: 'gaugeUncertaintyPa',
    });
    refusesEachNonNumber(pressureDecay, good);
    const sure = {
      gaugeUncertaintyPa: 100,
      temperatureUncertaintyK: 0.5,
      barometerUncertaintyPa: 50,
      volumeUncertaintyM3: 1e-4,
    };
    refusesOrAnswers(pressureDecay, { ...good, ...sure });
    refusesOrAnswers(closedVolume, {
      pressurePa: 140000,
      atmospherePaAbs: 101325,
      startK: 293.15,
      endK: 291.15,
    });
  });
});

describe('the wait for a leak', () => {
  const leak = { volumeM3: 0.002, leakMolPerS: 3e-5, temperatureK: 293.15, smallestPa: 500 };

  it('is long enough for three steps of the gauge', () => {
    const { seenDropPa, waitS } = waitForLeak(leak);
    expect(seenDropPa).toBe(1500);
    expectClose(dropByLeakPa({ ...leak, elapsedS: waitS }), 1500);
  });

  it('is longer for a larger volume and a smaller leak', () => {
    expectMonotone({
      of: (volumeM3) => waitForLeak({ ...leak, volumeM3 }).waitS,
      from: 1e-4,
      to: 0.1,
      rises: true,
    });
    expectMonotone({
      of: (leakMolPerS) => waitForLeak({ ...leak, leakMolPerS }).waitS,
      from: 1e-7,
      to: 1e-3,
      rises: false,
    });
  });

  it('with impossible figures is refused by name', () => {
    expectRefused(() => waitForLeak({ ...leak, leakMolPerS: 0 }), { code: 'CALC-002', name: 'leakMolPerS' });
    refusesEachNonNumber(waitForLeak, leak);
    refusesOrAnswers(waitForLeak, leak);
    refusesOrAnswers(dropByLeakPa, {
      volumeM3: 0.002,
      leakMolPerS: 3e-5,
      temperatureK: 293.15,
      elapsedS: 60,
    });
  });
});
