import fc from 'fast-check';
import { expect, test } from 'vitest';
import { understand } from '../../../procedures/readings/given.ts';
import { askOf } from '../../../procedures/reply/ask.ts';
import type { Reply } from '../../../procedures/reply/reply.ts';
import { type AtCard, atCard } from './at-card.ts';
import { REPLY_CARDS } from './cards.ts';
import { PHRASES } from './phrases.ts';

const CARDS = Object.keys(REPLY_CARDS.definition.steps).map(atCard);

/** What people write, in pieces, among what nobody would. */
const PIECES = [
  ...['9', '9.0', '9,1', '12,1', '0', '50', '1,234', '-3', '3/4', '0x1f', '1e9', '22', '3', '104', '30'],
  ...['psi', '%', 'bar', 'mm', '"', 'kPa', 'psia', 'in', 'turns', '°C', 'second'],
  ...['signal', 'travel', 'second', 'lock', 'tag', 'first', 'leaves', 'touches', 'gauge', 'vent', 'reason'],
  ...[
    'yes',
    'no',
    'not',
    'moves',
    'moved',
    'done',
    'no flow',
    'it flows',
    'stop',
    'back',
    'leave',
    'because',
  ],
  ...['HV-214A', 'HV-214C', 'FV-214', 'G-101', 'G-102', 'G-104', 'R-301', 'D-201', 'IA-214-1'],
  ...[
    ';',
    ':',
    ',',
    ' then ',
    '\n',
    '?',
    '=',
    '@',
    'on',
    'what is',
    'Signal:',
    'Travel:',
    'Answer:',
    'shift lead',
  ],
  ...['constructor', '__proto__', 'toString', '{tag}', '<b>', '\u202e', '\u2212', '’', '½', '٣'],
];

const written = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.array(fc.constantFrom(...PIECES), { maxLength: 9 }).map((parts) => parts.join(' ')),
  },
  {
    weight: 2,
    arbitrary: fc.array(fc.constantFrom(...PIECES), { maxLength: 6 }).map((parts) => parts.join('')),
  },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 60 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 500 }) },
);
/** A phrase that means something on its card, with a piece put in, or one of its words left out or said twice. */
const bent = fc
  .record({
    phrase: fc.constantFrom(...PHRASES),
    at: fc.nat(12),
    put: fc.option(fc.constantFrom(...PIECES)),
    drop: fc.nat(2),
  })
  .map(({ phrase, at, put, drop }) => {
    const words = phrase.written.split(' ');
    words.splice(at % (words.length + 1), drop, ...(put === null ? [] : [put]));
    return { card: atCard(phrase.card), text: words.join(' ') };
  });
const onCard = fc.oneof(
  { weight: 2, arbitrary: bent },
  { weight: 1, arbitrary: fc.record({ card: fc.constantFrom(...CARDS), text: written }) },
);

test('the longest reply of one kind over and over is read in no time to speak of', {
  timeout: 120_000,
}, () => {
  const longest = [
    '9 ',
    '9; ',
    '3; ',
    'yes ',
    '9 psi ',
    'signal 9 ',
    'G-101 ',
    '1,2 ',
    'no flow ',
    'foo ',
    ': ',
    '9 then ',
  ];
  for (const card of CARDS)
    for (const piece of longest) {
      const before = performance.now();
      card.read(piece.repeat(Math.floor(400 / piece.length)));
      expect(performance.now() - before, piece).toBeLessThan(2000);
    }
});

/** Every number that stands in a text, as digits. */
const numbersIn = (text: string) => text.match(/\d+(?:[.,]\d+)*/g) ?? [];

const VULGAR = { '½': 0.5, '¼': 0.25, '¾': 0.75 } as const;

/** What a fraction of an inch or of a turn comes to, as decimals. */
function fractionsIn(text: string): readonly string[] {
  const written = [...text.matchAll(/(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)/g)].flatMap(
    ([, whole, top, bottom]) => {
      const part = Number(top) / Number(bottom);
      return [part, Number(whole ?? 0) + part];
    },
  );
  const signs = [...text.matchAll(/(\d+)?\s*([½¼¾])/g)].flatMap(([, whole, sign]) => {
    const part = VULGAR[sign as keyof typeof VULGAR];
    return [part, Number(whole ?? 0) + part];
  });
  return [...written, ...signs].map(String);
}

test('whatever is written, it is understood, offered as choices, answered, or refused: nothing is thrown', {
  timeout: 120_000,
}, () => {
  fc.assert(
    fc.property(onCard, ({ card, text }) => {
      const reply = card.read(text);
      expect(['understood', 'partial', 'ambiguous', 'told', 'unknown']).toContain(reply.kind);
      if (reply.kind === 'ambiguous') expect(reply.choices.length).toBeGreaterThan(1);
      if (reply.kind === 'unknown') expect(`${reply.what}${reply.next}`).not.toBe('');
    }),
    { numRuns: 500 },
  );
});

test('no number is counted that the text does not hold', { timeout: 120_000 }, () => {
  fc.assert(
    fc.property(onCard, ({ card, text }) => {
      const held = [...numbersIn(text.normalize('NFC')), ...fractionsIn(text.normalize('NFC'))];
      const parts = held.flatMap((number) => [number, ...number.split(',')]);
      for (const number of givensOf(card.read(text))
        .flatMap((given) => Object.values(given))
        .flatMap(numbersIn))
        expect(parts).toContain(number);
    }),
    { numRuns: 500 },
  );
});

test('what it prints as understood, typed again, is understood the same', { timeout: 120_000 }, () => {
  let tried = 0;
  fc.assert(
    fc.property(onCard, ({ card, text }) => {
      const reply = card.read(text);
      if (reply.kind !== 'understood' && reply.kind !== 'partial') return;
      tried += 1;
      const again = card.read(reply.said);
      expect(again.kind).toBe(reply.kind);
      expect(meaningOf(again, card)).toEqual(meaningOf(reply, card));
    }),
    { numRuns: 500 },
  );
  expect(tried).toBeGreaterThan(40);
});

test('each choice that is offered leads on: chosen, it is one meaning, or fewer', {
  timeout: 120_000,
}, () => {
  fc.assert(
    fc.property(onCard, ({ card, text }) => {
      const reply = card.read(text);
      if (reply.kind !== 'ambiguous') return;
      for (const { reply: chosen } of reply.choices) {
        const next = card.read(chosen);
        if (next.kind === 'ambiguous') expect(chosen).not.toBe(text.normalize('NFC').trim());
      }
    }),
    { numRuns: 400 },
  );
});

function givensOf(reply: Reply) {
  if (reply.kind !== 'understood') return [];
  if (reply.act.act === 'answer') return reply.act.givens;
  return reply.act.act === 'prove-again' ? [reply.act.given] : [];
}

/** The values in SI and the words, whatever way they were written. */
function meaningOf(reply: Reply, { job, around }: AtCard): unknown {
  if (reply.kind === 'partial') return reply.said;
  if (reply.kind !== 'understood' || reply.act.act !== 'answer') return reply;
  const { fields } = askOf(job, around);
  return givensOf(reply).map((given) => {
    const { readings, words } = understand(fields, { given, job, today: around.today });
    return {
      words,
      readings: Object.values(readings).map(({ field, valueSi, gauge, unit }) => ({
        field,
        valueSi,
        gauge,
        unit,
      })),
    };
  });
}
