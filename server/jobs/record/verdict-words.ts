import type { Guarded } from '../../../procedures/cycle-verdict.ts';

export const WORDS: Readonly<Record<Guarded, string>> = {
  inside: 'inside',
  outside: 'outside',
  'too close': 'too close for this gauge',
};
