/** A tag that is not that of the step: the person stood at another component, and the site's log keeps it. */
import type { Action } from '../../procedures/actions/action.ts';
import type { Refusal } from '../../safety/refusal.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { Person } from '../people/person.ts';
import type { Services } from '../services.ts';
import { SITE_STREAM } from '../site-stream.ts';

interface Trying {
  readonly services: Services;
  readonly person: Person;
  readonly screen: string;
  readonly job: string;
}

/** What looks like the label of a component. Anything else that was typed there is not kept: it may be a PIN. */
const LABEL = /^[A-Za-z]{1,5}-[\w-]{1,20}$/;

/** Records a tag that the card refused. */
export async function recordWrongTag(
  call: Trying & { readonly action: Action },
  { text }: Refusal,
): Promise<void> {
  const [field = ''] = Object.keys(text.fields ?? {});
  const typed = 'given' in call.action ? (call.action.given[field] ?? '') : '';
  await wrongTagTyped(call, { field, typed });
}

/** @param tried `typed` is what was scanned or written in the field */
export async function wrongTagTyped(
  { services, person, screen, job }: Trying,
  { field, typed }: { readonly field: string; readonly typed: string },
): Promise<void> {
  const inputs = { job, field, by: person.id, typed: LABEL.test(typed.trim()) ? typed.trim() : '' };
  await services.log.act({
    requestId: null,
    fingerprint: fingerprintOf(inputs),
    person: person.id,
    screen,
    streams: [SITE_STREAM],
    decide: () => ({
      entries: [{ stream: SITE_STREAM, kind: 'wrong-tag', inputs, outcome: {}, effects: {} }],
      answer: {},
    }),
  });
}
