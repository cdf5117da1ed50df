/** A small site with a valve, its gear and people, and clients that do jobs on it as JSON or as plain forms. */

import type { Json } from '../../../procedures/json.ts';
import type { GearItem } from '../../../procedures/test-gear/gear.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { fingerprintOf } from '../../../server/log/chain.ts';
import { streamOf } from '../../../server/log/stream-kind.ts';
import { gearFor } from '../../builders/gear.ts';
import { type AnApp, newRequestId } from '../an-app.ts';

export interface Site {
  readonly app: AnApp;
  readonly sheet: ValveSheet;
}

/** Puts a valve and the gear for it on the site, as saves of their own. */
export async function withValve(app: AnApp, sheet: ValveSheet): Promise<Site> {
  await saved(app, {
    stream: streamOf('valve', sheet.tag),
    kind: 'valve-sheet-saved',
    inputs: { sheet, typed: {} } as unknown as Json,
  });
  await withGear(app, Object.values(gearFor('line')));
  return { app, sheet };
}

/** Puts test gear on the site. */
export async function withGear(app: AnApp, items: readonly GearItem[]): Promise<void> {
  for (const item of items) {
    await saved(app, {
      stream: streamOf('gear', item.number),
      kind: 'gear-saved',
      inputs: { item } as unknown as Json,
    });
  }
}

/** Writes one entry, past whatever a form would have to say about it. */
export async function saved(
  { services }: AnApp,
  draft: { readonly stream: string; readonly kind: string; readonly inputs: Json },
): Promise<void> {
  await services.log.act({
    requestId: newRequestId(),
    fingerprint: fingerprintOf({ stream: draft.stream, inputs: draft.inputs }),
    person: null,
    screen: 'test',
    streams: [draft.stream],
    decide: () => ({ entries: [{ ...draft, outcome: {}, effects: {} }], answer: {} }),
  });
}

/** Which gear a job is opened with, by role. */
export function gearNumbers(place: 'bench' | 'line'): Record<string, string> {
  return Object.fromEntries(Object.entries(gearFor(place)).map(([role, item]) => [role, item.number]));
}
