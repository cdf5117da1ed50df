import { readFileSync } from 'node:fs';

export interface Phrase {
  readonly card: string;
  readonly written: string;
  readonly means: string;
}

/** What people write on which card, and what it means. */
export const PHRASES: readonly Phrase[] = readFileSync(new URL('phrases.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => {
    const [card, written, means, ...more] = line.split(' | ').map((part) => part.trim());
    if (card === undefined || written === undefined || means === undefined || more.length > 0)
      throw new Error(`not card, written and meaning: ${line}`);
    return { card, written, means };
  });
