import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { createRenderer } from '../../views/render.ts';

const renderer = createRenderer({ folder: fileURLToPath(new URL('../../views', import.meta.url)) });

const card = (isHowTheAct: boolean): string =>
  renderer.render('parts/example.njk', {
    component: 'open-card',
    macro: 'openCard',
    params: {
      number: 7,
      heading: 'Stem on a small step each way',
      how: 'Step the output up by a twentieth.',
      isHowTheAct,
      signal: {
        word: 'warning',
        hazard: 'The valve moves.',
        consequence: 'A finger can be crushed.',
        avoid: 'Hands stay out.',
      },
      html: '<p>its fields</p>',
    },
  });

test('a line that says what to do stands below the warning of it, and one that only explains stays in the head', () => {
  const order = (html: string) =>
    ['The valve moves.', 'Step the output up', 'its fields']
      .toSorted((a, b) => html.indexOf(a) - html.indexOf(b))
      .join(' | ');
  expect(order(card(true))).toBe('The valve moves. | Step the output up | its fields');
  expect(order(card(false))).toBe('Step the output up | The valve moves. | its fields');
});
