import { es } from './es.ts';
import type { Language } from './language.ts';
import { translatePage } from './translate-page.ts';
import { type Words, wordsOf } from './words.ts';

const CATALOGUES = { es } as const;
const ready = new Map<Language, Words>();

/** What says our texts in a language; null for English, in which they are written. */
function speaker(language: Language): Words | null {
  if (language === 'en') return null;
  const known = ready.get(language) ?? wordsOf({ language, catalogue: CATALOGUES[language] });
  ready.set(language, known);
  return known;
}

/** A page or a piece of one in a language. @example inLanguage('<p>Sign in</p>', 'es') // '<p>Entrar</p>' */
export function inLanguage(html: string, language: Language): string {
  const words = speaker(language);
  return words === null ? html : translatePage(html, words).html;
}

/** One text in a language, for what is no page: a document, a picture of it. @example textIn('es')('Sign in') // 'Entrar' */
export function textIn(language: Language): (text: string) => string {
  const words = speaker(language);
  return words === null ? (text) => text : (text) => words.say(text).text;
}
