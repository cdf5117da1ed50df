import type { Language } from './language.ts';

/** Procedures whose cards are said whole in another language; the others wait for somebody who knows the trade. */
const SAID: Readonly<Record<Language, readonly string[] | 'all'>> = { en: 'all', es: ['stroke-check'] };

/** Are the cards of a procedure in this language? @example isProcedureSaid('stroke-check', 'es') // true */
export function isProcedureSaid(procedure: string, language: Language): boolean {
  const said = SAID[language];
  return said === 'all' || said.includes(procedure);
}
