import { GEAR_ROLES, type GearRole } from '../../test-gear/roles.ts';
import type { Ask } from '../ask.ts';
import { type ReplyTold, told } from '../reply.ts';
import { plainText } from '../words.ts';

/** On which gauge the open card is read, and which gear this job has. */
const ASKED = /^(?:which|what) (?:gauges?|gear|dials?|indicators?|test gear)\b/;

/** Null where something else is asked. */
export function aboutGear(question: string, ask: Ask): ReplyTold | null {
  if (!ASKED.test(plainText(question))) return null;
  const read = ask.fields.flatMap((field): string[] => {
    if (field.type !== 'quantity' || field.gauge === undefined) return [];
    const item = ask.job.gear[field.gauge];
    return item === undefined ? [] : [`${field.label}: ${item.number}.`];
  });
  const all = Object.entries(ask.job.gear).flatMap(([role, item]) =>
    item === undefined ? [] : [`${GEAR_ROLES[role as GearRole].label.toLowerCase()} ${item.number}`],
  );
  return read.length > 0
    ? told('This card is read on:', {
        lines: [
          ...read,
          'Where you read on another one of this job, write `on` and its number behind the reading.',
        ],
      })
    : told('This card is read on no gauge.', { lines: [`This job has: ${all.join('; ')}.`] });
}
