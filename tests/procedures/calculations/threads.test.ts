import { describe, expect, it } from 'vitest';
import { threadAreas, threadFromText } from '../../../procedures/calculations/threads.ts';
import { expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

describe('a thread as it is written', () => {
  it.each([
    ['1/4-28', 6.35, 28, 'UNF'],
    ['5/16-24', 7.9375, 24, 'UNF'],
    ['1/2-20', 12.7, 20, 'UNF'],
    ['3/4-16', 19.05, 16, 'UNF'],
    ['1-12', 25.4, 12, 'UNF'],
    ['1-14', 25.4, 14, 'UNS'],
    ['1 1/4-12', 31.75, 12, 'UNF'],
    [' 1  1/2-12 ', 38.1, 12, 'UNF'],
    ['1/2-13', 12.7, 13, 'unlisted'],
  ] as const)('%s', (text, millimetres, threadsPerInch, series) => {
    const thread = threadFromText(text);
    expect(thread.diameterM * 1000).toBeCloseTo(millimetres, 9);
    expect(thread.threadsPerInch).toBe(threadsPerInch);
    expect(thread.pitchM * threadsPerInch).toBeCloseTo(0.0254, 12);
    expect(thread.series).toBe(series);
  });

  it.each(['', '1/2', '1/2-', '-20', '0-20', '1/0-20', 'M12', '1/2-20-3', '11/4/2-12'])(
    'that is none is refused: "%s"',
    (text) => {
      expectRefused(() => threadFromText(text), { code: 'CALC-005', name: 'thread' });
    },
  );
});

describe('the areas of a thread', () => {
  const good = { diameterM: 0.0127, pitchM: 0.00127 };

  it('are less than the bolt, the root less than the stress area', () => {
    const { stressAreaM2, rootAreaM2 } = threadAreas(good);
    expect(stressAreaM2).toBeLessThan((Math.PI / 4) * 0.0127 ** 2);
    expect(rootAreaM2).toBeLessThan(stressAreaM2);
  });

  it('of a pitch that leaves no root are refused', () => {
    expectRefused(() => threadAreas({ ...good, pitchM: 0.0127 }), { code: 'CALC-002', name: 'pitchM' });
    refusesEachNonNumber(threadAreas, good);
    refusesOrAnswers(threadAreas, good);
  });
});
