/** The first page of all, and the first set-up of an empty site. */
import { timingSafeEqual } from 'node:crypto';
import { z } from 'zod';
import { Refusal } from '../../safety/refusal.ts';
import { ourCookie } from '../http/cookies.ts';
import { optionalText, text } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { menuFor } from '../http/shell.ts';
import { ROLE_WORDS } from '../people/person.ts';
import type { Services } from '../services.ts';
import { siteKind } from '../site-stream.ts';
import { byOf, nameField, personAnswer, pinField, ruleField, sessionCookies, typedIn } from './parts.ts';
import { requireSame } from './sign-in.ts';

/** The demo plant's people with the PINs that they got, told once. */
export interface DemoPerson {
  readonly id: string;
  readonly name: string;
  readonly role: keyof typeof ROLE_WORDS;
  readonly pin: string;
}

export type LoadDemo = (services: Services) => Promise<readonly DemoPerson[]>;

export interface SetUpOptions {
  /** Fills an empty site with the demo plant; without it none is offered. */
  readonly loadDemo?: LoadDemo;
  /** All routes of the server, for the menu. */
  routes(): readonly Route[];
}

const plantField = text({ called: 'what the plant is called', max: 80 });
const tokenField = optionalText({ called: 'the set-up token', max: 100 }).default('');
const DEMO_PLANT = 'Demo plant';

interface TypedSetUp {
  readonly plant: string;
  readonly name: string;
  readonly token: string;
}

const NOTHING_TYPED: TypedSetUp = { plant: '', name: '', token: '' };

function setUpPage({ services }: BareCall, of: TypedSetUp & { readonly offersDemo: boolean }): PageView {
  const { setUpToken, pinDigitsMin } = services.settings;
  const params = { ...of, asksToken: setUpToken !== null, pinDigitsMin };
  return { title: 'First set-up', template: 'pages/set-up.njk', params };
}

/** @throws Refusal PPL-013 for a token that is not the one printed */
function requireToken({ services }: BareCall, token: string): void {
  const { setUpToken } = services.settings;
  if (setUpToken === null) return;
  const [given, wanted] = [Buffer.from(token), Buffer.from(setUpToken)];
  if (given.length === wanted.length && timingSafeEqual(given, wanted)) return;
  throw new Refusal({
    kind: 'not-allowed',
    code: 'PPL-013',
    what: 'That is not the set-up token.',
    kept: 'Nothing was recorded.',
    next: 'Read it where the server was started: it was printed there, once.',
    fields: { token: 'It is printed where the server was started.' },
  });
}

function firstPage({ routes, loadDemo }: SetUpOptions): Route {
  return route({
    method: 'GET',
    path: '/',
    name: 'showFirstPage',
    summary: 'What the site is called, who is signed in, and where to go from here',
    roles: 'anyone',
    answer: z.object({
      plant: z.string().nullable(),
      demo: z.boolean(),
      isSetUp: z.boolean(),
      person: personAnswer.nullable(),
      menu: z.array(z.object({ href: z.string(), text: z.string() })),
    }),
    handle: async (call) => {
      const { services, person } = call;
      const isSetUp = !(await services.people.isEmpty());
      const { plant, demo } = await services.log.state(siteKind);
      const menu = menuFor(routes(), call);
      const data = { plant, demo, isSetUp, person, menu: [...menu] };
      if (!isSetUp)
        return { data, page: setUpPage(call, { ...NOTHING_TYPED, offersDemo: loadDemo !== undefined }) };
      if (person === null) return { data, seeOther: '/sign-in' };
      return { data, seeOther: menu[0]?.href ?? '/help' };
    },
  });
}

function setUp({ loadDemo }: SetUpOptions): Route {
  return route({
    method: 'POST',
    path: '/set-up',
    name: 'setUp',
    summary: 'Set up an empty site with its first person, an engineer, and sign them in',
    roles: 'anyone',
    body: z.object({
      plant: plantField,
      name: nameField,
      newPin: pinField,
      newPinAgain: pinField,
      rule: ruleField,
      token: tokenField,
    }),
    answer: z.object({ person: personAnswer, screen: z.string() }),
    refused: async (call) => {
      if (!(await call.services.people.isEmpty())) return {};
      const typed = typedIn(call.typed, ['plant', 'name', 'token']);
      return { page: setUpPage(call, { ...typed, offersDemo: loadDemo !== undefined }) };
    },
    handle: async (call) => {
      const { plant, name, newPin, newPinAgain, token } = call.body;
      requireToken(call, token);
      requireSame(newPin, newPinAgain);
      const by = byOf(call);
      const { people } = call.services;
      const person = await people.setUp({ plant, name, newPin }, by);
      const signedIn = await people.signIn(
        {
          who: person.id,
          pin: newPin,
          session: undefined,
          screen: ourCookie(call.cookies, 'yokeside-screen'),
        },
        { ...by, requestId: `${by.requestId}-in` },
      );
      const { screen } = signedIn;
      return { data: { person, screen }, seeOther: '/people', cookies: sessionCookies(signedIn, call) };
    },
  });
}

function setUpDemo(loadDemo: LoadDemo): Route {
  return route({
    method: 'POST',
    path: '/set-up/demo',
    name: 'setUpDemo',
    summary: 'Fill an empty site with the demo plant; its PINs are in this answer and nowhere else',
    roles: 'anyone',
    body: z.object({ token: tokenField }),
    answer: z.object({ people: z.array(personAnswer.omit({ retired: true }).extend({ pin: z.string() })) }),
    refused: async (call) => {
      if (!(await call.services.people.isEmpty())) return {};
      const { token } = typedIn(call.typed, ['token']);
      return { page: setUpPage(call, { ...NOTHING_TYPED, token, offersDemo: true }) };
    },
    handle: async (call) => {
      requireToken(call, call.body.token);
      await call.services.people.setUpDemo(DEMO_PLANT, byOf(call));
      const people = await loadDemo(call.services);
      const rows = people.map((person) => ({ ...person, role: ROLE_WORDS[person.role] }));
      return {
        data: { people: [...people] },
        page: { title: 'Demo plant loaded', template: 'pages/demo-people.njk', params: { rows } },
      };
    },
  });
}

export function setUpRoutes(options: SetUpOptions): readonly Route[] {
  const demo = options.loadDemo === undefined ? [] : [setUpDemo(options.loadDemo)];
  return [firstPage(options), setUp(options), ...demo];
}
