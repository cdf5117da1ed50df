/** Acts on the site as a whole: its screens, its accounts looked over, wrong PINs looked into. */
import { Refusal } from '../../safety/refusal.ts';
import type { EntryDraft } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import {
  accountsReviewed,
  alarmsLookedInto,
  SITE_STREAM,
  type Site,
  screenNamed,
  siteKind,
} from '../site-stream.ts';
import type { By } from './people.ts';

/** @param note what was found */
export function lookIntoAlarms(
  log: SiteLog,
  of: { readonly note: string; readonly by: By },
): Promise<unknown> {
  return actOnSite(log, { by: of.by, entry: alarmsLookedInto(of.note) });
}

/** @param note what was done about it */
export function reviewed(log: SiteLog, of: { readonly note: string; readonly by: By }): Promise<unknown> {
  return actOnSite(log, { by: of.by, entry: accountsReviewed(of.note) });
}

/**
 * Makes a screen one of the site, under a name that people know it by; a blank name takes it off again.
 *
 * @param of `screen` is the name by its number
 * @throws Refusal SCR-001 for a name in use, SCR-002 for one that looks like a number
 */
export function nameScreen(
  log: SiteLog,
  of: { readonly screen: string; readonly name: string; readonly by: By },
): Promise<unknown> {
  const { screen, name, by } = of;
  const check = ({ screens }: Site): void => {
    const isUsed = Object.entries(screens).some(
      ([other, called]) => other !== screen && called.toLowerCase() === name.toLowerCase(),
    );
    if (isUsed) throw nameTaken(name);
    if (/^(unnumbered )?screen\b|\bconsole\b/i.test(name)) throw looksNumbered();
  };
  return actOnSite(log, { by, entry: screenNamed({ screen, name }), check });
}

interface SiteAct {
  readonly by: By;
  readonly entry: EntryDraft;
  check?(site: Site): void;
}

function actOnSite(log: SiteLog, { by, entry, check }: SiteAct): Promise<unknown> {
  return log.act({
    ...by,
    fingerprint: fingerprintOf({ site: entry.kind, inputs: entry.inputs }),
    streams: [SITE_STREAM],
    decide: (read) => {
      check?.(read.state(siteKind));
      return { entries: [entry], answer: {} };
    },
  });
}

function nameTaken(name: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'SCR-001',
    what: `Another screen is called "${name}".`,
    kept: 'Nothing was recorded.',
    next: 'Give it a name that tells them apart.',
    fields: { name: 'This name is in use.' },
  });
}

function looksNumbered(): Refusal {
  return new Refusal({
    kind: 'unreadable',
    code: 'SCR-002',
    what: 'That name looks like one that the server gives by itself.',
    kept: 'Nothing was recorded.',
    next: 'Say where the screen stands: "valve shop, bench 2".',
    fields: { name: 'Say where it stands.' },
  });
}
