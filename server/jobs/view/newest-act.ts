import type { Job } from '../../../procedures/job.ts';
import { newestLine } from '../../../procedures/notes/note.ts';
import { clock, nameOf } from './words.ts';

type Said = (ownWho: string, at: string) => string;

const SIGNED: Said = (ownWho, at) => `Signed by ${ownWho} at ${at} UTC.`;
const SENT_BACK: Said = (ownWho, at) => `Sent back by ${ownWho} at ${at} UTC.`;

/** What an act did, where it did not answer the open card. */
const SAID: Readonly<Record<string, Said>> = {
  parked: (ownWho, at) => `Left for later by ${ownWho} at ${at} UTC.`,
  'taken-up': (ownWho, at) => `Taken up again by ${ownWho} at ${at} UTC.`,
  'handed-over': (ownWho, at) => `Handed over by ${ownWho} at ${at} UTC.`,
  'locks-handed-on': (ownWho, at) => `Gone on with as another job by ${ownWho} at ${at} UTC.`,
  'locks-removed': (ownWho, at) => `Locks taken off for somebody away by ${ownWho} at ${at} UTC.`,
  'made-safe': (ownWho, at) => `Made safe and stopped by ${ownWho} at ${at} UTC.`,
  'went-back': (ownWho, at) => `Taken back to an earlier step by ${ownWho} at ${at} UTC.`,
  corrected: (ownWho, at) => `An earlier line was corrected by ${ownWho} at ${at} UTC.`,
  'proved-again': (ownWho, at) => `Shown safe again by ${ownWho} at ${at} UTC.`,
  'read-again': (ownWho, at) => `Read a second time by ${ownWho} at ${at} UTC.`,
  overridden: (ownWho, at) => `A verdict was set aside by ${ownWho} at ${at} UTC.`,
  'hold-waived': (ownWho, at) => `Gone on without a signature by ${ownWho} at ${at} UTC.`,
  'hold-signed': SIGNED,
  witnessed: SIGNED,
  reviewed: SIGNED,
  'hold-sent-back': SENT_BACK,
  'review-sent-back': SENT_BACK,
  'radio-confirmed': (ownWho, at) => `A signature by radio was confirmed by ${ownWho} at ${at} UTC.`,
  'radio-denied': (ownWho, at) => `A signature by radio was denied by ${ownWho} at ${at} UTC.`,
};
const NOTED: Said = (ownWho, at) => `Something beside the work was noted by ${ownWho} at ${at} UTC.`;
const ANSWERED: Said = (ownWho, at) => `Answered by ${ownWho} at ${at} UTC.`;

/**
 * What the newest line of a job was and who wrote it, for the other screens that show it.
 *
 * @example newestAct(job, people) // 'Left for later by Technician 1 (T1) at 10:02 UTC.'
 */
export function newestAct(
  job: Job,
  people: readonly { readonly id: string; readonly name: string }[],
): string {
  const last = newestLine(job);
  if (last === undefined) return '';
  const writer = people.filter(({ id }) => id === last.person);
  const names = new Map(writer.map(({ id, name }) => [id, name]));
  const said = last.act === undefined ? NOTED : (SAID[last.act] ?? ANSWERED);
  return said(nameOf(last.person, names), clock(last.at));
}
