import { describe, expect, test } from 'vitest';
import { readThread } from '../../../procedures/valve-sheet/thread.ts';

describe('a thread as it is cut on a part', () => {
  test.each([
    ['1/2-20', '1/2-20', 0.0254 / 20],
    [' 1/2 - 20 ', '1/2-20', 0.0254 / 20],
    ['1/2-20 UNF', '1/2-20', 0.0254 / 20],
    ['1/2-20 UNF-2A', '1/2-20', 0.0254 / 20],
    ['1 1/4-12', '1 1/4-12', 0.0254 / 12],
    ['1-14 UNS', '1-14', 0.0254 / 14],
    ['3/4-16', '3/4-16', 0.0254 / 16],
    ['M12x1.25', 'M12x1.25', 0.00125],
    ['M12 x 1,25', 'M12x1.25', 0.00125],
    ['m12×1.25', 'M12x1.25', 0.00125],
    ['M12x1.25-6g', 'M12x1.25', 0.00125],
    ['M10x1', 'M10x1', 0.001],
  ])('%s has its pitch', (typed, text, pitchM) => {
    const thread = readThread(typed);
    expect(thread).toMatchObject({ text });
    expect('pitchM' in thread ? thread.pitchM : Number.NaN).toBeCloseTo(pitchM, 12);
  });

  test.each([
    ['M12', 'has no pitch'],
    ['1/2', 'has no pitch'],
    ['1/2 in', 'has no pitch'],
    ['1/2-20 LH', 'is left-handed'],
    ['M12x1.25 left', 'is left-handed'],
    ['1/2-2', '4 to 80'],
    ['1/2-99', '4 to 80'],
    ['M12x0.1', 'does not fit its diameter'],
    ['M12x7', 'does not fit its diameter'],
    ['M0x1', 'does not fit its diameter'],
    ['20', 'has no pitch'],
    ['half inch fine', 'is not a thread'],
    ['1/2-20-30', 'is not a thread'],
    ['-20', 'is not a thread'],
    ['', 'is not a thread'],
  ])('%j is refused: it %s', (typed, says) => {
    const thread = readThread(typed);
    expect('fault' in thread ? thread.fault : '').toContain(says);
  });
});
