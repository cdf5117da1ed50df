/** The languages of the screen. English is what everything is written in; the others are said after it. */
export const LANGUAGES = {
  en: { text: 'English', locale: 'en' },
  es: { text: 'Español', locale: 'es' },
} as const;

export type Language = keyof typeof LANGUAGES;

/** Kept at a screen for whoever has not signed in; a person's own choice is kept with the person. */
export const LANGUAGE_COOKIE = 'language';

export function isLanguage(text: string | undefined): text is Language {
  return text !== undefined && Object.hasOwn(LANGUAGES, text);
}

/**
 * The language of one request: the person's own choice, else that of the screen, else what the browser asks for.
 *
 * @example
 * languageOf({ own: null, screen: undefined, accept: 'es-MX,es;q=0.9,en;q=0.5' }) // 'es'
 */
export function languageOf(asked: {
  readonly own: string | null;
  readonly screen: string | undefined;
  readonly accept: string | null;
}): Language {
  if (asked.own !== null && isLanguage(asked.own)) return asked.own;
  if (isLanguage(asked.screen)) return asked.screen;
  return asked.accept === null ? 'en' : (wanted(asked.accept)[0] ?? 'en');
}

/** Ours among those of an Accept-Language header, the most wanted first; of two wanted alike, the first named. */
function wanted(header: string): readonly Language[] {
  return header
    .slice(0, 500)
    .split(',')
    .flatMap((part) => {
      const [range = '', ...params] = part.split(';').map((piece) => piece.trim().toLowerCase());
      const weight = params.find((param) => param.startsWith('q='))?.slice(2) ?? '1';
      const language = range.split('-')[0];
      const q = Number(weight);
      return isLanguage(language) && q > 0 ? [{ language, q }] : [];
    })
    .sort((one, other) => other.q - one.q)
    .map(({ language }) => language);
}
