import { describe, expect, test } from 'vitest';
import { pistonSeals } from '../../../procedures/overhaul/piston-seals.ts';
import { airLimits } from '../../../procedures/phases/air-limits.ts';
import { reworded, type Words } from '../../../procedures/phases/reword.ts';
import type { Step } from '../../../procedures/vocabulary.ts';

const plain: Readonly<Record<string, Step>> = airLimits({ connect: 'a', signAgain: 'b', giveBack: 'c' });
const withOther = (words: Readonly<Record<string, Words>>) => reworded(plain, words);

describe('A shared card in other words', () => {
  test('does, asks and leads where it did; only what is read is other', () => {
    const said = withOther({
      ventNow: { title: 'Vent it', labels: { airZeroPa: 'Gauge, now' } },
      haltAir: { choices: { goOn: 'Go on' } },
    });
    const { ventNow, haltAir } = said;
    if (ventNow?.kind !== 'reading' || haltAir?.kind !== 'question') throw new Error('other cards');
    const before = plain.ventNow;
    if (before?.kind !== 'reading') throw new Error('another card');
    expect(ventNow.title).toBe('Vent it');
    expect(ventNow.asks.find(({ name }) => name === 'airZeroPa')?.label).toBe('Gauge, now');
    expect(haltAir.choices.goOn).toEqual({ label: 'Go on', to: 'a' });
    expect([ventNow.action, ventNow.judge, ventNow.ways]).toEqual([before.action, before.judge, before.ways]);
    expect(said.ventFirst).toEqual(plain.ventFirst);
  });

  test('keeps the signal word of its caution', () => {
    const caution = { hazard: 'x', consequence: 'y', avoid: 'z' };
    const { ventFirst } = withOther({ ventFirst: { caution } });
    expect(ventFirst?.kind === 'reading' && ventFirst.caution).toEqual({ word: 'danger', ...caution });
  });

  test.each([
    [{ gone: { title: 'x' } }, 'no card gone'],
    [{ ventNow: { labels: { gone: 'x' } } }, 'does not ask gone'],
    [{ haltAir: { choices: { gone: 'x' } } }, 'no choice gone'],
  ])('is refused where it says something of what is not there: %j', (words, fault) => {
    expect(() => withOther(words as Readonly<Record<string, Words>>)).toThrow(fault);
  });

  test('says nothing of a case, a bench set or a dial indicator on a cylinder', () => {
    const texts = JSON.stringify(
      Object.values(pistonSeals.steps).map((step) => ({ ...step, action: undefined, judge: undefined })),
    );
    expect(texts.match(/[^.'"]*\b(?:[Cc]ase|[Bb]ench set|dial indicator|diaphragm)\b[^.'"]*/g) ?? []).toEqual(
      [],
    );
  });
});
