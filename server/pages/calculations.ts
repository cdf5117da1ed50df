/** The calculations, each usable by itself: a page with a form, and the same as JSON, both made of the registry. */
import { z } from 'zod';
import { type Calculation, TOPICS } from '../../procedures/calculations/calculation-types.ts';
import { CALCULATIONS } from '../../procedures/calculations/registry.ts';
import { Refusal } from '../../safety/refusal.ts';
import { type Asked, askedOf, type Query } from '../calculations/ask.ts';
import { calculationPage, hasTable, shortAddress } from '../calculations/page.ts';
import { readInputs } from '../calculations/read-inputs.ts';
import { resultLines } from '../calculations/result-words.ts';
import { answerSchema, textsSchema } from '../calculations/schemas.ts';
import { pathOfCalculation, sourceViews } from '../calculations/view.ts';
import { type WorkedOut, workOut } from '../calculations/work-out.ts';
import { type Fields, optionalText } from '../http/fields.ts';
import { type Again, type BareCall, type Route, route } from '../http/route.ts';

const listAnswer = z.object({
  calculations: z.array(
    z.object({
      id: z.string(),
      title: z.string(),
      subject: z.string(),
      address: z.string(),
      validity: z.string(),
    }),
  ),
});

const listCalculations = route({
  method: 'GET',
  path: '/calculations',
  name: 'listCalculations',
  summary: 'Every calculation that can be used by itself, by subject; `valve` leads on to those of a valve',
  roles: 'signed-in',
  menu: { text: 'Calculations', order: 65 },
  query: z.object({ valve: optionalText({ called: 'the tag of a valve' }).default('') }),
  answer: listAnswer,
  handle: ({ query: { valve } }) => {
    const tail = valve === '' ? '' : `?${new URLSearchParams({ valve })}`;
    const subjects = TOPICS.map((topic) => ({
      title: topic,
      lines: CALCULATIONS.filter((each) => each.topic === topic).map(({ id, title }) => ({
        title,
        href: pathOfCalculation(id) + tail,
      })),
    }));
    const calculations = CALCULATIONS.map(({ id, title, topic, validity }) => ({
      id,
      title,
      subject: topic,
      address: pathOfCalculation(id),
      validity,
    }));
    return {
      data: { calculations },
      page: {
        title: 'Calculations',
        template: 'pages/calculations.njk',
        params: { subjects, valve, count: CALCULATIONS.length },
      },
    };
  },
});

/** `bench-set` to `calculateBenchSet`. */
function operationName(id: string): string {
  return id.replaceAll(/(?:^|-)([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}

interface Answered {
  readonly asked: Asked;
  /** Null as long as nothing was given and something is needed. */
  readonly worked: WorkedOut | null;
}

async function answered(
  calculation: Calculation,
  call: BareCall & { readonly fields: Query },
): Promise<Answered> {
  const asked = await askedOf(calculation, { query: call.fields, log: call.services.log });
  const untouched = !asked.given && readInputs(calculation, asked).missing.length > 0;
  return { asked, worked: untouched ? null : workOut(calculation, asked) };
}

function dataOf(calculation: Calculation, { asked, worked }: Answered) {
  const { id, title, equation, validity } = calculation;
  const inputs = Object.entries(asked.texts)
    .filter(([, text]) => text !== '')
    .map(([name, typed]) => [name, { typed, fromSheet: asked.sheetTexts[name] === typed }]);
  return {
    calculation: id,
    title,
    equation,
    validity,
    sources: sourceViews(calculation),
    units: asked.units,
    valve: asked.valve === '' ? null : asked.valve,
    inputs: Object.fromEntries(inputs),
    missing: worked === null ? [...readInputs(calculation, asked).missing] : [],
    results: worked === null ? null : worked.result,
    shown: worked === null ? [] : [...resultLines(calculation, worked.result)],
  };
}

/** The form again with what was typed; the sheet of a valve that there is none of fills nothing. */
async function drawnAgain(
  calculation: Calculation,
  call: BareCall & { readonly fields: Fields },
): Promise<Again> {
  const texts = Object.entries(call.fields).filter(
    (pair): pair is [string, string] => typeof pair[1] === 'string',
  );
  const query: Query = Object.fromEntries(texts);
  const { log } = call.services;
  const asked = await askedOf(calculation, { query, log }).catch(async (error: unknown) => {
    if (!(error instanceof Refusal)) throw error;
    return {
      ...(await askedOf(calculation, { query: { ...query, valve: '' }, log })),
      valve: query.valve ?? '',
    };
  });
  return { page: calculationPage({ calculation, asked, worked: null }) };
}

/** Schemas of all calculations take longer than the rest of a start; most starts ask for a few. */
function once<T>(make: () => T): () => T {
  let made: { readonly is: T } | undefined;
  return () => {
    made ??= { is: make() };
    return made.is;
  };
}

function routesOf(calculation: Calculation): readonly Route[] {
  const { id, title, validity } = calculation;
  const path = pathOfCalculation(id) as `/${string}`;
  const summary = `${title}. ${validity}`;
  const common = { path, roles: 'signed-in' } as const;
  const answer = once(() => answerSchema(calculation));
  const texts = once(() => textsSchema(calculation));
  const shown = route({
    ...common,
    get answer() {
      return answer();
    },
    get query() {
      return texts();
    },
    method: 'GET',
    name: `calculate${operationName(id)}`,
    summary,
    refused: (call) => drawnAgain(calculation, { ...call, fields: call.query }),
    handle: async (call) => {
      const done = await answered(calculation, { ...call, fields: call.query });
      return { data: dataOf(calculation, done), page: calculationPage({ calculation, ...done }) };
    },
  });
  if (!hasTable(calculation)) return [shown];
  const posted = route({
    ...common,
    get answer() {
      return answer();
    },
    get body() {
      return texts();
    },
    method: 'POST',
    name: `calculateLong${operationName(id)}`,
    summary: `${title}, for a table that is too long for an address. Nothing is recorded`,
    refused: (call) => drawnAgain(calculation, { ...call, fields: call.typed }),
    handle: async (call) => {
      const done = await answered(calculation, { ...call, fields: call.body });
      const page = calculationPage({ calculation, ...done });
      const address = shortAddress(calculation, done.asked);
      const data = dataOf(calculation, done);
      return { data, page, fragment: page, ...(address === '' ? {} : { seeOther: address }) };
    },
  });
  return [shown, posted];
}

export const calculationRoutes: readonly Route[] = [listCalculations, ...CALCULATIONS.flatMap(routesOf)];
