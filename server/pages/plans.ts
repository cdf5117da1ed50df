/** Plans: the list of what is to do, and the page of one: made by hand, saved anew, withdrawn. */
import { z } from 'zod';
import { PLAN_FIELDS, PLAN_ROLES, type PlanFieldName } from '../../procedures/plans/plan.ts';
import { type PlanTexts, planText } from '../../procedures/plans/read-plan.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import { type Fields, optionalText, text } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { Person } from '../people/person.ts';
import { addPlan, savePlan, withdrawPlan } from '../plans/plan-acts.ts';
import { noSuchPlan } from '../plans/plan-refusals.ts';
import { planKind, type SavedPlan } from '../plans/plan-stream.ts';
import { historyOf, standsWords } from '../plans/plan-words.ts';
import { daysLate, dueWords, openPlans, pathOfPlan, plannedSchema } from '../plans/planned.ts';
import { shownTime } from '../shown-time.ts';
import { byOf, typedIn } from './parts.ts';

/** Who plans work. */
export const PLANNERS = ['supervisor', 'engineer'] as const;

export const mayPlan = (person: Person | null): boolean => PLANNERS.some((role) => role === person?.role);

/** So many stand on the list; the counts are of all. */
const LISTED_MAX = 200;

const FIELD_NAMES = PLAN_FIELDS.map(({ name }) => name);
const SAVED_NAMES = FIELD_NAMES.filter((name) => name !== 'number');

/** Left blank, each is told by `readPlan` with the reason. */
const planField = (name: string) => optionalText({ called: `the ${name}`, max: 400 }).default('');
const savedFields = z.object(Object.fromEntries(SAVED_NAMES.map((name) => [name, planField(name)])));

const planAnswer = z.object({
  ...(Object.fromEntries(FIELD_NAMES.map((name) => [name, z.string()])) as Record<
    PlanFieldName,
    z.ZodString
  >),
  revision: z.int(),
  status: z.enum(['planned', 'opened', 'withdrawn']),
  job: z.string().nullable(),
  why: z.string(),
});

type PlanAnswer = z.input<typeof planAnswer>;

function answerOf({ plan, revision, status, job, why }: SavedPlan): PlanAnswer {
  return { ...planText(plan), revision, status: status === 'none' ? 'planned' : status, job, why };
}

/** @throws Refusal PLN-001 */
async function planAt({ services, params }: BareCall): Promise<SavedPlan> {
  const number = params.number ?? '';
  const state = await services.log.state(planKind, number);
  if (state.plan === null) throw noSuchPlan(number);
  return { ...state, plan: state.plan };
}

const listPlans = route({
  method: 'GET',
  path: '/plans',
  name: 'listPlans',
  summary: 'What is planned and still to do, the earliest date first',
  roles: 'signed-in',
  menu: { text: 'Plans', order: 15 },
  answer: z.object({ plans: z.array(plannedSchema), found: z.int() }),
  handle: async ({ services, person, now }) => {
    const looking = { role: person.role, nowMs: now.getTime(), listedMax: LISTED_MAX };
    const { plans, found } = await openPlans(services, looking);
    const params = { rows: plans, found, mayPlan: mayPlan(person) };
    return {
      data: { plans: [...plans], found },
      page: { title: 'Plans', template: 'pages/plans.njk', params },
    };
  },
});

/** The form's fields, for drawing them with what was typed or saved. */
function formParams(texts: PlanTexts): object {
  const options = (choices: readonly { value: string; label: string }[], typed = '') => [
    { value: '', label: 'choose', selected: typed === '' },
    ...choices.map((choice) => ({ ...choice, selected: choice.value === typed })),
  ];
  const procedures = PROCEDURES.map(({ definition: { id, title } }) => ({ value: id, label: title }));
  return {
    fields: Object.fromEntries(
      PLAN_FIELDS.map((field) => [field.name, { ...field, value: texts[field.name] ?? '' }]),
    ),
    procedures: options(procedures, texts.procedure),
    places: options(
      [
        { value: 'line', label: 'in the line' },
        { value: 'bench', label: 'on the bench' },
      ],
      texts.place,
    ),
    roles: options(
      PLAN_ROLES.map((role) => ({ value: role, label: role })),
      texts.role,
    ),
  };
}

function newPage(texts: PlanTexts): PageView {
  return { title: 'Plan work', template: 'pages/plan-new.njk', params: formParams(texts) };
}

const showNewPlan = route({
  method: 'GET',
  path: '/plans/new',
  name: 'showNewPlan',
  summary: 'What is asked of a plan',
  roles: PLANNERS,
  query: z.object({
    tag: optionalText({ called: 'the valve tag', max: 60 }).default(''),
    procedure: optionalText({ called: 'the procedure', max: 60 }).default(''),
    dueOn: optionalText({ called: 'the date', max: 10 }).default(''),
  }),
  answer: z.object({
    fields: z.array(z.object({ name: z.string(), label: z.string(), help: z.string().optional() })),
  }),
  handle: ({ query }) => ({
    data: { fields: [...PLAN_FIELDS] },
    page: newPage({ role: 'technician', ...query }),
  }),
});

const addRoute = route({
  method: 'POST',
  path: '/plans',
  name: 'addPlan',
  summary: 'Plan work on a valve; without a number it gets the next one',
  roles: PLANNERS,
  body: savedFields.extend({ number: planField('number') }),
  answer: z.object({ number: z.string() }),
  refused: ({ typed }) => ({ page: newPage(typedIn(typed, FIELD_NAMES)) }),
  handle: async (call) => {
    const number = await addPlan({ log: call.services.log, by: byOf(call) }, call.body);
    return { status: 201, data: { number }, seeOther: '/plans' };
  },
});

async function planPage(call: BareCall, typed?: Fields): Promise<PageView> {
  const saved = await planAt(call);
  const { plan, revision, status, job } = saved;
  const names = new Map((await call.services.people.list()).map(({ id, name }) => [id, name]));
  const entries = await call.services.log.entriesOf(streamOf('plan', plan.number));
  const late = daysLate(plan.dueOn, call.now.getTime());
  const texts = typed === undefined ? planText(plan) : { ...planText(plan), ...typedIn(typed, SAVED_NAMES) };
  const params = {
    ...plan,
    href: pathOfPlan(plan.number),
    valveHref: `/valves/${encodeURIComponent(plan.tag)}`,
    title: PROCEDURES.find(({ definition }) => definition.id === plan.procedure)?.definition.title ?? '',
    where: plan.place === 'bench' ? 'on the bench' : 'in the line',
    due: status === 'planned' ? dueWords(late) : '',
    stands: standsWords(saved),
    status,
    jobHref: job === null ? '' : `/jobs/${job}`,
    opens: `/jobs/new?${new URLSearchParams({ tag: plan.tag, procedure: plan.procedure, place: plan.place, plan: plan.number })}`,
    mayOpen: call.person !== null && PLAN_ROLES.some((role) => role === call.person?.role),
    mayPlan: mayPlan(call.person),
    revision,
    history: historyOf(entries).map(({ at, person, what }) => ({
      at: shownTime(at),
      who: names.get(person ?? '') ?? person ?? 'nobody',
      what,
    })),
    form: formParams(texts),
  };
  return { title: `Plan ${plan.number}`, template: 'pages/plan.njk', params };
}

const showPlan = route({
  method: 'GET',
  path: '/plans/:number',
  name: 'showPlan',
  summary: 'One plan, what became of it, and what was saved of it',
  roles: 'signed-in',
  answer: z.object({
    plan: planAnswer,
    history: z.array(z.object({ at: z.iso.datetime(), person: z.string().nullable(), what: z.string() })),
  }),
  handle: async (call) => {
    const saved = await planAt(call);
    const entries = await call.services.log.entriesOf(streamOf('plan', saved.plan.number));
    return {
      data: { plan: answerOf(saved), history: [...historyOf(entries)] },
      page: await planPage(call),
    };
  },
});

const saveRoute = route({
  method: 'POST',
  path: '/plans/:number',
  name: 'savePlan',
  summary: 'Save a plan anew; one that was withdrawn is planned again',
  roles: PLANNERS,
  body: savedFields.extend({ revision: text({ called: 'the revision that was changed', max: 10 }) }),
  answer: z.object({ number: z.string() }),
  refused: async (call) => ({ page: await planPage(call, call.typed) }),
  handle: async (call) => {
    const { revision = '', ...texts } = call.body;
    const to = { log: call.services.log, by: byOf(call) };
    const number = await savePlan(to, { number: call.params.number ?? '', revision, texts });
    return { data: { number }, seeOther: pathOfPlan(number) };
  },
});

const withdrawRoute = route({
  method: 'POST',
  path: '/plans/:number/withdraw',
  name: 'withdrawPlan',
  summary: 'Take a plan off the list; its lines stay',
  roles: PLANNERS,
  body: z.object({ why: text({ called: 'why it is withdrawn' }) }),
  answer: z.object({ number: z.string() }),
  refused: async (call) => ({ page: await planPage(call) }),
  handle: async (call) => {
    const to = { log: call.services.log, by: byOf(call) };
    const number = await withdrawPlan(to, { number: call.params.number ?? '', why: call.body.why });
    return { data: { number }, seeOther: '/plans' };
  },
});

export const planRoutes: readonly Route[] = [
  listPlans,
  showNewPlan,
  addRoute,
  showPlan,
  saveRoute,
  withdrawRoute,
];
