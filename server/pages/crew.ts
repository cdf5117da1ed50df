/** Who is on a job with their locks: joining it, leaving it, handing it over, and locks of somebody who is away. */
import { z } from 'zod';
import { LOCK_IDS } from '../../safety/conditions.ts';
import { type Fields, oneOf, optionalText, text } from '../http/fields.ts';
import { type BareCall, type Call, type Route, route } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import type { Person } from '../people/person.ts';
import { handOverJob, joinJob, leaveJob } from '../points/crew-acts.ts';
import { VERIFIED } from '../points/crew-stream.ts';
import { type CrewForm, crewAnswer, crewPage, crewView } from '../points/crew-view.ts';
import { removeInAbsence } from '../points/removal-acts.ts';
import { pinField, typedIn, whoField } from './parts.ts';

const WORKERS = ['technician', 'supervisor', 'engineer'] as const;

const LOCK_FIELDS = LOCK_IDS.flatMap((id) => [`${id}Tag`, `${id}Number`]);
const lockFields = Object.fromEntries(
  LOCK_FIELDS.map((name) => [name, optionalText({ called: 'this', max: 60 }).optional()]),
);

const jobAnswer = z.object({ job: z.string() });
const pathOf = (job: string): string => `/jobs/${job}/people`;

export function crewRoutes(catalogue: Catalogue): readonly Route[] {
  return [
    showCrew(catalogue),
    joinRoute(catalogue),
    leaveRoute(catalogue),
    handOverRoute(catalogue),
    showAway(catalogue),
    awayRoute(catalogue),
  ];
}

type SignedIn = Call<unknown, unknown, Person>;

function callOf(call: SignedIn, { catalogue, person }: { catalogue: Catalogue; person: Person }) {
  const { services, requestId, screen, params } = call;
  return { services, catalogue, requestId, screen, person, job: params.id ?? '' };
}

/** Whoever's locks they are says so by name and PIN, whoever is signed in at the screen. */
function proven({ services, screen }: BareCall, { who, pin }: { who: string; pin: string }): Promise<Person> {
  return services.people.verify({ who, pin, screen });
}

function again(catalogue: Catalogue, form: CrewForm) {
  return async (call: BareCall & { readonly typed: Fields }) => {
    const names = [...LOCK_FIELDS, 'who', 'verified', 'owner', 'foundOut', 'attempts', 'toldBy', 'reason'];
    return { page: await crewPage(call, { catalogue, form, typed: typedIn(call.typed, names) }) };
  };
}

function showCrew(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/jobs/:id/people',
    name: 'showCrew',
    summary: 'Who is on a job, each with their locks; what whoever joins is shown',
    roles: 'signed-in',
    answer: crewAnswer,
    handle: async (call) => ({
      data: await crewView(call, catalogue),
      page: await crewPage(call, { catalogue, form: 'none', typed: {} }),
    }),
  });
}

function joinRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/jobs/:id/people/join',
    name: 'joinJob',
    summary: 'Join a job: the own lock on each point, the readings shown and verified or relied on',
    roles: WORKERS,
    body: z.object({ who: whoField, pin: pinField, verified: oneOf(VERIFIED), ...lockFields }),
    answer: jobAnswer,
    refused: again(catalogue, 'join'),
    handle: async (call) => {
      const { who, pin, verified, ...texts } = call.body;
      const person = await proven(call, { who, pin });
      const to = callOf(call, { catalogue, person });
      await joinJob(to, { verified, texts });
      return { data: { job: to.job }, seeOther: pathOf(to.job) };
    },
  });
}

function leaveRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/jobs/:id/people/leave',
    name: 'leaveJob',
    summary: 'Leave a job: the own locks come off',
    roles: WORKERS,
    body: z.object({ who: whoField, pin: pinField }),
    answer: jobAnswer,
    refused: again(catalogue, 'leave'),
    handle: async (call) => {
      const to = callOf(call, { catalogue, person: await proven(call, call.body) });
      await leaveJob(to);
      return { data: { job: to.job }, seeOther: pathOf(to.job) };
    },
  });
}

function handOverRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/jobs/:id/people/hand-over',
    name: 'handOverJob',
    summary:
      'Hand a job over: the incoming person by name and PIN, their locks on before the others come off',
    roles: WORKERS,
    body: z.object({ who: whoField, pin: pinField, ...lockFields }),
    answer: jobAnswer,
    refused: again(catalogue, 'hand-over'),
    handle: async (call) => {
      const { who, pin, ...texts } = call.body;
      const incoming = await proven(call, { who, pin });
      const to = callOf(call, { catalogue, person: call.person });
      await handOverJob(to, { incoming, texts });
      return { data: { job: to.job }, seeOther: pathOf(to.job) };
    },
  });
}

function showAway(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/jobs/:id/people/away',
    name: 'showAway',
    summary: 'What is asked before locks of somebody who is away come off',
    roles: ['supervisor'],
    query: z.object({ owner: text({ called: 'whose locks', max: 20 }) }),
    answer: crewAnswer,
    handle: async (call) => ({
      data: await crewView(call, catalogue),
      page: await crewPage(call, { catalogue, form: 'away', typed: { owner: call.query.owner } }),
    }),
  });
}

const long = (called: string) => text({ called, max: 300 });

function awayRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: '/jobs/:id/people/away',
    name: 'removeLocksInAbsence',
    summary: 'Take the locks of somebody who is away off a job; counted, and the owner is told',
    roles: ['supervisor'],
    body: z.object({
      owner: text({ called: 'whose locks', max: 20 }),
      foundOut: long('how you know that they are not on site'),
      attempts: long('how you tried to reach them'),
      toldBy: long('who tells them before their next shift, and how'),
      reason: long('why the locks must come off'),
      pin: pinField,
    }),
    answer: jobAnswer,
    refused: again(catalogue, 'away'),
    handle: async (call) => {
      const { pin, ...absence } = call.body;
      const person = await proven(call, { who: call.person.id, pin });
      const to = callOf(call, { catalogue, person });
      await removeInAbsence(to, absence);
      return { data: { job: to.job }, seeOther: pathOf(to.job) };
    },
  });
}
