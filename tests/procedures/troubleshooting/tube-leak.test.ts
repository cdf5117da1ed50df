import { describe, expect, test } from 'vitest';
import { decayPercentPerMinute, leakAtTheEnd } from '../../../procedures/troubleshooting/tube-leak.ts';

const SPAN_PA = 80_000;

function lostAlongTube(of: { readonly holeM: number; readonly tubeM: number }): number {
  const seen = leakAtTheEnd({ ...of, sentPa: 1e5, source: 'strong' });
  return (100 * (seen.sourcePa - seen.endPa)) / SPAN_PA;
}

describe('a leak at the end of a signal tube', () => {
  // Percent of an 80 kPa span, 100 kPa sent; worked out apart from this program for smooth tube of 4.3 mm bore with
  // fittings; common practice, no source.
  test.each([
    { holeM: 0.0003, tubeM: 10, percent: 0.3 },
    { holeM: 0.0005, tubeM: 10, percent: 0.8 },
    { holeM: 0.0005, tubeM: 30, percent: 2.2 },
    { holeM: 0.001, tubeM: 3, percent: 2.8 },
    { holeM: 0.001, tubeM: 10, percent: 8 },
    { holeM: 0.001, tubeM: 30, percent: 21 },
    { holeM: 0.0015, tubeM: 3, percent: 11 },
    { holeM: 0.0015, tubeM: 10, percent: 29 },
    { holeM: 0.0015, tubeM: 30, percent: 62 },
    { holeM: 0.002, tubeM: 3, percent: 29 },
    { holeM: 0.002, tubeM: 10, percent: 61 },
  ])('costs about $percent % of the span through $holeM m at $tubeM m', ({ percent, ...of }) => {
    const lost = lostAlongTube(of);
    expect(lost).toBeGreaterThan(percent * 0.6);
    expect(lost).toBeLessThan(percent * 1.5 + 0.2);
  });

  test('of a millimetre and a half at ten metres, or of two at three, is the 12 psi that arrives of 15 sent', () => {
    for (const of of [
      { holeM: 0.0015, tubeM: 10 },
      { holeM: 0.002, tubeM: 3 },
    ]) {
      expect(lostAlongTube(of)).toBeGreaterThan(18);
      expect(lostAlongTube(of)).toBeLessThan(40);
    }
  });

  test('pulls a weak source down with it, a good one hardly', () => {
    const of = { holeM: 0.0015, tubeM: 0.5, sentPa: 1e5 };
    expect(leakAtTheEnd({ ...of, source: 'strong' }).sourcePa).toBeGreaterThan(98_000);
    expect(leakAtTheEnd({ ...of, source: 'weak' }).sourcePa).toBeLessThan(96_000);
    expect(leakAtTheEnd({ ...of, holeM: 0.003, source: 'weak' }).endPa).toBeLessThan(40_000);
  });

  test('too small to be seen on the signal still empties a shut-in actuator', () => {
    // 5.5 litres at 100 kPa: 22 kPa a minute through 0.3 mm, 60 through 0.5 mm; from the same working.
    const of = { volumeM3: 0.0055, gaugePa: 1e5 };
    expect(decayPercentPerMinute({ ...of, holeM: 0.0003 })).toBeCloseTo(22, -1);
    expect(decayPercentPerMinute({ ...of, holeM: 0.0005 })).toBeGreaterThan(50);
    expect(lostAlongTube({ holeM: 0.0003, tubeM: 10 })).toBeLessThan(1);
  });
});
