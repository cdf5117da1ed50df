/** How a client that is no browser reaches a server over the network: signed in once, with its cookie. */
import { randomUUID } from 'node:crypto';
import { form } from '../an-app.ts';
import type { Wire } from './job-client.ts';

export interface Signing {
  /** Where the server listens now: it may have been started again meanwhile. */
  readonly origin: () => string;
  readonly who: string;
  readonly pin: string;
}

/** @throws Error where the sign-in is refused */
export async function wireTo({ origin, who, pin }: Signing): Promise<Wire> {
  const post = (path: string, body: { readonly type: string; readonly text: string }, cookie = '') =>
    fetch(`${origin()}${path}`, {
      method: 'POST',
      headers: {
        origin: origin(),
        accept: body.type === JSON_TYPE ? JSON_TYPE : 'text/html',
        'content-type': body.type,
        cookie,
      },
      body: body.text,
      redirect: 'manual',
    });
  const asJson = (fields: object) => ({ type: JSON_TYPE, text: JSON.stringify(fields) });
  const answer = await post('/sign-in', asJson({ who, pin }));
  if (!answer.ok) throw new Error(`Signing in gave ${answer.status}: ${await answer.text()}`);
  const cookie = answer.headers
    .getSetCookie()
    .map((line) => line.split(';')[0])
    .join('; ');
  return {
    newRequestId: randomUUID,
    post: (path, fields, ask) =>
      post(path, ask === 'json' ? asJson(fields) : { type: FORM_TYPE, text: form(fields) }, cookie),
    get: (path) => fetch(`${origin()}${path}`, { headers: { accept: JSON_TYPE, cookie } }),
  };
}

const JSON_TYPE = 'application/json';
const FORM_TYPE = 'application/x-www-form-urlencoded';
