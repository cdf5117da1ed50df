import { describe, expect, test } from 'vitest';
import { hashedSchema, PinHasher } from '../../../server/people/pin-hash.ts';
import { HASH_COST, SETTINGS } from '../../../server/settings.ts';

const cheap = { N: 256, r: 8, p: 1 };
const pepper = Buffer.alloc(32, 1);

function aHasher(options: Partial<ConstructorParameters<typeof PinHasher>[0]> = {}): PinHasher {
  return new PinHasher({ cost: cheap, pepper, atOnceMax: 2, waitingMax: 20, ...options });
}

describe('hashing a PIN', () => {
  test('costs in production at least what OWASP asks for: scrypt with N 2^17, r 8, p 1 (WS-01, WS-02)', async () => {
    expect(SETTINGS.hashCost).toBe(HASH_COST);
    expect(HASH_COST.N).toBeGreaterThanOrEqual(2 ** 17);
    expect([HASH_COST.r, HASH_COST.p]).toEqual([8, 1]);
    // The real thing, once: Node refuses it unless it is given the memory.
    const hasher = aHasher({ cost: HASH_COST });
    const hashed = await hasher.hash('482915');
    expect(hashed).toMatchObject({ algorithm: 'scrypt', N: 131_072, r: 8, p: 1 });
    expect(await hasher.matches('482915', { hashed })).toBe(true);
  });

  test('takes the very PIN and no other, and none where there is no hash', async () => {
    const hasher = aHasher();
    const hashed = await hasher.hash('482915');
    for (const other of ['482916', ' 482915', '482915 ', '', '48291']) {
      expect(await hasher.matches(other, { hashed })).toBe(false);
    }
    expect(await hasher.matches('482915', { hashed: undefined })).toBe(false);
    expect(await hasher.matches('482915', { hashed })).toBe(true);
  });

  test('has a salt of 128 bits of its own each time (WS-03)', async () => {
    const hasher = aHasher();
    const [one, other] = [await hasher.hash('482915'), await hasher.hash('482915')];
    expect(Buffer.from(one.salt, 'base64')).toHaveLength(16);
    expect(one.salt).not.toBe(other.salt);
    expect(one.hash).not.toBe(other.hash);
  });

  test('needs the pepper: the right PIN fails on a copy of the database alone (WS-04)', async () => {
    const hashed = await aHasher().hash('482915');
    expect(await aHasher({ pepper: Buffer.alloc(32, 2) }).matches('482915', { hashed })).toBe(false);
  });

  test('keeps its own cost beside it, so that old ones still match and are known as old', async () => {
    const old = await aHasher().hash('482915');
    const hasher = aHasher({ cost: { N: 512, r: 8, p: 1 } });
    expect(hashedSchema.parse(JSON.parse(JSON.stringify(old)))).toEqual(old);
    expect([await hasher.matches('482915', { hashed: old }), hasher.isOutdated(old)]).toEqual([true, true]);
    expect(hasher.isOutdated(await hasher.hash('482915'))).toBe(false);
  });

  test('is done a few at a time; beyond a queue people are asked to come again, and afterwards all is as before', async () => {
    const hasher = aHasher({ atOnceMax: 2, waitingMax: 3, cost: { N: 4096, r: 8, p: 1 } });
    const crowd = await Promise.allSettled(Array.from({ length: 20 }, () => hasher.hash('482915')));
    expect(crowd.filter(({ status }) => status === 'fulfilled')).toHaveLength(5);
    for (const each of crowd) {
      if (each.status === 'rejected')
        expect(each.reason).toMatchObject({ status: 429, text: { code: 'PPL-003' } });
    }
    expect(await Promise.all([hasher.hash('1'), hasher.hash('2'), hasher.hash('3')])).toHaveLength(3);
  });

  test('lets whoever is known go before strangers, who get half of the places at most', async () => {
    // One at a time: of two at once either may be done first.
    const hasher = aHasher({ atOnceMax: 1, waitingMax: 4 });
    const order: string[] = [];
    const at = (who: string, isKnown: boolean) =>
      hasher.matches('1', { hashed: undefined, isKnown }).then(() => order.push(who));
    const arrived = await Promise.allSettled([
      at('busy', true),
      at('stranger', false),
      at('stranger 2', false),
      at('stranger 3', false),
      at('known', true),
    ]);
    expect(arrived.map(({ status }) => status)).toEqual([
      'fulfilled',
      'fulfilled',
      'fulfilled',
      'rejected',
      'fulfilled',
    ]);
    expect(order).toEqual(['busy', 'known', 'stranger', 'stranger 2']);
  });
});
