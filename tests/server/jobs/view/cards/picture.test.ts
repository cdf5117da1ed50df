import { describe, expect, test } from 'vitest';
import type { Job } from '../../../../../procedures/job.ts';
import { PROCEDURES } from '../../../../../procedures/served.ts';
import type { PictureName } from '../../../../../procedures/vocabulary.ts';
import { pictureOf } from '../../../../../server/jobs/view/cards/picture.ts';
import { jobOn, play } from '../../../../builders/answers.ts';
import { repairNamed } from '../../../../builders/own-air-valve.ts';
import { aSheet } from '../../../../builders/sheets.ts';
import { attributeOf, readHtml, textOf } from '../../../../views/html.ts';

const PISTON = aSheet({ actuatorKind: 'piston', springHeldBy: 'no spring', failPosition: 'stays' });

function jobWith(tieRods: string): Job {
  return play(jobOn(repairNamed('piston-seals'), { sheet: PISTON }), {
    overrides: {
      keptAir: { oppositeAir: 'isolated' },
      blowByFound: { openEndAir: 'flow' },
      tieRods: { tieRods },
    },
    to: 'cylinderClose',
  }).job;
}

describe('A card where people would rather look than read', () => {
  const job = jobWith('8');

  test.each(['relay', 'flapper', 'tieRods'] as const)(
    'shows a sound drawing with its text alternative: %s',
    (name) => {
      const { elements, faults } = readHtml(pictureOf({ picture: name }, job));
      expect(faults).toEqual([]);
      const svg = elements.find(({ tagName }) => tagName === 'svg');
      if (svg === undefined) throw new Error('nothing is drawn');
      expect(attributeOf(svg, 'role')).toBe('img');
      expect(attributeOf(svg, 'aria-label')?.length).toBeGreaterThan(40);
    },
  );

  // By hand for eight rods: 1, 5, 3, 7, 2, 6, 4, 8, so that the rods in their places read 1 5 3 7 2 6 4 8 as well.
  test('numbers the tie rods in the order of tightening, and says it', () => {
    const { elements } = readHtml(pictureOf({ picture: 'tieRods' }, job));
    const numbers = elements.filter(({ tagName }) => tagName === 'text').map(textOf);
    expect(numbers).toEqual(['1', '5', '3', '7', '2', '6', '4', '8']);
    const svg = elements.find(({ tagName }) => tagName === 'svg');
    expect(svg && attributeOf(svg, 'aria-label')).toContain('1, 5, 3, 7, 2, 6, 4, 8');
  });

  test('draws no order for rods that were not counted in pairs', () => {
    expect(pictureOf({ picture: 'tieRods' }, jobWith('other'))).toBe('');
  });

  test('and no other card shows one', () => {
    expect(pictureOf({}, job)).toBe('');
    const named = PROCEDURES.flatMap(({ definition }) =>
      Object.values(definition.steps).flatMap((step) =>
        step.kind === 'end' || step.picture === undefined ? [] : [step.picture],
      ),
    );
    const each: readonly PictureName[] = ['relay', 'flapper', 'tieRods'];
    expect([...new Set(named)].sort()).toEqual([...each].sort());
  });
});
