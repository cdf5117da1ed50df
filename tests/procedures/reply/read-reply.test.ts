import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Reply } from '../../../procedures/reply/reply.ts';
import { atCard } from './at-card.ts';

const PHRASES = readFileSync(new URL('phrases.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => line.split(' | ').map((part) => part.trim()));

/** A reply in the words of the phrase file. */
function meaning(reply: Reply): string {
  switch (reply.kind) {
    case 'understood': {
      const acts = { 'make-safe': 'SAFE', park: 'PARK', 'go-back': 'BACK' } as const;
      return reply.act.act in acts ? acts[reply.act.act as keyof typeof acts] : reply.said;
    }
    case 'partial':
      return `${reply.said} ...`;
    case 'ambiguous':
      return `? ${reply.choices.length}`;
    case 'told':
      return `told ${reply.heading} ${reply.lines.join(' ')}`;
    case 'unknown':
      return `no ${reply.what} ${reply.next}`;
  }
}

test('the phrase file holds what it says', () => {
  expect(PHRASES.length).toBeGreaterThan(180);
  expect(PHRASES.filter((parts) => parts.length !== 3)).toEqual([]);
});

describe.each(PHRASES)('On the card %s, "%s"', (step, written, means) => {
  test(`is taken as: ${means}`, () => {
    const said = meaning(atCard(step ?? '').read(written ?? ''));
    const [kind = '', words = ''] = means?.match(/^(no|told) (.*)$/)?.slice(1) ?? [];
    if (kind === '') expect(said).toBe(means);
    else {
      expect(said.startsWith(`${kind} `)).toBe(true);
      expect(said.replaceAll("'", '’').toLowerCase()).toContain(words.replaceAll("'", '’').toLowerCase());
    }
  });
});
