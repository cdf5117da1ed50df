import type { ActionKind } from '../../procedures/actions/action.ts';
import type { BareCall } from '../http/route.ts';
import type { Person } from '../people/person.ts';
import { signingOf } from '../signing/signatory.ts';
import { actOnJob } from './acts.ts';
import type { Catalogue } from './catalogue.ts';
import { type ActFields, readAction } from './read-action.ts';

/** Acts that a name and a PIN stand under, whoever is signed in at the screen. */
const BY_PIN: readonly ActionKind[] = [
  'sign',
  'send-back',
  'waive',
  'override',
  'review',
  'review-back',
  'read-again',
  'confirm-radio',
  'deny-radio',
];

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
  if (!BY_PIN.includes(action.kind)) return await actOnJob({ ...by, person: call.person });
  const line = 'about' in action ? action.about : action.place;
  const page = { job, line, digest: body.shownDigest ?? '', screen };
  await actOnJob({ ...by, ...(await signingOf(call, { fields: body, page })) });
}
