import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Refusal } from '../../../safety/refusal.ts';
import type { Act } from '../../../server/log/act.ts';
import { rebuildSummaries } from '../../../server/log/rebuild.ts';
import type { SiteLog } from '../../../server/log/site-log.ts';
import { verifyLines, verifyStore } from '../../../server/log/verify.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import type { Store, StoredLine, Summary } from '../../../server/store/store.ts';
import { aFolder } from '../../folders.ts';
import { failingStore } from './failing-store.ts';
import { adding, aLog, kinds, register } from './register.ts';

const IDS = ['a', 'b', 'c', 'd'];

interface Step {
  readonly id: string;
  readonly added: number;
  readonly fate: 'done' | 'refused' | 'sent twice' | 'commit fails' | 'commit fails late';
}

const step: fc.Arbitrary<Step> = fc.record({
  id: fc.constantFrom(...IDS),
  added: fc.integer({ min: 1, max: 13 }),
  fate: fc.constantFrom('done', 'done', 'done', 'refused', 'sent twice', 'commit fails', 'commit fails late'),
});

/** Any acts, some at the same moment, some refused, some sent twice, some while the store fails. */
const moments = fc.array(fc.array(step, { minLength: 1, maxLength: 6 }), { maxLength: 12 });

function actOf({ id, added, fate }: Step): Act {
  if (fate !== 'refused') return adding({ id, added });
  return adding({
    id,
    added,
    decide: () => {
      throw new Refusal({ kind: 'unsafe', code: 'X-1', what: 'No.', kept: 'Nothing.', next: 'Stop.' });
    },
  });
}

async function play(log: SiteLog, played: { store: ReturnType<typeof failingStore>; moments: Step[][] }) {
  for (const moment of played.moments) {
    if (moment.some(({ fate }) => fate === 'commit fails')) played.store.failNext = ['before writing'];
    else if (moment.some(({ fate }) => fate === 'commit fails late'))
      played.store.failNext = ['after writing'];
    const acts = moment.flatMap((each) => {
      const act = actOf(each);
      return each.fate === 'sent twice' ? [act, act] : [act];
    });
    await Promise.allSettled(acts.map((act) => log.act(act)));
    played.store.failNext = [];
  }
}

async function listed(store: Store): Promise<readonly Summary[]> {
  return store.summaries('register');
}

describe('any sequence of acts', () => {
  test('leaves a whole log, lists that equal a rebuild, and states that a fresh start finds again', async () => {
    await fc.assert(
      fc.asyncProperty(moments, async (played) => {
        const folder = aFolder();
        const store = failingStore(openSqliteStore({ folder }));
        const log = aLog(store);
        await play(log, { store, moments: played });
        const states = await Promise.all(IDS.map((id) => log.state(register, id)));
        await log.close();

        const again = openSqliteStore({ folder });
        expect(await verifyStore(again, [])).toMatchObject({ fault: null });
        const fresh = aLog(again);
        expect(await Promise.all(IDS.map((id) => fresh.state(register, id)))).toEqual(states);
        const before = await listed(again);
        await rebuildSummaries(again, kinds);
        expect(await listed(again)).toEqual(before);
        await fresh.close();
      }),
      { numRuns: 40 },
    );
  });
});

describe('one flipped bit', () => {
  test('anywhere in any entry, or in its hash, is found at that entry', async () => {
    const store = openSqliteStore({ folder: aFolder() });
    const honest: StoredLine[] = [];
    const filled = aLog(store);
    for (let added = 1; added <= 9; added += 1)
      await filled.act(adding({ id: 'abc'.charAt(added % 3), added, person: 'Zoë €' }));
    for await (const line of store.lines(1)) honest.push(line);
    await filled.close();

    const whole = await verifyLines(each(honest));
    expect(whole).toMatchObject({ entries: 9, fault: null });
    await fc.assert(
      fc.asyncProperty(
        fc.nat(8),
        fc.nat(),
        fc.nat(7),
        fc.constantFrom('bytes', 'hash'),
        async (index, at, bit, field) => {
          const line = honest[index];
          if (line === undefined) throw new Error('no such line');
          const bytes = Buffer.from(line[field], 'utf8');
          const where = at % bytes.length;
          bytes[where] = (bytes[where] ?? 0) ^ (1 << bit);
          const spoilt = honest.with(index, { ...line, [field]: bytes.toString('utf8') });
          expect((await verifyLines(each(spoilt))).fault?.seq).toBe(index + 1);
        },
      ),
      { numRuns: 500 },
    );
  });
});

async function* each(lines: readonly StoredLine[]): AsyncIterable<StoredLine> {
  yield* lines;
}
