import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ASSET_FILES } from '../../../views/assets.ts';
import { createRenderer } from '../../../views/render.ts';
import { COMPONENTS, componentExamples, macroName } from '../../../views/style-page.ts';
import { compiled } from '../../compiled.ts';
import { ROOT } from '../../root.ts';

describe('what a build makes', () => {
  test('draws every part of a page from its templates as the program does as it was written', async () => {
    const built = (await import(await compiled('views/render.ts'))) as {
      createRenderer: typeof createRenderer;
    };
    const folder = join(ROOT, 'views');
    const [source, made] = [createRenderer({ folder }), built.createRenderer({ folder })];
    const drawn = COMPONENTS.flatMap((component) =>
      componentExamples(source, component).examples.map(({ params }) => {
        const given = { component, macro: macroName(component), params };
        return [source, made].map((renderer) => renderer.render('parts/example.njk', given));
      }),
    );
    expect(drawn.length).toBeGreaterThan(50);
    expect(drawn.filter(([one, other]) => one !== other)).toEqual([]);
    // Nothing of the folder is read: another one, which is empty, gives the same.
    const elsewhere = built.createRenderer({ folder: join(ROOT, 'safety') });
    const refusal = { component: 'button', macro: macroName('button'), params: { text: 'Count it' } };
    expect(elsewhere.render('parts/example.njk', refusal)).toBe(source.render('parts/example.njk', refusal));
  });

  test('has style, fonts and scripts as they are served', async () => {
    const folder = join(await compiled('server/main.ts'), '../assets');
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' });
    expect(Object.keys(ASSET_FILES).filter((name) => !files.includes(name))).toEqual([]);
  });

  test('starts no second program within another: the verifier runs where it is called alone', async () => {
    const main = readFileSync(join(await compiled('server/main.ts'), '../program.cjs'), 'utf8');
    expect(main).not.toContain('NOT WHOLE. First bad entry');
    expect(readFileSync(await compiled('server/verifier/verify.ts'), 'utf8')).toContain(
      'NOT WHOLE. First bad entry',
    );
  });
});
