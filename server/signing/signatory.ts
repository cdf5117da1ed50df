import type { Signatory } from '../../procedures/actions/action.ts';
import { isSameCode } from '../../procedures/read-back.ts';
import { Refusal } from '../../safety/refusal.ts';
import { SIGN_WAYS, type SignWay } from '../../safety/sign-off.ts';
import { wrongFields } from '../http/fields.ts';
import type { BareCall } from '../http/route.ts';
import type { Person } from '../people/person.ts';
import type { SignaturePage } from './nonces.ts';
import { radioCode } from './radio-code.ts';

/** The parts of a form with which something is signed. */
export interface SignatureFields {
  readonly signer?: string | undefined;
  readonly pin?: string | undefined;
  readonly nonce?: string | undefined;
  readonly way?: string | undefined;
  readonly why?: string | undefined;
  readonly code?: string | undefined;
}

export interface Signing {
  /** Who is proven to be at the screen, and writes the line. */
  readonly person: Person;
  readonly signatory: Signatory;
}

type SignedInCall = BareCall & { readonly person: Person };

/**
 * Who signs, by name and PIN every time: a session alone signs nothing, and the session stays whose it is. By radio the
 * PIN is that of whoever hears, and the one who is heard confirms it later.
 *
 * @param page what the form was drawn for; its one-time number must fit
 * @throws Refusal HLD-016 for an old or foreign page, FRM-002, PPL-001, HLD-017 for a code that was not the one read out
 */
export async function signingOf(
  call: SignedInCall,
  { fields, page }: { readonly fields: SignatureFields; readonly page: SignaturePage },
): Promise<Signing> {
  const { services, screen } = call;
  const { signer: who = '', pin = '', nonce = '', why = '' } = fields;
  // The same request again is answered as before, however old its page is by now.
  const isAgain = (await services.store.answered(call.requestId)) !== undefined;
  if (!isAgain) services.nonces.check(nonce, page);
  if (who === '' || pin === '')
    throw wrongFields({ [who === '' ? 'signer' : 'pin']: 'Name and PIN sign together.' });
  if (wayOf(fields.way) === 'radio') return await byRadio(call, { fields, page });
  const person = await services.people.verify({ who, pin, screen });
  const second = wayOf(fields.way) === 'second person';
  const way: SignWay = second ? 'second person' : person.id === call.person.id ? 'own screen' : 'walk-up';
  const signer = { id: person.id, role: person.role };
  return {
    person,
    signatory: { signer, name: person.name, way, why: second ? why.trim() : '', nonce, radio: null },
  };
}

function wayOf(way = ''): SignWay | null {
  return SIGN_WAYS.find((one) => one === way) ?? null;
}

async function byRadio(
  call: SignedInCall,
  { fields, page }: { readonly fields: SignatureFields; readonly page: SignaturePage },
): Promise<Signing> {
  const { services, screen } = call;
  const { signer: who = '', pin = '', nonce = '', why = '', code = '' } = fields;
  const shown = radioCode({ nonce, digest: page.digest });
  if (!isSameCode(code, shown)) throw otherCode();
  const heard = await services.people.find(who);
  if (heard === undefined || heard.retired) throw wrongFields({ signer: 'Nobody of that id works here.' });
  if (heard.id === call.person.id) throw wrongFields({ signer: 'You cannot hear yourself by radio.' });
  const person = await services.people.verify({ who: call.person.id, pin, screen });
  return {
    person,
    signatory: {
      signer: { id: heard.id, role: heard.role },
      name: heard.name,
      way: 'radio',
      why: why.trim(),
      nonce,
      radio: { code: shown, heardBy: person.id },
    },
  };
}

function otherCode(): Refusal {
  return new Refusal({
    kind: 'unreadable',
    code: 'HLD-017',
    what: 'The code that was read back is not the one that this screen showed.',
    kept: 'Nothing was signed.',
    next: 'Read everything out again, with the new code.',
    fields: { code: 'This is not the code that was read out.' },
  });
}
