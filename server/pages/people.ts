/** Who works here: the list, and what supervisors and engineers do about it. */
import { z } from 'zod';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import type { NewCode } from '../people/people.ts';
import { type Person, ROLE_WORDS } from '../people/person.ts';
import { nobodyOfThatId } from '../people/refusals.ts';
import { isReviewer } from '../people/review.ts';
import { ADDERS } from '../people/roll.ts';
import { shownTime } from '../shown-time.ts';
import { byOf, identityField, nameField, personAnswer, roleChoices, roleField, typedIn } from './parts.ts';

const mayAdd = (person: Person | null): boolean => ADDERS.some((role) => role === person?.role);

async function listPage(
  { services, person }: BareCall,
  typed: { readonly name: string; readonly role: string; readonly identity: string },
): Promise<PageView> {
  const people = await services.people.list();
  const rows = people.map(({ id, name, role, retired }) => ({
    id,
    name,
    role: ROLE_WORDS[role],
    retired,
    href: mayAdd(person) ? `/people/${id}` : '',
  }));
  const roles = roleChoices.map((choice) => ({ ...choice, checked: choice.value === typed.role }));
  const mayReview = person !== null && isReviewer(person.role);
  const { name, identity } = typed;
  const params = { rows, mayAdd: mayAdd(person), mayReview, name, identity, roles };
  return { title: 'People', template: 'pages/people.njk', params };
}

const listPeople = route({
  method: 'GET',
  path: '/people',
  name: 'listPeople',
  summary: 'Everybody who works here or did',
  roles: 'signed-in',
  menu: { text: 'People', order: 80 },
  answer: z.object({ people: z.array(personAnswer) }),
  handle: async (call) => ({
    data: { people: [...(await call.services.people.list())] },
    page: await listPage(call, { name: '', role: '', identity: '' }),
  }),
});

const codeAnswer = z.object({ person: personAnswer, code: z.string(), validUntil: z.iso.datetime() });

/** The code stands on this page and nowhere else. */
function codePage({ person, code, validUntil }: NewCode): PageView {
  const params = { name: person.name, id: person.id, code, until: shownTime(validUntil) };
  return { title: 'One-time code', template: 'pages/new-code.njk', params };
}

const addPerson = route({
  method: 'POST',
  path: '/people',
  name: 'addPerson',
  summary: 'Add somebody; the one-time code for their first sign-in is in this answer and nowhere else',
  roles: ADDERS,
  body: z.object({ name: nameField, role: roleField, identity: identityField }),
  answer: codeAnswer,
  refused: async (call) => ({
    page: await listPage(call, typedIn(call.typed, ['name', 'role', 'identity'])),
  }),
  handle: async (call) => {
    const { name, role, identity: identityCheckedHow } = call.body;
    const given = await call.services.people.add({ name, role, identityCheckedHow }, byOf(call));
    return { status: 201, data: given, page: codePage(given) };
  },
});

async function personPage(
  call: BareCall,
  typed: { readonly name?: string; readonly identity?: string },
): Promise<PageView> {
  const person = await call.services.people.find(call.params.id ?? '');
  if (person === undefined) throw nobodyOfThatId(call.params.id ?? '');
  const params = {
    id: person.id,
    name: typed.name ?? person.name,
    identity: typed.identity ?? '',
    role: ROLE_WORDS[person.role],
    retired: person.retired,
    isSelf: person.id === call.person?.id,
    roles: roleChoices.map((choice) => ({ ...choice, checked: choice.value === person.role })),
  };
  return { title: person.name, template: 'pages/person.njk', params };
}

const again = async (call: BareCall) => ({ page: await personPage(call, {}) });

const showPerson = route({
  method: 'GET',
  path: '/people/:id',
  name: 'showPerson',
  summary: 'One person',
  roles: ADDERS,
  answer: z.object({ person: personAnswer }),
  handle: async (call) => {
    const person = await call.services.people.find(call.params.id ?? '');
    if (person === undefined) throw nobodyOfThatId(call.params.id ?? '');
    return { data: { person }, page: await personPage(call, {}) };
  },
});

const renamePerson = route({
  method: 'POST',
  path: '/people/:id/name',
  name: 'renamePerson',
  summary: 'Change what somebody is called',
  roles: ADDERS,
  body: z.object({ name: nameField }),
  answer: z.object({ person: personAnswer }),
  refused: async (call) => ({ page: await personPage(call, typedIn(call.typed, ['name'])) }),
  handle: async (call) => {
    const { id = '' } = call.params;
    const person = await call.services.people.rename({ id, name: call.body.name }, byOf(call));
    return { data: { person }, seeOther: `/people/${person.id}` };
  },
});

const changeRole = route({
  method: 'POST',
  path: '/people/:id/role',
  name: 'changeRole',
  summary: 'Give somebody another role; ends their sessions',
  roles: ADDERS,
  body: z.object({ role: roleField }),
  answer: z.object({ person: personAnswer }),
  refused: again,
  handle: async (call) => {
    const { id = '' } = call.params;
    const person = await call.services.people.changeRole({ id, role: call.body.role }, byOf(call));
    return { data: { person }, seeOther: `/people/${person.id}` };
  },
});

const giveCode = route({
  method: 'POST',
  path: '/people/:id/code',
  name: 'giveCode',
  summary: 'A one-time code in the place of a forgotten PIN; ends sessions and opens an account that is held',
  roles: ADDERS,
  body: z.object({ identity: identityField }),
  answer: codeAnswer,
  refused: async (call) => ({ page: await personPage(call, typedIn(call.typed, ['identity'])) }),
  handle: async (call) => {
    const of = { id: call.params.id ?? '', identityCheckedHow: call.body.identity };
    const given = await call.services.people.giveCode(of, byOf(call));
    return { data: given, page: codePage(given) };
  },
});

const endSessions = route({
  method: 'POST',
  path: '/people/:id/sign-out',
  name: 'endSessions',
  summary: 'Sign somebody out at every screen',
  roles: ADDERS,
  answer: z.object({ id: z.string() }),
  refused: again,
  handle: async (call) => {
    const { id = '' } = call.params;
    await call.services.people.endSessions(id, byOf(call));
    return { data: { id }, seeOther: `/people/${id}` };
  },
});

const retirePerson = route({
  method: 'POST',
  path: '/people/:id/retire',
  name: 'retirePerson',
  summary: 'Somebody works here no longer; what they did stays in the log',
  roles: ADDERS,
  answer: z.object({ person: personAnswer }),
  refused: again,
  handle: async (call) => {
    const person = await call.services.people.retire(call.params.id ?? '', byOf(call));
    return { data: { person }, seeOther: '/people' };
  },
});

export const peopleRoutes: readonly Route[] = [
  listPeople,
  addPerson,
  showPerson,
  renamePerson,
  changeRole,
  giveCode,
  endSessions,
  retirePerson,
];
