/** Accounts looked over, and wrong PINs looked into. */
import { z } from 'zod';
import { optionalText, text } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { ROLE_WORDS, ROLES } from '../people/person.ts';
import { type AccountReview, REVIEWERS } from '../people/review.ts';
import { lookIntoAlarms, reviewed } from '../people/site-acts.ts';
import { shownTime } from '../shown-time.ts';
import { type PinAlarm, siteKind } from '../site-stream.ts';
import { byOf, typedIn } from './parts.ts';

/** An account that was not used for so long is worth a question; common practice, no source. */
const UNUSED_DAYS = 90;
const DAY_MS = 24 * 3600 * 1000;

const time = z.iso.datetime().nullable();

const reviewAnswer = z.object({
  accounts: z.array(
    z.object({
      id: z.string(),
      name: z.string(),
      role: z.enum(ROLES),
      lastSignedInAt: time,
      pinSetAt: time,
      codeUntil: time,
      signedInAt: z.array(z.string()),
    }),
  ),
  alarms: z.array(
    z.object({ person: z.string().nullable(), inARow: z.int(), screen: z.string(), at: z.iso.datetime() }),
  ),
  letIns: z.array(z.object({ person: z.string(), at: z.iso.datetime(), newKey: z.boolean() })),
  reviewed: z.object({ at: z.iso.datetime(), by: z.string() }).nullable(),
});

async function dataOf({ services }: BareCall): Promise<z.output<typeof reviewAnswer>> {
  const { alarms, letIns, reviewed: last } = await services.log.state(siteKind);
  const accounts = (await services.people.review()).map((one) => ({
    ...one,
    signedInAt: [...one.signedInAt],
  }));
  return { accounts, alarms: [...alarms], letIns: [...letIns], reviewed: last };
}

async function reviewPage(call: BareCall, typed: { readonly note: string }): Promise<PageView> {
  const { accounts, alarms, letIns, reviewed: last } = await dataOf(call);
  const named = async (id: string): Promise<string> => {
    const person = await call.services.people.find(id);
    return person === undefined ? id : `${person.name} (${id})`;
  };
  const params = {
    accounts: accounts.map((account) => accountRow(account, call)),
    alarms: await Promise.all(alarms.map((alarm) => alarmRow(alarm, named))),
    letIns: await Promise.all(
      letIns.map(async ({ person, at, newKey }) => ({ at: shownTime(at), who: await named(person), newKey })),
    ),
    last: last === null ? 'never' : `${shownTime(last.at)}, by ${await named(last.by)}`,
    note: typed.note,
  };
  return { title: 'Accounts', template: 'pages/review.njk', params };
}

async function alarmRow({ person, inARow, screen, at }: PinAlarm, named: (id: string) => Promise<string>) {
  return {
    at: shownTime(at),
    inARow,
    screen,
    who: person === null ? 'names that nobody has' : await named(person),
  };
}

function accountRow(account: AccountReview, { now }: BareCall) {
  const { id, name, role, lastSignedInAt, pinSetAt, codeUntil, signedInAt } = account;
  const since = (iso: string): number => Math.floor((now.getTime() - Date.parse(iso)) / DAY_MS);
  const isOpen = codeUntil !== null && Date.parse(codeUntil) > now.getTime();
  const notes = [
    ...(lastSignedInAt !== null && since(lastSignedInAt) >= UNUSED_DAYS
      ? [`not used for ${since(lastSignedInAt)} days`]
      : []),
    ...(codeUntil === null ? [] : [isOpen ? `code until ${shownTime(codeUntil)}` : 'code has run out']),
    ...signedInAt.map((screen) => `signed in at ${screen}`),
  ];
  return {
    id,
    name,
    role: ROLE_WORDS[role],
    lastUsed: lastSignedInAt === null ? 'never' : shownTime(lastSignedInAt),
    pinSet: pinSetAt === null ? 'never' : pinSetAt.slice(0, 10),
    note: notes.join('; '),
  };
}

const showReview = route({
  method: 'GET',
  path: '/people/review',
  name: 'showReview',
  summary:
    'Every account with its last use, open sessions and age of its PIN; wrong PINs; who was let in at the console',
  roles: REVIEWERS,
  answer: reviewAnswer,
  handle: async (call) => ({ data: await dataOf(call), page: await reviewPage(call, { note: '' }) }),
});

const reviewAccounts = route({
  method: 'POST',
  path: '/people/review',
  name: 'reviewAccounts',
  summary: 'Say that every account was looked over',
  roles: REVIEWERS,
  body: z.object({ done: optionalText({ called: 'what was done', max: 300 }).default('') }),
  answer: z.object({ done: z.string() }),
  refused: async (call) => ({ page: await reviewPage(call, { note: '' }) }),
  handle: async (call) => {
    await reviewed(call.services.log, { note: call.body.done, by: byOf(call) });
    return { data: { done: call.body.done }, seeOther: '/people/review' };
  },
});

const lookInto = route({
  method: 'POST',
  path: '/people/alarms',
  name: 'lookIntoAlarms',
  summary: 'Say what was found out about the wrong PINs; their banner goes',
  roles: REVIEWERS,
  body: z.object({ note: text({ called: 'what you found', max: 300 }) }),
  answer: z.object({ note: z.string() }),
  refused: async (call) => ({ page: await reviewPage(call, typedIn(call.typed, ['note'])) }),
  handle: async (call) => {
    await lookIntoAlarms(call.services.log, { note: call.body.note, by: byOf(call) });
    return { data: { note: call.body.note }, seeOther: '/people/review' };
  },
});

export const reviewRoutes: readonly Route[] = [showReview, reviewAccounts, lookInto];
