/** Which language a person reads, at every screen; for whoever is not signed in, at this one. */
import { z } from 'zod';
import { LANGUAGE_COOKIE, LANGUAGES, type Language } from '../../views/language/language.ts';
import { oneOf } from '../http/fields.ts';
import { route } from '../http/route.ts';
import { chooseLanguage } from '../people/own-language.ts';
import { backTo, byOf } from './parts.ts';

const YEAR_S = 365 * 24 * 3600;
const NAMES = Object.keys(LANGUAGES) as [Language, ...Language[]];

export const languageRoute = route({
  method: 'POST',
  path: '/language',
  name: 'chooseLanguage',
  summary: `What pages are written in: ${NAMES.join(', ')}. Entries and JSON stay as they are`,
  roles: 'anyone',
  body: z.object({ language: oneOf(NAMES) }),
  answer: z.object({ language: z.enum(NAMES) }),
  handle: async (call) => {
    const { body, person, services, origin, referer } = call;
    const { language } = body;
    if (person !== null) await chooseLanguage(services.log, { person: person.id, language, by: byOf(call) });
    const cookie = `${LANGUAGE_COOKIE}=${language}; Path=/; HttpOnly; SameSite=Strict; Max-Age=${YEAR_S}`;
    return { data: { language }, seeOther: backTo(referer, origin), cookies: [cookie] };
  },
});
