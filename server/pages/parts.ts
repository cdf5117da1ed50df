import { z } from 'zod';
import { setCookie } from '../http/cookies.ts';
import { type Fields, oneOf, optionalText, text } from '../http/fields.ts';
import type { BareCall } from '../http/route.ts';
import type { By, SignedIn } from '../people/people.ts';
import { ROLE_WORDS, ROLES } from '../people/person.ts';

/** What was typed into the fields named, for drawing the form again; never name a PIN here. */
export function typedIn<const Names extends readonly string[]>(
  fields: Fields,
  names: Names,
): Record<Names[number], string> {
  const typed: Record<string, string> = {};
  for (const name of names) {
    const value = fields[name];
    typed[name] = typeof value === 'string' ? value : '';
  }
  return typed as Record<Names[number], string>;
}

/** Who asks, as entries carry it. */
export function byOf({ requestId, person, screen }: BareCall): By {
  return { requestId, person: person?.id ?? null, screen };
}

export const nameField = text({ called: 'the name', max: 60 });
/** Exactly as typed: a blank before it makes it another PIN. */
export const pinField = z.string('Write the PIN.').min(1, 'Write the PIN.').max(64, 'At most 64 characters.');
/** How whoever gives a code made sure of the person; the entry names both. */
export const identityField = text({ called: 'how you know that it is they', max: 120 });
/** The rule of signing, taken on with the first PIN. */
export const ruleField = z.literal(
  'accepted',
  'Read the rule and tick it: without it nothing can be signed.',
);
export const roleField = oneOf(ROLES);
export const whoField = text({ called: 'your name or your id', max: 60 });
/** Only the own pages: a path and no other site's address. */
export const nextField = optionalText({ called: 'the page', max: 500 })
  .refine((path) => path === '' || /^\/(?![/\\])/.test(path), 'That is no page of this server.')
  .default('');

export const personAnswer = z.object({
  id: z.string(),
  name: z.string(),
  role: z.enum(ROLES),
  retired: z.boolean(),
});

export const roleChoices = ROLES.map((role) => ({ value: role, label: ROLE_WORDS[role] }));

/** The longest that browsers keep a cookie; each sign-in begins it anew. */
const SCREEN_KNOWN_S = 400 * 24 * 3600;

/** The cookies of a new session, and of the screen that it is at. */
export function sessionCookies({ session, screenToken }: SignedIn, { cookies }: BareCall): readonly string[] {
  const { secure } = cookies;
  return [
    setCookie({ name: 'yokeside-session', value: session, secure }),
    setCookie({ name: 'yokeside-screen', value: screenToken, secure, maxAgeS: SCREEN_KNOWN_S }),
  ];
}

export function endedSessionCookie({ cookies }: BareCall): readonly string[] {
  return [setCookie({ name: 'yokeside-session', value: '', secure: cookies.secure, maxAgeS: 0 })];
}

/** The page of ours that the form stood on, or the first one. */
export function backTo(referer: string, origin: string): string {
  if (!URL.canParse(referer) || new URL(referer).origin !== origin) return '/';
  const { pathname, search } = new URL(referer);
  return pathname.startsWith('//') ? '/' : pathname + search;
}
