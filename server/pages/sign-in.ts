/** In, out, and the own PIN. */
import { z } from 'zod';
import { ourCookie } from '../http/cookies.ts';
import { wrongFields } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import {
  byOf,
  endedSessionCookie,
  nextField,
  personAnswer,
  pinField,
  ruleField,
  sessionCookies,
  typedIn,
  whoField,
} from './parts.ts';

/** What a page says about the act that led to it. */
const TOLD = {
  'pin-set': 'Your PIN is set. Sign in with it.',
  'signed-out': 'You are signed out at this screen.',
} as const;

const told = z.enum(['pin-set', 'signed-out']).optional().catch(undefined);

function signInPage(params: {
  readonly who: string;
  readonly next: string;
  readonly told: string;
}): PageView {
  return { title: 'Sign in', template: 'pages/sign-in.njk', params };
}

const showSignIn = route({
  method: 'GET',
  path: '/sign-in',
  name: 'showSignIn',
  summary: 'Who is signed in at this screen',
  roles: 'anyone',
  query: z.object({ next: nextField, told }),
  answer: z.object({ person: personAnswer.nullable(), screen: z.string() }),
  handle: async ({ services, person, screen, query }) => {
    const data = { person, screen };
    if (await services.people.isEmpty()) return { data, seeOther: '/' };
    const page = signInPage({ who: '', next: query.next, told: query.told ? TOLD[query.told] : '' });
    return { data, page };
  },
});

const signIn = route({
  method: 'POST',
  path: '/sign-in',
  name: 'signIn',
  summary: 'Sign in at this screen; the session is in the cookie that comes back',
  roles: 'anyone',
  body: z.object({ who: whoField, pin: pinField, next: nextField }),
  answer: z.object({ person: personAnswer, screen: z.string() }),
  refused: ({ typed }) => ({ page: signInPage({ ...typedIn(typed, ['who', 'next']), told: '' }) }),
  handle: async (call) => {
    const { services, cookies, body } = call;
    const signedIn = await services.people.signIn(
      {
        who: body.who,
        pin: body.pin,
        session: ourCookie(cookies, 'yokeside-session'),
        screen: ourCookie(cookies, 'yokeside-screen'),
      },
      byOf(call),
    );
    const { person, screen } = signedIn;
    const seeOther = body.next === '' ? '/' : body.next;
    return { data: { person, screen }, seeOther, cookies: sessionCookies(signedIn, call) };
  },
});

const signOut = route({
  method: 'POST',
  path: '/sign-out',
  name: 'signOut',
  summary: 'End the session of this screen',
  roles: 'signed-in',
  answer: z.object({ person: z.null() }),
  handle: async (call) => {
    await endSession(call);
    const cookies = endedSessionCookie(call);
    return { data: { person: null }, seeOther: '/sign-in?told=signed-out', cookies };
  },
});

async function endSession(call: BareCall): Promise<void> {
  const session = ourCookie(call.cookies, 'yokeside-session');
  if (session !== undefined) await call.services.people.signOut(session, byOf(call));
}

function firstPinPage(who: string): PageView {
  return { title: 'First sign-in', template: 'pages/first-pin.njk', params: { who } };
}

const showFirstPin = route({
  method: 'GET',
  path: '/first-pin',
  name: 'showFirstPin',
  summary: 'The form for choosing a PIN with a one-time code',
  roles: 'anyone',
  answer: z.object({ digitsMin: z.int() }),
  handle: ({ services }) => ({ data: { digitsMin: services.settings.pinDigitsMin }, page: firstPinPage('') }),
});

const setFirstPin = route({
  method: 'POST',
  path: '/first-pin',
  name: 'setFirstPin',
  summary: 'Choose a PIN with a one-time code, and take on the rule of signing',
  roles: 'anyone',
  body: z.object({
    who: whoField,
    code: pinField,
    newPin: pinField,
    newPinAgain: pinField,
    rule: ruleField,
  }),
  answer: z.object({ person: personAnswer }),
  refused: ({ typed }) => ({ page: firstPinPage(typedIn(typed, ['who']).who) }),
  handle: async (call) => {
    const { who, code, newPin, newPinAgain } = call.body;
    requireSame(newPin, newPinAgain);
    const person = await call.services.people.setFirstPin({ who, code, newPin }, byOf(call));
    return { data: { person }, seeOther: '/sign-in?told=pin-set' };
  },
});

const pinPage: PageView = { title: 'Your PIN', template: 'pages/pin.njk', params: {} };

const showPin = route({
  method: 'GET',
  path: '/pin',
  name: 'showPin',
  summary: 'The form for changing the own PIN',
  roles: 'signed-in',
  menu: { text: 'Your PIN', order: 90 },
  answer: z.object({ digitsMin: z.int() }),
  handle: ({ services }) => ({ data: { digitsMin: services.settings.pinDigitsMin }, page: pinPage }),
});

const changePin = route({
  method: 'POST',
  path: '/pin',
  name: 'changePin',
  summary: 'Change the own PIN; ends all sessions in this name',
  roles: 'signed-in',
  body: z.object({ pin: pinField, newPin: pinField, newPinAgain: pinField }),
  answer: z.object({ person: personAnswer }),
  refused: () => ({ page: pinPage }),
  handle: async (call) => {
    const { pin, newPin, newPinAgain } = call.body;
    requireSame(newPin, newPinAgain);
    await call.services.people.changePin({ id: call.person.id, pin, newPin }, byOf(call));
    const cookies = endedSessionCookie(call);
    return { data: { person: call.person }, seeOther: '/sign-in?told=pin-set', cookies };
  },
});

/** @throws Refusal FRM-002 beside the second field */
export function requireSame(newPin: string, newPinAgain: string): void {
  if (newPin !== newPinAgain)
    throw wrongFields({ newPinAgain: 'The two are not the same. Write both again.' });
}

export const signInRoutes: readonly Route[] = [
  showSignIn,
  signIn,
  signOut,
  showFirstPin,
  setFirstPin,
  showPin,
  changePin,
];
