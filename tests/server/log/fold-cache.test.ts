import { expect, test } from 'vitest';
import { EMPTY_STREAM } from '../../../server/log/chain.ts';
import { FoldCache } from '../../../server/log/fold-cache.ts';

const folded = (state: number) => ({ head: EMPTY_STREAM, state });

test('the state that was not used for longest makes room', () => {
  const cache = new FoldCache(2);
  cache.put('a', folded(1));
  cache.put('b', folded(2));
  expect(cache.get('a')).toEqual(folded(1));
  cache.put('c', folded(3));
  expect(cache.get('b')).toBeUndefined();
  expect(cache.get('a')).toEqual(folded(1));
  expect(cache.get('c')).toEqual(folded(3));
});

test('a state put again replaces the one before and makes nothing else go', () => {
  const cache = new FoldCache(2);
  cache.put('a', folded(1));
  cache.put('b', folded(2));
  cache.put('a', folded(3));
  expect([cache.get('a'), cache.get('b')]).toEqual([folded(3), folded(2)]);
  cache.clear();
  expect(cache.get('a')).toBeUndefined();
});
