/** The description of all routes for programs, made from the very schemas that read and answer. */
import { z } from 'zod';
import { type Route, route } from './route.ts';

/** What a refusal or fault is told as. */
const problemSchema = z.object({
  status: z.int(),
  code: z.string().describe('Stable, for programs: LOG-001'),
  what: z.string().describe('What is wrong'),
  kept: z.string().describe('What was kept of that which was sent'),
  next: z.string().describe('What to do next'),
  fields: z
    .record(z.string(), z.string())
    .optional()
    .describe('The message of each wrong field, by its name'),
});

type Schema = Readonly<Record<string, unknown>>;

export interface OpenApi {
  readonly openapi: string;
  readonly info: Schema;
  readonly paths: Readonly<Record<string, Readonly<Record<string, Schema>>>>;
  readonly components: Schema;
}

const ABOUT = [
  'Every page is also an answer in JSON: ask with "Accept: application/json".',
  'Sign in with POST /sign-in and send the cookies that it sets with every request.',
  'A POST sends the header "Origin" with the address of this server, as a browser does.',
  'Fields are texts, read as people write them ("9 psi"); a number is taken for its text.',
  'A program that sends many readings asks for the outcome of an act alone with "Prefer: return=minimal".',
  'A POST that carries a requestId of its own may be sent again after a lost answer: it is done once.',
].join('\n\n');

/** @param version of the program */
function openApi(routes: readonly Route[], version: string): OpenApi {
  const paths: Record<string, Record<string, Schema>> = {};
  for (const each of routes) {
    const path = each.path.replace(/:(\w+)(\{[^}]*\})?/g, '{$1}');
    paths[path] = { ...paths[path], [each.method.toLowerCase()]: operation(each) };
  }
  return {
    openapi: '3.1.0',
    info: { title: 'Yokeside', version, description: ABOUT },
    paths,
    components: {
      schemas: { Problem: jsonSchema(problemSchema, 'output') },
      securitySchemes: { session: { type: 'apiKey', in: 'cookie', name: 'yokeside-session' } },
    },
  };
}

/** Serves the description of the routes given, and of itself. */
export function openApiRoute(others: readonly Route[], version: string): Route {
  // Described when it is first asked for: a start has better things to do.
  let described: OpenApi | undefined;
  const own = route({
    method: 'GET',
    path: '/openapi.json',
    name: 'describeApi',
    summary: 'This description',
    roles: 'anyone',
    background: true,
    answer: z.looseObject({ openapi: z.string() }),
    handle: () => {
      described ??= openApi([...others, own], version);
      return { data: { ...described } };
    },
  });
  return own;
}

function operation(of: Route): Schema {
  return {
    operationId: of.name,
    summary: of.summary,
    description: `For: ${typeof of.roles === 'string' ? of.roles : of.roles.join(', ')}.`,
    parameters: parametersOf(of),
    ...(of.method === 'POST' ? { requestBody: requestBody(of) } : {}),
    responses: {
      '2XX': { description: 'Done', content: contentOf(of) },
      default: {
        description: 'Not done',
        content: { 'application/json': { schema: { $ref: '#/components/schemas/Problem' } } },
      },
    },
    security: of.roles === 'anyone' ? [] : [{ session: [] }],
  };
}

function contentOf({ answer, rawType }: Route): Schema {
  const json = { 'application/json': { schema: jsonSchema(answer, 'output') } };
  return rawType === undefined ? json : { ...json, [rawType]: {} };
}

function parametersOf({ path, query, method, mayTellOutcome }: Route): readonly Schema[] {
  const inPath = Array.from(path.matchAll(/:(\w+)/g), ([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string' },
  }));
  const described = query === undefined ? {} : jsonSchema(query, 'input');
  const required = Array.isArray(described.required) ? described.required : [];
  const inQuery = Object.entries(described.properties ?? {}).map(([name, schema]) => ({
    name,
    in: 'query',
    required: required.includes(name),
    schema,
  }));
  const origin = { name: 'Origin', in: 'header', required: true, schema: { type: 'string' } };
  return [...inPath, ...inQuery, ...(method === 'POST' ? [origin] : []), ...(mayTellOutcome ? [PREFER] : [])];
}

const PREFER = {
  name: 'Prefer',
  in: 'header',
  required: false,
  description: '"return=minimal" is answered with the outcome alone',
  schema: { type: 'string' },
};

function requestBody({ body = z.object({}), fileField, takesTextFiles }: Route): Schema {
  const described = jsonSchema(body, 'input');
  const requestId = {
    type: 'string',
    pattern: '^[\\w-]{8,100}$',
    description: 'Your own id of this request',
  };
  const schema = { ...described, properties: { ...described.properties, requestId } };
  if (fileField !== undefined) {
    const file = { type: 'string', format: 'binary' };
    const whole = { ...schema, properties: { ...schema.properties, [fileField]: file } };
    return { content: { 'multipart/form-data': { schema: whole } } };
  }
  return {
    content: {
      'application/json': { schema },
      'application/x-www-form-urlencoded': { schema },
      ...(takesTextFiles ? { 'multipart/form-data': { schema } } : {}),
    },
  };
}

function jsonSchema(schema: z.ZodType, io: 'input' | 'output'): z.core.JSONSchema.BaseSchema {
  const { $schema: _, ...described } = z.toJSONSchema(schema, { io, unrepresentable: 'any' });
  return described;
}
