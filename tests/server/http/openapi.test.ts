import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import type { OpenApi } from '../../../server/http/openapi.ts';
import { type AnApp, anApp } from '../an-app.ts';

let app: AnApp;
let described: OpenApi;

beforeAll(async () => {
  app = await anApp({ people: true });
  described = (await (
    await app.get('/openapi.json', { headers: { accept: 'application/json' } })
  ).json()) as OpenApi;
});
afterAll(() => app.close());

/** The schema of an answer, read back from the document alone. */
function answerSchema(path: string, method: 'get' | 'post'): z.ZodType {
  const operation = described.paths[path]?.[method] as {
    responses: { '2XX': { content: { 'application/json': { schema: z.core.JSONSchema.JSONSchema } } } };
  };
  return z.fromJSONSchema(operation.responses['2XX'].content['application/json'].schema);
}

describe('the description for programs', () => {
  test('has every route, once, under its own name', () => {
    const operations = Object.entries(described.paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, operation]) => `${method} ${path} ${operation.operationId}`),
    );
    const registered = app.routes.map(
      ({ method, path, name }) =>
        `${method.toLowerCase()} ${path.replace(/:(\w+)(\{[^}]*\})?/g, '{$1}')} ${name}`,
    );
    expect(operations.sort()).toEqual(registered.sort());
    expect(described.openapi).toBe('3.1.0');
  });

  test('names each piece of an address as a parameter, and says who may ask', () => {
    for (const [path, methods] of Object.entries(described.paths)) {
      const pieces = Array.from(path.matchAll(/\{(\w+)\}/g), ([, name]) => name);
      for (const operation of Object.values(methods)) {
        const parameters = operation.parameters as readonly { name: string; in: string }[];
        expect(parameters.filter((each) => each.in === 'path').map(({ name }) => name)).toEqual(pieces);
        expect(operation.description).toMatch(/^For: ./);
      }
    }
  });

  test('describes each post in both forms, with its fields as texts and the id of the request', () => {
    const body = described.paths['/people']?.post?.requestBody ?? {};
    const { content } = body as { content: Record<string, { schema: unknown }> };
    expect(Object.keys(content)).toEqual(['application/json', 'application/x-www-form-urlencoded']);
    for (const { schema } of Object.values(content)) {
      expect(schema).toMatchObject({
        type: 'object',
        required: ['name', 'role', 'identity'],
        properties: {
          name: { type: 'string' },
          role: { enum: expect.arrayContaining(['engineer']) },
          requestId: {},
        },
      });
    }
  });

  test('is what the server answers, read back from the document', async () => {
    const { browser } = await app.signedIn('engineer');
    const json = { as: browser, headers: { accept: 'application/json' } };
    for (const path of ['/', '/people', '/sign-in', '/pin', '/help', '/alive', '/openapi.json']) {
      const answer: unknown = await (await app.get(path, json)).json();
      expect(answerSchema(path, 'get').safeParse(answer).error, path).toBeUndefined();
    }
    const added: unknown = await (
      await app.postJson('/people', { name: 'T', role: 'technician', identity: 'works with me' }, json)
    ).json();
    expect(answerSchema('/people', 'post').safeParse(added).error).toBeUndefined();
    expect(answerSchema('/people', 'post').safeParse({ person: added }).success).toBe(false);
  });

  test('describes refusals as they come', async () => {
    const { schemas } = described.components as { schemas: { Problem: z.core.JSONSchema.JSONSchema } };
    const refused: unknown = await (await app.postJson('/people', {})).json();
    expect(z.fromJSONSchema(schemas.Problem).safeParse(refused).error).toBeUndefined();
    expect(z.fromJSONSchema(schemas.Problem).safeParse({ status: 401 }).success).toBe(false);
  });
});

test('every form in the templates goes to an address that is served', () => {
  const folder = join(import.meta.dirname, '../../../views');
  const templates = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.njk'),
  );
  const served = new Set(app.routes.map(({ method, path }) => `${method} ${path}`));
  const actions = templates.flatMap((name) => {
    const forms = readFileSync(join(folder, name), 'utf8').match(/<form\b[^>]*>/g) ?? [];
    return forms.flatMap((tag) => {
      const action = / action="(\/[^"{]*)"/.exec(tag)?.[1];
      const method = / method="post"/.test(tag) ? 'POST' : 'GET';
      return action === undefined ? [] : [`${method} ${action}`];
    });
  });
  expect(actions.length).toBeGreaterThan(5);
  // The demo plant is served only where there is one to load.
  expect(actions.filter((action) => !served.has(action) && action !== 'POST /set-up/demo')).toEqual([]);
});
