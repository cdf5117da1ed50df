/** A small site with a valve, its gear and people, and clients that do jobs on it as JSON or as plain forms. */

import type { Json } from '../../../procedures/json.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { fingerprintOf } from '../../../server/log/chain.ts';
import { streamOf } from '../../../server/log/stream-kind.ts';
import { gearFor } from '../../builders/gear.ts';
import { SIGNED_STEPS, strokeScript, textsAt, WAITED_STEPS } from '../../builders/stroke-script.ts';
import { type AnApp, newRequestId } from '../an-app.ts';

export interface Site {
  readonly app: AnApp;
  readonly sheet: ValveSheet;
}

/** Puts a valve and the gear for it on the site, as saves of their own. */
export async function withValve(app: AnApp, sheet: ValveSheet): Promise<Site> {
  const saves: readonly (readonly [string, string, Json])[] = [
    [streamOf('valve', sheet.tag), 'valve-sheet-saved', { sheet, typed: {} } as unknown as Json],
    ...Object.values(gearFor('line')).map(
      (item) => [streamOf('gear', item.number), 'gear-saved', { item } as unknown as Json] as const,
    ),
  ];
  for (const [stream, kind, inputs] of saves) {
    await app.services.log.act({
      requestId: newRequestId(),
      fingerprint: fingerprintOf({ stream, inputs }),
      person: null,
      screen: 'test',
      streams: [stream],
      decide: () => ({ entries: [{ stream, kind, inputs, outcome: {}, effects: {} }], answer: {} }),
    });
  }
  return { app, sheet };
}

/** Which gear a job is opened with, by role. */
export function gearNumbers(place: 'bench' | 'line'): Record<string, string> {
  return Object.fromEntries(Object.entries(gearFor(place)).map(([role, item]) => [role, item.number]));
}

export { SIGNED_STEPS, strokeScript, textsAt, WAITED_STEPS };
