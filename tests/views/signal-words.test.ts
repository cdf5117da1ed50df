import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createRenderer } from '../../views/render.ts';
import { ROOT } from '../root.ts';

test('Each signal word has one look of its own, and says itself in letters too (HP-26, UI-34); the triangle stands with the three words of injury only (UI-36), the only symbol of safety there is, three-cornered (UI-38)', () => {
  const renderer = createRenderer({ folder: join(ROOT, 'views') });
  const words = ['danger', 'warning', 'caution', 'notice'];
  const params = { hazard: 'It moves.', consequence: 'It hurts.', avoid: 'Stand aside.' };
  const drawn = words.map((word) =>
    renderer.render('parts/example.njk', {
      component: 'signal-panel',
      macro: 'signalPanel',
      params: { word, ...params },
    }),
  );
  for (const [at, html] of drawn.entries()) {
    expect(html).toContain(`signal--${words[at]}`);
    expect(html).toContain(`${words[at]?.toUpperCase()}</p>`);
  }
  expect(drawn.map((html) => html.includes('<svg'))).toEqual([true, true, true, false]);
  // One path round the sign: three corners, the last side closed.
  for (const html of drawn.slice(0, 3))
    expect(html).toMatch(/<path d="M[\d.]+ [\d.]+L[\d.]+ [\d.]+H[\d.]+Z" class="alert-ground"/);
});
