import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figuresIn } from '../../../views/language/figures.ts';
import { isLanguage, languageOf } from '../../../views/language/language.ts';
import { gapsOf } from '../../../views/language/patterns.ts';
import { textIn } from '../../../views/language/speak.ts';
import { translatePage } from '../../../views/language/translate-page.ts';
import { wordsOf } from '../../../views/language/words.ts';

const catalogue = {
  'Sign in': 'Entrar',
  'the stem moves': 'el vástago se mueve',
  'the plug is seated': 'el obturador está asentado',
  '{who} hung lock {lock}.': 'El candado {lock} lo puso {who}.',
  '{what}, at {time}': '{what}, a las {time}',
  'spring and air': 'resorte y aire',
  'At most {limit} goes on this case.': 'A esta caja va {limit} como máximo.',
  'At most {limit} goes on this {part}.': 'A esta pieza ({part}) va {limit} como máximo.',
};
const words = wordsOf({ language: 'es', catalogue });
const say = (text: string) => words.say(text).text;

describe('a text', () => {
  test('says a word in capitals as it says the small one: the state on a tag, a signal word', () => {
    const said = wordsOf({ language: 'es', catalogue: { live: 'viva', 'prove-again': 'otra prueba' } });
    expect(said.say('LIVE').text).toBe('VIVA');
    expect(said.say('PROVE AGAIN').text).toBe('OTRA PRUEBA');
    for (const own of ['FV-101', 'PSI', 'T1'])
      expect(said.say(own)).toMatchObject({ text: own, isWhole: true });
  });

  test('is said as the catalogue has it, its gaps in the order of the other language', () => {
    expect(say('Sign in')).toBe('Entrar');
    expect(say('T1 hung lock 15.')).toBe('El candado 15 lo puso T1.');
  });

  test('takes what is exactly said before what is said with one more gap', () => {
    expect(say('At most 20.00 psi goes on this case.')).toBe('A esta caja va 20,00 psi como máximo.');
  });

  test('says what stands in its gaps too', () => {
    expect(say('the stem moves, at 08:22')).toBe('el vástago se mueve, a las 08:22');
  });

  test('is said the same at the beginning of a sentence, within one, and with its stop', () => {
    expect(say('The stem moves.')).toBe('El vástago se mueve.');
    expect(say('The stem moves. The plug is seated.')).toBe(
      'El vástago se mueve. El obturador está asentado.',
    );
  });

  test('is said item by item where all items are known, and stays whole where one is not', () => {
    expect(say('the stem moves, the plug is seated')).toBe('el vástago se mueve, el obturador está asentado');
    const half = words.say('the stem moves, the yoke is cold');
    expect(half).toEqual({
      text: half.missing[0],
      isWhole: false,
      missing: ['the stem moves, the yoke is cold'],
    });
  });

  test('that nobody has translated stays English and is told, numbers and all', () => {
    expect(words.say('turn it by 2.5 turns')).toEqual({
      text: 'turn it by 2.5 turns',
      isWhole: false,
      missing: ['turn it by 2.5 turns'],
    });
  });

  test('that is a tag, a name or a number needs no translation', () => {
    for (const text of ['FV-101', 'T1', 'PI-3, G-07', 'Ada B. (t1)']) {
      expect(words.say(text)).toEqual({ text, isWhole: true, missing: [] });
    }
  });

  test('with a name of its own that looks like a pattern loses nothing', () => {
    expect(say('$& hung lock $1.')).toBe('El candado $1 lo puso $&.');
    expect(say('{lock} hung lock {who}.')).toBe('El candado {who} lo puso {lock}.');
  });

  test('of any letters comes back whole or as it was, in little time', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 300 }), (text) => {
        const said = words.say(text);
        if (!said.isWhole) expect(said.missing.length).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
  });
});

describe('figures', () => {
  const { localised, isFigures } = figuresIn('es');

  test.each([
    ['9.00 psi', '9,00 psi'],
    ['−6.7 %', '−6,7 %'],
    ['3.00 to 15.0', '3,00 to 15,0'],
    ['2026-03-04 08:22 UTC', '4 mar 2026, 08:22 UTC'],
    ['2026-03-04', '4 mar 2026'],
  ])('%s is written as Spanish has it', (english, spanish) => {
    expect(localised(english)).toBe(spanish);
  });

  test.each(['FV-101', '127.0.0.1', '75.25.01', 'IEC 60534-2-4', '1/2-20', '2026-13-45', 'v0.1.0', 'S-4.2'])(
    '%s is no decimal number and stays',
    (text) => {
      expect(localised(text)).toBe(text);
    },
  );

  test('alone are no prose', () => {
    expect(isFigures('9.00 psi, 50 %')).toBe(true);
    expect(isFigures('9 psi of air')).toBe(false);
  });
});

describe('a page', () => {
  const page = (html: string) => translatePage(html, words);

  test('is said in its texts and in the attributes that are read aloud, and nowhere else', () => {
    expect(page('<button name="Sign in" value="Sign in" title="Sign in"> Sign in </button>').html).toBe(
      '<button name="Sign in" value="Sign in" title="Entrar"> Entrar </button>',
    );
  });

  test('keeps what people wrote and what another language says', () => {
    const html =
      '<p translate="no">Sign in</p><div lang="en"><p>Sign in <b>Sign in</b></p></div><p>Sign in</p>';
    expect(page(html).html).toBe(html.replace(/Sign in<\/p>$/, 'Entrar</p>'));
  });

  test('marks prose without a translation as English, where something can be put around it', () => {
    const html = '<p>Turn the plug stem out.</p><option>Turn it out of here.</option>';
    const said = page(html);
    expect(said.html).toBe(
      '<p><span lang="en">Turn the plug stem out.</span></p><option>Turn it out of here.</option>',
    );
    expect(said.missing).toEqual(['Turn the plug stem out.', 'Turn it out of here.']);
  });

  test('stays safe: what was escaped is escaped again', () => {
    expect(page('<p>&lt;b&gt; hung lock &quot;15&quot; &amp; 16.</p>').html).toBe(
      '<p>El candado &quot;15&quot; &amp; 16 lo puso &lt;b&gt;.</p>',
    );
  });

  test('leaves what is typed into a form, and scripts', () => {
    const html =
      '<textarea>Sign in</textarea><script src="a.js"></script><input value="9.5" placeholder="Sign in">';
    expect(page(html).html).toBe(html.replace('placeholder="Sign in"', 'placeholder="Entrar"'));
  });
});

describe('the language of a request', () => {
  const of = (accept: string | null, screen?: string, own: string | null = null) =>
    languageOf({ own, screen, accept });

  test('is the own choice, then that of the screen, then what the browser wants most', () => {
    expect(of('en', 'en', 'es')).toBe('es');
    expect(of('en', 'es')).toBe('es');
    expect(of('fr;q=1, es-MX;q=0.8, en;q=0.5')).toBe('es');
    expect(of('en, es;q=0.9')).toBe('en');
  });

  test('is English where nothing is asked for that is known', () => {
    for (const accept of [null, '', 'fr', 'es;q=0', ';;;,,,', '*']) expect(of(accept)).toBe('en');
    expect(of(null, 'klingon', 'constructor')).toBe('en');
    expect(isLanguage('toString')).toBe(false);
  });
});

test('gaps are found by name', () => {
  expect(gapsOf('{who} hung {lock}')).toEqual(['who', 'lock']);
});

test('a text by itself is said too, and English is left alone', () => {
  expect(textIn('es')('Sign out')).toBe('Salir');
  expect(textIn('en')('Sign out')).toBe('Sign out');
});
