import { z } from 'zod';
import type { EntryDraft } from './log/act.ts';
import type { StreamKind } from './log/stream-kind.ts';

/** The site as a whole: what it is called, and refused acts that matter. */
export interface Site {
  /** Null until it was set up. */
  readonly plant: string | null;
  /** The demo plant: nothing of it is true. */
  readonly demo: boolean;
}

const setUp = z.object({ plant: z.string(), demo: z.boolean() });

export const siteKind: StreamKind<Site> = {
  kind: 'site',
  initial: { plant: null, demo: false },
  evolve: (state, entry) => (entry.kind === 'site-set-up' ? setUp.parse(entry.inputs) : state),
  summarise: () => null,
};

export const SITE_STREAM = 'site';

export function siteSetUp(site: { readonly plant: string; readonly demo: boolean }): EntryDraft {
  return { stream: SITE_STREAM, kind: 'site-set-up', inputs: { ...site }, outcome: {}, effects: {} };
}

/**
 * Wrong PINs, told together. Who was meant is null for a name that nobody has: people type their PIN into the wrong
 * field, so what was typed there is never kept.
 */
export function pinRefused(tries: { readonly person: string | null; readonly inARow: number }): EntryDraft {
  return { stream: SITE_STREAM, kind: 'pin-refused', inputs: { ...tries }, outcome: {}, effects: {} };
}
