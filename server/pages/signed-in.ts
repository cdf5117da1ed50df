/** How long somebody stays signed in who does not touch the screen, and staying so. */
import { z } from 'zod';
import { ourCookie } from '../http/cookies.ts';
import { type BareCall, type Route, route } from '../http/route.ts';

const answer = z.object({ person: z.string().nullable(), endsInS: z.number(), canStay: z.boolean() });

/** A session that ends with the shift is not made longer by a key. */
async function endOf({ services, cookies, now }: BareCall): Promise<{ endsInS: number; canStay: boolean }> {
  const session = ourCookie(cookies, 'yokeside-session');
  const ends = session === undefined ? undefined : await services.people.endsOf(session);
  if (ends === undefined) return { endsInS: 0, canStay: false };
  const endsMs = Math.min(ends.untouchedMs, ends.inAnyCaseMs);
  return {
    endsInS: Math.max(0, (endsMs - now.getTime()) / 1000),
    canStay: ends.untouchedMs < ends.inAnyCaseMs,
  };
}

const showSignedIn = route({
  method: 'GET',
  path: '/signed-in',
  name: 'showSignedIn',
  summary: 'Who is signed in at this screen, and after how many seconds without a touch they are signed out',
  roles: 'anyone',
  background: true,
  answer,
  handle: async (call) => ({ data: { person: call.person?.id ?? null, ...(await endOf(call)) } }),
});

const staySignedIn = route({
  method: 'POST',
  path: '/signed-in',
  name: 'staySignedIn',
  summary: 'Somebody is at the screen: the time without a touch begins anew',
  roles: 'signed-in',
  answer,
  handle: async (call) => ({ data: { person: call.person.id, ...(await endOf(call)) }, seeOther: '/' }),
});

export const signedInRoutes: readonly Route[] = [showSignedIn, staySignedIn];
