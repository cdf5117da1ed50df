import { z } from 'zod';
import type { EntryDraft } from './log/act.ts';
import type { StreamKind } from './log/stream-kind.ts';
import type { LogEntry } from './store/store.ts';

/** The site as a whole: what it is called, its screens, and what somebody has to look into. */
export interface Site {
  /** Null until it was set up. */
  readonly plant: string | null;
  /** The demo plant: nothing of it is true. */
  readonly demo: boolean;
  /** Screens that somebody answers for: the given name, by the name that the number gave. */
  readonly screens: Readonly<Record<string, string>>;
  /** Runs of wrong PINs that nobody has looked into. */
  readonly alarms: readonly PinAlarm[];
  /** Who was let in from the server's own console, newest last. */
  readonly letIns: readonly LetIn[];
  readonly reviewed: { readonly at: string; readonly by: string } | null;
}

/** Wrong PINs in a row, in the name of one person; null for names that nobody has. */
export interface PinAlarm {
  readonly person: string | null;
  readonly inARow: number;
  readonly screen: string;
  readonly at: string;
}

export interface LetIn {
  readonly person: string;
  readonly at: string;
  /** All PINs were voided with the lost key. */
  readonly newKey: boolean;
}

/** So many wrong PINs in a row are more than mistyping: somebody is told. */
export const ALARM_TRIES = 5;

const LET_INS_KEPT = 20;

const setUp = z.object({ plant: z.string(), demo: z.boolean() });
const refused = z.object({ person: z.string().nullable(), inARow: z.int() });
const letIn = z.object({ person: z.string(), newKey: z.boolean() });
const enrolled = z.object({ screen: z.string(), name: z.string() });

const INITIAL: Site = { plant: null, demo: false, screens: {}, alarms: [], letIns: [], reviewed: null };

/** What each entry changes; the others only tell. */
const CHANGES: Readonly<Record<string, (site: Site, entry: LogEntry) => Partial<Site>>> = {
  'site-set-up': (_, { inputs }) => setUp.parse(inputs),
  'pin-refused': ({ alarms }, entry) => ({ alarms: withAlarm(alarms, entry) }),
  'pin-alarms-looked-into': () => ({ alarms: [] }),
  'let-in': ({ letIns }, { inputs, at }) => ({
    letIns: [...letIns, { ...letIn.parse(inputs), at }].slice(-LET_INS_KEPT),
  }),
  'screen-named': ({ screens }, { inputs }) => {
    const { screen, name } = enrolled.parse(inputs);
    const others = Object.fromEntries(Object.entries(screens).filter(([key]) => key !== screen));
    return { screens: name === '' ? others : { ...others, [screen]: name } };
  },
  'accounts-reviewed': (_, { at, person }) => ({ reviewed: { at, by: person ?? '' } }),
};

/** One line for each name: the newest run stands for those before it. */
function withAlarm(alarms: readonly PinAlarm[], { inputs, at, screen }: LogEntry): readonly PinAlarm[] {
  const { person, inARow } = refused.parse(inputs);
  if (inARow < ALARM_TRIES) return alarms;
  return [...alarms.filter((alarm) => alarm.person !== person), { person, inARow, screen, at }];
}

export const siteKind: StreamKind<Site> = {
  kind: 'site',
  initial: INITIAL,
  evolve: (state, entry) => ({ ...state, ...CHANGES[entry.kind]?.(state, entry) }),
  summarise: () => null,
};

export const SITE_STREAM = 'site';

function siteEntry(kind: string, inputs: EntryDraft['inputs']): EntryDraft {
  return { stream: SITE_STREAM, kind, inputs, outcome: {}, effects: {} };
}

export function siteSetUp(site: { readonly plant: string; readonly demo: boolean }): EntryDraft {
  return siteEntry('site-set-up', { ...site });
}

/**
 * Wrong PINs, told together. Who was meant is null for a name that nobody has: people type their PIN into the wrong
 * field, so what was typed there is never kept.
 */
export function pinRefused(tries: { readonly person: string | null; readonly inARow: number }): EntryDraft {
  return siteEntry('pin-refused', { ...tries });
}

/** Somebody looked into the wrong PINs. @param note what they found */
export function alarmsLookedInto(note: string): EntryDraft {
  return siteEntry('pin-alarms-looked-into', { note });
}

/** A one-time code was given at the server's own console. */
export function letInEntry(of: { readonly person: string; readonly newKey: boolean }): EntryDraft {
  return siteEntry('let-in', { ...of });
}

/** @param of `name` blank takes the screen off the list again */
export function screenNamed(of: { readonly screen: string; readonly name: string }): EntryDraft {
  return siteEntry('screen-named', { ...of });
}

export function accountsReviewed(note: string): EntryDraft {
  return siteEntry('accounts-reviewed', { note });
}

/**
 * What a screen is called in entries and on pages. Once the site has named its screens, one that it has not named
 * says so wherever it is written, under a signature too.
 *
 * @example screenShown({ screens: { 'screen 1': 'bench 2' } }, 'screen 3') // 'screen 3, not one of the site'
 */
export function screenShown({ screens }: Pick<Site, 'screens'>, screen: string): string {
  const name = screens[screen];
  if (name !== undefined) return name;
  return Object.keys(screens).length === 0 ? screen : `${screen}, not one of the site`;
}
