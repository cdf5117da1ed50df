import { z } from 'zod';
import type { ActionOf } from '../../procedures/actions/action.ts';
import type { Late } from '../../procedures/job.ts';
import { LOOP_LETTERS_MAX } from '../../procedures/troubleshooting/loop-record/read-csv.ts';
import { wrongFields } from '../http/fields.ts';

const ACT_NAMES = [
  'answer',
  'sign',
  'send-back',
  'make-safe',
  'go-back',
  'correct',
  'park',
  'take-up',
  'prove-again',
  'waive',
  'go-on',
  'override',
  'review',
  'review-back',
  'read-again',
  'confirm-radio',
  'deny-radio',
] as const;

/** An act that a form of a card can ask for. */
export type ActName = (typeof ACT_NAMES)[number];

/** The one field of a card that is longer than a line: a table. */
const TABLE_FIELD = 'loopRecord';

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
    disposition: z.string().max(40).optional(),
    outcome: z.string().max(80).optional(),
    mode: z.string().max(40).optional(),
    about: z
      .string()
      .regex(/^\d{1,9}$/, 'Name the line by its number.')
      .optional(),
    readAt: z.string().max(40).optional(),
    lateReason: z.string().max(400, 'At most 400 letters.').optional(),
    nonce: z.string().max(120).optional(),
    way: z.string().max(40).optional(),
    why: z.string().max(400, 'At most 400 letters.').optional(),
    code: z.string().max(40).optional(),
    signer: z.string().max(60).optional(),
    pin: z.string().max(64).optional(),
    shownDigest: z.string().max(64).optional(),
    [TABLE_FIELD]: z
      .string()
      .max(LOOP_LETTERS_MAX, `At most ${LOOP_LETTERS_MAX} letters: take every second row, or fewer hours.`)
      .optional(),
  })
  .catchall(z.string().max(400, 'At most 400 letters.'));

export type ActFields = z.output<typeof actFields>;

/** The act that a form asks for. @throws Refusal FRM-002 where a part is missing */
export function readAction(fields: ActFields): ActionOf<ActName> {
  const { act, step, to, corrects, reason = '' } = fields;
  const given = cardFields(fields);
  const place = Number(fields.place);
  switch (act) {
    case 'answer':
      return { kind: act, place, step: needed('step', step), given: { ...given, reason }, ...lateOf(fields) };
    case 'sign':
      return {
        kind: act,
        place,
        step: needed('step', step),
        shownDigest: fields.shownDigest ?? '',
        ...lateOf(fields),
      };
    case 'send-back': {
      const { disposition = '' } = fields;
      return { kind: act, place, step: needed('step', step), reason, disposition };
    }
    case 'waive':
      return { kind: act, place, step: needed('step', step), reason };
    case 'go-on':
      return { kind: act, place, step: needed('step', step) };
    case 'override':
      return { kind: act, place, step: needed('step', step), outcome: fields.outcome ?? '', reason };
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
    default:
      return onLine(act, { fields, place, given, reason });
  }
}

type OnLine = 'review' | 'review-back' | 'read-again' | 'confirm-radio' | 'deny-radio';

/** An act about a line of the past. */
function onLine(
  act: OnLine,
  of: {
    readonly fields: ActFields;
    readonly place: number;
    readonly given: Readonly<Record<string, string>>;
    readonly reason: string;
  },
): ActionOf<OnLine> {
  const { fields, place, given, reason } = of;
  const about = Number(needed('about', fields.about));
  switch (act) {
    case 'review':
      return { kind: act, place, about };
    case 'review-back':
      return { kind: act, place, about, reason, disposition: fields.disposition ?? '' };
    case 'read-again':
      return { kind: act, place, about, mode: fields.mode ?? '', given };
    case 'confirm-radio':
      return { kind: act, place, about, code: fields.code ?? '' };
    case 'deny-radio':
      return { kind: act, place, about, reason: reason || (fields.code ?? '') };
  }
}

/** The card's own fields: whatever does not belong to the act or to whoever signs. */
function cardFields(fields: ActFields): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(fields).flatMap(([name, text]) =>
      text === undefined || (name !== TABLE_FIELD && Object.hasOwn(actFields.shape, name))
        ? []
        : [[name, text]],
    ),
  );
}

/** Read earlier than it is written, if the form says so. */
export function lateOf({
  readAt = '',
  lateReason = '',
}: {
  readonly readAt?: string | undefined;
  readonly lateReason?: string | undefined;
}): { readonly late?: Late } {
  return readAt.trim() === '' ? {} : { late: { claimedAt: readAt, reason: lateReason } };
}

function needed(name: string, value: string | undefined): string {
  if (value === undefined || value === '') throw wrongFields({ [name]: 'This is missing.' });
  return value;
}
