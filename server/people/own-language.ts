import { isLanguage, type Language } from '../../views/language/language.ts';
import { fingerprintOf, LogDamaged } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { By } from './people.ts';
import { personEntry, personKind } from './person-stream.ts';

/** What a person chose to read, kept in their own stream; null where they chose nothing, or their stream was changed. */
export async function ownLanguage(log: SiteLog, person: string): Promise<Language | null> {
  try {
    const { language } = await log.state(personKind, person);
    return language !== null && isLanguage(language) ? language : null;
  } catch (error) {
    // A page is shown all the same: the way to safe must stay open.
    if (error instanceof LogDamaged) return null;
    throw error;
  }
}

/** Keeps what a person chose to read, at every screen. */
export async function chooseLanguage(
  log: SiteLog,
  { person, language, by }: { readonly person: string; readonly language: Language; readonly by: By },
): Promise<void> {
  await log.act({
    ...by,
    fingerprint: fingerprintOf({ language, person }),
    streams: [streamOf('person', person)],
    decide: (read) =>
      read.state(personKind, person).language === language
        ? { entries: [], answer: {} }
        : { entries: [personEntry(person, { kind: 'language-chosen', inputs: { language } })], answer: {} },
  });
}
