import { z } from 'zod';
import type { Action } from '../../procedures/actions/action.ts';
import { wrongFields } from '../http/fields.ts';

export const ACT_NAMES = [
  'answer',
  'sign',
  'send-back',
  'make-safe',
  'go-back',
  'correct',
  'park',
  'take-up',
  'prove-again',
] as const;

/** A form of any card: the act, the line it was answering, and the card's own fields beside them. */
export const actFields = z
  .object({
    act: z.enum(ACT_NAMES, `Name the act: ${ACT_NAMES.join(', ')}.`),
    place: z.string().regex(/^\d{1,9}$/, 'Say which line you had seen last.'),
    step: z.string().max(80).optional(),
    to: z.string().max(80).optional(),
    corrects: z
      .string()
      .regex(/^\d{1,9}$/, 'Name the line by its number.')
      .optional(),
    reason: z.string().max(400, 'At most 400 letters.').optional(),
    signer: z.string().max(60).optional(),
    pin: z.string().max(64).optional(),
    shownDigest: z.string().max(64).optional(),
  })
  .catchall(z.string().max(400, 'At most 400 letters.'));

export type ActFields = z.output<typeof actFields>;

/** The act that a form asks for. @throws Refusal FRM-002 where a part is missing */
export function readAction(fields: ActFields): Action {
  const {
    act,
    place: placeText,
    step,
    to,
    corrects,
    reason = '',
    signer: _signer,
    pin: _pin,
    shownDigest = '',
    ...given
  } = fields;
  const place = Number(placeText);
  switch (act) {
    case 'answer':
      return { kind: act, place, step: needed('step', step), given: { ...given, reason } };
    case 'sign':
      return { kind: act, place, step: needed('step', step), shownDigest };
    case 'send-back':
      return { kind: act, place, step: needed('step', step), reason };
    case 'go-back':
      return { kind: act, place, to: needed('to', to) };
    case 'correct':
      return { kind: act, place, corrects: Number(needed('corrects', corrects)), given, reason };
    case 'make-safe':
    case 'park':
      return { kind: act, place, reason };
    case 'take-up':
      return { kind: act, place };
    case 'prove-again':
      return { kind: act, place, given };
  }
}

function needed(name: string, value: string | undefined): string {
  if (value === undefined || value === '') throw wrongFields({ [name]: 'This is missing.' });
  return value;
}
