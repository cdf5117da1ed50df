import { clock, day, type Names, nameOf } from '../jobs/view/words.ts';
import type { LogEntry } from '../store/store.ts';

export interface HistoryLine {
  readonly at: string;
  readonly who: string;
  readonly what: string;
}

type Texts = Readonly<Record<string, string>>;
type Said = (inputs: Texts, names: Names) => string;

const SAID: Readonly<Record<string, Said>> = {
  'point-described': ({ kind, place, lockable }) =>
    [kind, place, String(lockable) === 'true' ? 'takes a lock' : 'takes a tag only']
      .filter((part) => part !== '')
      .join(', '),
  'lock-hung': ({ lock, owner = '', job, because = '' }, names) =>
    `${lock} of ${nameOf(owner, names)} hung for job ${job}${because === '' ? '' : `; a tag alone: ${because}`}`,
  'lock-taken-off': ({ job, owner = '', restores }, names) =>
    `Lock of ${nameOf(owner, names)} for job ${job} taken off${String(restores) === 'false' ? '; stays shut' : '; put back'}`,
  'lock-removed-in-absence': ({ lock, owner = '', job, reason }, names) =>
    `${lock} of ${nameOf(owner, names)} for job ${job} taken off in the owner’s absence: ${reason}`,
  'tag-allowed': ({ job, because }) => `A tag alone allowed for job ${job}: ${because}`,
};

/** What happened to a point, the latest first. */
export function historyOf(entries: readonly LogEntry[], names: Names): readonly HistoryLine[] {
  return entries
    .map(({ at, person, kind, inputs }) => ({
      at: `${day(at)} ${clock(at)} UTC`,
      who: nameOf(person ?? 'nobody', names),
      what: SAID[kind]?.(inputs as Texts, names) ?? kind,
    }))
    .toReversed();
}
