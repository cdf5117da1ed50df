import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Reply } from '../../../../procedures/reply/reply.ts';
import { type AtCard, atCard, atRow } from '../at-card.ts';

const ASKED = readFileSync(new URL('../questions.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => {
    const [card, asked, words, calculation, ...more] = line.split(' | ').map((part) => part.trim());
    if (card === undefined || asked === undefined || words === undefined || calculation === undefined)
      throw new Error(`not card, question, words and calculation: ${line}`);
    if (more.length > 0) throw new Error(`too many columns: ${line}`);
    return { card, asked, words: words.split(';').map((word) => word.trim()), calculation };
  });

/** The table at its row of 50 %. */
const cycle = atRow(atCard('cycle'), 2);
const cardOf = (name: string): AtCard => (name === 'cycle' ? cycle : atCard(name));

const plain = (text: string) => text.replaceAll('\u2019', "'").toLowerCase();
function answerOf(reply: Reply): string {
  return reply.kind === 'told' ? plain([reply.heading, ...reply.lines].join(' ')) : reply.kind;
}

test('at least forty questions are held', () => {
  expect(ASKED.length).toBeGreaterThanOrEqual(40);
});

describe.each(ASKED)('Asked on the card $card, "$asked"', ({ card, asked, words, calculation }) => {
  test(`is answered with ${words.join(', ')}`, () => {
    const reply = cardOf(card).read(asked);
    for (const word of words)
      expect(answerOf(reply)).toContain(word === 'unknown' ? 'does not know' : plain(word));
    if (calculation !== '-') expect(reply).toMatchObject({ calculation });
    // A source is named as people know it, never by the number that it has here.
    if (reply.kind === 'told') expect(reply.source).not.toMatch(/^S-\d/);
  });
});
