import { describe, expect, test } from 'vitest';
import type { Reply } from '../../../procedures/reply/reply.ts';
import { atCard } from './at-card.ts';
import { PHRASES } from './phrases.ts';

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

test('the phrase file is not cut short', () => {
  expect(PHRASES.length).toBeGreaterThan(220);
});

describe.each(PHRASES)('On the card $card, "$written"', ({ card, written, means }) => {
  test(`is taken as: ${means}`, () => {
    const said = meaning(atCard(card).read(written));
    const [kind = '', words = ''] = means.match(/^(no|told) (.*)$/)?.slice(1) ?? [];
    if (kind === '') expect(said).toBe(means);
    else {
      expect(said.startsWith(`${kind} `)).toBe(true);
      expect(said.replaceAll("'", '’').toLowerCase()).toContain(words.replaceAll("'", '’').toLowerCase());
    }
  });
});
