import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Json } from '../../../procedures/json.ts';
import { PROCEDURES } from '../../../procedures/served.ts';
import { asJson } from '../../../procedures/vocabulary.ts';
import { inOrder, keyOrder } from '../../../server/jobs/key-order.ts';
import { canonical } from '../../../server/log/canonical.ts';

/** What the log gives back of a value, with its order beside it. */
const keptAndRead = (value: Json): Json =>
  inOrder(JSON.parse(canonical(value)), JSON.parse(canonical(keyOrder(value) as unknown as Json)));

describe('The order of steps and choices', () => {
  test('of any content is that of before, though the log sorts names', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const plain = JSON.parse(JSON.stringify(value)) as Json;
        expect(JSON.stringify(keptAndRead(plain))).toBe(JSON.stringify(plain));
      }),
    );
  });

  test.each(PROCEDURES.map(({ definition }) => [definition.title, definition] as const))(
    'of %s is as it was written',
    (_, definition) => {
      const written = JSON.stringify(definition);
      expect(canonical(asJson(definition))).not.toBe(written);
      expect(JSON.stringify(keptAndRead(JSON.parse(written)))).toBe(written);
    },
  );

  test('of a log that does not tell it is that of the letters, and nothing is missing', () => {
    expect(inOrder({ no: 2, yes: 1 }, undefined)).toEqual({ no: 2, yes: 1 });
    expect(JSON.stringify(inOrder({ a: 1, no: 2, yes: 1 }, { names: ['yes', 'gone', 'no'] }))).toBe(
      '{"yes":1,"no":2,"a":1}',
    );
  });
});
