import type { BareCall } from '../http/route.ts';
import type { Person } from '../people/person.ts';
import { signingOf } from '../signing/signatory.ts';
import { actOnJob } from './acts.ts';
import type { Catalogue } from './catalogue.ts';
import { type ActFields, type ActName, readAction } from './read-action.ts';

/** What proves who acts: being signed in at the screen, or name and PIN once more. No act can be left out. */
const PROVED_BY: Readonly<Record<ActName, 'session' | 'PIN'>> = {
  answer: 'session',
  'make-safe': 'session',
  'go-back': 'session',
  correct: 'session',
  park: 'session',
  'take-up': 'session',
  'prove-again': 'session',
  'go-on': 'session',
  sign: 'PIN',
  'send-back': 'PIN',
  waive: 'PIN',
  override: 'PIN',
  review: 'PIN',
  'review-back': 'PIN',
  'read-again': 'PIN',
  'confirm-radio': 'PIN',
  'deny-radio': 'PIN',
};

export type ActCall = BareCall & { readonly person: Person; readonly body: ActFields };

/**
 * One act as a form or a JSON body asks for it. What is signed is proven by name and PIN first, on the page that the
 * form was drawn for.
 *
 * @throws Refusal from reading the form, from the PIN, or from the job
 */
export async function actByForm(
  call: ActCall,
  { catalogue, job }: { readonly catalogue: Catalogue; readonly job: string },
): Promise<void> {
  const { services, requestId, screen, body } = call;
  const action = readAction(body);
  const by = { services, catalogue, requestId, screen, job, action };
  if (PROVED_BY[action.kind] === 'session') return await actOnJob({ ...by, person: call.person });
  const line = 'about' in action ? action.about : action.place;
  const page = { job, line, digest: body.shownDigest ?? '', screen };
  await actOnJob({ ...by, ...(await signingOf(call, { fields: body, page })) });
}
