import { describe, expect, test } from 'vitest';
import type { Inputs } from '../../../procedures/calculations/calculation-types.ts';
import { CALCULATIONS } from '../../../procedures/calculations/registry.ts';
import { isUnitId } from '../../../procedures/calculations/units.ts';
import { strokeCheck } from '../../../procedures/commissioning/stroke-check.ts';
import { PROCEDURES } from '../../../procedures/served.ts';
import { choiceWords } from '../../../server/calculations/input-text.ts';
import { es } from '../../../views/language/es.ts';
import { bare, type Catalogue, gapsOf } from '../../../views/language/patterns.ts';
import { wordsOf } from '../../../views/language/words.ts';
import { everyFile, type TextFile } from '../../tidy/tree.ts';
import alike from './alike.json' with { type: 'json' };
import { textsOfDefinition } from './definition-texts.ts';
import notShown from './not-shown.json' with { type: 'json' };
import notShownByTheServer from './not-shown-by-the-server.json' with { type: 'json' };
import notYet from './not-yet.json' with { type: 'json' };
import { sourceTexts } from './source-texts.ts';
import { type Shown, templateTexts } from './template-texts.ts';

const files = everyFile().filter(({ path }) => /^(?:views|server|procedures|safety)\//.test(path));
const entries: Catalogue = es;
const waiting: readonly string[] = notYet;
const spanish = wordsOf({ language: 'es', catalogue: es });
const known = new Set(Object.keys(es).map(bare));
const unread = new Set<string>([...notShown, ...notShownByTheServer]);
const isTemplate = ({ path }: TextFile) => path.endsWith('.njk');
const isSource = ({ path }: TextFile) => path.endsWith('.ts') && !path.startsWith('views/language/');
/** Nothing of theirs is said in another language. */
const UNSAID =
  /^(?:safety\/required|server\/(?:commands|store|verifier)|procedures\/(?:lint|practice|troubleshooting|overhaul|reply\/spanish)\/|procedures\/reply\/(?:listened-for|other-words|words)\.ts$|procedures\/readings\/unit-words\.ts$)/;
/** Programs and their keepers read these, or they are procedures that wait for somebody of the trade. */
const NOT_FOR_SCREENS =
  /^(?:safety\/re|safety\/proof|server\/(?:log|store|commands|verifier|config|main|program|compiled-code|serve|demo)|procedures\/(?!actions\/|rules\/|readings\/|reply\/|calculations\/(?!unit-table)|why\.ts))/;

const texts = new Map<string, { readonly all: readonly string[]; readonly prose: readonly Shown[] }>(
  files
    .filter((file) => isTemplate(file) || (isSource(file) && !UNSAID.test(file.path)))
    .map((file) => {
      if (isSource(file)) return [file.path, sourceTexts(file)];
      const prose = templateTexts(file);
      return [file.path, { all: prose.map(({ text }) => text), prose }];
    }),
);

/** What lists and fields are made of: titles of procedures, groups of calculations, and what may be chosen in one. */
const NAMES = [
  ...PROCEDURES.map(({ definition }) => String(definition.title)),
  ...CALCULATIONS.flatMap(({ topic, inputs }) => [topic, ...choicesOf(inputs)]),
];

function choicesOf(inputs: Inputs): readonly string[] {
  return Object.values(inputs).flatMap((spec) => {
    if (spec.kind === 'rows') return choicesOf(spec.columns);
    return spec.kind === 'choice' ? spec.choices.map(choiceWords) : [];
  });
}

/** Said whole: as it stands, or from pieces that are all known. */
function isSaid(text: string): boolean {
  if (known.has(bare(text)) || unread.has(text)) return true;
  const english = text.replaceAll('{}', '7');
  const said = spanish.say(english);
  // What comes out as it went in was taken for a name: `Count it`.
  const isFigure = /^[+−-]?\d/.test(text);
  return / \p{Ll}/u.test(text) && said.isWhole && (isFigure || said.text !== english);
}

function missingIn(file: TextFile): readonly string[] {
  return [...new Set((texts.get(file.path)?.prose ?? []).map(({ text }) => text))].filter(
    (text) => !isSaid(text),
  );
}

/** Lines for a file of `views/language/es/`: only the Spanish has to be written. */
function linesFor(texts: readonly string[]): readonly string[] {
  return texts.map((text) => {
    const [first = '', ...more] = text.split('{}');
    const key = first + more.map((piece, at) => `{${at + 1}}${piece}`).join('');
    return `  ${JSON.stringify(key)}: '',`;
  });
}

describe('the Spanish catalogue', () => {
  const covered = files.filter(({ path }) => !NOT_FOR_SCREENS.test(path) && !waiting.includes(path));

  test.each(['views', 'server', 'procedures', 'safety'])(
    'has every text of %s/; a text without Spanish is written into a file of views/language/es/',
    (folder) => {
      const missing = covered
        .filter(({ path }) => path.startsWith(`${folder}/`))
        .flatMap((file) => linesFor(missingIn(file)).map((line) => `${file.path}\n${line}`));
      expect(missing.join('\n')).toBe('');
    },
  );

  test('has the title of every procedure, and each group and choice of the calculations', () => {
    const prose = NAMES.filter((name) => /\p{Ll}{4}/u.test(name) && !isUnitId(name));
    expect(prose.length).toBeGreaterThan(50);
    expect([...new Set(prose)].filter((name) => !alike.includes(name) && !spanish.say(name).isWhole)).toEqual(
      [],
    );
  });

  test('waits only for files that still lack something: one that is whole leaves not-yet.json', () => {
    const whole = waiting.filter((path) => {
      const file = files.find((one) => one.path === path);
      return file === undefined || missingIn(file).length === 0;
    });
    expect(whole).toEqual([]);
  });

  test('keeps nothing that no file says any more: a changed English text takes its Spanish along', () => {
    const said = new Set(
      [...[...texts.values()].flatMap(({ all }) => all), ...textsOfDefinition(strokeCheck), ...NAMES].map(
        bare,
      ),
    );
    expect(Object.keys(es).filter((key) => !said.has(bare(key)))).toEqual([]);
  });

  test('fills the same gaps in both languages', () => {
    const different = Object.entries(entries).filter(
      ([english, said]) => [...gapsOf(english)].sort().join() !== [...gapsOf(said)].sort().join(),
    );
    expect(different).toEqual([]);
  });

  test('leaves no text empty, nor a blank at its ends', () => {
    expect(Object.entries(entries).filter(([, said]) => said === '' || said.trim() !== said)).toEqual([]);
  });
});

describe('the search for texts', () => {
  test('finds what a template shows, in its markup and in what it hands on', () => {
    const text = [
      '<p class="quiet">Read {{ row.what }} again{% if late %}, late{% endif %}</p>',
      '{{ button({ text: "Count it", kind: "plain" }) }}',
      '<img alt="The valve" src="x.svg">',
      '{{ line({ label: "line " + n + " of " + lines | length }) }}',
    ].join('\n');
    expect(templateTexts({ path: 'views/a.njk', text }).map((one) => one.text)).toEqual([
      'The valve',
      'Read {} again, late',
      'Read {} again',
      'Count it',
      'line {} of {}',
      'line {} of {}',
    ]);
  });

  test('finds prose in a source, and no names, classes or faults of the program', () => {
    const text = [
      "export const a = { what: 'The stem sticks.', label: 'seat', code: 'ABC-001', name: 'not this one' };",
      // biome-ignore lint/suspicious/noTemplateCurlyInString: a source text
      'export const b = (n: number) => `line ${n} of the log`;',
      "export const c = () => new TypeError('only for programmers');",
    ].join('\n');
    expect(sourceTexts({ path: 'server/a.ts', text }).prose.map((one) => one.text)).toEqual([
      'The stem sticks.',
      'seat',
      'line {} of the log',
    ]);
  });
});
