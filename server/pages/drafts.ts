/** What somebody typed into a form after their session had ended: offered again to them, and to nobody else. */
import { z } from 'zod';
import { notFound } from '../http/errors.ts';
import { type Call, type PageView, type Route, route } from '../http/route.ts';
import type { Draft } from '../people/drafts.ts';
import { shownTime } from '../shown-time.ts';

const draftAnswer = z.object({
  id: z.string(),
  action: z.string(),
  at: z.iso.datetime(),
  fields: z.record(z.string(), z.union([z.string(), z.array(z.string())])),
});

/** Not typed by anybody: they stood in the form. */
const HIDDEN = ['place', 'step', 'act', 'shownDigest', 'revision', 'digest'];

function draftsPage(drafts: readonly (Draft & { readonly id: string })[]): PageView {
  const rows = drafts.map(({ id, action, at, requestId, fields }) => {
    const pairs = Object.entries(fields).flatMap(([name, value]) =>
      [value].flat().map((each) => ({ name, value: each })),
    );
    const typed = pairs.filter(({ name, value }) => value !== '' && !HIDDEN.includes(name));
    const shown = typed.map(({ name, value }) => ({ label: asWords(name), text: '', strong: value }));
    return { id, action, at: shownTime(at), requestId, fields: pairs, shown };
  });
  return { title: 'What you typed', template: 'pages/drafts.njk', params: { rows } };
}

/** @example asWords('casePressure') // 'case pressure' */
function asWords(name: string): string {
  return name.replace(/(?<=[a-z])([A-Z])/g, ' $1').toLowerCase();
}

async function mine({ services, person }: Call<unknown, unknown, { readonly id: string }>) {
  return await services.drafts.of(person.id);
}

const listDrafts = route({
  method: 'GET',
  path: '/drafts',
  name: 'listDrafts',
  summary: 'What you typed into forms that came after your session had ended; nobody else sees it',
  roles: 'signed-in',
  answer: z.object({ drafts: z.array(draftAnswer) }),
  handle: async (call) => {
    const drafts = await mine(call);
    const data = drafts.map(({ id, action, at, fields }) => ({ id, action, at, fields }));
    return { data: { drafts: data }, page: draftsPage(drafts) };
  },
});

const discardDraft = route({
  method: 'POST',
  path: '/drafts/:id/discard',
  name: 'discardDraft',
  summary: 'Throw away what you typed and did not send',
  roles: 'signed-in',
  answer: z.object({ id: z.string() }),
  handle: async ({ services, person, params }) => {
    const { id = '' } = params;
    if (!(await services.drafts.discard({ id, person: person.id }))) throw notFound();
    return { data: { id }, seeOther: '/drafts' };
  },
});

export const draftRoutes: readonly Route[] = [listDrafts, discardDraft];
